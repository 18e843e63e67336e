"""What the aids compare: the sizes of the tyres, the sprockets, and whether the bike has run with them."""

import re

from paddock_tui.facts.aids import watching
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.bike import Bike
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import TyreSet

Sizes = tuple[tuple[str, ...], tuple[str, ...]]


@fact("the sizes of both tyres", at="tyres:rear.size", show=str)
def other_sizes(session: Session, tyres: TyreSet, bike: Bike, history: History) -> str | Unknown | Absent:
    """Tyre sizes that this bike has not run with, in words; absent where it has, or where it never ran.

    Width, profile and rim count; a set that was on before is the same whatever its sizes are.
    """
    ridden = history.ridden
    if not ridden or not watching(bike) or any(one.tyres == session.tyres for one in ridden):
        return ABSENT
    now, known = sizes_of(tyres), False
    for one in history.sets_ridden():
        before = sizes_of(one)
        known = known or before is not None
        if known and (now is None or before == now):
            return UNKNOWN if now is None else ABSENT
    return f"tyres {'/'.join(now[0])} and {'/'.join(now[1])}, new to this bike" if known and now else ABSENT


@fact("the wheels that the tyres are on", at="tyres:wheels", show=str)
def other_wheels(session: Session, tyres: TyreSet, history: History) -> str | Absent:
    """Return wheels that this bike has not been ridden on, in words; absent where it has, or nobody named
    those that it was ridden on.
    """
    if tyres.wheels is None:
        return ABSENT
    known = False
    for one in history.sets_ridden():
        if one.wheels == tyres.wheels:
            return ABSENT
        known = known or one.wheels is not None
    if not known:
        return ABSENT
    measured = all(tyre.circumference is not None for tyre in (tyres.front, tyres.rear))
    rolled = "circumference measured" if measured else "circumference not measured on them"
    return f"{tyres.wheels}, {rolled}"


@fact("the sprockets", at="session:setup.rear_sprocket", show=str)
def other_sprockets(setup: SetUp, bike: Bike, history: History) -> str | Absent:
    """Return sprockets that this bike has not run with, in words; absent where it has, or they are not
    known.
    """
    now = _teeth(setup)
    if None in now or not watching(bike):
        return ABSENT
    before = _SPROCKETS.of(history)
    return f"sprockets {now[0]}/{now[1]}, new to this bike" if before and now not in before else ABSENT


_Pairs = frozenset[tuple[int | None, int | None]]


def _ran_with(so_far: _Pairs, one: PastSession) -> _Pairs:
    if not one.ridden:
        return so_far
    teeth = _teeth(one.session.setup)
    return so_far if None in teeth or teeth in so_far else so_far | {teeth}


_SPROCKETS: Along[_Pairs] = Along("sprockets", frozenset(), _ran_with)
"""The sprockets that the bike was ridden with, where both are known."""


def sizes_of(tyres: TyreSet) -> Sizes | None:
    """Return width, profile and rim of both tyres; None where one of them is not known."""
    found = [_numbers(tyre.size or "") for tyre in (tyres.front, tyres.rear)]
    return (found[0], found[1]) if all(len(one) == 3 for one in found) else None


def _numbers(size: str) -> tuple[str, ...]:
    return tuple(re.findall(r"\d+(?:\.\d+)?", size)[:3])


def _teeth(setup: SetUp) -> tuple[int | None, int | None]:
    return setup.front_sprocket, setup.rear_sprocket
