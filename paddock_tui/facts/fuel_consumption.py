"""What the garage's own fillings teach of its bikes: how much fuel each uses, and what is in the tank."""

import functools
from collections.abc import Iterable

import attrs

from paddock_tui.facts.past import History, PastSession
from paddock_tui.records.session import Session
from paddock_tui.trade.errors import OutOfRange
from paddock_tui.trade.fuel_learning import LearntRate, Refill, learn_rate_by_mode

ROAD, TRACK = "road", "track"


@attrs.frozen
class FuelLearnt:
    """A consumption learnt, and what it rests on in words."""

    learnt: LearntRate
    where: str


@functools.lru_cache(maxsize=64)
def fuel_learnt(
    history: History, ground: str, mode: str | None, filled: tuple[float, bool] | None = None
) -> FuelLearnt | None:
    """Return the consumption on road or track: in this riding mode where there is one, else in all.

    `filled` is what was filled since the last session, in litres, and whether to the brim.
    """
    runs = [run for run in _runs(history.past, filled) if _can_be(run)]
    if mode is not None:
        own = _pooled(learn_rate_by_mode(run).get(f"{ground} {mode}") for run in runs)
        if own is not None:
            return FuelLearnt(own, f"learnt from {_count(own)} on the {ground} in {mode}")
    on_ground = [[attrs.evolve(one, mode=(one.mode or "").partition(" ")[0]) for one in run] for run in runs]
    every = _pooled(learn_rate_by_mode(run).get(ground) for run in on_ground)
    return None if every is None else FuelLearnt(every, f"learnt from {_count(every)} on the {ground}")


def _count(learnt: LearntRate) -> str:
    fills = "stretch" if learnt.stretches == 1 else "stretches"
    return f"{learnt.stretches} {fills} from brim to brim, {learnt.km:.0f} km,"


def _runs(past: Iterable[PastSession], filled: tuple[float, bool] | None) -> list[list[Refill]]:
    """List the fillings in unbroken runs: where kilometres or a filling are not known, a new one begins."""
    runs: list[list[Refill]] = [[]]
    km: float | None = 0.0
    grounds: set[str] = set()
    for one in past:
        session = one.session
        if session.fuel_added is None or km is None:
            runs.append([])
            km, grounds = 0.0, set()
        if session.fuel_added is not None:
            added = session.fuel_added.to("l")
            runs[-1].append(Refill(km, added, bool(session.filled_to_brim), _mixed(grounds)))
            km, grounds = 0.0, set()
        ridden = one.km
        km = None if ridden is None or km is None else km + ridden
        grounds.add(f"{ROAD if session.kind == 'road' else TRACK} {session.setup.mode or ''}".strip())
    if filled is not None and km is not None:
        runs[-1].append(Refill(km, *filled, _mixed(grounds)))
    return [run for run in runs if run]


def _can_be(run: list[Refill]) -> bool:
    """Return whether the figures of a run are such that anything can be learnt from them."""
    try:
        learn_rate_by_mode(run)
    except OutOfRange:
        return False
    return True


def _mixed(grounds: set[str]) -> str | None:
    """Name what a stretch was ridden on: ground and mode, the ground alone where modes differ, or nothing."""
    if len(grounds) == 1:
        return next(iter(grounds))
    words = {one.partition(" ")[0] for one in grounds}
    return words.pop() if len(words) == 1 else None


def _pooled(found: Iterable[LearntRate | None]) -> LearntRate | None:
    """Put the stretches of several runs together: all litres over all kilometres."""
    rates = [one for one in found if one is not None]
    if not rates:
        return None
    km = sum(one.km for one in rates)
    litres = sum(one.rate_l_per_100km * one.km for one in rates)
    return LearntRate(
        litres / km,
        min(one.lowest_l_per_100km for one in rates),
        max(one.highest_l_per_100km for one in rates),
        sum(one.stretches for one in rates),
        km,
    )


@attrs.frozen
class TankLeft:
    """Litres left in the tank, and the session whose filling or figure they are counted from."""

    litres: float
    what: str
    of: str

    def __str__(self) -> str:
        return f"estimated from the {self.what} of {self.of} on"


def tank_left(history: History, capacity_l: float, rate: float) -> TankLeft | None:
    """Estimate what is left in the tank: litres as entered, or a brim, then what was added and ridden since.

    None where the count is broken. A figure for the tank is of the moment before going out.
    """
    level: TankLeft | None = None
    for one in history.past:
        known = filled_l(one.session, capacity_l)
        added = one.session.fuel_added
        if known is not None:
            level = TankLeft(known[0], known[1], one.id)
        elif level is not None:
            more = min(level.litres + added.to("l"), capacity_l) if added is not None else None
            level = attrs.evolve(level, litres=more) if more is not None else None
        if level is not None:
            left = max(level.litres - one.km * rate / 100.0, 0.0) if one.km is not None else None
            level = attrs.evolve(level, litres=left) if left is not None else None
    return level


def filled_l(session: Session, capacity_l: float) -> tuple[float, str] | None:
    """Return the litres that a session itself says are in the tank, and what says so; the least of them."""
    if session.fuel_in_tank is not None:
        return min(session.fuel_in_tank.to("l"), capacity_l), "litres entered"
    return (capacity_l, "brim") if session.filled_to_brim else None
