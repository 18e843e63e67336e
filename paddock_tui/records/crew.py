"""Who does what before a start, and who moved a rider to another group."""

import datetime as dt

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one


@attrs.frozen
class Job:
    """One job before the next start: whose it is, who did it, and who looked at it."""

    who: str | None = one(c.TEXT, "whose job", "initials of whoever has the job")
    done_by: str | None = one(c.TEXT, "job done by", "initials of who did it")
    checked_by: str | None = one(c.TEXT, "job checked by", "initials of the second person who looked")
    at: dt.time | None = one(c.CLOCK, "job done at", "when it was done")


@attrs.frozen
class GroupMove:
    """A rider moved from one group to another during a day."""

    from_: str | None = one(c.TEXT, "moved from", "the group ridden until then", key="from")
    to: str | None = one(c.TEXT, "moved to", "the group from then on")
    by: str | None = one(c.TEXT, "moved by", "who moved the rider: instructor, organiser, own wish")
    at: dt.time | None = one(c.CLOCK, "moved at", "when that was")
