"""`open`: the screens, or on a terminal that can draw none the same pages as text."""

import datetime as dt
import os
import sys
from importlib import import_module

from paddock_tui.commands.check import check
from paddock_tui.commands.common import NOT_DONE, OK, complain, open_desk, say
from paddock_tui.commands.show import show


def open_screens(folder: str, at: dt.datetime | None) -> int:
    """Open the screens on a garage. `at` sets the clock, which then goes on from there."""
    open_desk(folder, at).close()
    if os.environ.get("TERM", "dumb") in ("", "dumb", "unknown"):
        return plain(folder, at)
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        complain(("the screens need a terminal", "  without one: paddock-tui show, set, check"))
        return NOT_DONE
    # By name, so that no package below the screens knows of them.
    return int(import_module("paddock_tui.app").run(folder, _clock(at)))


def plain(folder: str, at: dt.datetime | None) -> int:
    """Print what the first screens show, and how to go on without them."""
    show(folder, None)
    say(("",))
    check(folder, None, at)
    say(("", "this terminal draws no screens: go on with paddock-tui show, set and check"))
    return OK


def _clock(at: dt.datetime | None) -> "object":
    if at is None:
        return dt.datetime.now
    ahead = at - dt.datetime.now()
    return lambda: dt.datetime.now() + ahead
