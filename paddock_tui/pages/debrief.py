"""The return page: back from the track, what is soon lost in the order typed, and what can wait."""

import datetime as dt
from collections.abc import Iterable, Iterator

import attrs

from paddock_tui.desk.debrief.rows import CHANGE, place_of, value_of
from paddock_tui.desk.debrief.steps import HOT_AT, minutes_parked, worth
from paddock_tui.entry.return_rows import (
    AFTER_THE_FLAG,
    HOT,
    LATER,
    LEARNT_BACK_IN,
    LEARNT_OF,
    LEARNT_ONCE,
    NOTES,
    SYMPTOM,
    ReturnRow,
    rule_of,
)
from paddock_tui.entry.symptoms import SHORT, numbered
from paddock_tui.facts.checklists import RACING
from paddock_tui.matters import KINDS
from paddock_tui.pages.going_out import aim_row
from paddock_tui.pages.review import finding_row
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Lap
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules import Finding, Review
from paddock_tui.store.garage import GarageFiles, Loaded
from paddock_tui.text import printable

LAPS = "laps"
"""What the row is called on which a whole run of laps is typed or pasted."""

REMINDER = "when there is time: laps, tyre look, travel, readings"

_READ_AT = "by itself with a hot pressure"
_READ_AFTERWARDS = "1341 is 13:41; enter: in no trend"
_WORDS = ("corner", "change")
"""What is read as words although it is not opened by itself."""
_LAPS_RULE = "423 418 out, or 10x416"


def return_page(
    files: GarageFiles,
    loaded: Loaded,
    groups: tuple[ReturnRow, ...],
    heading: str,
    units: Units,
    now: dt.datetime,
    no_laps: str = "",
    still: tuple[Finding, ...] = (),
) -> Page:
    """Make the page of a return: parked, the groups in the order typed, then what can wait.

    `still` is what earlier sessions left open: it is asked first.
    """
    session = loaded.record
    if not isinstance(session, Session):
        return Page(heading, (), judged=False)
    asked = tuple(finding_row(one) for one in still)
    sections = _aim(loaded, session, units)
    sections += [Section("still open: what became of it?", asked)] if asked else []
    sections.append(_parked(loaded, session, units, now))
    for title in dict.fromkeys(group.section for group in groups):
        rows = [_row(files, loaded.ref, group, units, session) for group in groups if group.section == title]
        if title == SYMPTOM:
            rows.append(Row("", f"short list: {numbered(SHORT)}", kind="heading", key="short list"))
        sections.append(Section(title, tuple(rows), _note(title)))
    sections += _later(loaded, session, units, no_laps)
    learnt = tuple(_learnt(files, session, units))
    sections += [Section("bike and tyres, in their own files", learnt)] if learnt else []
    once = tuple(_learnt_once(files, session, units))
    sections += [Section("not written down yet, asked until it is", once)] if once else []
    return Page(f"debrief · {heading}", tuple(sections), judged=False)


def _aim(loaded: Loaded, session: Session, units: Units) -> list[Section]:
    """Ask first whether the aim of the outing was met; nothing where it had none.

    Letters answer it, and no number is shown to pick one: a digit goes on to what is soon lost.
    """
    field = field_at("session", ("aim_met",))
    if session.aim is None or field is None:
        return []
    row = field_row(loaded, field, units)
    aside = "" if row.known else "y yes, p partly, n no; digit: on"
    asked = attrs.evolve(row, label="was it met?", aside=aside, choices=(), kind="ask")
    note = "yes ends it; else it goes on to the next session"
    return [Section("the aim", (aim_row(session), asked), note)]


def still_open(judged: Review, session: Ref) -> tuple[Finding, ...]:
    """Return what earlier sessions, or the files of bike, rider and tyres, leave open for a session."""
    return tuple(
        one
        for one in judged.findings
        if one.rule in KINDS and one.where is not None and one.where.ref != session
    )


def _note(title: str) -> str:
    return f"{NOTES[title]}; - parked earlier" if title == HOT else NOTES[title]


def _parked(loaded: Loaded, session: Session, units: Units, now: dt.datetime) -> Section:
    field = field_at("session", ("parked",))
    if field is None:
        raise LookupError("parked")
    row = field_row(loaded, field, units)
    hot = session.pressures.get("hot")
    read = hot.at if hot is not None and (hot.front or hot.rear) else None
    if session.parked is not None and read is None and session.date == now.date():
        minutes = minutes_parked(session.parked, now.time())
        if minutes is not None:
            now_worth = worth(minutes).partition(": ")[2]
            row = attrs.evolve(row, aside=f"{minutes:.0f} min ago; a pressure read now is {now_worth}")
    rows = [attrs.evolve(row, kind="ask")]
    at = field_at("session", HOT_AT)
    if at is not None:
        past = session.date is not None and session.date < now.date()
        aside = _READ_AFTERWARDS if past else _READ_AT
        read_at = field_row(loaded, at, units)
        rows.append(attrs.evolve(read_at, label="read at", aside=aside, kind="ask"))
    return Section("back in", tuple(rows))


def _row(files: GarageFiles, session: Ref, group: ReturnRow, units: Units, held: Session) -> Row:
    ref, path = place_of(files, session, group)
    value = value_of(files, session, group)
    known = value is not MISSING
    return Row(
        label=group.label,
        value=printable(str(value)).removeprefix(CHANGE) if known else "",
        aside=_beside(group, held) if known else _where(files, ref, group) + rule_of(group, units),
        kind="ask",
        ref=ref or session,
        path=path if ref is not None else group.path,
        known=known,
        key=f"return {group.key}",
        typing="words" if group.letters or group.reads in _WORDS else "",
    )


def _beside(group: ReturnRow, session: Session) -> str:
    hot = session.pressures.get("hot")
    if group.reads != "pressure" or hot is None or hot.at is None:
        return ""
    return worth(minutes_parked(session.parked, hot.at))


def _where(files: GarageFiles, ref: Ref | None, group: ReturnRow) -> str:
    if not group.of_next:
        return ""
    number = files.data(ref).get("number") if ref is not None else None
    if group.reads == "change":
        return "j proposes; "
    return f"to session {number}; " if number is not None else "makes the next session; "


def _later(loaded: Loaded, session: Session, units: Units, no_laps: str) -> Iterator[Section]:
    laps = list(session.laps.values())
    row = Row(
        LAPS,
        value=_laps_words(laps, session),
        aside="" if no_laps else _LAPS_RULE,
        kind="ask",
        ref=loaded.ref,
        path=("laps",),
        known=bool(laps) or session.best_lap is not None,
        shut=no_laps,
        key="return laps",
        typing="words",
    )
    yield Section("later", (row,), REMINDER)
    racing = AFTER_THE_FLAG if session.kind in RACING else ()
    for title, paths in (*racing, *LATER, *LEARNT_BACK_IN):
        rows = []
        for path in paths:
            field = field_at("session", path)
            if field is not None:
                row = field_row(loaded, field, units)
                lead = f"{path[1]} " if path[0] == "look" else ""
                rows.append(attrs.evolve(row, label=f"{lead}{row.label}"))
        yield Section(title, tuple(rows))


def _learnt(files: GarageFiles, session: Session, units: Units) -> Iterator[Row]:
    """Ask what is learnt of tyres and bike: repairs, wheels, coolant, what an ignition-off resets to."""
    for kind, paths in LEARNT_OF:
        held = _named(files, session, kind)
        if held is not None:
            yield from _of_record(held, (*paths, *_resetting(held)), units)


def _learnt_once(files: GarageFiles, session: Session, units: Units) -> Iterator[Row]:
    """Ask what vendor, manual and map say, as long as nobody wrote it down; the way home unless by van."""
    for kind, paths in LEARNT_ONCE:
        held = _named(files, session, kind)
        if held is None or (kind == "day" and value_at(held.record, ("travel",)) == "van"):
            continue
        yield from (row for row in _of_record(held, (*paths, *_uncounted(held)), units) if not row.known)


def _named(files: GarageFiles, session: Session, kind: str) -> Loaded | None:
    name = getattr(session, kind)
    return files.read(Ref(kind, name)) if name is not None else None


def _of_record(held: Loaded, paths: Iterable[Path], units: Units) -> Iterator[Row]:
    for path in paths:
        field = field_at(held.ref.kind, path)
        if field is not None:
            row = field_row(held, field, units)
            lead = f"{label_of(path[-2])} " if len(path) > 1 and path[0] != "drive" else ""
            yield attrs.evolve(row, label=f"{lead}{row.label}")


def _uncounted(held: Loaded) -> Iterator[Path]:
    """List from where the adjusters of a bike are counted."""
    adjusters = held.record.adjusters if isinstance(held.record, Bike) else {}
    yield from (("adjusters", name, "counted_from") for name in adjusters)


def _resetting(held: Loaded) -> Iterator[Path]:
    """List the values that come back after an ignition-off, of the controls that reset."""
    controls = held.record.controls if isinstance(held.record, Bike) else {}
    for name, control in controls.items():
        if control.key_off == "resets":
            yield ("controls", name, "value_after_key_off")


def _laps_words(laps: list[Lap], session: Session) -> str:
    clean = [lap.seconds for lap in laps if not lap.mark]
    if clean:
        return f"{len(laps)} laps, best {Lap(min(clean))}"
    if laps:
        return f"{len(laps)} laps"
    if session.best_lap is not None:
        count = f"{session.ridden_laps} laps, " if session.ridden_laps is not None else ""
        return f"{count}best {session.best_lap}"
    return ""
