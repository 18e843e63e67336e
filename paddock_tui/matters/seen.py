"""What the walk remembers beside what is open: how each bike was last ridden, and the air in each tyre."""

import datetime as dt
from collections import ChainMap
from collections.abc import Mapping
from typing import TypeVar, cast

import attrs

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.records.setup import SetUp

K = TypeVar("K")
V = TypeVar("V")


@attrs.frozen
class From:
    """A value, and the session that it came from."""

    value: float
    of: str
    date: dt.date | None = None


@attrs.frozen
class ColdReading:
    """What a tyre was left with cold, in kPa on the gauge: when, at which temperature, with which gauge."""

    kpa: float
    celsius: float | None
    gauge: str
    at: dt.datetime | None
    of: str
    outside: AirObserved


@attrs.frozen
class ColdCheck:
    """A cold check after air was lost: as read, and as the tyre was left."""

    at: dt.datetime
    read: ColdReading
    left: ColdReading


@attrs.frozen
class AirInTyre:
    """What is remembered of a tyre: its last cold reading, and when air was last found to be lost.

    `let` is whether air was put in or let out since that reading.
    """

    cold: ColdReading | None = None
    let: bool = False
    lost: tuple[dt.datetime, ...] = ()


@attrs.frozen
class BikeSeen:
    """What is remembered of a bike as last ridden, whoever rode it.

    `values` are what moves the chain, `heights` the extremes ridden by end and way, `felt` what it did,
    `helps` the help of each aid by surface column, `ridden` the levels ever ridden by column and aid,
    `outings` the track outings ever, `readings` at how many of them each wearing part was last measured.
    """

    of: str = ""
    date: dt.date | None = None
    rider: str = ""
    tyres: Mapping[str, str] = attrs.field(factory=dict)
    setup: SetUp | None = None
    values: Mapping[str, object] = attrs.field(factory=dict)
    felt: frozenset[str] = frozenset()
    lever: str = ""
    worked: bool = False
    heights: Mapping[str, From] = attrs.field(factory=dict)
    helps: Mapping[str, Mapping[str, From]] = attrs.field(factory=dict)
    ridden: frozenset[tuple[str, str, float]] = frozenset()
    outings: int = 0


_NEVER_RIDDEN, _NEVER_READ = BikeSeen(), AirInTyre()


def with_more(before: Mapping[K, V], more: Mapping[K, V]) -> Mapping[K, V]:
    """Return a mapping with more; one whose values were not all taken up yet is left as it is, below."""
    if isinstance(before, dict):
        return {**before, **more}
    own, *earlier = before.maps if isinstance(before, ChainMap) else ({}, before)
    return ChainMap({**own, **more}, *cast("list[dict[K, V]]", earlier))


@attrs.frozen
class Seen:
    """What the walk remembers of each bike, and of each tyre by the set it was first in and its end."""

    bikes: Mapping[str, BikeSeen] = attrs.field(factory=dict)
    tyres: Mapping[tuple[str, str], AirInTyre] = attrs.field(factory=dict)

    def bike(self, name: str | None) -> BikeSeen:
        """Return what is remembered of a bike; nothing where it was never ridden."""
        return self.bikes.get(name or "", _NEVER_RIDDEN)

    def tyre(self, name: str, end: str) -> AirInTyre:
        """Return what is remembered of a tyre; nothing where it never was read."""
        return self.tyres.get((name, end), _NEVER_READ)
