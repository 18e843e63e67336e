"""The luck of a session: how far its usual lap lies off by wind, traffic and sleep, whatever is on the bike.

Until a record tells it, it is assumed: the scatter of the rider's laps times a factor, at least a share of a
lap (no source). A record tells it by how far sessions of one day that follow each other and are alike lie
apart, whatever was changed between them: what a change is worth comes on top, which makes the luck rather too
large than too small. Their mean is the drift of a day and is no luck. Two sessions further apart than any
luck (tyres gone, weather, another pace) tell nothing of it and are left out.

Degrees of freedom of successive differences: von Neumann, Kent, Bellinson and Hart 1941, variance of their
mean square.
"""

import functools
import itertools
import math
from collections.abc import Iterable, Sequence

import attrs

from paddock_tui.calc.counted_laps import CountedLaps, counted, spread_of
from paddock_tui.calc.descriptive import median
from paddock_tui.calc.session_comparison import FEWEST

LUCK_OVER_SCATTER = 1.8
LEAST_LUCK = 0.0015
"""Share of a lap; a third of it once luck was learnt."""

ENOUGH_FREEDOM = 2.0
"""A record with as many degrees of freedom is believed: three steps on three days have 2, six 3.8."""

FAR_LUCKS, FAR_SHARE = 3.5, 0.02
"""Two sessions further apart than so many times what luck is assumed to do, and than such a share of a lap,
are apart by something else. Common practice, no source."""


@attrs.frozen
class Ridden:
    """A session as far as it is judged: clean laps in s, and whether it was the first of the rider's day."""

    key: str
    laps_s: tuple[float, ...]
    opens_day: bool = False


@attrs.frozen
class RecordedStep:
    """From one session to the next one like it: the keys of both, and how much slower it was, in s."""

    before: str
    after: str
    change_s: float


@attrs.frozen(cache_hash=True)
class LapRecord:
    """What the sessions of one rider on one bike tell of scatter and luck.

    `spread_s` parts laps that count from others, `scatter_s` is the standard deviation of those that count
    with its degrees of freedom, `runs` are the steps of sessions ridden one after the other.
    """

    spread_s: float
    scatter_s: float
    freedom: int
    runs: tuple[tuple[RecordedStep, ...], ...] = ()

    def counted(self, one: Ridden) -> CountedLaps:
        """Return what the laps of a session come to that count."""
        return counted(one.laps_s, self.spread_s)


@attrs.frozen
class Luck:
    """Standard deviation in s of a session's usual lap by luck, its degrees of freedom, and whence.

    `scatter_s` is that of the laps from lap to lap. A luck that was learnt, from so many `steps`, holds it
    already; `drift_s` is how much slower sessions got from one to the next there, known to `drift_sd_s`.
    `far_s` is how far apart no luck brings two sessions.
    """

    sd_s: float
    freedom: float
    learnt: bool
    scatter_s: float = 0.0
    steps: int = 0
    drift_s: float = 0.0
    drift_sd_s: float = 0.0
    far_s: float = math.inf

    def variance(self, laps: int) -> float:
        """Return the variance in s^2 of the mean of so many laps of one session."""
        return self.sd_s**2 if self.learnt else self.sd_s**2 + self.scatter_s**2 / laps


def record_of(sessions: Iterable[Ridden], runs: Sequence[Sequence[Ridden]] = ()) -> LapRecord:
    """Return the record of sessions with at least three clean laps each, at one venue or as if they were.

    `runs` are those of them that were ridden one after the other on one day and are alike; without the first
    session of a day, in which one learns.
    """
    given = [one for one in {one.key: one for one in sessions}.values() if len(one.laps_s) >= FEWEST]
    spread_s = spread_of(one.laps_s for one in given)
    found = {one.key: counted(one.laps_s, spread_s) for one in given}
    freedom = sum(one.count - 1 for one in found.values())
    scatter_s = math.sqrt(math.fsum(one.squares for one in found.values()) / freedom)
    steps = (
        tuple(
            RecordedStep(one.key, other.key, found[other.key].mean_s - found[one.key].mean_s)
            for one, other in itertools.pairwise(run)
            if one.key in found and other.key in found
        )
        for run in runs
    )
    return LapRecord(spread_s, scatter_s, freedom, tuple(one for one in steps if one))


def luck_of(sessions: Sequence[Ridden], record: LapRecord) -> Luck:
    """Return the luck of the sessions that are judged: by the record without them, else as assumed.

    Until the record is believed the larger figure is.
    """
    lap_s = median([record.counted(one).mean_s for one in sessions])
    assumed = max(LUCK_OVER_SCATTER * record.scatter_s, LEAST_LUCK * lap_s)
    each = assumed**2 + record.scatter_s**2 / median([record.counted(one).count for one in sessions])
    far_s = max(FAR_LUCKS * math.sqrt(2.0 * each), FAR_SHARE * lap_s)
    told = _told(record, frozenset(one.key for one in sessions), far_s)
    if told is not None and told.freedom >= ENOUGH_FREEDOM:
        sd_s = max(math.sqrt(told.variance), LEAST_LUCK / 3.0 * lap_s)
        return Luck(
            sd_s,
            told.freedom,
            True,
            record.scatter_s,
            told.steps,
            told.drift_s,
            math.sqrt(2.0 * told.variance * told.runs) / told.steps,
            far_s,
        )
    if told is not None:
        assumed = math.sqrt(max(assumed**2, assumed**2 + told.variance - each))
    return Luck(assumed, record.freedom, False, record.scatter_s, far_s=far_s)


@attrs.frozen
class _Told:
    """What steps tell: a session's variance, its degrees of freedom, the mean step, and of how many."""

    variance: float
    freedom: float
    drift_s: float
    steps: int
    runs: int


@functools.lru_cache(maxsize=512)
def _told(record: LapRecord, but: frozenset[str], far_s: float) -> _Told | None:
    chains = [chain for run in record.runs for chain in _chains(run, but, far_s)]
    changes = [one for chain in chains for one in chain]
    count = len(changes)
    if count < FEWEST:
        return None
    drift_s = math.fsum(changes) / count
    whole = math.fsum((one - drift_s) ** 2 for one in changes)
    # Each step holds the luck of two sessions; the sum of a run's steps that of its first and last alone.
    variance = whole / (2.0 * (count - len(chains) / count))
    freedom = math.fsum(2.0 * len(one) ** 2 / (3.0 * len(one) - 1.0) for one in chains) - 1.0
    return _Told(variance, freedom, drift_s, count, len(chains))


def _chains(run: Sequence[RecordedStep], but: frozenset[str], far_s: float) -> list[list[float]]:
    """Part a run at what is judged and at what is no luck; the steps between as changes in s."""
    found: list[list[float]] = [[]]
    for step in run:
        if {step.before, step.after} & but or abs(step.change_s) > far_s:
            found.append([])
        else:
            found[-1].append(step.change_s)
    return [one for one in found if one]
