"""What the aids compare: the sizes of the tyres, the sprockets, and whether the bike has run with them."""

import re

from paddock_tui.facts.aids import watching
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import History
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
    if not ridden or not watching(bike) or any(one.session.tyres == session.tyres for one in ridden):
        return ABSENT
    sets = [history.tyre_sets.get(one.session.tyres or "") for one in ridden]
    before = {sizes for one in sets if one is not None and (sizes := sizes_of(one)) is not None}
    if not before:
        return ABSENT
    now = sizes_of(tyres)
    if now is None:
        return UNKNOWN
    words = f"{'/'.join(now[0])} and {'/'.join(now[1])}"
    return ABSENT if now in before else f"tyres {words}, new to this bike"


@fact("the wheels that the tyres are on", at="tyres:wheels", show=str)
def other_wheels(session: Session, tyres: TyreSet, history: History) -> str | Absent:
    """Return wheels that this bike has not been ridden on, in words; absent where it has, or nobody named
    those that it was ridden on.
    """
    sets = [history.tyre_sets.get(one.session.tyres or "") for one in history.ridden]
    before = {one.wheels for one in sets if one is not None and one.wheels is not None}
    if tyres.wheels is None or not before or tyres.wheels in before:
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
    known = False
    for one in reversed(history.ridden):
        before = _teeth(one.session.setup)
        if before == now:
            return ABSENT
        known = known or None not in before
    return f"sprockets {now[0]}/{now[1]}, new to this bike" if known else ABSENT


def sizes_of(tyres: TyreSet) -> Sizes | None:
    """Return width, profile and rim of both tyres; None where one of them is not known."""
    found = [_numbers(tyre.size or "") for tyre in (tyres.front, tyres.rear)]
    return (found[0], found[1]) if all(len(one) == 3 for one in found) else None


def _numbers(size: str) -> tuple[str, ...]:
    return tuple(re.findall(r"\d+(?:\.\d+)?", size)[:3])


def _teeth(setup: SetUp) -> tuple[int | None, int | None]:
    return setup.front_sprocket, setup.rear_sprocket
