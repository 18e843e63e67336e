"""Changes and what they did, findings, checks and tyres as tables, and what is written only on request."""

from collections.abc import Iterator

from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.export.cells import cell, cells, columns, declared_columns
from paddock_tui.export.sessions import SESSION
from paddock_tui.export.table import Column, ExportScope, Passed, Row, Table, fixed
from paddock_tui.records.common import Check
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Acceptance, Incident
from paddock_tui.records.tyres import Tyre, TyreSet
from paddock_tui.rules import Finding
from paddock_tui.rules.personal import personal_matter


def _change_rows(desk: LooksAt, _: ExportScope, passed: Passed) -> Iterator[Row]:
    for entry in reversed(ledger(desk).entries):
        if entry.session.id not in passed.sessions:
            continue
        source = entry.source.id if entry.source is not None else None
        because = entry.because
        for change in entry.changes:
            yield (
                entry.session.id,
                source,
                spell(change.path),
                change.label,
                change.old_text if change.old is not None else None,
                change.new_text if change.new is not None else None,
                change.unit or None,
                len(entry.others),
                entry.verdict,
                because.why if because is not None else None,
                because.expect if because is not None else None,
                because.verdict if because is not None else None,
            )


def _finding_rows(desk: LooksAt, name: str, _: Session, wanted: ExportScope) -> Iterator[Row]:
    for finding in desk.review(Ref("session", name)).findings:
        if _private(finding, wanted):
            continue
        yield (
            name,
            finding.rule,
            finding.subject or None,
            str(finding.severity),
            finding.about,
            finding.message,
            finding.facts or None,
        )


def _private(finding: Finding, wanted: ExportScope) -> bool:
    """Return whether a finding tells of the rider's health or of an incident, and nobody asked for that."""
    matter = personal_matter(finding)
    return bool(matter) and matter not in wanted.personal


_CHECK = declared_columns(Check)


def _check_rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
    for item, check in session.checks.items():
        yield ("session", name, session.rider, session.bike, item, *cells(check, _CHECK))


def _day_check_rows(desk: LooksAt, wanted: ExportScope, passed: Passed) -> Iterator[Row]:
    for ref in desk.files.listing("day"):
        loaded = desk.files.read(ref) if ref.id in passed.days else None
        if loaded is None or not isinstance(loaded.record, RidingDay):
            continue
        for rider, bikes in loaded.record.entries.items():
            for bike, entry in bikes.items():
                if (wanted.rider and rider != wanted.rider) or (wanted.bike and bike != wanted.bike):
                    continue
                for item, check in entry.checks.items():
                    yield ("day", ref.id, rider, bike, item, *cells(check, _CHECK))


_TYRE = declared_columns(Tyre)


def _tyre_rows(desk: LooksAt, _: ExportScope, __: Passed) -> Iterator[Row]:
    for ref in desk.files.listing("tyres"):
        loaded = desk.files.read(ref)
        if loaded is None or not isinstance(loaded.record, TyreSet):
            continue
        held = loaded.record
        for end, tyre in (("front", held.front), ("rear", held.rear)):
            yield (ref.id, held.name, cell(held.retired), end, *cells(tyre, _TYRE))


_HEALTH = ("concussion", "cleared_by", "cleared_at", "cleared_on", "head_contact")
"""What an incident says of the rider's health: written only where that is asked for too."""


def _incident_columns(wanted: ExportScope) -> tuple[Column, ...]:
    number = Column("number", "number of the incident")
    return (SESSION, number, *columns(declared_columns(Incident, leave_out=_left(wanted))))


def _left(wanted: ExportScope) -> tuple[str, ...]:
    return () if "health" in wanted.personal else _HEALTH


def _incident_rows(_: LooksAt, name: str, session: Session, wanted: ExportScope) -> Iterator[Row]:
    found = declared_columns(Incident, leave_out=_left(wanted))
    for number in sorted(session.incidents, key=int):
        incident = session.incidents[number]
        if incident.what == "unwell" and "health" not in wanted.personal:
            continue
        yield (name, int(number), *cells(incident, found))


_ACCEPTANCE = declared_columns(Acceptance)


def _acceptance_rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
    for rule, subjects in session.accepted.items():
        for subject, acceptance in subjects.items():
            yield (name, rule, subject, *cells(acceptance, _ACCEPTANCE))


CHANGES = Table(
    "changes",
    "one row for each value changed from one session to the next, with what the change did",
    fixed(
        SESSION,
        Column("copied_from", "the session before", joins="sessions"),
        Column("path", "where the value stands"),
        Column("label", "what it is called"),
        Column("old", "what it was; empty: not known"),
        Column("new", "what it is; empty: not known"),
        Column("unit", "the unit of both"),
        Column("others", "how many other things were changed in the same step"),
        Column("outcome", "what the change did, as far as the laps can tell"),
        Column("why", "the reason given"),
        Column("expected", "what was expected of it"),
        Column("own_verdict", "the rider's own verdict"),
    ),
    rows=_change_rows,
)
FINDINGS = Table(
    "findings",
    "one row for each finding of the review of a session, as it is judged today",
    fixed(
        SESSION,
        Column("rule", "id of the rule"),
        Column("subject", "what it is about"),
        Column("severity", "hold, serious, caution or note"),
        Column("about", "danger or method"),
        Column("message", "the finding in words"),
        Column("facts", "the facts it rests on"),
    ),
    _finding_rows,
)
CHECKS = Table(
    "checks",
    "one row for each answered item of a checklist",
    fixed(
        Column("kept_in", "session or day: which record holds the answer"),
        Column("record", "id of that record"),
        Column("rider", "id of the rider"),
        Column("bike", "id of the bike"),
        Column("item", "id of the item"),
        *columns(_CHECK),
    ),
    _check_rows,
    _day_check_rows,
)
TYRES = Table(
    "tyres",
    "one row for each tyre of a set",
    fixed(
        Column("tyres", "id of the tyre set"),
        Column("name", "what the set is called"),
        Column("retired", "hidden from lists since this date"),
        Column("end", "front or rear"),
        *columns(_TYRE),
    ),
    rows=_tyre_rows,
)
INCIDENTS = Table(
    "incidents", "one row for each incident", _incident_columns, _incident_rows, personal="incidents"
)
ACCEPTANCES = Table(
    "acceptances",
    "one row for each serious finding that a rider rode with",
    fixed(
        SESSION,
        Column("rule", "id of the rule"),
        Column("subject", "what it is about"),
        *columns(_ACCEPTANCE),
    ),
    _acceptance_rows,
    personal="acceptances",
)
