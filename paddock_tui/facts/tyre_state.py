"""The state of each tyre as the record left it: what was last seen on it, and the air in it, with where from.

A tyre is named by its set and end. One walk along the history gives the state before every session.
"""

import datetime as dt
from collections.abc import Iterator
from typing import NamedTuple

from paddock_tui.calc.outside_pressure import AirMoves, OutsidePressure, outside_pressure
from paddock_tui.facts.outside_pressure import observed_then
from paddock_tui.facts.past import ENDS, Along, End, History, PastSession, first_set
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
    """What is known of one tyre; None where nobody looked, or nobody read it cold."""

    look: LookAt | None = None
    air: AirLeft | None = None


_States = dict[tuple[str, End], TyreAsLeft]


def _after(so_far: _States, one: PastSession) -> _States:
    tyres = one.session.tyres
    if tyres is None:
        return so_far
    new: dict[tuple[str, End], TyreAsLeft] = {}
    for end in ENDS:
        before = so_far.get((tyres, end), TyreAsLeft())
        look = one.session.look.get(end)
        seen = LookAt(look.seen, one) if look is not None and look.seen else before.look
        state = TyreAsLeft(seen, _air(before.air, one, end))
        if state != before:
            new[tyres, end] = state
    so_far.update(new)
    return so_far


def _air(before: AirLeft | None, one: PastSession, end: End) -> AirLeft | None:
    cold = read_at(end, one.session.pressures.get("cold"), one.session)
    left = AirLeft(cold, one) if cold is not None else before
    return left._replace(let=True) if left is not None and was_set_since_cold(end, one.session) else left


def was_set_since_cold(end: End, session: Session, but: str = "") -> bool:
    """Return whether a reading other than the cold one says that air was let out or put in."""
    found = (one for name, one in session.pressures.items() if name not in ("cold", but))
    return any((one.set_to_front if end == "front" else one.set_to_rear) is not None for one in found)


_STATES: Along[_States] = Along("tyres", {}, _after, dict)


def cold_left(history: History, tyres: str, end: End) -> AirLeft | None:
    """Return what the tyre of a set was last left with cold; None where it was never read."""
    return _STATES.of(history).get((tyres, end), TyreAsLeft()).air


def last_look(history: History, tyres: str, end: End) -> LookAt | None:
    """Return what was last seen on a tyre, in a set that it was in before too; None where nobody looked."""
    found = list(_looks(history, first_set(history, tyres, end), end))
    return max(found, key=lambda one: _place(one.past.session), default=None)


def _looks(history: History, first: str, end: End) -> Iterator[LookAt]:
    for (tyres, its_end), state in _STATES.of(history).items():
        if its_end == end and state.look is not None and first_set(history, tyres, end) == first:
            yield state.look


def _place(session: Session) -> tuple[dt.date, int, dt.time]:
    return session.date or dt.date.min, session.number or 0, session.start or dt.time.min
