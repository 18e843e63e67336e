"""The thread that keeps what is done, one step after the other, begun with the first of them."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future, ThreadPoolExecutor


class Writer:
    """Runs what it is given in one thread of its own; a command that only reads loads none of it."""

    def __init__(self) -> None:
        self._running: list[Future[object]] = []

    @cached_property
    def _thread(self) -> ThreadPoolExecutor:
        from concurrent.futures import ThreadPoolExecutor

        return ThreadPoolExecutor(max_workers=1, thread_name_prefix="keep")

    def submit(self, work: Callable[[], object]) -> None:
        """Run some work after all that was given before."""
        self._running.append(self._thread.submit(work))

    def wait(self, timeout: float | None = None) -> None:
        """Wait until all of it is done, or for so many seconds; safe from any thread."""
        if self._running:
            from concurrent.futures import wait

            wait(list(self._running), timeout=timeout)

    def forget_done(self) -> None:
        """Let go of what is done."""
        self._running = [future for future in self._running if not future.done()]

    def close(self) -> None:
        """Wait for all of it and end the thread."""
        if "_thread" in self.__dict__:
            self._thread.shutdown()
