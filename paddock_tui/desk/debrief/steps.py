"""Back from the track at the desk: parked is stamped, and each group of the return is kept as a step."""

import datetime as dt
from collections.abc import Mapping

from paddock_tui.calc.cooling_pressure import Freshness, freshness
from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.desk.day.moments import over_midnight
from paddock_tui.desk.debrief.rows import CHANGE, first_open, open_groups, place_of, value_of
from paddock_tui.desk.edits.questions import question
from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.values import setting_value, shown
from paddock_tui.desk.lookup import Glance, glance, on_dates, order
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.entry.return_rows import ReturnRow
from paddock_tui.entry.values import to_the_minute
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.data import blocked, lookup
from paddock_tui.store.garage import GarageFiles

PARKED: Path = ("parked",)
HOT_AT: Path = ("pressures", "hot", "at")
STAMPS = "i again stamps it parked now"
LONG_MIN = 60
"""So long after going out nobody has only just come back: what is typed then is typed from paper."""


def back_in(files: GarageFiles, looked_at: Ref | None, in_hand: Ref | None, now: dt.datetime) -> Ref | None:
    """Return the session that comes back: the one looked at where it is today's, else the one in hand.

    A session that is still to come gives way to the last one ridden today while its return is not done; one
    of an earlier day that is looked at comes back by itself while none of today may have come back.
    """
    night = now - dt.timedelta(days=1)
    near = on_dates(files, night.date(), 2)
    today = [one for one in near if one.date == now.date() or over_midnight(files.data(one.ref), now)]
    looked = next((one for one in today if one.ref == looked_at), None)
    here = looked or next((one for one in today if one.ref == in_hand), None)
    if looked is None and looked_at is not None and day_before(files, looked_at, now) is not None:
        waits = _waits(files, looked_at, now) or here is None or not _may_be_back(files, here, now)
        return looked_at if waits else here.ref if here is not None else None
    if here is None:
        return looked_at if looked_at is not None and looked_at.kind == "session" else in_hand
    if not here.ridden and now.time() < here.start:
        bike = files.data(here.ref).get("bike")
        back = [one for one in today if one.ridden and files.data(one.ref).get("bike") == bike]
        before = max(back, key=order, default=None)
        if before is not None and _just_parked(files, before.ref, now) and first_open(files, before.ref):
            return before.ref
    return here.ref


def _waits(files: GarageFiles, session: Ref, now: dt.datetime) -> bool:
    """Return whether a session of an earlier day is looked at that was not typed in yet."""
    seen = glance(session, files.data(session)) if day_before(files, session, now) is not None else None
    return seen is not None and not seen.ridden


def _may_be_back(files: GarageFiles, here: Glance, now: dt.datetime) -> bool:
    """Return whether a session of today went out, or was due to."""
    return not here.ridden and ("went_out" in files.data(here.ref) or here.start <= now.time())


def _just_parked(files: GarageFiles, session: Ref, now: dt.datetime) -> bool:
    parked = files.data(session).get("parked")
    return isinstance(parked, dt.time) and 0 <= _minutes(parked, now.time()) <= LONG_MIN


def why_not_stamped(files: GarageFiles, session: Ref, now: dt.datetime) -> str:
    """Say why parked is not stamped just now; empty where it may be, or stands already."""
    data = files.data(session)
    date, start = data.get("date"), data.get("start")
    if "parked" in data:
        return ""
    if over_midnight(data, now):
        return ""
    if date != now.date():
        return "not of today: type when it was parked, then when it was read, 1341 is 13:41"
    seen = glance(session, data)
    if seen is not None and seen.ridden:
        return "it counts as ridden already: parked is not stamped, type it on its row"
    went = data.get("went_out")
    start = went if isinstance(went, dt.time) else start
    if isinstance(start, dt.time) and now.time() < start:
        return f"it goes out at {start:%H:%M}: {STAMPS}"
    if isinstance(start, dt.time) and _minutes(start, now.time()) > LONG_MIN:
        return f"it went out at {start:%H:%M}: type parked and read at, or {STAMPS}"
    return ""


def _minutes(first: dt.time, then: dt.time) -> int:
    return (then.hour - first.hour) * 60 + then.minute - first.minute


def stamping(files: GarageFiles, session: Ref, now: dt.datetime) -> Step:
    """Make the step that says the bike was parked now."""
    return setting_value(files, session, PARKED, to_the_minute(now))


def out_since(files: GarageFiles, session: Ref, parked: dt.time) -> str:
    """Say since when a bike was out that comes back; empty where that was not stamped."""
    went = files.data(session).get("went_out")
    if not isinstance(went, dt.time) or parked < went:
        return ""
    return f"out since {went:%H:%M}, {_minutes(went, parked)} min"


def parked_earlier(files: GarageFiles, session: Ref, by: int, now: dt.datetime) -> Step | str:
    """Make the step that moves parked by minutes, earlier above zero; why not where it cannot be."""
    parked = files.data(session).get("parked")
    if not isinstance(parked, dt.time):
        return "parked is not known: i stamps it"
    if any(value_of(files, session, group) is not MISSING for group in open_groups(files, session)):
        return "something is typed already: change parked on its row"
    minutes = parked.hour * 60 + parked.minute - by
    latest = 24 * 60 - 1 if day_before(files, session, now) is not None else now.hour * 60 + now.minute
    if not 0 <= minutes <= latest:
        return "that would be before today, or later than now: type the time on its row"
    return setting_value(files, session, PARKED, dt.time(minutes // 60, minutes % 60))


def answering(
    files: GarageFiles, session: Ref, group: ReturnRow, value: Value, now: dt.datetime
) -> Step | InputError:
    """Make the one step that keeps a group; the first hot pressure notes when it was read.

    What belongs to the next session makes that session where there is none yet.
    """
    ref, path = place_of(files, session, group)
    if group.reads == "change":
        value = f"{CHANGE}{value}"
    if ref is None:
        past = day_before(files, session, now) is not None
        made, step = next_session(files, session, now, _table(path, value), of_its_day=past)
        if isinstance(step, InputError):
            return step
        return Step(f"{_said(group, value)}, with new session {made.id}", step.changes)
    if blocked(files.data(ref), path) is not MISSING:
        return InputError("a value stands where a table would have to be", "a table", "edit the file")
    step = setting_value(files, ref, path, value)
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    stamps = day_before(files, session, now) is None and lookup(files.data(ref), HOT_AT) is MISSING
    if edits and group.reads == "pressure" and stamps:
        edits.append(Edit(HOT_AT, MISSING, to_the_minute(now)))
    against = refusals(files, ref, edits)
    if against:
        return against[0]
    label = _said(group, value) if edits else "it stands so already"
    return Step(label, (Change(ref, tuple(edits)),) if edits else ())


def doubts(
    files: GarageFiles, session: Ref, group: ReturnRow, value: Value, last: Mapping[Path, Value], typed: str
) -> str:
    """Say what makes a figure doubtful, so that it is taken only where enter says so; empty: nothing does."""
    if len(typed) == 3 and len(set(typed)) == 1:
        return f"{value}: is a key held down? enter saves it, backspace corrects it"
    if group.reads != "pressure":
        return ""
    data = files.data(session)
    held = lookup(data, group.path)
    old = last.get(group.path, MISSING) if held is MISSING else held
    asked = question(session, data, group.path, value, old)
    return f"{asked} enter saves it, backspace corrects it" if asked else ""


def minutes_parked(parked: dt.time | None, at: dt.time) -> float | None:
    """Return minutes from parking to a reading; None where parked is not known or was later."""
    if parked is None:
        return None
    minutes = (at.hour - parked.hour) * 60 + at.minute - parked.minute + (at.second - parked.second) / 60
    # Read after midnight, of a bike that was parked before it.
    minutes += 24 * 60 if minutes < -12 * 60 else 0
    return minutes if minutes >= 0 else None


def worth(minutes: float | None) -> str:
    """Say what a pressure read so many minutes after parking is worth."""
    if minutes is None:
        return "parked is not known"
    fresh = freshness(minutes)
    words = {
        Freshness.HOT: "hot",
        Freshness.WARM: "warm, noted as such",
        Freshness.LATE: "late: saved, in no trend",
    }
    return f"{minutes:.0f} min after parking: {words[fresh]}"


def _table(path: Path, value: Value) -> Mapping[str, Value]:
    for key in reversed(path):
        value = {key: value}
    return value  # type: ignore[return-value]


def _said(group: ReturnRow, value: Value) -> str:
    """Name a row and what was written there; a change in words says by itself in the file what it is."""
    return f"{group.label} {shown(value).removeprefix(CHANGE)}"
