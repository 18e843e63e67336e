"""How many functions are called, the interpreter's own too: the same on any machine, as seconds are not."""

import sys
from collections.abc import Callable
from types import FrameType


def calls_of(act: Callable[[], object]) -> int:
    """Count the calls in this thread while something is done."""
    counted = 0

    def count(_frame: FrameType, event: str, _argument: object) -> None:
        nonlocal counted
        counted += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        act()
    finally:
        sys.setprofile(before)
    return counted
