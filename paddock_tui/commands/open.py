"""`open`: the screens, or on a terminal that can draw none the same pages as text."""

import datetime as dt
import os
import sys
from importlib import import_module
from pathlib import Path

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, complain, open_desk, say, sentences
from paddock_tui.desk.set_clock import SetClock
from paddock_tui.store.cut_short import declared
from paddock_tui.store.garage import GarageFiles


def open_screens(folder: str, at: dt.datetime | None) -> int:
    """Open the screens on a garage. `at` sets the clock, which then goes on from there."""
    problem = GarageFiles(Path(folder)).problem()
    if problem is not None:
        raise CommandStopped(NOT_DONE, *sentences(problem))
    if declared(Path(folder)):
        open_desk(folder, at).close()
    if _draws_nothing():
        return plain(folder, at)
    if not can_draw():
        complain(("the screens need a terminal", "  without one: paddock-tui show, set, check"))
        return NOT_DONE
    return draw(folder, at)


START = "guide"
"""The room of the guided start."""


def _draws_nothing() -> bool:
    return os.environ.get("TERM", "dumb") in ("", "dumb", "unknown")


def can_draw() -> bool:
    """Return whether this is a terminal that the screens can be drawn on."""
    return not _draws_nothing() and sys.stdin.isatty() and sys.stdout.isatty()


def draw(folder: str, at: dt.datetime | None, room: str = "") -> int:
    """Open the screens on a terminal, in a room where one is named."""
    # By name, so that no package below the screens knows of them.
    return int(import_module("paddock_tui.app").run(folder, _clock(at), room))


def plain(folder: str, at: dt.datetime | None) -> int:
    """Print what the first screens show, and how to go on without them."""
    from paddock_tui.commands.check import check
    from paddock_tui.commands.show import show

    show(folder, None)
    say(("",))
    check(folder, None, at)
    say(("", "this terminal draws no screens: go on with paddock-tui show, set and check"))
    return OK


def _clock(at: dt.datetime | None) -> "object":
    if at is None:
        return dt.datetime.now
    return SetClock(at - dt.datetime.now())
