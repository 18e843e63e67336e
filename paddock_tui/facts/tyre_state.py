"""The state of each tyre as the record left it: what was last seen on it, and the air in it, with where from.

A tyre is named by its set and end. One walk along the history gives the state before every session.
"""

import datetime as dt
from typing import NamedTuple

from paddock_tui.calc.outside_pressure import AirMoves, OutsidePressure, outside_pressure
from paddock_tui.facts.outside_pressure import observed_then
from paddock_tui.facts.past import ENDS, Along, End, History, PastSession, sets_with
from paddock_tui.facts.tyre_pressures import PressureRead, read_at
from paddock_tui.records.session import Session


class LookAt(NamedTuple):
    """What was seen on a tyre, and the session in which."""

    looks: tuple[str, ...]
    past: PastSession


class AirLeft(NamedTuple):
    """The cold reading that a tyre was left with, in which session, and whether its air was changed since."""

    read: PressureRead
    past: PastSession
    let: bool = False

    def outside(self, moves: AirMoves) -> OutsidePressure:
        """Return the pressure of the air outside at that time. Raises OutOfRange."""
        return outside_pressure(observed_then(self.past), moves)

    def absolute_kpa(self, moves: AirMoves) -> float:
        """Return the pressure in the tyre in kPa absolute, cold. Raises OutOfRange."""
        return self.read.left_at.to("kPa") + self.outside(moves).kpa


class TyreAsLeft(NamedTuple):
    """In which session one tyre was looked at last, and in which it was read cold; None where nobody did.

    `let` is whether its air was changed since it was read.
    """

    look: PastSession | None = None
    cold: PastSession | None = None
    let: bool = False


_States = dict[tuple[str, End], TyreAsLeft]


def _after(so_far: _States, one: PastSession) -> _States:
    tyres, session = one.tyres, one.session
    if tyres is None:
        return so_far
    for end in ENDS:
        look, cold, let = before = so_far.get((tyres, end), TyreAsLeft())
        if _seen(session, end):
            look = one
        if read_at(end, session.pressures.get("cold"), session) is not None:
            cold, let = one, False
        let = let or (cold is not None and was_set_since_cold(end, session))
        if look is one or cold is one or let != before.let:
            so_far[tyres, end] = TyreAsLeft(look, cold, let)
    return so_far


def _seen(session: Session, end: End) -> tuple[str, ...]:
    look = session.look.get(end)
    return (look.seen or ()) if look is not None else ()


def was_set_since_cold(end: End, session: Session, but: str = "") -> bool:
    """Return whether a reading other than the cold one says that air was let out or put in."""
    found = (one for name, one in session.pressures.items() if name not in ("cold", but))
    return any((one.set_to_front if end == "front" else one.set_to_rear) is not None for one in found)


_STATES: Along[_States] = Along("tyres", {}, _after, dict)


def cold_left(history: History, tyres: str, end: End) -> AirLeft | None:
    """Return what the tyre of a set was last left with cold; None where it was never read."""
    left = _STATES.of(history).get((tyres, end), TyreAsLeft())
    if left.cold is None:
        return None
    session = left.cold.session
    read = read_at(end, session.pressures.get("cold"), session)
    return AirLeft(read, left.cold, left.let) if read is not None else None


def last_look(history: History, tyres: str, end: End) -> LookAt | None:
    """Return what was last seen on a tyre, in a set that it was in before too; None where nobody looked."""
    states = _STATES.of(history)
    sets = sets_with(history, tyres, end)
    looks = (state.look for (name, at), state in states.items() if at == end and name in sets)
    last = max((one for one in looks if one is not None), key=lambda one: _place(one.session), default=None)
    return None if last is None else LookAt(_seen(last.session, end), last)


def _place(session: Session) -> tuple[dt.date, int, dt.time]:
    return session.date or dt.date.min, session.number or 0, session.start or dt.time.min
