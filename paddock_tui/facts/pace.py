"""How quick a rider is at a venue: the usual lap, from laps or from ridden time and counted laps."""

import functools
import statistics
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.stint import TimedLap, stint
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.session import Session


@attrs.frozen
class UsualLap:
    """A usual lap in s, to a hundredth; whether its laps were timed, and what it rests on, in words."""

    seconds: float
    timed: bool
    where: str


@functools.lru_cache(maxsize=64)
def usual_lap(history: History, rider: str | None, venue: str | None) -> UsualLap | None:
    """Return the usual lap of a rider at a venue; None where nothing tells it. The one place.

    The median clean lap of the last day with laps there, else ridden time over counted laps in the last such
    session. Clean is what a session's own laps count as clean.
    """
    if venue is None:
        return None
    found = _PACES.of(history).get((rider, venue), _Pace())
    if found.timed:
        seconds = [lap for one in found.timed for lap in _clean_s(one.session)]
        return UsualLap(
            round(statistics.median(seconds), 2), True, f"median clean lap of {found.timed[0].date}"
        )
    if found.ridden is None:
        return None
    per_lap = round(_per_lap_s(found.ridden.session) or 0.0, 2)
    return UsualLap(per_lap, False, f"ridden time over laps of session {found.ridden.id}")


class _Pace(NamedTuple):
    """The sessions with clean laps of the last day that has any, and the last with ridden time and laps."""

    timed: tuple[PastSession, ...] = ()
    ridden: PastSession | None = None


_Paces = dict[tuple[str | None, str], _Pace]


def _ridden_again(so_far: _Paces, one: PastSession) -> _Paces:
    """Go on by one session, of its rider at its venue."""
    session, venue = one.session, one.venue
    timed = one.may_time and one.date is not None and _has_clean(session)
    counted = _per_lap_s(session) is not None
    if venue is not None and (timed or counted):
        before = so_far.get((one.rider, venue), _Pace())
        if timed:
            same = bool(before.timed) and before.timed[0].date == one.date
            before = before._replace(timed=(*(before.timed if same else ()), one))
        so_far[one.rider, venue] = before._replace(ridden=one) if counted else before
    return so_far


_PACES: Along[_Paces] = Along("paces", {}, _ridden_again, dict)


def _per_lap_s(session: Session) -> float | None:
    if session.ridden_time is None or not session.ridden_laps:
        return None
    return session.ridden_time.to("s") / session.ridden_laps


def _has_clean(session: Session) -> bool:
    """Return whether any lap of a session counts as clean: of those without a mark half at least do."""
    numbered = [lap for key, lap in session.laps.items() if key.isdigit()]
    return any(not lap.mark for lap in numbered) and all(lap.seconds > 0 for lap in numbered)


def _clean_s(session: Session) -> list[float]:
    numbered = [(int(key), lap) for key, lap in session.laps.items() if key.isdigit()]
    try:
        return stint(TimedLap(key, float(lap.seconds), lap.mark) for key, lap in numbered).times_s
    except OutOfRange:
        return []


_TopSpeeds = dict[str, PastSession]
"""The last session at each venue in which a top speed was noted."""


def _top_speed_again(so_far: _TopSpeeds, one: PastSession) -> _TopSpeeds:
    if one.session.top_speed is not None and one.venue is not None:
        so_far[one.venue] = one
    return so_far


_TOP_SPEEDS: Along[_TopSpeeds] = Along("top-speeds", {}, _top_speed_again, dict)


def last_with_top_speed(history: History, venue: str) -> PastSession | None:
    """Return the last session at a venue in which a top speed was noted; None where none was."""
    return _TOP_SPEEDS.of(history).get(venue)


class _Fastest(NamedTuple):
    m_s: float
    past: PastSession


def _faster(so_far: _Fastest | None, one: PastSession) -> _Fastest | None:
    speed = one.session.top_speed
    if speed is None or (so_far is not None and speed.to("m/s") <= so_far.m_s):
        return so_far
    return _Fastest(speed.to("m/s"), one)


_FASTEST: Along[_Fastest | None] = Along("fastest", None, _faster)


def fastest_session(history: History) -> PastSession | None:
    """Return the session with the highest top speed, the first of them; None where none was noted."""
    found = _FASTEST.of(history)
    return found.past if found is not None else None
