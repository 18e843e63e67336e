"""How often a change is called a help that is none, and how often a true one is found.

`python -m tests.bench laps [HISTORIES]`: seeded histories of one rider's days. Each session has its luck,
each lap its scatter; the rider learns, fast at first; the track warms; tyres age; some laps are spoilt and
not marked. What the change is worth is known here, so the verdicts can be counted.
"""

import itertools
import random
import sys
from collections import Counter
from collections.abc import Callable, Iterator

import attrs

from paddock_tui.trade.change_effect import Judgement, LoneChange, Ridden, judged
from paddock_tui.trade.stint import TimedLap, stint

LAP_S = 104.0
EFFECTS_S = (0.0, -0.2, -0.4, -0.8)


@attrs.frozen
class World:
    """What the days are like: scatter of laps and luck of sessions in s (sd), and how fast one learns.

    `learns_s` is what the first session costs over the last, at most, of which each further session leaves
    a share in `keeps`; `drift_s` what track and tyres do to each session, either way, at most.
    """

    scatter_s: float = 0.25
    luck_s: float = 0.25
    learns_s: float = 1.5
    keeps: tuple[float, float] = (0.1, 0.5)
    drift_s: float = 0.1
    spoilt: float = 0.08
    laps: tuple[int, int] = (5, 9)


STEEP = World(learns_s=4.0, keeps=(0.0, 0.0), drift_s=0.0)
"""The worst that learning can do to A-B-A: all of it between the first A and B."""

LUCKIER = World(luck_s=0.375)
WORST = World(learns_s=4.0, keeps=(0.0, 0.0), drift_s=0.0, luck_s=0.375)
"""The worst learning and more luck than is assumed: here the stated rate does not hold."""

STEADY = World(scatter_s=0.12, luck_s=0.12)


def day(
    draw: random.Random, world: World, with_it: list[bool], effect_s: float, name: str = ""
) -> list[Ridden]:
    """Ride a day: a session for each of `with_it`, which says whether the change was on the bike."""
    learns, keeps = draw.uniform(0.0, world.learns_s), draw.uniform(*world.keeps)
    drift = draw.uniform(-world.drift_s, world.drift_s)
    found = []
    for place, on in enumerate(with_it):
        level = LAP_S + learns * keeps**place + drift * place + draw.gauss(0.0, world.luck_s)
        laps = _laps(draw, world, level + (effect_s if on else 0.0))
        kept = stint(TimedLap(number, one) for number, one in enumerate(laps, 1))
        found.append(Ridden(f"{name}{place}", tuple(kept.times_s), place == 0))
    return found


def _laps(draw: random.Random, world: World, level_s: float) -> Iterator[float]:
    for _ in range(draw.randint(*world.laps)):
        spoilt = draw.expovariate(1.0) + 0.5 if draw.random() < world.spoilt else 0.0
        yield level_s + draw.gauss(0.0, world.scatter_s) + spoilt


def there_and_back(draw: random.Random, world: World, effect_s: float) -> list[Judgement]:
    """Judge A-B-A from the first session of a day on."""
    return _looks(day(draw, world, [False, True, False], effect_s), [2])


def judged_again(draw: random.Random, world: World, effect_s: float) -> list[Judgement]:
    """Judge A-B-A, then once more after each further B-A of the same day."""
    return _looks(day(draw, world, [False, True] * 3 + [False], effect_s), [2, 4, 6])


def three_pairs(draw: random.Random, world: World, effect_s: float) -> list[Judgement]:
    """Judge three A-B pairs on three days, none of them opening its day."""
    steps = []
    for name in "abc":
        ridden = day(draw, world, [False, False, True], effect_s, name)
        steps.append(LoneChange(ridden[1], ridden[2]))
    return [judged(steps)]


def one_pair(draw: random.Random, world: World, effect_s: float) -> list[Judgement]:
    """Judge one A-B pair."""
    return _looks(day(draw, world, [False, True], effect_s), [1])


def _looks(ridden: list[Ridden], at: list[int]) -> list[Judgement]:
    steps = [
        LoneChange(before, after, back=bool(place % 2))
        for place, (before, after) in enumerate(itertools.pairwise(ridden))
    ]
    return [judged(steps[:count]) for count in at]


Design = Callable[[random.Random, World, float], list[Judgement]]

DESIGNS: dict[str, tuple[Design, World]] = {
    "A-B-A": (there_and_back, World()),
    "A-B-A, learnt in one session": (there_and_back, STEEP),
    "A-B-A, luckier than assumed": (there_and_back, LUCKIER),
    "A-B-A, both of these": (there_and_back, WORST),
    "A-B-A, steady rider (0.12 s)": (there_and_back, STEADY),
    "A-B-A-B-A-B-A, judged each time": (judged_again, World()),
    "same, learnt in one session": (judged_again, STEEP),
    "three A-B pairs": (three_pairs, World()),
    "three A-B pairs, steady rider": (three_pairs, STEADY),
    "one A-B pair": (one_pair, World()),
}


def rates(design: str, effect_s: float, histories: int, seed: int = 1) -> dict[str, float]:
    """Give the share of histories in which each verdict came up at any of the judgements."""
    ride, world = DESIGNS[design]
    draw = random.Random(f"{design} {effect_s} {seed}")
    seen: Counter[str] = Counter()
    for _ in range(histories):
        seen.update({one.verdict for one in ride(draw, world, effect_s)})
    return {word: count / histories for word, count in seen.items()}


def main(arguments: list[str]) -> int:
    """Print the rates of every design and effect."""
    histories = int(arguments[0]) if arguments else 2000
    out = sys.stdout.write
    out(f"{histories} histories each; laps of {LAP_S:g} s, scatter 0.25 s, luck of a session 0.25 s\n")
    out(f"{'design':<34}{'true effect':>12}{'helped':>9}{'made it worse':>15}{'cause not known':>17}\n")
    for design in DESIGNS:
        for effect_s in EFFECTS_S:
            found = rates(design, effect_s, histories)
            unknown = sum(share for word, share in found.items() if word.endswith("cause not known"))
            helped, worse = found.get("helped", 0.0), found.get("made it worse", 0.0)
            out(f"{design:<34}{effect_s:>10.1f} s{helped:>9.1%}{worse:>15.1%}{unknown:>17.1%}\n")
    return 0
