"""The timetable of a group in one line: "9:20 9:40 every 60 x6", or every start and end."""

import datetime as dt
import itertools
import re

import attrs

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.records.common import CLOCK
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of, is_id
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

EXAMPLE = "9:20 9:40 every 60 x6"
_EVERY = re.compile(r"(.*?)\s+(\S+)\s+(\S+)\s+(?:every\s+)?(\d{1,3})\s*(?:min)?\s*x\s*(\d{1,2})")
_SPAN = re.compile(r"(\d)\s*[-\u2013]\s*(\d)")
EVERYBODY = "everybody"
"""The group of a timetable where neither the line nor the day names one."""
_HALF_A_DAY = 12
_MOST = 40
_MOST_LINES = 30

TimeSpan = tuple[dt.time, dt.time]


@attrs.frozen
class Times:
    """The spans of a group, and those that fell into a stop and were left out."""

    group: str
    spans: tuple[TimeSpan, ...]
    left_out: tuple[TimeSpan, ...] = ()

    def words(self) -> str:
        """Say them for a preview."""
        said = ", ".join(f"{start:%H:%M}-{end:%H:%M}" for start, end in self.spans)
        stops = ", ".join(f"{start:%H:%M}" for start, _ in self.left_out)
        return f"{self.group}: {said}" + (f"; left out in a stop: {stops}" if stops else "")


def read_times(text: str, day: RidingDay, own_group: str | None) -> Times | InputError:
    """Read a group's timetable; without a name it is the rider's group of the day.

    With "every" so many minutes and a count, spans that touch a stop of the day are left out and not counted.
    """
    found = _EVERY.fullmatch(" " + _SPAN.sub(r"\1 \2", text.strip().casefold()))
    words = text.casefold().replace("-", " ").split()
    if found is not None:
        words = [*found[1].split(), found[2], found[3]]
    place = next((at for at, word in enumerate(words) if word[0].isdigit()), len(words))
    group = id_of(" ".join(words[:place])) or id_of(own_group or _only_group(day))
    if not is_id(group):
        return InputError("no group is named", f"a group, then its times: novice {EXAMPLE}", "write it first")
    if "every" in words[place:]:
        fixed = " ".join(text.casefold().split()).partition(" x")[0]
        return InputError(f'"{text.strip()}"', "every so many minutes, and how many", f"e.g. {fixed} x6")
    clocks = [CLOCK.read(word) for word in words[place:]]
    wrong = next((one for one in clocks if isinstance(one, InputError)), None)
    times = [one for one in clocks if isinstance(one, dt.time)]
    if wrong is not None:
        return wrong
    if not times or len(times) % 2:
        return InputError(f"{len(times)} times", "a start and an end each", _nearest(times))
    backwards = next((two for one, two in itertools.pairwise(times) if two < one), None)
    # Half a day back is after midnight, which a timetable passes once.
    back = [(one, two) for one, two in itertools.pairwise(times) if two < one]
    if len(back) == 1 and back[0][0].hour - back[0][1].hour >= _HALF_A_DAY:
        backwards = None
    if backwards is not None:
        return InputError(f"{backwards:%H:%M} goes backwards", "times one after the other", "correct it")
    spans = tuple(zip(times[::2], times[1::2], strict=True))
    if found is None:
        return Times(group, spans)
    return _repeated(group, spans[0], int(found[4]), int(found[5]), day)


def _only_group(day: RidingDay) -> str:
    """Return the group that a line without one is about: the day's, else the only one in its timetable."""
    return day.group or (next(iter(day.timetable)) if len(day.timetable) == 1 else EVERYBODY)


def _nearest(times: list[dt.time]) -> str:
    """Write the nearest line that would be taken: the last start with an end twenty minutes later."""
    if not times:
        return f"e.g. {EXAMPLE}"
    last = times[-1].hour * 60 + times[-1].minute + 20
    said = [f"{one:%H:%M}" for one in times] + [f"{_time(last % (24 * 60)):%H:%M}"]
    return f"e.g. {' '.join(said)}"


def timetabling(files: GarageFiles, day: Ref, times: Times) -> Step | InputError:
    """Make the one step that gives a group these times: lines that are there change, others come and go."""
    at = ("timetable", times.group)
    edits: list[Edit] = []
    held = lookup(files.data(day), at)
    there = list(held) if isinstance(held, dict) else []
    for number, (start, end) in enumerate(times.spans, 1):
        place = (*at, str(number))
        if str(number) not in there:
            edits.append(Edit(place, MISSING, {"from": start, "to": end}))
            continue
        for key, new in (("from", start), ("to", end)):
            old = lookup(files.data(day), (*place, key))
            if old != new:
                edits.append(Edit((*place, key), old, new))
    gone = [key for key in there if not key.isdecimal() or int(key) > len(times.spans)]
    edits += [Edit((*at, key), lookup(files.data(day), (*at, key)), MISSING) for key in gone]
    against = refusals(files, day, edits)
    if against:
        return against[0]
    return Step(
        times.words() if edits else "it stands so already", (Change(day, tuple(edits)),) if edits else ()
    )


def _repeated(group: str, first: TimeSpan, every: int, count: int, day: RidingDay) -> Times | InputError:
    start, end = (time.hour * 60 + time.minute for time in first)
    if not 0 < end - start <= every or not 0 < count <= _MOST_LINES:
        near = f"{first[0]:%H:%M} {first[1]:%H:%M} every {max(every, end - start + 5)} x{max(count, 1)}"
        near = EXAMPLE if end <= start else near
        return InputError(f"every {every} x{count}", "sessions that do not overlap", f"e.g. {near}")
    spans: list[TimeSpan] = []
    left_out: list[TimeSpan] = []
    for number in range(_MOST):
        later = end + number * every
        if len(spans) == count or later >= 24 * 60:
            break
        span = (_time(start + number * every), _time(later))
        (left_out if _in_a_stop(span, day) else spans).append(span)
    if len(spans) < count:
        near = f"{first[0]:%H:%M} {first[1]:%H:%M} every {every} x{max(len(spans), 1)}"
        return InputError(f"{count} do not fit into the day", "fewer, or less apart", f"e.g. {near}")
    return Times(group, tuple(spans), tuple(left_out))


def _in_a_stop(span: TimeSpan, day: RidingDay) -> bool:
    return any(_touches(span, stop) for stop in day.stops.values())


def _touches(span: TimeSpan, stop: TimetableSlot) -> bool:
    if stop.from_ is None or stop.to is None:
        return False
    return span[0] < stop.to and stop.from_ < span[1]


def _time(minute: int) -> dt.time:
    return dt.time(minute // 60, minute % 60)
