"""How often each signed rank sum comes up, counted exactly (Wilcoxon).

Source: Hollander and Wolfe 1973, chapter 3.
"""

from functools import lru_cache


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
