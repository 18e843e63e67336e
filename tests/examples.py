"""How many examples a costly property is tried with: few here, many in `python -m tests.bench longer`."""

import os

from hypothesis import settings

TIMES = "PADDOCK_TIMES"


def examples(number: int) -> settings:
    """Try three fifths of that many examples, or so many times more as the environment says; no deadline."""
    return settings(max_examples=-(-number * 3 // 5) * int(os.environ.get(TIMES, "1")), deadline=None)


def one_in(number: int) -> int:
    """Take one of so many, or of so many fewer as the environment says more is to be tried: at most all."""
    return max(1, number // int(os.environ.get(TIMES, "1")))
