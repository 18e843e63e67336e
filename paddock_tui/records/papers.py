"""Papers and bookings: what is only good until a date."""

import datetime as dt

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one


@attrs.frozen
class Paper:
    """A paper of a rider or a bike."""

    until: dt.date | None = one(c.DAY, "good until", "the last day on which it is good")
    note: str | None = one(c.TEXT, "note", "where it is, its number, what is left to do")


@attrs.frozen
class Booking:
    """Something booked for a day: the entry, a bed, a tyre vendor's service, instruction."""

    by: dt.date | None = one(c.DAY, "due by", "by when it has to be paid, confirmed or called off")
    done: bool | None = one(c.FLAG, "done", "paid and confirmed")
    note: str | None = one(c.TEXT, "note", "number, place, whom to call")
