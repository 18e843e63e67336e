"""Work that is shared out among processes: each does a piece of it, and tells what came of every part.

They begin as copies of this one, so that all that is loaded and read by then is theirs too. Nothing rests on
them: what one of them did not tell, whatever it died of, is for whoever shared it out to do.
"""

import gc
import itertools
import os
import pickle
import selectors
import signal
import struct
import sys
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from typing import Any, TypeVar

T = TypeVar("T")

_LENGTH = struct.Struct("!I")

_MOST = 8
"""More would take less time, but each holds the records of all that went before."""

_CATCHING_UP = 0.3
"""How much of the time that a part takes is taken by going through it because it went before."""


def processors() -> int:
    """Return how many processes can do something at once; 1 where none may be begun as a copy of this one."""
    # A copy has none of the other threads, but all the locks that these held.
    if not hasattr(os, "fork") or sys.platform == "darwin" or threading.active_count() > 1:
        return 1
    there = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(there, _MOST)


def pieces(lines: Sequence[int], ways: int) -> list[range]:
    """Cut parts into at most so many pieces which take about the same time.

    They stand on lines of so many, one line after the other. What goes before a piece on the line that it
    begins on has to be gone through for it first: the later it begins there, the fewer are its own.
    """
    parts = sum(lines)
    least, most = parts / max(ways, 1), float(parts)
    while most - least > 0.5:
        time = (least + most) / 2
        if len(_cut(lines, time)) <= ways:
            most = time
        else:
            least = time
    return _cut(lines, most)


def _cut(lines: Sequence[int], time: float) -> list[range]:
    """Cut parts into pieces that take no longer than so many parts do, but for one by itself."""
    found: list[range] = []
    start, parts = 0, sum(lines)
    begins = [end - count for end, count in zip(itertools.accumulate(lines), lines, strict=True)]
    while start < parts:
        before = start - max(one for one in begins if one <= start)
        end = min(start + max(int(time - _CATCHING_UP * before), 1), parts)
        found.append(range(start, end))
        start = end
    return found


def shared_out(work: Callable[[range], Iterable[T]], among: Sequence[range]) -> Iterator[T]:
    """Do work in a process of its own for each piece; give what each tells of its parts, as it comes."""
    with selectors.DefaultSelector() as ready, _processes(work, among) as pipes:
        for pipe in pipes:
            ready.register(pipe, selectors.EVENT_READ, bytearray())
        while ready.get_map():
            for key, _ in ready.select():
                read = os.read(key.fd, 1 << 16)
                if not read:
                    ready.unregister(key.fd)
                key.data.extend(read)
                yield from _messages(key.data)


def _messages(come: bytearray) -> Iterator[Any]:
    """Give the messages that have come whole, and take them away."""
    while len(come) >= _LENGTH.size:
        end = _LENGTH.size + _LENGTH.unpack_from(come)[0]
        if len(come) < end:
            return
        yield pickle.loads(bytes(come[_LENGTH.size : end]))
        del come[:end]


@contextmanager
def _processes(work: Callable[[range], Iterable[object]], among: Sequence[range]) -> Iterator[list[int]]:
    """Begin a process for each piece; give what each can be read from. None outlives this."""
    pipes: list[int] = []
    begun: list[int] = []
    try:
        for piece in among:
            source, sink = os.pipe()
            pipes.append(source)
            pid = os.fork()
            if pid == 0:
                _work(work, piece, sink)
            begun.append(pid)
            os.close(sink)
        yield pipes
    finally:
        for pipe in pipes:
            os.close(pipe)
        for pid in begun:
            with suppress(ProcessLookupError):
                os.kill(pid, signal.SIGTERM)
        for pid in begun:
            with suppress(ChildProcessError):
                os.waitpid(pid, 0)


def _work(work: Callable[[range], Iterable[object]], piece: range, sink: int) -> None:
    """Do a piece, tell of each part, and end: whatever goes wrong is found out by who does it again."""
    # What is gone through is let go of by itself: nothing in it leads back to itself.
    gc.freeze()
    gc.disable()
    try:
        for told in work(piece):
            message = pickle.dumps(told, pickle.HIGHEST_PROTOCOL)
            _write(sink, _LENGTH.pack(len(message)) + message)
    finally:
        os._exit(0)


def _write(sink: int, message: bytes) -> None:
    while message:
        message = message[os.write(sink, message) :]
