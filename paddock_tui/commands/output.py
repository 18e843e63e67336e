"""Standard output that may not be writable: a full disk, or a reader that has left."""

import contextlib
import io
import os
import sys
from collections.abc import Iterator

from paddock_tui.store.errors import in_plain_words

TYPE_CHECKING = False  # what it stands for in `typing`, which takes longer to load than all of this
if TYPE_CHECKING:
    from typing import Any


class Output:
    """Passes on what is printed; after an error nothing more, so that the work itself is completed."""

    def __init__(self, stream: "Any") -> None:
        self._stream = stream
        self.error: OSError | None = None
        self._muted = False
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that is not UTF-8 gets a stand-in, no traceback

    def write(self, text: str) -> int:
        """Print a text, unless nothing can be printed."""
        if self.error is None and not self._muted:
            try:
                self._stream.write(text)
            except OSError as error:
                self.error = error
        return len(text)

    def mute(self) -> None:
        """Print nothing from here on."""
        self._muted = True

    def flush(self) -> None:
        """Have out what was printed."""
        if self.error is None:
            try:
                self._stream.flush()
            except OSError as error:
                self.error = error

    def finish(self) -> str:
        """Flush a last time; return what went wrong, in words, and nothing where all is out."""
        self.flush()
        if self.error is None:
            return ""
        with contextlib.suppress(OSError, ValueError):  # the flush at exit must not fail once more
            os.dup2(os.open(os.devnull, os.O_WRONLY), self._stream.fileno())
        return f"the output could not be written: {in_plain_words(self.error)}"

    def __getattr__(self, name: str) -> "Any":
        return getattr(self._stream, name)


@contextlib.contextmanager
def printing() -> Iterator[Output]:
    """Print through an `Output` for a while."""
    before = sys.stdout
    sys.stdout = output = Output(before)
    try:
        yield output
    finally:
        sys.stdout = before
