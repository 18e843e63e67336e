"""Last time here: the set-up of then beside that of now, what differs first, to be taken over."""

from collections.abc import Iterator

import attrs

from paddock_tui.desk.sessions.last_time import LastTime
from paddock_tui.facts.tyre_targets import COLD_TARGETS
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.differences import SetUpDifference, session_differences, with_unit
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import SET_UP, Field, fields
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.rules.core import SetValue
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

_ALSO: tuple[Path, ...] = (
    ("surface",),
    ("air",),
    ("track",),
    ("tyres",),
    ("pressures", "cold", "front"),
    ("pressures", "cold", "rear"),
    ("pressures", "hot", "front"),
    ("pressures", "hot", "rear"),
    ("best_lap",),
    ("feel", "braking"),
    ("feel", "turning_in"),
    ("feel", "mid_corner"),
    ("feel", "driving_out"),
    ("feel", "straight"),
)
"""What is shown beside the set-up: it says how it went, and is not taken over."""


def last_time_page(
    loaded: Loaded, found: LastTime | None, bike: Bike | None, heading: str, units: Units
) -> Page:
    """Make the page of last time here; rows of the set-up that differ can be taken over."""
    if found is None or not isinstance(loaded.record, Session):
        said = "this bike was not at this venue on an earlier day, as far as the garage knows"
        return Page(f"last time here · {heading}", (_said("nothing to compare", said),), judged=False)
    then = found.past.session
    rows = list(_rows(loaded, then, bike, units, bool(found.unlike)))
    of_setup = [row for row in rows if row.path[0] == SET_UP]
    differs = tuple(row for row in of_setup if row.aside)
    same = tuple(row for row in of_setup if not row.aside)
    beside = tuple(row for row in rows if row.path[0] != SET_UP)
    when = f"session {then.number} of {short_date(then.date)}" if then.date is not None else found.past.id
    sections = [
        _said(f"last time here: {when}", printable(_like(found))),
        Section(
            "differs", differs or _said("", "nothing of the set-up differs").rows, "v takes a row, m all"
        ),
        Section("how it was", beside),
        Section("the same", same),
    ]
    return Page(f"last time here · {heading}", tuple(one for one in sections if one.rows), judged=False)


def _like(found: LastTime) -> str:
    """Say how the conditions compare: what is not known makes nothing alike."""
    if found.unlike:
        return f"the last one here: {found.unlike}"
    if "surface" in found.untold:
        return f"conditions not compared, not known: {', '.join(found.untold)}"
    return (
        f"in similar conditions; not known: {', '.join(found.untold)}"
        if found.untold
        else "in similar conditions"
    )


def puts_of(page: Page) -> tuple[SetValue, ...]:
    """List everything that the page offers to take over."""
    return tuple(put for row in page.rows() for put in row.offer)


def _said(title: str, text: str) -> Section:
    return Section(title, (Row("", text, kind="text", key=f"said {title}"),))


def _rows(loaded: Loaded, then: Session, bike: Bike | None, units: Units, unlike: bool) -> Iterator[Row]:
    """Return a row for each value that was known then: that of now, that of then beside it.

    A starting pressure of other conditions is shown, and not taken over: it was for another hot target.
    """
    session = loaded.record
    if not isinstance(session, Session):
        return
    both = {
        field.path: field for field in (*fields("session", then, bike), *fields("session", session, bike))
    }
    changed = {one.path: one for one in session_differences(then, session, bike)}
    wanted = [path for path in both if path[0] == SET_UP] + [path for path in _ALSO if path in both]
    for path in wanted:
        field, before = both[path], value_at(then, path)
        if before is None:
            continue
        row = _row(loaded, field, before, changed.get(path), units)
        if unlike and path[1:] in COLD_TARGETS and row.offer:
            row = attrs.evolve(row, offer=(), aside=f"{row.aside}, in other conditions")
        yield row


def _row(loaded: Loaded, field: Field, before: object, one: SetUpDifference | None, units: Units) -> Row:
    row = field_row(loaded, field, units)
    label = f"{' '.join(field.section[-1:])} {field.label}" if field.path[0] != SET_UP else field.label
    takes = one is not None and field.path[0] == SET_UP
    then = "" if field.path[0] == SET_UP else f"was {field.shape.show(before)}"
    if one is not None and takes:
        helps = f"; {one.help}" if one.help else ""
        then = f"was {with_unit(one.old_text, one.unit)}{helps}"
    return attrs.evolve(
        row,
        label=label.strip(),
        aside=printable(then),
        offer=(SetValue(field.path, field.shape.dump(before)),) if takes else (),
    )
