"""What the sessions show of one tyre: heat cycles, distance and time on it, on this bike."""

from collections.abc import Iterable, Iterator

import attrs

from paddock_tui.facts.past import End, History, PastSession, first_set, tyre_of
from paddock_tui.facts.service import hours_ridden
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import TyreSet
from paddock_tui.trade.heat_cycles import Heating, heat_cycles


@attrs.frozen
class TyreCount:
    """Start values of a tyre and what was counted since, over `sessions` of one bike.

    `first` is the set that the tyre was in first, whose start values these are. Of `without_km` and
    `without_hours` sessions nobody knows how far or how long they were.
    """

    first: str
    cycles_before: int | None
    distance_before: Quantity | None
    sessions: int
    cycles: int
    km: float
    hours: float
    without_km: int
    without_hours: int

    @property
    def all_cycles(self) -> int:
        """Heat cycles so far; without a start value those that were counted."""
        return (self.cycles_before or 0) + self.cycles

    @property
    def all_km(self) -> float:
        """Kilometres so far; without a start value those that were counted."""
        return (0.0 if self.distance_before is None else self.distance_before.to("km")) + self.km


def tyre_count(history: History, tyres: str, end: End, fallback: TyreSet | None) -> TyreCount:
    """Count one tyre over a history; one that another set began with is followed to there.

    `fallback` is the set itself, for the start values where the first set is not in the history.
    """
    first = first_set(history, tyres, end)
    begun = tyre_of(history.tyre_sets.get(first, fallback), end)
    ridden = tuple(_ridden_on(history, first, end))
    hours = [hours_ridden(one.session) for one in ridden]
    return TyreCount(
        first,
        begun.cycles_before,
        begun.distance_before,
        len(ridden),
        heat_cycles(_heatings(one.session for one in ridden)),
        sum(one.km or 0.0 for one in ridden),
        sum(hours),
        sum(one.km is None for one in ridden),
        sum(one == 0.0 for one in hours),
    )


def _ridden_on(history: History, first: str, end: End) -> Iterator[PastSession]:
    for one in history.past:
        name = one.session.tyres
        if name is not None and is_ridden(one.session) and first_set(history, name, end) == first:
            yield one


def _heatings(sessions: Iterable[Session]) -> Iterator[Heating]:
    for one in sessions:
        if one.date is not None:
            yield Heating(one.date, one.warmers == "used", one.warmers_on, one.parked)
