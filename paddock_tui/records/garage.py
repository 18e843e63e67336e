"""The garage itself: its name, units, and the limits its owner changed."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import nested_values, one, table
from paddock_tui.records.shapes import Currency, Whole
from paddock_tui.records.shapes.limits import LimitValue

SCHEMA = 1
"""The newest file format that this program writes."""


@attrs.frozen
class FromBefore:
    """What was open when matters began to be kept: answered together, but for what holds."""

    on: dt.date | None = one(c.DAY, "looked through on", "what was written down up to then is answered")
    by: str | None = one(c.TEXT, "looked through by", "initials of who went through the list")


@attrs.frozen
class Garage:
    """The folder with everything."""

    name: str | None = one(c.TEXT, "name", "what you call the garage")
    schema: int | None = one(Whole(1, 999), "format", "version of the file format")
    currency: str | None = one(
        Currency(), "currency", "of every amount of money that names no other: three letters"
    )
    units: c.Units = table(c.Units, "units")
    before: FromBefore = table(FromBefore, "from before")
    limits: Mapping[str, Mapping[str, object]] = nested_values(
        LimitValue(), "limits", "the limit as you want it", keyed_by="rule and limit"
    )
