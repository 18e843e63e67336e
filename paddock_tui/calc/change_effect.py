"""Whether a change helped: sessions are what is counted, not laps.

The laps of one session share that session's luck: wind, traffic, sleep. So a change is judged by steps
between neighbouring sessions of one day: `to` steps, at which the change was made, and `back` steps, at
which it was taken back. How large the luck is, is assumed until the record of this bike and rider shows it
(`calc/session_luck.py`). What is assumed is so much that a change that does nothing is called a help in at
most 5 % of histories while the luck is up to 1.5 times the scatter of the laps, and in at most 10 % up to
twice, whatever one-way drift there is (`python -m tests.bench laps`); a luck that was learnt keeps the 5 %.

Learning, a track that gets warmer and tyres that age all go one way within a day, however fast. Such a drift
helps the `to` steps or the `back` steps, never both; so "helped" takes both, each beyond luck by itself
(Berger 1982, intersection-union test). That bounds the rate of a false "helped" without knowing the drift.
Three or more `to` steps alone will do where none of them leaves the first session of a day: they have to beat
the drift that the record shows of other steps and 0.05 % of a lap more, or without a record an allowance of
0.2 % of a lap a session (assumed, no source). Where they lie further from it than luck and a setting bring
sessions, tyres or the track are as likely the cause, and nothing is said of the change.

Each judgement of one change, as steps are added to it, has a level of its own: 4.75 % at the first, then
0.125 %, 0.0625 % and so on, together at most 5 %, for a false "helped" and as much for a false "made it
worse". What can be found at all with nothing on record `python -m tests.bench power_bounds` works out.
"""

import math
from collections.abc import Sequence
from typing import Literal

import attrs

from paddock_tui.calc.chances import above_student
from paddock_tui.calc.descriptive import mean, median
from paddock_tui.calc.session_comparison import FEWEST, compared
from paddock_tui.calc.session_luck import LapRecord, Luck, Ridden, luck_of, record_of

Verdict = Literal[
    "helped", "made it worse", "faster, cause not known", "slower, cause not known", "cannot tell yet"
]
"""The words for what a change did; there are no others."""

RATE = 0.05
"""At most this share of changes that do nothing is called a help, and at most as many a harm."""

FIRST_LEVEL, LATER_LEVEL = 0.0475, 0.0025
ALLOWED_DRIFT = 0.002
"""Share of a lap that sessions may drift from one to the next while no record shows how much they do."""

ALLOWED_BESIDE_RECORD = 0.0005
"""Share of a lap by which the drift may differ from what the record shows."""

PAIRS = 3
_SEEN = 0.05


@attrs.frozen
class LoneChange:
    """A step between two sessions that differ in this change alone; `back` says that it was taken back."""

    before: Ridden
    after: Ridden
    back: bool = False

    def gain_s(self, record: LapRecord) -> float:
        """Return what the change cost in s, with minus without: below zero is faster."""
        change = record.counted(self.after).mean_s - record.counted(self.before).mean_s
        return -change if self.back else change


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


def judged(steps: Sequence[LoneChange], record: LapRecord | None = None) -> Judgement:
    """Judge a change by its steps, in the order ridden; those with fewer than three clean laps are out."""
    counted = [one for one in steps if min(len(one.before.laps_s), len(one.after.laps_s)) >= FEWEST]
    if not counted:
        needs = f"{FEWEST} clean laps before and after it" if steps else "a session before it to compare with"
        return Judgement("cannot tell yet", "there are too few clean laps", needs)
    to, back = _sides(counted)
    sessions = list({one.key: one for step in counted for one in (step.before, step.after)}.values())
    record = record_of(sessions) if record is None else record
    case = _Case(record, luck_of(sessions, record))
    if to and back:
        return _there_and_back(to, back, case)
    fresh = [one for one in (to or back) if not one.before.opens_day]
    if len(fresh) >= PAIRS:
        return _one_way(fresh, case, bool(back))
    return _pair(counted, case, bool(back))


@attrs.frozen
class _Case:
    """What the steps are held against."""

    record: LapRecord
    luck: Luck

    def gain_s(self, steps: Sequence[LoneChange]) -> float:
        """Return the mean gain of steps in s."""
        return mean([one.gain_s(self.record) for one in steps])

    def beyond(self, steps: Sequence[LoneChange]) -> tuple[float, float, float]:
        """Return the mean gain, and the chances of as much by luck alone, faster and slower."""
        gain = self.gain_s(steps)
        # One tail serves both: the other is what is left of 1.
        tail = above_student(abs(gain) / self.sd_s(steps), self.luck.freedom)
        return (gain, tail, 1.0 - tail) if gain < 0.0 else (gain, 1.0 - tail, tail)

    def sd_s(self, steps: Sequence[LoneChange]) -> float:
        """Return the standard deviation of the mean gain of steps that all go one way.

        A session that several of them share counts once, as it weighs.
        """
        weights: dict[str, float] = {}
        laps: dict[str, int] = {}
        for step in steps:
            for one, way in ((step.after, 1.0), (step.before, -1.0)):
                weights[one.key] = weights.get(one.key, 0.0) + way / len(steps)
                laps[one.key] = self.record.counted(one).count
        return math.sqrt(math.fsum(w * w * self.luck.variance(laps[key]) for key, w in weights.items()))


def _sides(steps: Sequence[LoneChange]) -> tuple[list[LoneChange], list[LoneChange]]:
    return [one for one in steps if not one.back], [one for one in steps if one.back]


def level_of(look: int) -> float:
    """Return the level of the first, second and further judgement of one change."""
    return FIRST_LEVEL if look <= 1 else LATER_LEVEL / 2.0 ** (look - 1)


def _there_and_back(to: list[LoneChange], back: list[LoneChange], case: _Case) -> Judgement:
    (there, faster_to, slower_to), (again, faster_back, slower_back) = (
        case.beyond(one) for one in (to, back)
    )
    luck = case.luck
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


def _one_way(steps: list[LoneChange], case: _Case, back: bool) -> Judgement:
    """Judge steps of one way alone, against the drift of the record or what drift is allowed."""
    luck, gain = case.luck, case.gain_s(steps)
    lap_s = median([case.record.counted(one.before).mean_s for one in steps])
    allowed = (ALLOWED_BESIDE_RECORD if luck.learnt else ALLOWED_DRIFT) * lap_s
    beside = gain + luck.drift_s if back else gain - luck.drift_s
    sd = math.hypot(case.sd_s(steps), luck.drift_sd_s)
    faster, slower = (above_student((way * beside - allowed) / sd, luck.freedom) for way in (-1.0, 1.0))
    level = level_of(len(steps) - PAIRS + 1)
    count = (0, len(steps)) if back else (len(steps), 0)
    if min(faster, slower) > level:
        why = f"{len(steps)} pairs, but learning and luck may do as much"
        return Judgement("cannot tell yet", why, "going back once", gain, min(faster, slower), luck, count)
    way = "faster" if faster <= level else "slower"
    if abs(beside) > luck.far_s:
        why = f"{way} by more than luck and a setting bring: tyres, track or pace are as likely the cause"
        unknown: Verdict = "faster, cause not known" if faster <= level else "slower, cause not known"
        return Judgement(unknown, why, "going back once", gain, min(faster, slower), luck, count)
    why = f"{way} in {len(steps)} pairs, by more than learning is allowed"
    verdict: Verdict = "helped" if faster <= level else "made it worse"
    return Judgement(verdict, why, "", gain, min(faster, slower), luck, count)


def _pair(steps: list[LoneChange], case: _Case, back: bool) -> Judgement:
    """Say of one or two pairs that the laps differ, where they do; why they do is not known."""
    gain, faster, slower = case.beyond(steps)
    luck, last = case.luck, steps[-1]
    laps = compared(last.before.laps_s, last.after.laps_s)
    count = (0, len(steps)) if back else (len(steps), 0)
    chance = min(faster, slower)
    agree = all(one.gain_s(case.record) * gain > 0.0 for one in steps)
    needs = "trying it again" if back else "going back once"
    if laps is None or laps.chance > _SEEN or not agree:
        return Judgement("cannot tell yet", "the laps hardly differ", needs, gain, chance, luck, count)
    verdict: Verdict = "faster, cause not known" if gain < 0.0 else "slower, cause not known"
    why = "one session against another: learning, tyres, track or luck may be the cause"
    return Judgement(verdict, why, needs, gain, chance, luck, count)
