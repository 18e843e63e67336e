"""What a day showed of what was packed, and what is left to do to a bike before its next one."""

import datetime as dt

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one
from paddock_tui.records.shapes import Word

PACKING = "packing"
"""The stage of the lists that are packed by, and the table of a day that says how they served."""

HOW_IT_SERVED = ("missing", "borrowed", "not used")


@attrs.frozen
class Packed:
    """How one thing that was packed, or was not, served on a day."""

    was: str | None = one(Word(*HOW_IT_SERVED), "was", "missing, borrowed from somebody, or not used")
    note: str | None = one(c.TEXT, "note", "from whom, or what would have served better")


@attrs.frozen
class BikeToDo:
    """One thing to do to a bike: it stays on the pages before a day until it is done."""

    what: str | None = one(c.TEXT, "to do", "what is to be done")
    since: dt.date | None = one(c.DAY, "since", "the day that it was noted on")
    by: dt.date | None = one(c.DAY, "to do by", "before which day it has to be done")
    done: dt.date | None = one(c.DAY, "done on", "when it was done; until then it stays")
    done_by: str | None = one(c.TEXT, "done by", "initials of who did it")
