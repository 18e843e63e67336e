"""What riding costs: of a day by what it was for, and of a bike line by line."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one
from paddock_tui.records.shapes import Money, MoneyAmount, Reference, Word

KINDS = ("entry", "travel", "tyres", "fuel", "parts", "crash")
"""What money goes to, in the order in which it is told."""

_AMOUNT = MoneyAmount()


@attrs.frozen
class DayCosts:
    """What a day cost one rider on one bike."""

    entry: Money | None = one(_AMOUNT, "entry", "the day itself, insurance and hired kit with it")
    travel: Money | None = one(_AMOUNT, "travel", "the way there and back, and the night")
    tyres: Money | None = one(_AMOUNT, "tyres", "bought for this day, fitting with it")
    fuel: Money | None = one(_AMOUNT, "fuel", "for the bike")
    parts: Money | None = one(_AMOUNT, "parts", "pads, oil, chain, work")
    crash: Money | None = one(_AMOUNT, "crash", "what a fall cost: parts, kit, recovery")


@attrs.frozen
class BikeCost:
    """One amount spent on a bike that is no day's: bought in winter, or for many days."""

    on: dt.date | None = one(c.DAY, "paid on", "the date that the season counts it by")
    what: str | None = one(Word(*KINDS), "for", "what it was for")
    amount: Money | None = one(
        _AMOUNT, "amount", "in the garage's currency unless three letters name another"
    )
    rider: str | None = one(
        Reference("rider"), "paid by", "whose season it counts in, where that is to be told"
    )
    note: str | None = one(c.TEXT, "note", "what was bought")


def amounts_of(costs: DayCosts) -> Iterator[tuple[str, Money]]:
    """List what stands in a day's costs, by what it was for."""
    for kind in KINDS:
        amount = getattr(costs, kind)
        if isinstance(amount, Money):
            yield kind, amount
