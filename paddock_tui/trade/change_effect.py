"""Whether a change helped: sessions are what is counted, not laps.

The laps of one session share that session's luck: wind, traffic, sleep. So a change is judged by steps
between neighbouring sessions of one day: `to` steps, at which the change was made, and `back` steps, at
which it was taken back. The luck of a session is taken to be as large as the scatter of the rider's own
clean laps from lap to lap times 1.4, at least 0.15 % of a lap (assumed, no source), until runs of the same
set-up of this bike and rider show how large it is. With that factor a change that does nothing is called a
help in at most 5 % of histories while the luck is up to 1.5 times the scatter, and in at most 10 % up to
twice, whatever one-way drift there is (`python -m tests.bench laps`); a luck that was learnt keeps the 5 %.

Learning, a track that gets warmer and tyres that age all go one way within a day, however fast. Such a drift
helps the `to` steps or the `back` steps, never both; so "helped" takes both, each beyond luck by itself
(Berger 1982, intersection-union test). That bounds the rate of a false "helped" without knowing the drift.
Three or more `to` steps alone will do where none of them leaves the first session of a day, and where they
beat an allowance for learning of 0.2 % of a lap a session (assumed, no source).

Each judgement of one change, as steps are added to it, has a level of its own: 4 % at the first, then 0.5 %,
0.25 % and so on, together at most 5 %, for a false "helped" and as much for a false "made it worse".
"""

import functools
import math
from collections.abc import Sequence
from typing import Literal

import attrs

from paddock_tui.trade.chances import above_student
from paddock_tui.trade.descriptive import mean, median, pooled_deviation, squares
from paddock_tui.trade.errors import above
from paddock_tui.trade.session_comparison import FEWEST, compared
from paddock_tui.trade.shifts import one_sample

Verdict = Literal[
    "helped", "made it worse", "faster, cause not known", "slower, cause not known", "cannot tell yet"
]
"""The words for what a change did; there are no others."""

RATE = 0.05
"""At most this share of changes that do nothing is called a help, and at most as many a harm."""

FIRST_LEVEL, LATER_LEVEL = 0.04, 0.01
LUCK_OVER_SCATTER = 1.4
LEAST_LUCK = 0.0015
ALLOWED_DRIFT = 0.002
ENOUGH_REPEATS = 4
PAIRS = 3
_SEEN = 0.05


@attrs.frozen
class Ridden:
    """A session as far as it is judged: clean laps in s, and whether it was the first of the rider's day."""

    key: str
    laps_s: tuple[float, ...]
    opens_day: bool = False

    @property
    def usual_s(self) -> float:
        """The middle of the clean laps, by the means of all pairs: near the median, and steadier."""
        return _middle_s(self.laps_s)

    @property
    def squares(self) -> float:
        """The sum of squared deviations of the clean laps from their mean, in s^2."""
        return _squares(self.laps_s)


@functools.lru_cache(maxsize=4096)
def _middle_s(laps_s: tuple[float, ...]) -> float:
    """Find the middle of a session's laps once: every change of a bike looks at them again."""
    return one_sample(laps_s).shift


@functools.lru_cache(maxsize=4096)
def _squares(laps_s: tuple[float, ...]) -> float:
    for lap in laps_s:
        above("lap", lap, 0.0, None, "s")
    return squares(laps_s)


@attrs.frozen
class LoneChange:
    """A step between two sessions that differ in this change alone; `back` says that it was taken back."""

    before: Ridden
    after: Ridden
    back: bool = False

    @property
    def gain_s(self) -> float:
        """What the change cost in s, with minus without: below zero is faster."""
        change = self.after.usual_s - self.before.usual_s
        return -change if self.back else change


@attrs.frozen
class Luck:
    """Standard deviation in s of a session's usual lap by luck, its degrees of freedom, and whence.

    `scatter_s` is that of the laps from lap to lap. A luck that was learnt holds it already.
    """

    sd_s: float
    freedom: int
    learnt: bool
    scatter_s: float = 0.0

    @property
    def noise_s(self) -> float:
        """What the scatter of one lap adds to the middle of several, in s; pi / 3 over a mean's variance."""
        return 0.0 if self.learnt else math.sqrt(math.pi / 3.0) * self.scatter_s


@attrs.frozen
class Judgement:
    """The verdict, why, and what it rests on.

    `needs` is what would let it be told. `gain_s` is what the change did on average, below zero faster, and
    `chance` that of as much by luck alone, one-sided; None where there was nothing to count. `steps` are
    those to and back that were counted.
    """

    verdict: Verdict
    why: str
    needs: str = ""
    gain_s: float | None = None
    chance: float | None = None
    luck: Luck | None = None
    steps: tuple[int, int] = (0, 0)


def luck_of(sessions: Sequence[Ridden], runs_s: Sequence[Sequence[float]] = ()) -> Luck:
    """Return the luck of a session.

    `runs_s` are the usual laps of sessions with the same set-up, a run for each day, of this bike and rider
    and not judged here: how they lie about their mean is luck. From four degrees of freedom on they are
    believed; before that the larger figure is.
    """
    freedom = sum(len(one.laps_s) - 1 for one in sessions)
    scatter = math.sqrt(math.fsum(one.squares for one in sessions) / freedom)
    usual_s = median([one.usual_s for one in sessions])
    assumed = max(LUCK_OVER_SCATTER * scatter, LEAST_LUCK * usual_s)
    if not any(len(run) > 1 for run in runs_s):
        return Luck(assumed, freedom, False, scatter)
    learnt, known = pooled_deviation(runs_s)
    if known >= ENOUGH_REPEATS:
        return Luck(max(learnt, LEAST_LUCK / 3.0 * usual_s), known, True, scatter)
    return Luck(max(learnt, assumed), freedom, False, scatter)


def judged(steps: Sequence[LoneChange], runs_s: Sequence[Sequence[float]] = ()) -> Judgement:
    """Judge a change by its steps, in the order ridden; those with fewer than three clean laps are out."""
    counted = [one for one in steps if min(len(one.before.laps_s), len(one.after.laps_s)) >= FEWEST]
    if not counted:
        needs = f"{FEWEST} clean laps before and after it" if steps else "a session before it to compare with"
        return Judgement("cannot tell yet", "there are too few clean laps", needs)
    to, back = _sides(counted)
    sessions = list({one.key: one for step in counted for one in (step.before, step.after)}.values())
    luck = luck_of(sessions, runs_s)
    if to and back:
        return _there_and_back(to, back, luck)
    fresh = [one for one in (to or back) if not one.before.opens_day]
    if len(fresh) >= PAIRS:
        return _one_way(fresh, luck, bool(back))
    return _pair(counted, luck, bool(back))


def _sides(steps: Sequence[LoneChange]) -> tuple[list[LoneChange], list[LoneChange]]:
    return [one for one in steps if not one.back], [one for one in steps if one.back]


def level_of(look: int) -> float:
    """Return the level of the first, second and further judgement of one change."""
    return FIRST_LEVEL if look <= 1 else LATER_LEVEL / 2.0 ** (look - 1)


def _beyond(steps: Sequence[LoneChange], luck: Luck, allowed_s: float = 0.0) -> tuple[float, float, float]:
    """Return the mean gain, and the chances of as much by luck alone, faster and slower."""
    gain = mean([one.gain_s for one in steps])
    sd = _sd(steps, luck)
    if allowed_s == 0.0:
        # One tail serves both: the other is what is left of 1.
        tail = above_student(abs(gain) / sd, luck.freedom)
        return (gain, tail, 1.0 - tail) if gain < 0.0 else (gain, 1.0 - tail, tail)
    faster = above_student((-gain - allowed_s) / sd, luck.freedom)
    return gain, faster, above_student((gain - allowed_s) / sd, luck.freedom)


def _sd(steps: Sequence[LoneChange], luck: Luck) -> float:
    """Return the standard deviation of the mean gain of steps that all go one way.

    A session that several of them share counts once, as it weighs.
    """
    weights: dict[str, float] = {}
    laps: dict[str, int] = {}
    for step in steps:
        for one, way in ((step.after, 1.0), (step.before, -1.0)):
            weights[one.key] = weights.get(one.key, 0.0) + way / len(steps)
            laps[one.key] = len(one.laps_s)
    luck_s2, noise_s2 = luck.sd_s**2, luck.noise_s**2
    return math.sqrt(math.fsum(w * w * (luck_s2 + noise_s2 / laps[key]) for key, w in weights.items()))


def _there_and_back(to: list[LoneChange], back: list[LoneChange], luck: Luck) -> Judgement:
    (there, faster_to, slower_to), (again, faster_back, slower_back) = (
        _beyond(one, luck) for one in (to, back)
    )
    gain = (there + again) / 2.0
    steps = (len(to), len(back))
    level = level_of(min(steps))
    faster, slower = max(faster_to, faster_back), max(slower_to, slower_back)
    if faster <= level:
        return Judgement("helped", "faster with it, slower without again", "", gain, faster, luck, steps)
    if slower <= level:
        return Judgement(
            "made it worse", "slower with it, faster without again", "", gain, slower, luck, steps
        )
    chance = min(faster, slower)
    if there * again > 0.0:
        way = "faster" if there < 0.0 else "slower"
        why = f"{way} with it both times, but luck alone does as much too often"
    else:
        why = "it went the same way there and back: learning, tyres or the track"
    needs = "once more there and back, or more clean laps"
    return Judgement("cannot tell yet", why, needs, gain, chance, luck, steps)


def _one_way(steps: list[LoneChange], luck: Luck, back: bool) -> Judgement:
    allowed = ALLOWED_DRIFT * median([one.before.usual_s for one in steps])
    gain, faster, slower = _beyond(steps, luck, allowed)
    level = level_of(len(steps) - PAIRS + 1)
    count = (0, len(steps)) if back else (len(steps), 0)
    if faster <= level:
        why = f"faster in {len(steps)} pairs, by more than learning is allowed"
        return Judgement("helped", why, "", gain, faster, luck, count)
    if slower <= level:
        why = f"slower in {len(steps)} pairs, by more than learning is allowed"
        return Judgement("made it worse", why, "", gain, slower, luck, count)
    why = f"{len(steps)} pairs, but learning and luck may do as much"
    return Judgement("cannot tell yet", why, "going back once", gain, min(faster, slower), luck, count)


def _pair(steps: list[LoneChange], luck: Luck, back: bool) -> Judgement:
    """Say of one or two pairs that the laps differ, where they do; why they do is not known."""
    gain, faster, slower = _beyond(steps, luck)
    last = steps[-1]
    laps = compared(last.before.laps_s, last.after.laps_s)
    count = (0, len(steps)) if back else (len(steps), 0)
    chance = min(faster, slower)
    agree = all(one.gain_s * gain > 0.0 for one in steps)
    needs = "trying it again" if back else "going back once"
    if laps is None or laps.chance > _SEEN or not agree:
        return Judgement("cannot tell yet", "the laps hardly differ", needs, gain, chance, luck, count)
    verdict: Verdict = "faster, cause not known" if gain < 0.0 else "slower, cause not known"
    why = "one session against another: learning, tyres, track or luck may be the cause"
    return Judgement(verdict, why, needs, gain, chance, luck, count)
