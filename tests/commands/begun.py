"""The processes that a test has begun as copies of its own."""

import os

import pytest


class Begun:
    """Notes which processes are begun."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.pids: list[int] = []
        self._fork = os.fork
        monkeypatch.setattr(os, "fork", self._noted)

    def _noted(self) -> int:
        pid = self._fork()
        self.pids.append(pid)
        return pid

    def all_are_gone(self, count: int) -> bool:
        """Return whether there were so many, none of which is there any more, not even to be waited for."""
        return len(self.pids) == count and not any(map(_is_there, self.pids))


def _is_there(pid: int) -> bool:
    try:
        os.waitpid(pid, os.WNOHANG)
    except ChildProcessError:
        return False
    return True
