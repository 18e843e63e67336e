"""The thread that keeps what is done, one step after the other, begun with the first of them."""

import threading
import weakref
from collections.abc import Callable
from queue import SimpleQueue

from paddock_tui.store.crash import report

_NAME = "keep"

_Work = SimpleQueue[Callable[[], object] | None]


class Writer:
    """Runs what it is given in one thread of its own; a command that only reads has none.

    A step goes to it with a key, so the way there is short: a pool, which makes more of each, took longer.
    """

    def __init__(self) -> None:
        self._work: _Work = SimpleQueue()
        self._end: Callable[[], object] | None = None

    def submit(self, work: Callable[[], object]) -> None:
        """Run some work after all that was given before."""
        if self._end is None:
            thread = threading.Thread(target=_run, args=(self._work,), name=_NAME, daemon=True)
            # At the end of the program too what was given is done first.
            self._end = weakref.finalize(self, _ended, self._work, thread)
            thread.start()
        self._work.put(work)

    def wait(self, timeout: float = -1) -> None:
        """Wait until all of it is done, or for so many seconds; safe from any thread."""
        if self._end is not None:
            done = threading.Lock()
            done.acquire()
            self._work.put(done.release)
            done.acquire(timeout=timeout)

    def close(self) -> None:
        """Wait for all of it and end the thread."""
        if self._end is not None:
            self._end()
            self._end = None


def is_at_work() -> bool:
    """Return whether a thread that keeps was not ended yet: the program ends with it, not before."""
    return any(one.name == _NAME for one in threading.enumerate())


def _run(given: _Work) -> None:
    while (work := given.get()) is not None:
        try:
            work()
        except Exception as error:
            report(error)


def _ended(given: _Work, thread: threading.Thread) -> None:
    given.put(None)
    if thread is not threading.current_thread():
        thread.join()
