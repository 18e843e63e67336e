"""What a key will ask for is worked out while nobody types: a small piece at a time, so that no key waits."""

from collections.abc import Callable, Iterator

from paddock_tui.on_demand import Later
from paddock_tui.screens.host import Host
from paddock_tui.screens.registry import ROOMS

AGAIN_S, BETWEEN_S = 0.5, 0.02
"""Seconds until it is looked again whether all is loaded and judged, and between two pieces."""

After = Callable[[float, Callable[[], None]], object]
"""Has something done after so many seconds, unless the screen is gone by then."""


class Ahead:
    """Works out ahead, once, what the rooms of a screen say takes long, as soon as it is `ready`."""

    def __init__(self, host: Host, after: After, ready: Callable[[], bool]) -> None:
        self._host, self._after, self._ready = host, after, ready
        self._pieces: Iterator[None] | None = None
        self.is_done = False
        """Whether all of it is worked out."""

    def go_on(self) -> None:
        """Work out a piece, once there is a verdict and every module is loaded: no key waits for that."""
        if self._pieces is None and not (Later.is_loaded and self._ready()):
            self._after(AGAIN_S, self.go_on)
            return
        self._pieces = self._pieces or _pieces(self._host)
        if next(self._pieces, self) is self:
            self.is_done = True
        else:
            self._after(BETWEEN_S, self.go_on)


def begin(host: Host, after: After, ready: Callable[[], bool]) -> None:
    """Work out ahead for a screen."""
    Ahead(host, after, ready).go_on()


def _pieces(host: Host) -> Iterator[None]:
    for room in ROOMS.values():
        yield from room.ahead(host)
