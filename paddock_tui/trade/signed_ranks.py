"""Paired differences judged by signed ranks (Wilcoxon), counted exactly where there are few.

Source: Hollander and Wolfe 1973, chapter 3. Differences of zero are left out, as Wilcoxon does.
"""

from collections.abc import Sequence
from functools import lru_cache

from paddock_tui.trade.descriptive import numbers
from paddock_tui.trade.errors import Inconsistent
from paddock_tui.trade.ranks import Alternative, Ranked, approximate, middle_ranks, ties

EXACT_UP_TO = 50
"""As many differences are counted exactly, ties included."""


def signed_ranks(
    differences: Sequence[float],
    side: Alternative = "two-sided",
    exact: bool | None = None,
    continuity: bool = False,
) -> Ranked:
    """Judge whether differences lie around zero; the statistic is the rank sum of the positive ones.

    `exact` None: counted up to 50 differences. Raises CannotBe where every difference is zero.
    """
    values = [one for one in numbers("differences", differences) if one != 0.0]
    if not values:
        raise Inconsistent("differences", "all are zero")
    ranks = middle_ranks([abs(one) for one in values])
    statistic = sum(rank for rank, one in zip(ranks, values, strict=True) if one > 0.0)
    if exact or (exact is None and len(values) <= EXACT_UP_TO):
        return Ranked(statistic, _counted(statistic, ranks, side), True)
    n = len(values)
    variance = n * (n + 1) * (2 * n + 1) / 24.0 - ties([abs(one) for one in values]) / 48.0
    return Ranked(statistic, approximate(statistic, n * (n + 1) / 4.0, variance, side, continuity), False)


@lru_cache(maxsize=64)
def sums(doubled: tuple[int, ...]) -> tuple[int, ...]:
    """Count in how many of all choices of signs the doubled positive rank sum is 0, 1, and so on."""
    counts = [1]
    for rank in doubled:
        wide = counts + [0] * rank
        for place, count in enumerate(counts):
            wide[place + rank] += count
        counts = wide
    return tuple(counts)


def _counted(statistic: float, ranks: list[float], side: Alternative) -> float:
    # Shared ranks are halves: doubled they are whole, so that the count is exact with ties too.
    counts = sums(tuple(sorted(int(2 * rank) for rank in ranks)))
    at, total = int(2 * statistic), 1 << len(ranks)
    greater, less = sum(counts[at:]) / total, sum(counts[: at + 1]) / total
    if side == "two-sided":
        return min(1.0, 2.0 * min(greater, less))
    return greater if side == "greater" else less
