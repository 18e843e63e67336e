"""Merges of drawn triples: `python -m tests.bench merges [N] [--seed S]` counts the wrong ones."""

import random
import sys
import time

from tests.merge.drawn import drawn_triple
from tests.merge.test_properties import merge, wrong


def main(arguments: list[str]) -> int:
    """Merge N triples (100,000), print the seed and what was refused and wrong; 1 where any was wrong."""
    count = int(arguments[0]) if arguments and arguments[0].isdigit() else 100_000
    named = "--seed" in arguments
    seed = int(arguments[arguments.index("--seed") + 1]) if named else random.randrange(10**9)
    drawn = random.Random(seed)
    refused = disputed = bad = 0
    began = time.perf_counter()
    for _ in range(count):
        triple = drawn_triple(drawn)
        found = merge(triple)
        said = wrong(triple, found)
        refused += found is None
        disputed += found is not None and bool(found.conflicts)
        if said:
            bad += 1
            sys.stdout.write(f"WRONG: {said}\n{triple!r}\n")
    took = time.perf_counter() - began
    sys.stdout.write(f"seed {seed}: {count} triples, {bad} wrong, {disputed} with conflicts, ")
    sys.stdout.write(f"{refused} refused whole, {took:.0f} s\n")
    return 1 if bad else 0
