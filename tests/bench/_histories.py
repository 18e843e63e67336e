"""Days of one rider, drawn: how times drift within a day, how laps scatter, what is tried and when.

Laps of a session are drawn from a few thousand made once, and laid on that session's level. Arrays hold
histories x sessions x laps, laps that are not there as NaN.
"""

import functools
import random
from collections.abc import Callable

import attrs
import numpy as np
from numpy.typing import NDArray

from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.calc.stint import TimedLap, stint

Array = NDArray[np.float64]
Draw = np.random.Generator

LAP_S = 104.0
SCATTER_S = 0.25
MOST_LAPS = 9
_DRAWN = 3000

CHANGED_SHARE, CHANGE_S = 0.5, 0.2
"""Of the sessions on record so many changed something, worth a normal figure with this deviation in s."""


@attrs.frozen
class Shape:
    """How the times of a day drift, how many laps a session has, and which share of them is spoilt.

    `drift` draws for so many days what each of so many sessions costs in s. `warm_up` is what the first
    laps of a session cost.
    """

    drift: Callable[[Draw, int, int], Array]
    laps: tuple[int, int] = (5, MOST_LAPS)
    spoilt: float = 0.08
    scatter_s: float = SCATTER_S
    warm_up: tuple[float, ...] = ()


def _learning(draw: Draw, days: int, count: int) -> Array:
    learns, keeps, slope = (
        draw.uniform(low, high, (days, 1)) for low, high in ((0, 1.5), (0.1, 0.5), (-0.1, 0.1))
    )
    place = np.arange(count)
    return learns * keeps**place + slope * place


def _first_session(_: Draw, days: int, count: int) -> Array:
    return np.tile(4.0 * (np.arange(count) == 0), (days, 1))


def _last_session(_: Draw, days: int, count: int) -> Array:
    return np.tile(4.0 * (np.arange(count) == count - 1), (days, 1))


def _fading(draw: Draw, days: int, count: int) -> Array:
    return draw.uniform(0.0, 0.4, (days, 1)) * np.arange(count)


def _coming_in(draw: Draw, days: int, count: int) -> Array:
    return -_fading(draw, days, count)


def _turning(draw: Draw, days: int, count: int) -> Array:
    slope, turn, place = draw.uniform(-0.1, 0.1, (days, 1)), draw.integers(1, 4, (days, 1)), np.arange(count)
    found: Array = slope * np.where(place <= turn, place, 2 * turn - place)
    return found


SHAPES = {
    "learning, up to 1.5 s": Shape(_learning),
    "learnt in one session, 4 s": Shape(_first_session),
    "tyres gone in the last, 4 s": Shape(_last_session),
    "fading tyres, to 0.4 s each": Shape(_fading),
    "track comes in, to 0.4 s each": Shape(_coming_in),
    "weather that turns, 0.1 s": Shape(_turning),
    "traffic, every fourth lap": Shape(_first_session, spoilt=0.25),
    "three or four laps": Shape(_first_session, (3, 4)),
    "two laps of warm-up": Shape(_first_session, warm_up=(1.0, 0.4)),
    "steady rider, 0.12 s": Shape(_first_session, scatter_s=0.12),
}


@attrs.frozen
class Design:
    """What is ridden and when it is judged.

    `days` say for each session whether the change is on the bike; `steps` are the steps that are judged, as
    places before and after and whether the change was taken back; `looks` after how many of them. `record`
    are earlier days of four sessions, and whether set-ups changed on them.
    """

    days: tuple[tuple[bool, ...], ...]
    steps: tuple[tuple[int, int, bool], ...]
    looks: tuple[int, ...]
    record: tuple[int, bool] = (0, False)

    @property
    def judged(self) -> int:
        """How many sessions the days have; those of the record come after them."""
        return sum(len(day) for day in self.days)

    @property
    def runs(self) -> tuple[range, ...]:
        """The sessions of each day of the record, without its first one."""
        return tuple(
            range(self.judged + 4 * day + 1, self.judged + 4 * day + 4) for day in range(self.record[0])
        )


def _there_and_back(sessions: int, record: tuple[int, bool] = (0, False)) -> Design:
    day = tuple(bool(place % 2) for place in range(sessions))
    steps = tuple((place, place + 1, bool(place % 2)) for place in range(sessions - 1))
    return Design((day,), steps, tuple(range(2, sessions, 2)), record)


def _pairs(record: tuple[int, bool] = (0, False)) -> Design:
    """Three A-B pairs on three days, none of which leaves the first session of its day."""
    return Design(((False, False, True),) * 3, ((1, 2, False), (4, 5, False), (7, 8, False)), (3,), record)


REPEATS, SEASON = (3, False), (12, True)

DESIGNS = {
    "A-B-A": _there_and_back(3),
    "A-B-A, six repeats known": _there_and_back(3, REPEATS),
    "A-B-A, a season known": _there_and_back(3, SEASON),
    "A-B-A-B-A-B-A, each time": _there_and_back(7),
    "three A-B pairs": _pairs(),
    "three pairs, season known": _pairs(SEASON),
}


@functools.cache
def _pool(shape: Shape) -> Array:
    """Make sessions as their clean laps are read: what is spoilt is not marked, and mostly found."""
    draw = random.Random(f"{shape.laps} {shape.spoilt} {shape.scatter_s} {shape.warm_up}")
    found: list[list[float]] = []
    while len(found) < _DRAWN:
        times = [
            LAP_S
            + draw.gauss(0.0, shape.scatter_s)
            + (draw.expovariate(1.0) + 0.5 if draw.random() < shape.spoilt else 0.0)
            for _ in range(draw.randint(*shape.laps))
        ]
        for place, slow in enumerate(shape.warm_up):
            times[place] += slow
        clean = stint(TimedLap(number, one) for number, one in enumerate(times, 1)).times_s
        if len(clean) >= FEWEST:
            found.append(clean)
    laps = np.full((_DRAWN, MOST_LAPS), np.nan)
    for place, clean in enumerate(found):
        laps[place, : len(clean)] = clean
    return laps


def drawn(design: Design, shape: Shape, luck: float, effect_s: float, histories: int, draw: Draw) -> Array:
    """Draw the laps of all sessions; `luck` is that of a session over the scatter of a lap."""
    days = [np.tile(effect_s * np.array(day, float), (histories, 1)) for day in design.days]
    for _ in range(design.record[0]):
        changed = draw.random((histories, 4)) < CHANGED_SHARE * design.record[1]
        days.append(np.cumsum(changed * draw.normal(0.0, CHANGE_S, (histories, 4)), axis=1))
    level = np.concatenate([day + shape.drift(draw, *day.shape) for day in days], axis=1)
    level += draw.normal(0.0, luck * shape.scatter_s, level.shape)
    pool = _pool(shape)
    found: Array = pool[draw.integers(0, len(pool), level.shape)] + level[..., None]
    return found
