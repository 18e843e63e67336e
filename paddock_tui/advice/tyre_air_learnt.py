"""What the garage's own readings teach of its tyres: how hot the gas in each of them gets."""

import bisect
import datetime as dt
import functools
import itertools
from collections.abc import Callable, Iterable, Mapping

import attrs

from paddock_tui.advice.about import End, History, PastSession, first_set, tyre_of
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.outside_pressure import AirMoves, AirObserved, outside_at_both
from paddock_tui.calc.tyre_air_learning import Learnt, Observation, learn_gas_temperature
from paddock_tui.calc.tyre_pressure import Ambient
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.outside_pressure import observed_then
from paddock_tui.facts.past import sets_with
from paddock_tui.facts.tyre_pressures import days_with_hot, minutes_after_parking
from paddock_tui.quantities import Quantity
from paddock_tui.records.session_parts import PressureReading

ENOUGH = 40
"""Readings of other tyres that are enough: earlier ones move the middle of these hardly. Common practice."""


@attrs.frozen
class AirObservation:
    """One observation of one tyre: which tyre (by its first set), where, on what, and in which session."""

    observation: Observation
    tyre: str
    kind: str | None
    venue: str | None
    column: str | None
    session: str


@attrs.frozen
class Air:
    """The air in a tyre: pressure and temperature when it was last set, the air outside then, the session."""

    kpa: float
    celsius: float
    outside: AirObserved
    session: str


@attrs.frozen
class GasLearnt:
    """What was learnt, and how near the readings are to what is asked about, in words."""

    learnt: Learnt
    where: str

    def words(self) -> str:
        """Say in one phrase what it rests on, and what was kept apart."""
        count = self.learnt.count
        apart = [
            f"{number} {what}"
            for number, what in (
                (self.learnt.late, "read too late"),
                (self.learnt.not_warm, "never warm"),
                (self.learnt.unlikely, "not of the same air"),
            )
            if number
        ]
        kept = f"; kept apart: {', '.join(apart)}" if apart else ""
        return f"learnt from {count} hot reading{'s' if count != 1 else ''} {self.where}{kept}"


def gas_learnt(
    history: History,
    tyres: str | None,
    end: End,
    venue: str | None,
    surface: str | None,
    moves: AirMoves,
) -> GasLearnt | None:
    """Return the gas temperature that this tyre reached, from the nearest readings that there are.

    First this tyre at this venue, then at others, then other tyres of its kind at this venue, of these the
    last days that tell enough; always on the same kind of surface. None where nothing was read hot.
    """
    column = COLUMN.get(surface or "")
    if tyres is None or column is None:
        return None
    return _gas(history, tyres, end, venue, column, moves)


@functools.lru_cache(maxsize=128)
def _gas(
    history: History, tyres: str, end: End, venue: str | None, column: str, moves: AirMoves
) -> GasLearnt | None:
    kind = tyre_of(history.tyre_sets.get(tyres), end).kind

    def of_this() -> Iterable[AirObservation]:
        return (one for one in _of_tyre(history, tyres, end, moves) if one.column == column)

    def of_others() -> Iterable[AirObservation]:
        return () if kind is None or venue is None else _of_others(history, end, (kind, venue, column), moves)

    nearest: tuple[tuple[str, Callable[[], Iterable[AirObservation]]], ...] = (
        (
            f"of this tyre here, {column}",
            lambda: (one for one in of_this() if one.venue == venue is not None),
        ),
        (f"of this tyre at other venues, {column}", of_this),
        (f"of other {kind} tyres here, {column}", of_others),
    )
    for where, seen in nearest:
        found = learn_gas_temperature(one.observation for one in seen())
        if found is not None:
            return GasLearnt(found, where)
    return None


def _of_tyre(history: History, tyres: str, end: End, moves: AirMoves) -> list[AirObservation]:
    """List what is seen of one tyre: no other session than those on it says anything of its air."""
    tyre, sets = first_set(history, tyres, end), {tyres, *sets_with(history, tyres, end)}
    on_it = tuple(one for one in history.past if one.tyres in sets)
    return [one for one in observations(history, end, moves, on_it) if one.tyre == tyre]


def _of_others(history: History, end: End, of: tuple[str, str, str], moves: AirMoves) -> list[AirObservation]:
    """List what is seen of tyres of a kind at a venue on a surface, on the last days that tell enough."""
    kind, venue, column = of
    found: list[AirObservation] = []
    for date in reversed(days_with_hot(history, venue, column)):
        of_day = _of_day(history, date)
        sets = {one.tyres for one in of_day if one.venue == venue and one.tyres is not None}
        if all(tyre_of(history.tyre_sets.get(name), end).kind != kind for name in sets):
            continue
        seen = observations(history, end, moves, of_day)
        here = [one for one in seen if (one.kind, one.venue, one.column) == of]
        found = [*here, *found]
        learnt = learn_gas_temperature(one.observation for one in found) if here else None
        if learnt is not None and learnt.count >= ENOUGH:
            break
    return found


def _of_day(history: History, date: dt.date) -> tuple[PastSession, ...]:
    """List the sessions of a day; they stand in the order of their days."""
    past = history.past
    first = bisect.bisect_left(past, date, key=_day_of)
    return past[first : bisect.bisect_right(past, date, first, key=_day_of)]


def _day_of(one: PastSession) -> dt.date:
    return one.date or dt.date.max


@functools.lru_cache(maxsize=128)
def elsewhere(history: History, tyres: str, end: End, moves: AirMoves) -> tuple[str, ...]:
    """Say what this tyre reached on each kind of surface, for whoever has to guess on another."""
    of_it = _of_tyre(history, tyres, end, moves)
    lines = []
    for column in ("dry", "damp", "wet"):
        seen = [one for one in of_it if one.column == column]
        found = learn_gas_temperature(one.observation for one in seen)
        if found is not None:
            count = f"{found.count} reading{'s' if found.count != 1 else ''}"
            lines.append(f"on a {column} track the air in this tyre reached {found.median_c:.0f} C ({count})")
    return tuple(lines)


def observations(
    history: History, end: End, moves: AirMoves, among: tuple[PastSession, ...] | None = None
) -> tuple[AirObservation, ...]:
    """List what each session, or each `among` some, says of the tyre at one end.

    The air is followed through a day: from the cold reading, or what was then set, to the hot one, and
    on from what that was set to. Overnight nothing is carried over. A reading whose time after parking
    is not known may have been late, and is left out.
    """
    return _followed(history, end, moves, history.past if among is None else among).seen


def air_left(
    history: History, tyres: str | None, end: End, day: dt.date | None, moves: AirMoves
) -> Air | None:
    """Return the air that the last session of a day left in a tyre; None where that is not known."""
    if tyres is None or day is None or not history.past or history.past[-1].date != day:
        return None
    of_day = tuple(itertools.takewhile(lambda one: one.date == day, reversed(history.past)))
    return _followed(history, end, moves, of_day[::-1]).air.get(first_set(history, tyres, end))


@attrs.frozen
class _Followed:
    seen: tuple[AirObservation, ...]
    air: Mapping[str, Air]


def _followed(history: History, end: End, moves: AirMoves, among: tuple[PastSession, ...]) -> _Followed:
    found: list[AirObservation] = []
    air: dict[str, Air] = {}
    day = None
    for one in among:
        session = one.session
        if session.date != day:
            air, day = {}, session.date
        if session.tyres is None:
            continue
        tyre = first_set(history, session.tyres, end)
        started = _started(one, end, air.get(tyre), moves)
        hot = session.pressures.get("hot", PressureReading())
        seen = _observed(one, hot, end, started, moves) if started is not None else None
        minutes = minutes_after_parking(session, hot)
        if seen is not None and minutes is not None:
            kind = tyre_of(history.tyre_sets.get(session.tyres), end).kind
            column = COLUMN.get(session.surface or "")
            observed = attrs.evolve(seen, minutes_after_parked=minutes)
            found.append(AirObservation(observed, tyre, kind, one.venue, column, one.id))
        left = _after(seen, one, started) if seen is not None and started is not None else started
        air.pop(tyre, None)
        if left is not None:
            air[tyre] = left
    return _Followed(tuple(found), air)


def _started(past: PastSession, end: End, before: Air | None, moves: AirMoves) -> Air | None:
    """Return the air that the tyre went out with: as read cold, else what was left in it, then warmed."""
    session = past.session
    cold = session.pressures.get("cold")
    air = before
    if cold is not None:
        kpa = _set_to(cold, end) or _read(cold, end)
        celsius = _celsius(cold.temperature) if cold.temperature is not None else _celsius(session.air)
        if kpa is not None:
            air = None if celsius is None else Air(kpa, celsius, observed_then(past), past.id)
    for name in ("warmers", "leaving"):
        reading = session.pressures.get(name)
        if reading is None or air is None or _set_to(reading, end) is None:
            continue
        seen = _observed(past, reading, end, air, moves)
        air = _after(seen, past, air) if seen is not None else None
    return air


def _observed(
    past: PastSession, reading: PressureReading, end: End, air: Air, moves: AirMoves
) -> Observation | None:
    kpa = _read(reading, end)
    try:
        outside = outside_at_both(air.outside, observed_then(past), moves)
    except OutOfRange:
        return None
    if kpa is None or outside is None:
        return None
    return Observation(
        air.kpa,
        air.celsius,
        kpa,
        0.0,
        _set_to(reading, end),
        Ambient(outside[0].kpa, outside[1].kpa),
        _celsius(past.session.air),
    )


def _after(seen: Observation, past: PastSession, before: Air) -> Air | None:
    try:
        kpa, celsius = seen.air_after()
    except OutOfRange:
        return None
    if seen.set_to_kpa_gauge is None:
        return Air(kpa, celsius, before.outside, past.id)
    return Air(kpa, celsius, observed_then(past), past.id)


def _read(reading: PressureReading, end: End) -> float | None:
    value = reading.front if end == "front" else reading.rear
    return value.to("kPa") if value is not None else None


def _set_to(reading: PressureReading, end: End) -> float | None:
    value = reading.set_to_front if end == "front" else reading.set_to_rear
    return value.to("kPa") if value is not None else None


def _celsius(value: Quantity | str | None) -> float | None:
    return value.to("C") if isinstance(value, Quantity) else None
