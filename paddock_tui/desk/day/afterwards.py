"""Times that no clock stamped, or one in doubt: those of an earlier day are asked for; the record says so."""

import datetime as dt
from collections.abc import Iterable

import attrs

from paddock_tui.desk.day.moments import over_midnight
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import CLOCK_IN_DOUBT, TYPED_AFTERWARDS
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

TIMES: Path = ("times",)
STAMPED: tuple[Path, ...] = (
    ("went_out",),
    ("parked",),
    ("pressures", "hot"),
    ("pressures", "cold"),
    ("dash",),
    ("events",),
)
"""What the clock stamps, or is read beside it, while the day lasts."""


def day_before(files: GarageFiles, ref: Ref, now: dt.datetime) -> dt.date | None:
    """Return the date of a session that is of an earlier day than today; None where it is not.

    What is out over midnight, or just came back, is of now.
    """
    data = files.data(ref) if ref.kind == "session" else {}
    date = data.get("date")
    if not isinstance(date, dt.date) or isinstance(date, dt.datetime) or date >= now.date():
        return None
    if over_midnight(data, now):
        return None
    return date


def said_of_times(files: GarageFiles, step: Step, now: dt.datetime, *, in_doubt: bool = False) -> Step:
    """Add to a step the line that says where its times come from, once for each session.

    Those of an earlier day are typed afterwards; `in_doubt` says that the clock jumped.
    """
    changes = tuple(
        _said(files, change, now, in_doubt) if isinstance(change, Change) else change
        for change in step.changes
    )
    return attrs.evolve(step, changes=changes)


def _said(files: GarageFiles, change: Change, now: dt.datetime, in_doubt: bool) -> Change:
    told = lookup(files.data(change.ref), TIMES) is not MISSING
    if told or change.ref.kind != "session" or not _types_times(change.edits):
        return change
    afterwards = day_before(files, change.ref, now) is not None
    if not afterwards and not in_doubt:
        return change
    word = TYPED_AFTERWARDS if afterwards else CLOCK_IN_DOUBT
    return attrs.evolve(change, edits=(*change.edits, Edit(TIMES, MISSING, word)))


def _types_times(edits: Iterable[Edit]) -> bool:
    return any(
        edit.old is MISSING and any(edit.path[: len(place)] == place for place in STAMPED) for edit in edits
    )
