"""Consumption learnt from refills: litres between two brims over the kilometres between them.

Only brim to brim counts: a tank that was merely topped up says nothing of its level. Every litre added
between two brims belongs to that stretch.
"""

from collections.abc import Iterable

import attrs

from paddock_tui.trade.errors import within


@attrs.frozen
class Refill:
    """One filling: kilometres since the last one, litres added, whether to the brim, and the riding mode.

    The mode is that of the kilometres just ridden; None where it was not recorded.
    """

    km_since_last: float
    added_l: float
    to_brim: bool
    mode: str | None = None


@attrs.frozen
class LearntRate:
    """Consumption in l/100 km: all litres over all kilometres, and the lowest and highest stretch."""

    rate_l_per_100km: float
    lowest_l_per_100km: float
    highest_l_per_100km: float
    stretches: int
    km: float


@attrs.frozen
class _Stretch:
    km: float
    litres: float
    mode: str | None


def learn_rate_by_mode(refills: Iterable[Refill], shortest_km: float = 10.0) -> dict[str, LearntRate]:
    """Return the consumption for each riding mode that a whole stretch was ridden in; mixed stretches
    count for
    none.
    """
    by_mode: dict[str, list[_Stretch]] = {}
    for stretch in _stretches(refills, shortest_km):
        if stretch.mode is not None:
            by_mode.setdefault(stretch.mode, []).append(stretch)
    pooled = {mode: _pooled(stretches) for mode, stretches in by_mode.items()}
    return {mode: learnt for mode, learnt in pooled.items() if learnt is not None}


def _stretches(refills: Iterable[Refill], shortest_km: float) -> list[_Stretch]:
    found: list[_Stretch] = []
    since_brim: list[Refill] | None = None
    for refill in refills:
        within("kilometres since the last refill", refill.km_since_last, 0.0, 2000.0, "km")
        within("litres added", refill.added_l, 0.0, 60.0, "l")
        if since_brim is not None:
            since_brim.append(refill)
        if refill.to_brim:
            found += _closed(since_brim or [], shortest_km)
            since_brim = []
    return found


def _closed(refills: list[Refill], shortest_km: float) -> list[_Stretch]:
    km = sum(refill.km_since_last for refill in refills)
    litres = sum(refill.added_l for refill in refills)
    if km < shortest_km or km <= 0.0 or litres <= 0.0:
        return []
    modes = {refill.mode for refill in refills if refill.km_since_last > 0.0}
    return [_Stretch(km, litres, modes.pop() if len(modes) == 1 else None)]


def _pooled(stretches: list[_Stretch]) -> LearntRate | None:
    if not stretches:
        return None
    rates = [100.0 * stretch.litres / stretch.km for stretch in stretches]
    km = sum(stretch.km for stretch in stretches)
    litres = sum(stretch.litres for stretch in stretches)
    return LearntRate(100.0 * litres / km, min(rates), max(rates), len(stretches), km)
