"""The program on a pseudo-terminal of 80 by 24, as a rider starts it."""

import contextlib
import time
from collections.abc import Iterator
from pathlib import Path

from tests.widgets.wire import Wire

_OURS = """
import sys
from paddock_tui.__main__ import script
sys.argv = ["paddock-tui", {garage!r}, "--at", {at!r}]
script()
"""
SAMPLE_AT = "2026-06-20T12:55:30"
"""When the sample is looked at: before a session, on a day that has begun."""

JUDGED_S = 120.0
_READY = "? help"


def code_of(garage: Path, at: str = SAMPLE_AT) -> str:
    """Return what starts the program."""
    return _OURS.format(garage=str(garage), at=at)


@contextlib.contextmanager
def opened(code: str) -> Iterator[Wire]:
    """Start it, and wait for its verdict; leave it with its key."""
    with Wire(code, loaded=False) as wire:
        wait_until_judged(wire)
        yield wire
        wire.type("q")
        wire.ended()


def wait_until_judged(wire: Wire) -> None:
    """Wait for the verdict of the start, however many seasons it takes, and until it is quiet."""
    start = time.perf_counter()
    while _READY not in wire.shown or "reading" in wire.shown:
        assert time.perf_counter() - start < JUDGED_S, wire.shown
        wire.read(0.1, 1.0)
    wire.read(1.0)
