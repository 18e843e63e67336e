"""Whether a change was felt: scores are an order, not amounts, so pairs of outings are counted, exactly.

A pair is an outing with the change and one without, next to each other and like each other, each outing in
one pair alone. A change that does nothing is felt better in one of two pairs that are not felt alike: the
chance of as many by luck is the sign test's (Dixon and Mood 1946), one-sided. Who rides knows what was
changed, which no counting puts right.
"""

import math
from collections.abc import Iterable, Sequence
from typing import Literal

import attrs

FEWEST_PAIRS = 5
"""Under so many pairs feel alone says nothing: five out of five come up by luck once in 32."""

LOOKS = ((FEWEST_PAIRS, 0.0313), (10, 0.0108), (20, 0.006), (40, 0.0012))
"""After how many pairs felt either way it is judged, and at which level: together at most 5 % each way."""

FeelVerdict = Literal["helped", "made it worse", "cannot tell yet"]


@attrs.frozen
class FeltEffect:
    """In how many pairs it was felt better, worse and alike with the change, and the chance of that by luck.

    `chance` is one-sided, of the side that was felt more often; None without a pair felt either way.
    """

    better: int
    worse: int
    alike: int
    chance: float | None
    verdict: FeelVerdict

    @property
    def pairs(self) -> int:
        """How many pairs there are."""
        return self.better + self.worse + self.alike


def moments_felt(before: Sequence[int | None], after: Sequence[int | None]) -> int | None:
    """Return how two outings were felt: 1 the later better at more moments than worse, -1 the other way.

    0 is alike; None where no moment was scored both times.
    """
    both = [(one, other) for one, other in zip(before, after, strict=True) if None not in (one, other)]
    if not both:
        return None
    signs = sum((other > one) - (other < one) for one, other in both if one is not None and other is not None)
    return (signs > 0) - (signs < 0)


def felt_effect(pairs: Iterable[int]) -> FeltEffect:
    """Count pairs felt better (above 0), worse and alike, in the order ridden, and judge them.

    It is judged after five pairs felt either way, and after ten, twenty and forty. What a look told stands
    while the pairs since do not turn it over.
    """
    given = list(pairs)
    either = [one > 0 for one in given if one != 0]
    better, worse = sum(either), len(either) - sum(either)
    alike = len(given) - len(either)
    if not either:
        return FeltEffect(0, 0, alike, None, "cannot tell yet")
    chance = _sign_test(max(better, worse), len(either))
    verdict: FeelVerdict = "cannot tell yet"
    if better != worse:
        told = _told(either if better > worse else [not one for one in either])
        verdict = ("helped" if better > worse else "made it worse") if told else verdict
    return FeltEffect(better, worse, alike, chance, verdict)


def _told(either: list[bool]) -> bool:
    """Return whether one of the looks tells that it was felt as most of the pairs were."""
    return any(
        len(either) >= count and _sign_test(sum(either[:count]), count) <= level for count, level in LOOKS
    )


def _sign_test(most: int, of: int) -> float:
    """Return the chance of at least so many of one kind where both kinds come as often."""
    return sum(math.comb(of, count) for count in range(most, of + 1)) / float(2**of)
