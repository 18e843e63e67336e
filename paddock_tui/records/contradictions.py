"""What cannot be together in one record: each value can be read, but they contradict each other."""

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.impossible import clock_slip
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path
from paddock_tui.records.presets import PresetValues
from paddock_tui.records.session import Session
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.shapes_of_bike import is_off, words_of
from paddock_tui.records.suspension import Adjuster, Damping


@attrs.frozen
class Contradiction:
    """Where it stands, what contradicts what, how it is mended; `harmless` where nothing depends on it."""

    path: Path
    message: str
    mend: str
    harmless: bool = False


_KNOWN: dict[int, tuple[Record, tuple[Contradiction, ...]]] = {}
"""What was found in bikes and days: all the sessions of one are reviewed with the very same record."""

_MOST = 32


def contradictions(record: Record) -> tuple[Contradiction, ...]:
    """List what contradicts itself in a record; empty where nothing does."""
    if isinstance(record, Session):
        return tuple(_of_session(record))
    if not isinstance(record, Bike | RidingDay):
        return ()
    known = _KNOWN.get(id(record))
    if known is None:
        found = tuple(_of_bike(record) if isinstance(record, Bike) else _of_day(record))
        if len(_KNOWN) >= _MOST:
            _KNOWN.clear()
        # The record is held with it: another can't be taken for it.
        known = _KNOWN[id(record)] = record, found
    return known[1]


def _of_bike(bike: Bike) -> Iterator[Contradiction]:
    for name, control in bike.controls.items():
        yield from _of_control(name, control)
    for name, adjuster in bike.adjusters.items():
        yield from _of_adjuster(name, adjuster)
    for name, mode in bike.modes.items():
        yield from _of_mode(name, mode, bike)
    for name, damping in bike.damping.items():
        yield from _of_damping(name, damping, bike)


def _of_control(name: str, control: Control) -> Iterator[Contradiction]:
    label = words_of(name)
    at: Path = ("controls", name)
    if control.levels is not None:
        low, high = (int(level) for level in control.levels)
        if low > high:
            said = f"{label}: levels {low} to {high} are no range"
            yield Contradiction((*at, "levels"), said, "lowest first")
            return
        offered: Sequence[int | str] = range(low, high + 1)
        ends = _ends(control, offered)
        if not ends:
            yield Contradiction((*at, "levels"), f"{label}: no level but off", "the levels it can be set to")
    elif control.choices is not None:
        offered = control.choices
        ends = _ends(control, offered)
        if not ends:
            yield Contradiction(
                (*at, "choices"), f"{label}: no choice but off", "list the words it can be set to"
            )
    else:
        return
    yield from _of_off(label, at, control, offered)
    named = (
        ("most_help", control.most_help),
        ("frees_most", control.frees_most),
        ("gentlest", control.gentlest),
    )
    for key, end in named:
        if end is not None and ends and end not in ends:
            said = f"{label}: {end} is not an end of its range"
            yield Contradiction((*at, key), said, f"{ends[0]} or {ends[-1]}, or left out while not known")


def _ends(control: Control, offered: Sequence[int | str]) -> tuple[int | str, ...]:
    """Return the two ends of what is on, empty where nothing is: a level that means off is not counted.

    The levels may be very many, so that they are never listed.
    """
    first = next((value for value in offered if not is_off(control, value)), None)
    last = next((value for value in reversed(offered) if not is_off(control, value)), None)
    return () if first is None or last is None else (first, last)


def _of_off(label: str, at: Path, control: Control, offered: Sequence[int | str]) -> Iterator[Contradiction]:
    off = control.off
    if off is not None and not isinstance(off, bool) and off != OFF and off not in offered:
        said = f"{label}: {off} means off and is not one of its levels"
        yield Contradiction((*at, "off"), said, "a level or word that it has, or yes or no")


def _of_adjuster(name: str, adjuster: Adjuster) -> Iterator[Contradiction]:
    if adjuster.range is not None and adjuster.range[0] >= adjuster.range[1]:
        low, high = (show_number(bound) for bound in adjuster.range)
        said = f"{words_of(name)}: {low} to {high} is no range"
        yield Contradiction(("adjusters", name, "range"), said, "lowest first, and more than one position")


def _of_mode(name: str, mode: Mode, bike: Bike) -> Iterator[Contradiction]:
    named = {"fixes": mode.fixes, "limits": mode.limits}
    for key, table in named.items():
        for control in table:
            if control not in bike.controls:
                said = f"riding mode {name} {key} {words_of(control)}, which the bike does not have"
                yield Contradiction(
                    ("modes", name, key, control), said, _one_of(bike.controls), harmless=True
                )
    for control in mode.off_allowed or ():
        if control not in bike.controls:
            said = f"riding mode {name} lets {words_of(control)} be off, which the bike does not have"
            yield Contradiction(("modes", name, "off_allowed"), said, _one_of(bike.controls), harmless=True)


def _of_damping(name: str, damping: Damping, bike: Bike) -> Iterator[Contradiction]:
    for adjuster in damping.closes:
        if adjuster not in bike.adjusters:
            said = f"damping {name} closes {words_of(adjuster)}, which the bike does not have"
            yield Contradiction(
                ("damping", name, "closes", adjuster), said, _one_of(bike.adjusters), harmless=True
            )
    for key, offset in damping.offsets.items():
        if offset.range is not None and offset.range[0] >= offset.range[1]:
            said = f"{words_of(key)}: an offset without a range"
            yield Contradiction(("damping", name, "offsets", key, "range"), said, "lowest first")
        if offset.range is not None and offset.firmest is not None and offset.firmest not in offset.range:
            said = f"{words_of(key)}: {show_number(offset.firmest)} is not an end of its range"
            mend = " or ".join(map(show_number, offset.range))
            yield Contradiction(("damping", name, "offsets", key, "firmest"), said, mend)
    for preset, written in damping.preset_values.items():
        yield from _of_preset(name, damping, preset, written, bike)


def _of_preset(
    name: str, damping: Damping, preset: str, written: PresetValues, bike: Bike
) -> Iterator[Contradiction]:
    at: Path = ("damping", name, "preset_values", preset)
    if preset not in (damping.presets or ()):
        said = f"damping {name}: {preset} is not in its list of presets"
        yield Contradiction(at, said, f"write {preset} into the list, or take its values away", harmless=True)
    tables: tuple[tuple[str, Mapping[str, object], Mapping[str, object]], ...] = (
        ("adjusters", written.adjusters, bike.adjusters),
        ("offsets", written.offsets, damping.offsets),
        ("leaves", written.leaves, damping.offsets),
    )
    for table, named, there in tables:
        for key in named:
            if key not in there:
                said = f"preset {preset} names {words_of(key)}, which damping {name} does not have"
                yield Contradiction((*at, table, key), said, _one_of(there), harmless=True)


def _of_day(day: RidingDay) -> Iterator[Contradiction]:
    for group, slots in day.timetable.items():
        yield from _of_slots(slots, ("timetable", group), f"{group}: ")
    yield from _of_slots(day.stops, ("stops",), "stops: ")


def _of_slots(slots: Mapping[str, TimetableSlot], at: Path, lead: str) -> Iterator[Contradiction]:
    spans: list[tuple[dt.time, dt.time, str]] = []
    for number, slot in slots.items():
        if slot.from_ is None or slot.to is None:
            continue
        if slot.from_ >= slot.to:
            said = f"{lead}number {number} ends before it starts"
            yield Contradiction((*at, number, "to"), said, f"a time after {slot.from_:%H:%M}")
        else:
            spans.append((slot.from_, slot.to, number))
    spans.sort()
    last: tuple[dt.time, str] | None = None
    for start, end, other in spans:
        if last is not None and start < last[0]:
            said = f"{lead}numbers {last[1]} and {other} overlap"
            yield Contradiction((*at, other, "from"), said, f"a start at {last[0]:%H:%M} or later")
        if last is None or end > last[0]:
            last = end, other


_IN_ORDER: tuple[tuple[str, str, str], ...] = (
    ("warmers_on", "warmers_off", "the warmers came off before they went on"),
    ("went_out", "parked", "parked before it went out"),
)


def _of_session(session: Session) -> Iterator[Contradiction]:
    for first, second, said in _IN_ORDER:
        before: dt.time | None = getattr(session, first)
        after: dt.time | None = getattr(session, second)
        if before is not None and after is not None and after < before:
            slip = clock_slip(before, after)
            told = f"{said} ({slip})" if slip else said
            yield Contradiction((second,), told, f"a time after {before:%H:%M}")


def _one_of(names: Mapping[str, object]) -> str:
    return f"one of {', '.join(names)}" if names else "list it first"
