"""Two samples compared by ranks (Mann and Whitney), exactly where they are small and without ties.

Source: Hollander and Wolfe 1973, chapter 4. The exact chances are counted, as Mann and Whitney 1947 do.
"""

import math
from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from typing import Literal

import attrs

from paddock_tui.calc.chances import above_normal
from paddock_tui.calc.descriptive import numbers
from paddock_tui.calc.errors import Inconsistent

Alternative = Literal["two-sided", "greater", "less"]
"""What is asked: whether the first is different, or tends to be greater, or less."""

EXACT_UP_TO = 40
"""Samples up to this size each are counted exactly, where there are no ties."""


@attrs.frozen
class Ranked:
    """The statistic (for how many pairs the first is greater), the chance under 'no difference', and how."""

    statistic: float
    chance: float
    exact: bool


def middle_ranks(values: Sequence[float]) -> list[float]:
    """Return the rank of each number from 1 on; those that are alike share the mean of their ranks."""
    order = sorted(range(len(values)), key=lambda place: values[place])
    ranks = [0.0] * len(values)
    start = 0
    while start < len(order):
        end = start
        while end + 1 < len(order) and values[order[end + 1]] == values[order[start]]:
            end += 1
        for place in order[start : end + 1]:
            ranks[place] = (start + end) / 2.0 + 1.0
        start = end + 1
    return ranks


def ties(values: Sequence[float]) -> float:
    """Return the sum of t^3 - t over groups of t numbers that are alike."""
    return float(sum(count**3 - count for count in Counter(values).values()))


def mann_whitney(
    first: Sequence[float],
    second: Sequence[float],
    side: Alternative = "two-sided",
    exact: bool | None = None,
    continuity: bool = True,
) -> Ranked:
    """Compare two samples; `exact` None: counted where they are small and without ties.

    Raises Inconsistent where one is empty, or where an exact count is asked for in spite of ties.
    """
    x, y = numbers("first sample", first), numbers("second sample", second)
    both = [*x, *y]
    tied = ties(both)
    if exact and tied:
        raise Inconsistent("an exact count", "some numbers are the same")
    statistic = sum(middle_ranks(both)[: len(x)]) - len(x) * (len(x) + 1) / 2.0
    if exact is None:
        exact = not tied and max(len(x), len(y)) <= EXACT_UP_TO
    if exact:
        return Ranked(statistic, _counted(int(statistic), len(x), len(y), side), True)
    total, pairs = len(both), len(x) * len(y)
    variance = pairs / 12.0 * (total + 1 - tied / (total * (total - 1)))
    return Ranked(statistic, approximate(statistic, pairs / 2.0, variance, side, continuity), False)


def approximate(
    statistic: float, middle: float, variance: float, side: Alternative, continuity: bool
) -> float:
    """Return the chance of a statistic by the normal distribution; 1 where all numbers are alike."""
    if variance <= 0.0:
        return 1.0
    half = 0.5 if continuity else 0.0
    off = statistic - middle
    if side == "greater":
        return above_normal((off - half) / math.sqrt(variance))
    if side == "less":
        return above_normal((-off - half) / math.sqrt(variance))
    return min(1.0, 2.0 * above_normal((abs(off) - half) / math.sqrt(variance)))


@lru_cache(maxsize=64)
def ways(n: int, m: int) -> tuple[int, ...]:
    """Count in how many of all orders of n and m numbers the statistic is 0, 1, ... n m."""
    counts = [1]
    # The generating function is a product of (1 - q^(m + k)) / (1 - q^k), multiplied out exactly.
    for k in range(1, n + 1):
        wide = counts + [0] * (m + k)
        for place in range(len(wide) - 1, m + k - 1, -1):
            wide[place] -= wide[place - m - k]
        for place in range(k, len(wide)):
            wide[place] += wide[place - k]
        counts = wide[: k * m + 1]
    return tuple(counts)


def _counted(statistic: int, n: int, m: int, side: Alternative) -> float:
    counts = ways(n, m)
    total = math.comb(n + m, n)
    if side == "greater":
        return sum(counts[statistic:]) / total
    if side == "less":
        return sum(counts[: statistic + 1]) / total
    far = max(statistic, n * m - statistic)
    return min(1.0, 2.0 * (sum(counts[far:]) / total))
