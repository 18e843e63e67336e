"""`check`: the review of a session, or of everything, as text or as JSON."""

import datetime as dt
from collections.abc import Iterable
from typing import Any

import attrs

from paddock_tui.commands.common import (
    CARE,
    HOLD,
    NOT_DONE,
    OK,
    complain,
    find_ref,
    open_to_read,
    say,
    sentences,
)
from paddock_tui.commands.printing import CheckForm, lines_of, print_dict
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import unplaced
from paddock_tui.pages.as_json import problem_as_dict
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.review import finding_key, from_before, review_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.verdict_words import CARE_WORD, HOLD_WORD, NO_FINDINGS_WORD, NOT_YET_WORD
from paddock_tui.rules import Finding, Review, Where, review

_STATUS = {NO_FINDINGS_WORD: OK, NOT_YET_WORD: CARE, CARE_WORD: CARE, HOLD_WORD: HOLD}


def check(folder: str, session: str | None, at: dt.datetime | None, form: CheckForm = "text") -> int:
    """Print the review of one session; the status is the verdict, or 3 where it could not be read."""
    desk = open_to_read(folder, at)
    ref = (
        find_ref(desk, session, ("session",), ("profile",)) if session is not None else desk.session_in_hand()
    )
    hidden = unplaced(desk.files, desk.now()) if session is None else ()
    strays = tuple(trouble for one in hidden for trouble in _troubles(desk, one))
    if ref is None:
        if form == "json":
            print_dict(review_as_dict(None, Review(about_a_session=False), strays))
        complain(line for trouble in strays for line in sentences(trouble))
        complain(("there is no session to check", "  name one with --session, or make one"))
        return NOT_DONE
    found = desk.assembled(ref)
    result = review(found.situation)
    problems = (*found.problems, *strays)
    if form == "json":
        print_dict(review_as_dict(ref, result, (*problems, *found.notes)))
    else:
        before = from_before(found.situation.facts())
        page = review_page(result, heading_of(desk, ref), problems, notes=found.notes, before=before)
        say(lines_of(_named(page, result), form))
    for keep in desk.histories.to_keep(desk.files):
        keep()
    return _status(ref, result, found.lost, hidden)


def _status(ref: Ref, result: Review, lost: Iterable[Ref], hidden: Iterable[Ref]) -> int:
    """Return the verdict's status; 3, and the reason said, where there is none that stands."""
    doubts = [f"{one} cannot be read, so the verdict does not stand" for one in lost]
    for one in hidden:
        doubts += [f"{one} cannot be read, and may be the current session", "  name one with --session"]
    if ref.kind != "session":
        doubts.append(f"{ref} is not a session: only its ranges and modes are judged")
    complain(doubts)
    return NOT_DONE if doubts else _STATUS.get(result.verdict, NOT_DONE)


def check_all(folder: str, at: dt.datetime | None, form: CheckForm = "text") -> int:
    """Read and review everything; status 0, or 3 where a file or a value could not be read."""
    # A single session waits for nothing that judges many.
    from paddock_tui.commands.check_all import judge_all

    return judge_all(folder, at, form)


def _named(page: Page, result: Review) -> Page:
    """Say beside each finding that is to be answered under what names `accept` takes it."""
    names = {
        finding_key(one): f" To accept it: {one.rule} {one.subject}"
        for one in result.findings
        if one.to_answer
    }
    findings, *others = page.sections
    rows = tuple(attrs.evolve(row, aside=row.aside + names.get(row.key, "")) for row in findings.rows)
    return attrs.evolve(page, sections=(attrs.evolve(findings, rows=rows), *others))


def _troubles(desk: LooksAt, ref: Ref) -> tuple[InputError, ...]:
    loaded = desk.files.read(ref)
    return loaded.troubles if loaded is not None else ()


def review_as_dict(ref: Ref | None, result: Review, problems: Iterable[InputError]) -> dict[str, Any]:
    """Return a review as plain data, in the order of the documented form."""
    severities = ("hold", "serious", "caution", "note")
    counts: dict[str, int] = {
        word: sum(1 for one in result.findings if str(one.severity) == word) for word in severities
    }
    return {
        "verdict": result.verdict,
        "missing": [
            {"what": one.label, "where": f"{one.ref}:{spell(one.path)}" if one.ref is not None else None}
            for one in result.missing
        ],
        "session": ref.id if ref is not None else None,
        "counts": {**counts, "to_answer": result.to_answer},
        "findings": [_finding(finding) for finding in result.findings],
        "not_judged": _not_judged(result),
        "to_do": [
            {"what": item.what, "due": item.due.isoformat() if item.due is not None else None}
            for item in result.to_do
        ],
        "problems": [problem_as_dict(trouble) for trouble in problems],
    }


def _finding(finding: Finding) -> dict[str, Any]:
    accepted = finding.accepted
    return {
        "rule": finding.rule,
        "subject": finding.subject,
        "severity": str(finding.severity),
        "about": finding.about,
        "where": _place(finding.where),
        "message": finding.message,
        "why": finding.why,
        "facts": finding.facts,
        "remedy": finding.remedy.text,
        "source": finding.source,
        "accepted": None
        if accepted is None
        else {
            "reason": accepted.reason,
            "by": accepted.by,
            "at": accepted.at.isoformat() if accepted.at is not None else None,
        },
    }


def _not_judged(result: Review) -> list[dict[str, Any]]:
    missing: dict[str, list[str]] = {}
    for entry in result.not_judged:
        labels = missing.setdefault(entry.rule, [])
        labels += [one.label for one in entry.missing if one.label not in labels]
    return [{"rule": rule, "missing": labels} for rule, labels in missing.items()]


def _place(where: Where | None) -> str | None:
    return None if where is None else f"{where.ref}:{spell(where.path)}"
