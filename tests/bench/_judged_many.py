"""Many histories judged at once: `calc/change_effect.py` over again for arrays.

`tests/calc/test_change_effect.py` holds it to the judgements of the program, history by history.
"""

from collections.abc import Iterator

import attrs
import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtr

from paddock_tui.calc import change_effect as effect
from paddock_tui.calc import counted_laps as laps_
from paddock_tui.calc import session_luck as luck_
from paddock_tui.calc.change_effect import Verdict
from paddock_tui.calc.session_comparison import FEWEST
from tests.bench._histories import Array, Design

Places = list[int]
Bools = NDArray[np.bool_]


@attrs.frozen
class Sessions:
    """Means of the laps that count, sums of squares, how many count, and the scatter with its freedom."""

    mean: Array
    count: Array
    scatter: Array
    freedom: Array


@attrs.frozen
class Lucks:
    """As `Luck`, for each history."""

    sd: Array
    freedom: Array
    learnt: Bools
    scatter: Array
    drift: Array
    drift_sd: Array
    far: Array

    def variance(self, count: Array) -> Array:
        """Return the variance of a session's mean."""
        return self.sd**2 + np.where(self.learnt, 0.0, self.scatter**2 / count)


def verdicts(design: Design, laps: Array) -> Iterator[dict[Verdict, Bools]]:
    """Give at each look which histories are called a help or a harm."""
    record = list(range(design.judged, laps.shape[1]))
    for look in design.looks:
        steps = design.steps[:look]
        judged = sorted({place for before, after, _ in steps for place in (before, after)})
        sessions = _sessions(laps[:, judged + record])
        at = {place: number for number, place in enumerate(judged + record)}
        runs = [[at[place] for place in run] for run in design.runs]
        lucks = _lucks(sessions, len(judged), runs)
        there = [(at[before], at[after]) for before, after, back in steps if not back]
        again = [(at[after], at[before]) for before, after, back in steps if back]
        yield _both(sessions, lucks, there, again) if again else _one_way(sessions, lucks, there)


def _median(ordered: Array, count: NDArray[np.int_]) -> Array:
    low, high = ((count - 1) // 2)[..., None], (count // 2)[..., None]
    pair = np.take_along_axis(ordered, low, -1) + np.take_along_axis(ordered, high, -1)
    found: Array = pair[..., 0] / 2.0
    return found


def _spread(laps: Array, middles: Array) -> Array:
    apart = np.sort(np.abs(np.diff(laps, axis=2)).reshape(len(laps), -1), axis=1)
    place = 0.25 * (np.isfinite(apart).sum(axis=1) - 1)
    low, rows = np.floor(place).astype(int), np.arange(len(apart))
    part = place - low
    quartile = apart[rows, low] * (1.0 - part) + apart[rows, low + 1] * part
    found: Array = np.maximum(quartile / laps_.QUARTILE, laps_.LEAST_SPREAD * np.median(middles, axis=1))
    return found


def _sessions(laps: Array) -> Sessions:
    count = np.isfinite(laps).sum(axis=2)
    middle = _median(np.sort(laps, axis=2), count)
    spread = _spread(laps, middle)[:, None]
    cold, warm = np.ones(count.shape, bool), laps.copy()
    for place in range(laps_.MOST_WARM_UP):
        slow = laps[:, :, place] > middle + laps_.WARM_UP * spread
        cold &= slow & (place < count - FEWEST)
        warm[:, :, place] = np.where(cold, np.nan, warm[:, :, place])
    ordered = np.sort(warm, axis=2)
    kept = np.isfinite(ordered).sum(axis=2)
    for _ in range(laps_.PASSES):
        limit = _median(ordered, kept) + laps_.CUT * spread
        kept = np.minimum(kept, np.maximum(FEWEST, (ordered <= limit[..., None]).sum(axis=2)))
    among = np.arange(laps.shape[2]) < kept[..., None]
    mean = np.where(among, ordered, 0.0).sum(axis=2) / kept
    squares = np.where(among, (ordered - mean[..., None]) ** 2, 0.0).sum(axis=(1, 2))
    freedom = (kept - 1).sum(axis=1).astype(float)
    return Sessions(mean, kept.astype(float), np.sqrt(squares / freedom), freedom)


def _lucks(sessions: Sessions, judged: int, runs: list[Places]) -> Lucks:
    lap = np.median(sessions.mean[:, :judged], axis=1)
    assumed = np.maximum(luck_.LUCK_OVER_SCATTER * sessions.scatter, luck_.LEAST_LUCK * lap)
    each = assumed**2 + sessions.scatter**2 / np.median(sessions.count[:, :judged], axis=1)
    far = np.maximum(luck_.FAR_LUCKS * np.sqrt(2.0 * each), luck_.FAR_SHARE * lap)
    none = np.zeros(len(lap))
    if not runs:
        return Lucks(assumed, sessions.freedom, none > 0, sessions.scatter, none, none, far)
    variance, freedom, drift, drift_sd, steps = _told(sessions, runs, far)
    told = steps >= FEWEST
    learnt = told & (freedom >= luck_.ENOUGH_FREEDOM)
    assumed = np.where(told, np.sqrt(np.maximum(assumed**2, assumed**2 + variance - each)), assumed)
    least = luck_.LEAST_LUCK / 3.0 * lap
    return Lucks(
        np.where(learnt, np.maximum(np.sqrt(variance), least), assumed),
        np.where(learnt, freedom, sessions.freedom),
        learnt,
        sessions.scatter,
        np.where(learnt, drift, 0.0),
        np.where(learnt, drift_sd, 0.0),
        far,
    )


def _told(sessions: Sessions, runs: list[Places], far: Array) -> tuple[Array, Array, Array, Array, Array]:
    """Return variance, freedom, drift, its deviation and how many steps there are; runs have two steps."""
    changes = np.stack([np.diff(sessions.mean[:, run], axis=1) for run in runs], axis=1)
    near = np.abs(changes) <= far[:, None, None]
    steps = near.sum(axis=(1, 2)).astype(float)
    of_run = near.sum(axis=2)
    chains = (of_run > 0).sum(axis=1)
    with np.errstate(invalid="ignore", divide="ignore"):
        drift = np.where(near, changes, 0.0).sum(axis=(1, 2)) / steps
        whole = np.where(near, (changes - drift[:, None, None]) ** 2, 0.0).sum(axis=(1, 2))
        variance = whole / (2.0 * (steps - chains / steps))
        freedom = np.where(of_run > 0, 2.0 * of_run**2 / (3.0 * of_run - 1.0), 0.0).sum(axis=1) - 1.0
        drift_sd = np.sqrt(2.0 * variance * chains) / steps
    return variance, freedom, drift, drift_sd, steps


def _sd(sessions: Sessions, lucks: Lucks, steps: list[tuple[int, int]]) -> Array:
    weights: dict[int, float] = {}
    for before, after in steps:
        weights[after] = weights.get(after, 0.0) + 1.0 / len(steps)
        weights[before] = weights.get(before, 0.0) - 1.0 / len(steps)
    variances = [w * w * lucks.variance(sessions.count[:, place]) for place, w in weights.items()]
    found: Array = np.sqrt(np.sum(variances, axis=0))
    return found


def _gain(sessions: Sessions, steps: list[tuple[int, int]]) -> Array:
    found: Array = np.mean(
        [sessions.mean[:, after] - sessions.mean[:, before] for before, after in steps], axis=0
    )
    return found


def _both(
    sessions: Sessions, lucks: Lucks, there: list[tuple[int, int]], again: list[tuple[int, int]]
) -> dict[Verdict, Bools]:
    level = effect.level_of(min(len(there), len(again)))
    over = [_gain(sessions, steps) / _sd(sessions, lucks, steps) for steps in (there, again)]
    return {
        "helped": 1.0 - stdtr(lucks.freedom, -np.maximum(*over)) <= level,
        "made it worse": 1.0 - stdtr(lucks.freedom, np.minimum(*over)) <= level,
    }


def _one_way(sessions: Sessions, lucks: Lucks, steps: list[tuple[int, int]]) -> dict[Verdict, Bools]:
    lap = np.median(sessions.mean[:, [before for before, _ in steps]], axis=1)
    share = np.where(lucks.learnt, effect.ALLOWED_BESIDE_RECORD, effect.ALLOWED_DRIFT)
    beside = _gain(sessions, steps) - lucks.drift
    sd = np.hypot(_sd(sessions, lucks, steps), lucks.drift_sd)
    level, near = effect.level_of(len(steps) - effect.PAIRS + 1), np.abs(beside) <= lucks.far
    return {
        "helped": near & (1.0 - stdtr(lucks.freedom, (-beside - share * lap) / sd) <= level),
        "made it worse": near & (1.0 - stdtr(lucks.freedom, (beside - share * lap) / sd) <= level),
    }
