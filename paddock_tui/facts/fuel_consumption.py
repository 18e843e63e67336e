"""What the garage's own fillings teach of its bikes: how much fuel each uses, and what is in the tank."""

import math
from collections.abc import Mapping
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel_learning import Learning, LearntRate, Refill
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.session import Session

ROAD, TRACK = "road", "track"


@attrs.frozen
class FuelLearnt:
    """A consumption learnt, and what it rests on in words."""

    learnt: LearntRate
    where: str


class _Pool(NamedTuple):
    """Consumptions of several runs put together: all litres over all kilometres."""

    litres: float = 0.0
    km: float = 0.0
    lowest: float = math.inf
    highest: float = 0.0
    stretches: int = 0

    def with_one(self, one: LearntRate | None) -> "_Pool":
        """Return this with one more run."""
        if one is None:
            return self
        return _Pool(
            self.litres + one.rate_l_per_100km * one.km,
            self.km + one.km,
            min(self.lowest, one.lowest_l_per_100km),
            max(self.highest, one.highest_l_per_100km),
            self.stretches + one.stretches,
        )

    def learnt(self) -> LearntRate | None:
        """Return the consumption; None where there was no stretch."""
        if not self.stretches:
            return None
        return LearntRate(self.litres / self.km, self.lowest, self.highest, self.stretches, self.km)


class _Run(NamedTuple):
    """What an unbroken run of fillings teaches, by ground and mode, and by the ground alone."""

    by_mode: Learning = Learning()
    by_ground: Learning = Learning()

    def after(self, refill: Refill) -> "_Run | None":
        """Return it with one more filling; None where a figure cannot be: then the run teaches nothing."""
        ground = (refill.mode or "").partition(" ")[0]
        try:
            return _Run(self.by_mode.after(refill), self.by_ground.after(attrs.evolve(refill, mode=ground)))
        except OutOfRange:
            return None

    def rates(self) -> dict[str, LearntRate]:
        """Return the consumptions by ground and mode, and by ground."""
        return self.by_mode.rates() | self.by_ground.rates()


class _Fillings(NamedTuple):
    """Where the fillings stand: the runs that ended, the one that goes on, and what was ridden since."""

    ended: Mapping[str, _Pool] = {}
    run: _Run | None = _Run()
    km: float | None = 0.0
    grounds: frozenset[str] = frozenset()


def fuel_learnt(
    history: History, ground: str, mode: str | None, filled: tuple[float, bool] | None = None
) -> FuelLearnt | None:
    """Return the consumption on road or track: in this riding mode where there is one, else in all.

    `filled` is what was filled since the last session, in litres, and whether to the brim.
    """
    so_far = _FILLINGS.of(history)
    run = so_far.run
    if filled is not None and so_far.km is not None and run is not None:
        run = run.after(Refill(so_far.km, *filled, _mixed(so_far.grounds)))
    rates = run.rates() if run is not None else {}
    for name, words in ((f"{ground} {mode}", f" in {mode}"), (ground, "")):
        if mode is None and words:
            continue
        found = so_far.ended.get(name, _Pool()).with_one(rates.get(name)).learnt()
        if found is not None:
            return FuelLearnt(found, f"learnt from {_count(found)} on the {ground}{words}")
    return None


def _count(learnt: LearntRate) -> str:
    fills = "stretch" if learnt.stretches == 1 else "stretches"
    return f"{learnt.stretches} {fills} from brim to brim, {learnt.km:.0f} km,"


def _filled_again(so_far: _Fillings, one: PastSession) -> _Fillings:
    """Go on by one session: where kilometres or a filling are not known, a new run begins."""
    ended, run, km, grounds = so_far
    session = one.session
    if session.fuel_added is None or km is None:
        rates = run.rates() if run is not None else {}
        if rates:
            ended = {
                **ended,
                **{name: ended.get(name, _Pool()).with_one(rate) for name, rate in rates.items()},
            }
        run, km, grounds = _Run(), 0.0, frozenset()
    if session.fuel_added is not None:
        refill = Refill(km, session.fuel_added.to("l"), bool(session.filled_to_brim), _mixed(grounds))
        run = run.after(refill) if run is not None else None
        km, grounds = 0.0, frozenset()
    ridden = one.km
    km = None if ridden is None else km + ridden
    ground = f"{ROAD if session.kind == 'road' else TRACK} {session.setup.mode or ''}".strip()
    return _Fillings(ended, run, km, grounds | {ground})


_FILLINGS = Along("fillings", _Fillings(), _filled_again)
"""The fillings in unbroken runs, along a history."""


def _mixed(grounds: frozenset[str]) -> str | None:
    """Name what a stretch was ridden on: ground and mode, the ground alone where modes differ, or nothing."""
    if len(grounds) == 1:
        return next(iter(grounds))
    words = {one.partition(" ")[0] for one in grounds}
    return words.pop() if len(words) == 1 else None


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
    tank = _TANKS.of(history)
    known = filled_l(tank.since.session, capacity_l) if tank.since is not None else None
    if tank.since is None or known is None:
        return None
    litres, what = known
    for added, km in tank.ridden:
        filled = litres if added is None else min(litres + added, capacity_l)
        litres = max(filled - km * rate / 100.0, 0.0)
    return TankLeft(litres, what, tank.since.id)


class _Tank(NamedTuple):
    """The last session with a figure for the tank; of it and each later one what was added, and kilometres.

    No session where the count is broken since, or there never was a figure.
    """

    since: PastSession | None = None
    ridden: tuple[tuple[float | None, float], ...] = ()


def _tank_again(so_far: _Tank, one: PastSession) -> _Tank:
    session, km = one.session, one.km
    # What was in it before the last figure for it counts no more.
    if session.fuel_in_tank is not None or session.filled_to_brim:
        return _Tank(one, ((None, km),)) if km is not None else _Tank()
    if so_far.since is None or session.fuel_added is None or km is None:
        return _Tank()
    return _Tank(so_far.since, (*so_far.ridden, (session.fuel_added.to("l"), km)))


_TANKS: Along[_Tank] = Along("tank", _Tank(), _tank_again)


def filled_l(session: Session, capacity_l: float) -> tuple[float, str] | None:
    """Return the litres that a session itself says are in the tank, and what says so; the least of them."""
    if session.fuel_in_tank is not None:
        return min(session.fuel_in_tank.to("l"), capacity_l), "litres entered"
    return (capacity_l, "brim") if session.filled_to_brim else None
