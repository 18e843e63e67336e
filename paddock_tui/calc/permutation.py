"""Two samples compared by mixing them: how often chance alone parts their means as far.

All splits are tried where there are at most 20,000 of them; else 9,999 drawn with a fixed seed, so that the
same laps give the same figure. Source: Fisher 1935; counting the sample itself as one of the draws, so that
the chance is never zero: Phipson and Smyth 2010.
"""

import itertools
import math
import random
from collections.abc import Iterator, Sequence

import attrs

from paddock_tui.calc.descriptive import mean, numbers
from paddock_tui.calc.ranks import Alternative

ALL_UP_TO = 20_000
DRAWS = 9_999
_SEED = 20_260_516


@attrs.frozen
class Mixed:
    """Difference of the means, the chance of one as far, how many splits were tried, and whether all were."""

    difference: float
    chance: float
    tried: int
    exact: bool


def permutation(first: Sequence[float], second: Sequence[float], side: Alternative = "two-sided") -> Mixed:
    """Compare the means of two samples (first - second); raises Inconsistent where one is empty.

    Two-sided is twice the smaller tail.
    """
    x, y = numbers("first sample", first), numbers("second sample", second)
    both = [*x, *y]
    n, total = len(x), math.fsum(both)
    found = mean(x) - mean(y)
    slack = 1e-9 * max(1e-12, max(both) - min(both))
    exact = math.comb(len(both), n) <= ALL_UP_TO
    tried = above = below = 0
    for part in _splits(both, n, exact):
        mixed = part / n - (total - part) / len(y)
        tried += 1
        above += mixed >= found - slack
        below += mixed <= found + slack
    if not exact:
        tried, above, below = tried + 1, above + 1, below + 1
    tails = {"greater": above, "less": below, "two-sided": min(tried, 2 * min(above, below))}
    return Mixed(found, tails[side] / tried, tried, exact)


def _splits(both: list[float], n: int, exact: bool) -> Iterator[float]:
    """Return the sum of the first part of each split."""
    if exact:
        yield from (math.fsum(part) for part in itertools.combinations(both, n))
        return
    draw = random.Random(_SEED)
    for _ in range(DRAWS):
        yield math.fsum(draw.sample(both, n))
