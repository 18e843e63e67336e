"""One figure of one garage, in a process of its own: `python -m tests.bench._sizes_probe WHAT FOLDER AT`.

Prints the seconds of a processor that it took, or what else is asked for, as one number.
"""

import datetime as dt
import gc
import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.records.paths import Ref

SIZE = (80, 24)


class Screen:
    """What the screens do for a key, without a terminal: make the page of a place and lay it out."""

    def __init__(self, desk: "Desk", room: str, subject: "Ref | None" = None) -> None:
        from paddock_tui.screens.place import Place
        from paddock_tui.screens.run_state import RunState

        self.desk, self.state = desk, RunState()
        self.place = Place(room, subject or desk.session_in_hand())
        self.at = 0
        self.draw()

    def draw(self) -> None:
        """Make the page anew, and lay it out."""
        from paddock_tui.screens.judged_page import context_of, judged_page

        context = context_of(self.desk, self.place, None, None)
        self.page = judged_page(self.desk, self.place, context, self.state).page
        self.lay_out()

    def lay_out(self) -> None:
        """Lay the page out as it stands, for the cursor's row."""
        from paddock_tui.pages.layout import View, layout

        self.top = layout(self.page, View(*SIZE, self.at)).top

    def go_to(self, room: str) -> None:
        """Show another room."""
        from paddock_tui.screens.place import Place

        self.place, self.at = Place(room, self.place.subject), 0
        self.draw()

    def arrow(self) -> None:
        """Move the cursor by a row."""
        from paddock_tui.widgets.cursor import moved

        self.at = moved(self.page, self.at, "down", SIZE[1]) or 0
        self.lay_out()


def _taken(act: Callable[[], object], times: int = 1) -> float:
    """Return the seconds that it takes, the least of several."""
    found = []
    for _ in range(times):
        start = time.process_time()
        act()
        found.append(time.process_time() - start)
    return min(found)


def first_page(folder: Path, now: dt.datetime) -> float:
    """Return the seconds from the process's start to the first page, which knows no verdict."""
    import paddock_tui.app  # noqa: F401
    from paddock_tui.pages.layout import View, layout
    from paddock_tui.pages.opening_page import opening_page
    from paddock_tui.store.garage import GarageFiles

    layout(opening_page(GarageFiles(folder), lambda: now, SIZE[1]), View(*SIZE, 0))
    return time.process_time()


def verdict(desk: "Desk") -> float:
    """Return the seconds from the process's start to a page with its verdict."""
    import paddock_tui.app  # noqa: F401

    Screen(desk, "setup")
    return time.process_time()


def _opened(desk: "Desk", room: str) -> Screen:
    """Show a room with its verdict, keep what was learnt for it, and look for no garbage among that.

    The program does both: without what an earlier run kept, all sessions are gone through once more by the
    first page that asks. A look for garbage comes once in so many new objects. Counted from the start it
    fell into the page that was measured, or beside it, by how many objects had come before: 25 ms beside the
    30 of the page itself, in the small garage and not in the large one, or the other way round.
    """
    screen = Screen(desk, room)
    from paddock_tui.app import GARBAGE_AFTER

    for keep in desk.histories.to_keep(desk.files):
        keep()
    gc.set_threshold(GARBAGE_AFTER, 20, 100)
    gc.freeze()
    return screen


def arrow(desk: "Desk") -> float:
    """Return the seconds of an arrow on the garage page."""
    screen = _opened(desk, "garage")
    return _taken(screen.arrow, 5)


def garage(desk: "Desk") -> float:
    """Return the seconds of the garage page by key."""
    screen = _opened(desk, "setup")
    return _taken(lambda: screen.go_to("garage"))


def digit(desk: "Desk") -> float:
    """Return the seconds of a digit on the set-up page: the step, and the page with its verdict."""
    from paddock_tui.desk import setting
    from paddock_tui.records.edits import Step

    screen = _opened(desk, "setup")
    subject = screen.place.subject
    assert subject is not None
    values = iter(("37", "36") * 3)

    def press() -> None:
        step = setting(desk.files, subject, [("chain_slack", f"{next(values)} mm")], desk.units())
        assert isinstance(step, Step), step
        desk.do(step)
        desk.take_over()
        screen.draw()

    found = _taken(press, 5)
    desk.settled()
    return found


def page_of(room: str, times: int = 1) -> Callable[["Desk"], float]:
    """Return what takes the seconds of a room's page by key; of several the least."""

    def measure(desk: "Desk") -> float:
        screen = _opened(desk, "setup")
        return _taken(lambda: screen.go_to(room), times)

    return measure


def idle(desk: "Desk") -> float:
    """Return the CPU seconds of one look for what others changed, the screens at rest."""
    _opened(desk, "setup")
    desk.poll()
    start = time.process_time()
    for _ in range(5):
        desk.poll()
    return (time.process_time() - start) / 5


def memory(desk: "Desk") -> float:
    """Return the MiB of memory at most, after the first page and the garage page."""
    import paddock_tui.app  # noqa: F401

    screen = Screen(desk, "setup")
    screen.go_to("garage")
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


FIRST = "first page"

PROBES: dict[str, Callable[["Desk"], float]] = {
    "verdict": verdict,
    "arrow on g": arrow,
    "g": garage,
    "digit": digit,
    "p": page_of("setup"),
    "s": page_of("session"),
    "c": page_of("checklist"),
    "h": page_of("last"),
    "j": page_of("next"),
    "j again": page_of("next", 2),
    "l": page_of("ledger"),
    "idle": idle,
    "memory": memory,
}


def main(arguments: list[str]) -> int:
    """Take the figure and print it."""
    what, folder, at = arguments
    from paddock_tui.__main__ import GARBAGE_AFTER

    # As the program does until it is loaded.
    gc.set_threshold(GARBAGE_AFTER, 20, 100)
    gc.freeze()
    moment = dt.datetime.fromisoformat(at)
    if what == FIRST:
        found: Any = first_page(Path(folder), moment)
    else:
        from paddock_tui.desk import Desk

        found = PROBES[what](Desk(Path(folder), lambda: moment))
    sys.stdout.write(f"{found:.6f}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
