"""The air in a tyre since it was last set: whether it is the same, what was lost, what the weather does."""

import datetime as dt
import math
from collections.abc import Mapping

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.outside_pressure import (
    AirMoves,
    AirObserved,
    apart_error_kpa,
    outside_at_both,
    outside_pressure,
)
from paddock_tui.calc.tyre_pressure import same_air_kpa_gauge
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outside_pressure import observed_then
from paddock_tui.facts.past import ENDS, End, History, PastSession
from paddock_tui.facts.tyre_pressures import PressureRead, read_at
from paddock_tui.facts.tyre_state import cold_left, was_set_since_cold
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading

COMPARABLE_DAYS = 7
"""Days within which two cold readings tell of a leak and not of the slow loss of every tyre."""


@fact("whether the air in the {subject} is that of the cold reading", per="end")
def same_air(end: End, session: Session) -> bool | Absent:
    """Return True where the hot reading is of the air read cold; absent once air was let out or put in
    between.
    """
    return ABSENT if was_set_since_cold(end, session, but="hot") else True


@attrs.frozen
class Lost:
    """Pressure lost since the last check, temperature allowed for, and whether a second reading agrees.

    `off_kpa` is how far it may be off by what is not known of the pressure outside.
    """

    end: End
    kpa: float
    since: str
    confirmed: bool
    off_kpa: float = 0.0

    def __str__(self) -> str:
        return f"{self.end} {self.kpa / 100:.2f} bar less than {self.since}"


@fact("pressure lost at the {subject}", per="end", show=str)
def lost_since(
    end: End,
    session: Session,
    history: History,
    cold_read: PressureRead,
    air_observed: AirObserved,
    limits: Limits,
) -> Lost | Absent:
    """Return what a tyre has lost since its last cold check, by the gas law; absent where nothing can be
    compared, nor the air outside then with that of now.

    Compared with the last session on the same tyres within a week whose air was not let out or put in
    since. The latest other reading is the one that agrees or not.
    """
    if cold_read.celsius is None or session.tyres is None or session.date is None:
        return ABSENT
    before = _last_cold(end, session, history)
    if before is None:
        return ABSENT
    last, then = before
    seen, moves = (observed_then(then), air_observed), AirMoves.of(limits)
    lost = _less_kpa(cold_read, last, *seen, moves)
    if lost is None:
        return ABSENT
    again = _latest_again(end, session)
    less = _less_kpa(again, last, *seen, moves) if again is not None else None
    off = apart_error_kpa(*seen, moves)
    return Lost(end, lost, f"session {then.id}", less is not None and less >= lost * 0.7, off)


@attrs.frozen
class Fell:
    """How much less a tyre reads cold than it was left with, in bar, and since which session."""

    bar: float
    since: str


def fell_unexplained(end: End, session: Session, history: History) -> Fell | None:
    """Return how much a cold reading fell on the gauge where a temperature is missing to compare it.

    None where both have one, where it did not fall, or where the readings are no two of the same air.
    """
    now = read_at(end, session.pressures.get("cold"), session)
    before = _last_cold(end, session, history) if now is not None and session.tyres is not None else None
    if now is None or before is None or None not in (now.celsius, before[0].celsius):
        return None
    fell = (before[0].left_at.to("kPa") - now.pressure.to("kPa")) / 100
    return Fell(fell, f"session {before[1].id}") if fell > 0 else None


@attrs.frozen
class AirMoved:
    """How the air moved since the pressures were set, and what each tyre reads cold by that."""

    then_c: float
    now_c: float
    since: str
    tyres: Mapping[End, tuple[Quantity, float]]

    def __str__(self) -> str:
        return f"air {self.then_c:g} C {self.since}, {self.now_c:g} C now"


@fact("how the air moved since the pressures were set", show=str)
def air_moved(
    session: Session, earlier: tuple[Session, ...], air_observed: AirObserved, limits: Limits
) -> AirMoved | Absent:
    """Return the air's temperature when the cold pressures were last set today against that of the session.

    `tyres` holds for each end what it was left with, and how much more it reads now in kPa. Absent where
    air was let out or put in since at another temperature.
    """
    if not isinstance(session.air, Quantity):
        return ABSENT
    for one in (session, *reversed(earlier)):
        reading = one.pressures.get("cold")
        if one.tyres != session.tyres or any(was_set_since_cold(end, one) for end in ENDS):
            return ABSENT
        if reading is not None:
            since = "then" if one is session else _called(one)
            here = outside_pressure(air_observed, AirMoves.of(limits)).kpa
            return _moved(one, reading, session.air.to("C"), since, here)
    return ABSENT


def _moved(
    session: Session, reading: PressureReading, now: float, since: str, here_kpa: float
) -> AirMoved | Absent:
    if reading.temperature is None:
        return ABSENT
    then = reading.temperature.to("C")
    changes: dict[End, tuple[Quantity, float]] = {}
    for end in ENDS:
        read = read_at(end, reading, session)
        if read is None:
            continue
        try:
            kpa = read.left_at.to("kPa")
            changes[end] = read.left_at, same_air_kpa_gauge(kpa, then, now, here_kpa, here_kpa) - kpa
        except (Inconsistent, OutOfRange):
            return ABSENT
    return AirMoved(then, now, since, changes) if changes else ABSENT


def _called(session: Session) -> str:
    return f"before session {session.number}" if session.number is not None else "earlier today"


def _last_cold(end: End, session: Session, history: History) -> tuple[PressureRead, PastSession] | None:
    left = cold_left(history, session.tyres, end) if session.tyres is not None else None
    if left is None or left.let:
        return None
    days = _days_since(left.past.date, session.date)
    return None if days > COMPARABLE_DAYS else (left.read, left.past)


def _days_since(then: dt.date | None, now: dt.date | None) -> float:
    return math.inf if then is None or now is None else (now - then).days


def _latest_again(end: End, session: Session) -> PressureRead | None:
    """Return the latest reading of one end that is neither the cold nor the hot one."""
    named = sorted(session.pressures.items())
    found = [read_at(end, one, session) for name, one in named if name not in ("cold", "hot")]
    known = [one for one in found if one is not None]
    return max(known, key=lambda one: one.at or dt.time.min, default=None)


def _less_kpa(
    read: PressureRead, last: PressureRead, then: AirObserved, now: AirObserved, moves: AirMoves
) -> float | None:
    """Return how much less than the same air a reading shows, in kPa; None where they cannot be compared."""
    if read.celsius is None or last.celsius is None:
        return None
    try:
        outside = outside_at_both(then, now, moves)
        if outside is None:
            return None
        before, after = (one.kpa for one in outside)
        expected = same_air_kpa_gauge(last.left_at.to("kPa"), last.celsius, read.celsius, before, after)
    except (Inconsistent, OutOfRange):
        return None
    return expected - read.pressure.to("kPa")
