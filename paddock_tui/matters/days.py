"""The order of outings: day by day, and within a day as far as the record tells it."""

import bisect
import datetime as dt
import itertools
from collections.abc import Iterable, Iterator

from paddock_tui.matters.core import Outing

Together = tuple[Outing, ...]
"""Outings that the record does not tell apart: they come together."""


class Days:
    """Outings in their order, which are added and taken away one by one."""

    def __init__(self) -> None:
        self._dates: list[dt.date] = []
        self._outings: dict[dt.date, list[Outing]] = {}
        self._groups: dict[dt.date, list[Together]] = {}

    def copy(self) -> "Days":
        """Return the same, to go on from by itself."""
        other = Days()
        other._dates, other._groups = list(self._dates), dict(self._groups)
        other._outings = {date: list(held) for date, held in self._outings.items()}
        return other

    def add(self, one: Outing) -> None:
        """Add an outing."""
        date = one.order[0]
        if date not in self._outings:
            bisect.insort(self._dates, date)
        self._outings.setdefault(date, []).append(one)
        self._groups.pop(date, None)

    def remove(self, one: Outing) -> None:
        """Take an outing away."""
        date = one.order[0]
        left = [other for other in self._outings[date] if other is not one]
        self._outings[date] = left
        self._groups.pop(date, None)
        if not left:
            del self._outings[date]
            self._dates.remove(date)

    def with_more(self, outings: Iterable[Outing], last: str = "") -> list[Together]:
        """Return all outings in their order with these among them; `last` is as in `in_order`."""
        more: dict[dt.date, list[Outing]] = {}
        for one in outings:
            more.setdefault(one.order[0], []).append(one)
        found: list[Together] = []
        for date in sorted({*self._dates, *more}):
            if date in more:
                found += in_order((*self._outings.get(date, ()), *more[date]), last)
            else:
                found += self._grouped(date)
        return found

    def _grouped(self, date: dt.date) -> list[Together]:
        if date not in self._groups:
            self._groups[date] = list(in_order(self._outings[date]))
        return self._groups[date]


def in_order(outings: Iterable[Outing], last: str = "") -> Iterator[tuple[Outing, ...]]:
    """Group outings by date, number and start; those that the record does not tell apart come together.

    Within an outing its stages follow from what is written where: what it closes was done before it, what it
    opens came with it or after it. `last` is the session looked at: without a number or a start it comes
    after all others of its day.
    """
    ordered = sorted(outings, key=lambda one: (one.order, one.id))
    for _, day in itertools.groupby(ordered, key=lambda one: one.order[0]):
        of_day = list(day)
        here = [one for one in of_day if one.id == last and None in (one.session.number, one.session.start)]
        yield from _of_a_day([one for one in of_day if one not in here])
        if here:
            yield tuple(here)


def _of_a_day(outings: list[Outing]) -> Iterator[tuple[Outing, ...]]:
    """Group the outings of a day: by number, where some have none by their start, else all together."""
    if not outings:
        return
    if all(one.session.number is not None for one in outings):
        for _, same in itertools.groupby(outings, key=lambda one: one.session.number):
            yield from _by_start(list(same))
    else:
        yield from _by_start(outings)


def _by_start(outings: list[Outing]) -> Iterator[tuple[Outing, ...]]:
    """Group outings by their start where all have one: one without may have been before or after."""
    if any(one.session.start is None for one in outings):
        yield tuple(outings)
        return
    ordered = sorted(outings, key=lambda one: (one.order[2], one.id))
    for _, together in itertools.groupby(ordered, key=lambda one: one.order[2]):
        yield tuple(together)
