"""Whether git was at work in a garage a moment ago, so that what changed came with it from elsewhere.

Told by the files that git writes at a checkout, pull, merge or stash; git itself is not started. Looked at
only where this user ran `git setup`.
"""

from collections.abc import Callable
from pathlib import Path

from paddock_tui.store.git_consent import allowed

LATELY_S = 3.0
"""Git writes its index after the files, and the files are looked at once a second."""

_WRITTEN = ("index", "HEAD", "ORIG_HEAD", "logs/HEAD", "logs/refs/stash")


class GitMovement:
    """Watches the repository around a garage. `clock` counts seconds from any moment on."""

    def __init__(self, root: Path, clock: Callable[[], float]) -> None:
        self._clock = clock
        self._folder = _folder(root) if allowed(root) else None
        self._seen = self._stamps()
        self._at: float | None = None

    def lately(self) -> bool:
        """Return whether git wrote within the last moments, or is at it."""
        if self._folder is None:
            return False
        now, seen = self._clock(), self._stamps()
        if seen != self._seen or (self._folder / "index.lock").exists():
            self._seen, self._at = seen, now
        return self._at is not None and now - self._at <= LATELY_S

    def _stamps(self) -> tuple[int, ...]:
        return tuple(_stamp(self._folder / name) for name in _WRITTEN) if self._folder is not None else ()


def _folder(root: Path) -> Path | None:
    """Return the folder in which git keeps a repository; None where it is none of the usual kind."""
    for place in (root, *root.parents):
        found = place / ".git"
        if found.is_dir():
            return found
    return None


def _stamp(file: Path) -> int:
    try:
        return file.stat().st_mtime_ns
    except OSError:
        return 0
