"""How often a change is called a help that is none, and how often a true one is found.

`python -m tests.bench laps [HISTORIES]`: seeded histories of one rider's days. Each session has its luck,
each lap its scatter; some laps are spoilt and not marked; learning, tyres, track and weather drift in
`SHAPES`. What the change is worth is known here, so the verdicts can be counted: for every shape, for luck
as large as the scatter, half as large again and twice, with and without six repeats of a set-up on record.

Laps of a session are drawn from a few thousand made once, and laid on that session's level.
"""

import functools
import itertools
import random
import sys
from collections import Counter
from collections.abc import Callable

import attrs

from paddock_tui.trade.change_effect import Judgement, LoneChange, Ridden, judged
from paddock_tui.trade.session_comparison import FEWEST
from paddock_tui.trade.stint import TimedLap, stint

LAP_S = 104.0
SCATTER_S = 0.25
LUCKS = (1.0, 1.5, 2.0)
"""Luck of a session over the scatter of a lap."""

TRUE_S = -0.8
"""The help whose discovery is counted."""

_DRAWN = 3000


@attrs.frozen
class Shape:
    """How the times of a day drift, how many laps a session has, and which share of them is spoilt.

    `drift` draws a day: what a session of it costs in s, by its place and how many there are.
    """

    drift: Callable[[random.Random], Callable[[int, int], float]]
    laps: tuple[int, int] = (5, 9)
    spoilt: float = 0.08
    scatter_s: float = SCATTER_S


def _learning(draw: random.Random) -> Callable[[int, int], float]:
    learns, keeps, slope = draw.uniform(0.0, 1.5), draw.uniform(0.1, 0.5), draw.uniform(-0.1, 0.1)
    return lambda place, _: learns * float(keeps**place) + slope * place


def _first_session(_: random.Random) -> Callable[[int, int], float]:
    return lambda place, _: 4.0 if place == 0 else 0.0


def _last_session(_: random.Random) -> Callable[[int, int], float]:
    return lambda place, count: 4.0 if place == count - 1 else 0.0


def _fading(draw: random.Random) -> Callable[[int, int], float]:
    slope = draw.uniform(0.0, 0.4)
    return lambda place, _: slope * place


def _coming_in(draw: random.Random) -> Callable[[int, int], float]:
    slope = draw.uniform(0.0, 0.4)
    return lambda place, _: -slope * place


def _turning(draw: random.Random) -> Callable[[int, int], float]:
    slope, turn = draw.uniform(-0.1, 0.1), draw.randint(1, 3)
    return lambda place, _: slope * (place if place <= turn else 2 * turn - place)


SHAPES = {
    "learning, up to 1.5 s": Shape(_learning),
    "learnt in one session, 4 s": Shape(_first_session),
    "tyres gone in the last, 4 s": Shape(_last_session),
    "fading tyres, to 0.4 s each": Shape(_fading),
    "track comes in, to 0.4 s each": Shape(_coming_in),
    "weather that turns, 0.1 s": Shape(_turning),
    "traffic, every fourth lap": Shape(_first_session, spoilt=0.25),
    "three or four laps": Shape(_first_session, (3, 4)),
    "steady rider, 0.12 s": Shape(_first_session, scatter_s=0.12),
}


@attrs.frozen
class Drawn(Ridden):
    """A session whose laps were drawn, laid on the level of its day."""

    level_s: float = 0.0

    @property
    def usual_s(self) -> float:
        """The middle of the clean laps."""
        return self.level_s + Ridden.usual_s.fget(self)  # type: ignore[attr-defined, no-any-return]


@functools.cache
def _pool(laps: tuple[int, int], spoilt: float, scatter_s: float) -> tuple[tuple[float, ...], ...]:
    draw = random.Random(f"{laps} {spoilt} {scatter_s}")
    found: list[tuple[float, ...]] = []
    while len(found) < _DRAWN:
        times = [
            LAP_S
            + draw.gauss(0.0, scatter_s)
            + (draw.expovariate(1.0) + 0.5 if draw.random() < spoilt else 0.0)
            for _ in range(draw.randint(*laps))
        ]
        clean = stint(TimedLap(number, one) for number, one in enumerate(times, 1)).times_s
        if len(clean) >= FEWEST:
            found.append(tuple(clean))
    return tuple(found)


@attrs.frozen
class Rider:
    """One history being drawn: the shape of its days, and the luck of a session in s."""

    draw: random.Random
    shape: Shape
    luck_s: float

    def day(self, with_it: list[bool], effect_s: float, name: str = "") -> list[Ridden]:
        """Ride a day: a session for each of `with_it`, which says whether the change was on the bike."""
        shape = self.shape
        drift, pool = shape.drift(self.draw), _pool(shape.laps, shape.spoilt, shape.scatter_s)
        return [
            Drawn(
                f"{name}{place}",
                self.draw.choice(pool),
                place == 0,
                drift(place, len(with_it)) + self.draw.gauss(0.0, self.luck_s) + (effect_s if on else 0.0),
            )
            for place, on in enumerate(with_it)
        ]

    def repeats(self) -> list[list[float]]:
        """Ride three earlier days on one set-up; the first session of each is no repeat of the others."""
        days = [self.day([False] * 4, 0.0) for _ in range(3)]
        return [[one.usual_s for one in day[1:]] for day in days]


def there_and_back(rider: Rider, effect_s: float) -> list[Judgement]:
    """Judge A-B-A from the first session of a day on."""
    return _looks(rider.day([False, True, False], effect_s), [2])


def judged_again(rider: Rider, effect_s: float) -> list[Judgement]:
    """Judge A-B-A, then once more after each further B-A of the same day."""
    return _looks(rider.day([False, True] * 3 + [False], effect_s), [2, 4, 6])


def with_repeats(rider: Rider, effect_s: float) -> list[Judgement]:
    """Judge A-B-A with six repeated set-ups on record."""
    return _looks(rider.day([False, True, False], effect_s), [2], rider.repeats())


def three_pairs(rider: Rider, effect_s: float) -> list[Judgement]:
    """Judge three A-B pairs on three days, none of them opening its day."""
    steps = []
    for name in "abc":
        ridden = rider.day([False, False, True], effect_s, name)
        steps.append(LoneChange(ridden[1], ridden[2]))
    return [judged(steps)]


def one_pair(rider: Rider, effect_s: float) -> list[Judgement]:
    """Judge one A-B pair."""
    return _looks(rider.day([False, True], effect_s), [1])


def _looks(ridden: list[Ridden], at: list[int], runs_s: list[list[float]] | None = None) -> list[Judgement]:
    steps = [
        LoneChange(before, after, back=bool(place % 2))
        for place, (before, after) in enumerate(itertools.pairwise(ridden))
    ]
    return [judged(steps[:count], runs_s or ()) for count in at]


Design = Callable[[Rider, float], list[Judgement]]

DESIGNS: dict[str, Design] = {
    "A-B-A": there_and_back,
    "A-B-A, six repeats known": with_repeats,
    "A-B-A-B-A-B-A, each time": judged_again,
    "three A-B pairs": three_pairs,
}


def rates(
    design: Design, shape: str, luck: float, effect_s: float, histories: int, seed: int = 1
) -> dict[str, float]:
    """Give the share of histories in which each verdict came up at any of the judgements."""
    kind = SHAPES[shape]
    draw = random.Random(f"{design.__name__} {shape} {luck} {effect_s} {seed}")
    rider = Rider(draw, kind, luck * kind.scatter_s)
    seen: Counter[str] = Counter()
    for _ in range(histories):
        seen.update({one.verdict for one in design(rider, effect_s)})
    return {word: count / histories for word, count in seen.items()}


def main(arguments: list[str]) -> int:
    """Print for every design and shape how often nothing is called a help or a harm, and a help found."""
    histories = int(arguments[0]) if arguments else 2000
    out = sys.stdout.write
    out(f"{histories} histories each; laps of {LAP_S:g} s, scatter {SCATTER_S:g} s; luck over scatter:\n")
    columns = [f"{luck:g} x" for luck in LUCKS]
    out(f"{'':<59}{'nothing, called a help':<24}{'called a harm':<24}{TRUE_S:g} s found\n")
    out(f"{'':<58}" + "".join(f"{one:>7}" for one in columns) + "   ")
    out("".join(f"{one:>7}" for one in columns) + f"   {columns[0]:>7}\n")
    for name, design in DESIGNS.items():
        for shape in SHAPES:
            found = [rates(design, shape, luck, 0.0, histories) for luck in LUCKS]
            power = rates(design, shape, 1.0, TRUE_S, max(1, histories // 10)).get("helped", 0.0)
            out(f"{name:<27}{shape:<31}")
            for word in ("helped", "made it worse"):
                out("".join(f"{one.get(word, 0.0):>7.1%}" for one in found) + "   ")
            out(f"{power:>7.1%}\n")
            sys.stdout.flush()
    return 0
