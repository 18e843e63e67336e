"""An answer to what is open: what was found, what was done, the test that belongs to it, by whom and when."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one
from paddock_tui.records.shapes import Reference


def found() -> Any:
    """Declare what was found when it was looked into."""
    return one(c.TEXT, "found", "what was found: the cause, or what it was")


def done() -> Any:
    """Declare what was done about it."""
    return one(c.TEXT, "done", "what was done: bled, part replaced, changed back")


def test() -> Any:
    """Declare how it was tried afterwards."""
    return one(c.TEXT, "test", "how it was tried afterwards: hot on the stand, at walking pace, lock to lock")


def by() -> Any:
    """Declare who did it."""
    return one(c.TEXT, "done by", "initials of who found and did it")


def on() -> Any:
    """Declare the date of the answer."""
    return one(c.DAY, "done on", "the date of it; left out: the date of the record")


def done_at() -> Any:
    """Declare the clock of the answer, where `at` is that of what is answered."""
    return one(c.CLOCK, "done at", "when it was done, where that is known")


@attrs.frozen
class MatterAnswer:
    """An answer that stands by itself, to what was worked out or has no table of its own."""

    what: str | None = one(c.TEXT, "answers", "what it answers, in words")
    of: str | None = one(
        Reference("session"), "of session", "the session in which it was opened; left out: all before it"
    )
    found: str | None = found()
    done: str | None = done()
    test: str | None = test()
    by: str | None = by()
    on: dt.date | None = on()
    at: dt.time | None = one(c.CLOCK, "done at", "when it was done")
