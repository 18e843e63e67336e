"""How often a change is called a help that is none, and how often a true one is found.

`python -m tests.bench laps [HISTORIES]`, 100,000 where none is said: seeded histories of one rider's days.
Each session has its luck, each lap its scatter; some laps are spoilt and not marked; learning, tyres, track
and weather drift in `SHAPES`. What the change is worth is known here, so the verdicts can be counted: for
every design and shape, for luck as large as the scatter, half as large again and twice.
"""

import sys
import zlib
from collections import Counter

import numpy as np

from paddock_tui.calc.change_effect import Verdict
from tests.bench._histories import DESIGNS, LAP_S, SCATTER_S, SHAPES, drawn
from tests.bench._judged_many import verdicts

LUCKS = (1.0, 1.5, 2.0)
"""Luck of a session over the scatter of a lap."""

TRUE_S = -0.8
"""The help whose discovery is counted."""

HISTORIES = 100_000
_AT_ONCE = 4_000


def rates(
    design: str, shape: str, luck: float, effect_s: float, histories: int, seed: int = 1
) -> dict[Verdict, float]:
    """Return the share of histories in which each verdict came up at any of the judgements."""
    draw = np.random.default_rng([zlib.crc32(f"{design} {shape} {luck} {effect_s}".encode()), seed])
    kind, seen, left = DESIGNS[design], Counter[Verdict](), histories
    while left:
        laps = drawn(kind, SHAPES[shape], luck, effect_s, min(left, _AT_ONCE), draw)
        left -= len(laps)
        looks = list(verdicts(kind, laps))
        for word in looks[0]:
            seen[word] += int(np.any([look[word] for look in looks], axis=0).sum())
    return {word: count / histories for word, count in seen.items()}


def main(arguments: list[str]) -> int:
    """Print for every design and shape how often nothing is called a help or a harm, and a help found."""
    histories = int(arguments[0]) if arguments else HISTORIES
    out = sys.stdout.write
    out(f"{histories} histories each; laps of {LAP_S:g} s, scatter {SCATTER_S:g} s; luck over scatter:\n")
    columns = [f"{luck:g} x" for luck in LUCKS]
    out(f"{'':<59}{'nothing, called a help':<24}{'called a harm':<24}{TRUE_S:g} s found\n")
    out(f"{'':<58}" + "".join(f"{one:>7}" for one in columns) + "   ")
    out("".join(f"{one:>7}" for one in columns) + f"   {columns[0]:>7}\n")
    for design in DESIGNS:
        for shape in SHAPES:
            found = [rates(design, shape, luck, 0.0, histories) for luck in LUCKS]
            power = rates(design, shape, 1.0, TRUE_S, histories).get("helped", 0.0)
            out(f"{design:<28}{shape:<30}")
            for word in ("helped", "made it worse"):
                out("".join(f"{one[word]:>7.1%}" for one in found) + "   ")
            out(f"{power:>7.1%}\n")
            sys.stdout.flush()
    return 0
