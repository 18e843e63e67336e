"""The order of outings: day by day, and within a day as far as the record tells it."""

import bisect
import datetime as dt
import itertools
from collections.abc import Iterable, Iterator
from typing import NamedTuple

import attrs

from paddock_tui.matters.core import Outing

Together = tuple[Outing, ...]
"""Outings that the record does not tell apart: they come together."""


@attrs.frozen(eq=False)
class Course:
    """Outings in their order: those that come together last, and the course to these; `count` is its steps.

    Compared by identity: two that go on from the very same course have all before it in common, however much
    that is.
    """

    before: "Course | None" = attrs.field(repr=False)
    group: Together
    count: int

    @classmethod
    def on(cls, before: "Course | None", group: Together) -> "Course":
        """Return a course that goes on by one step."""
        return cls(before, group, 1 if before is None else before.count + 1)

    def after(self, count: int) -> list["Course"]:
        """List the courses to each step after so many, in their order."""
        found: list[Course] = []
        here: Course | None = self
        while here is not None and here.count > count:
            found.append(here)
            here = here.before
        return found[::-1]


class _Told(NamedTuple):
    """The course that was told last: its dates, the course behind each, and what came beside on some."""

    dates: list[dt.date]
    courses: list[Course]
    more: dict[dt.date, tuple[object, ...]]


class Days:
    """Outings in their order, which are added and taken away one by one."""

    def __init__(self) -> None:
        self._dates: list[dt.date] = []
        self._outings: dict[dt.date, list[Outing]] = {}
        self._groups: dict[dt.date, list[Together]] = {}
        self._told: _Told | None = None
        self._changed = dt.date.max
        """The first date on which outings came or went since then."""

    def copy(self) -> "Days":
        """Return the same, to go on from by itself."""
        other = Days()
        other._dates, other._groups = list(self._dates), dict(self._groups)
        other._outings = {date: list(held) for date, held in self._outings.items()}
        told = self._told
        other._told = told and _Told(list(told.dates), list(told.courses), told.more)
        other._changed = self._changed
        return other

    def add(self, one: Outing) -> None:
        """Add an outing."""
        date = one.order[0]
        if date not in self._outings:
            bisect.insort(self._dates, date)
        self._outings.setdefault(date, []).append(one)
        self._change(date)

    def remove(self, one: Outing) -> None:
        """Take an outing away."""
        date = one.order[0]
        left = [other for other in self._outings[date] if other is not one]
        self._outings[date] = left
        self._change(date)
        if not left:
            del self._outings[date]
            self._dates.remove(date)

    def _change(self, date: dt.date) -> None:
        self._groups.pop(date, None)
        self._changed = min(self._changed, date)

    def with_more(self, outings: Iterable[Outing], last: str = "") -> Course | None:
        """Return the course through all outings with these among them; `last` is as in `in_order`.

        It goes on from the one that was told last as far as that is the same: of many seasons the last day.
        """
        more: dict[dt.date, list[Outing]] = {}
        for one in outings:
            more.setdefault(one.order[0], []).append(one)
        # Another thread may ask meanwhile: it begins anew.
        told, self._told = self._told or _Told([], [], {}), None
        among = {date: (*here, *self._names_last(date, here, last)) for date, here in more.items()}
        at = bisect.bisect_left(told.dates, min(self._changed, _first_that_differs(told.more, among)))
        del told.dates[at:], told.courses[at:]
        course = told.courses[-1] if at else None
        own = self._dates[bisect.bisect_right(self._dates, told.dates[-1]) :] if at else self._dates
        for date in sorted({*own, *(one for one in more if not at or one > told.dates[at - 1])}):
            here = more.get(date)
            groups = in_order((*self._outings.get(date, ()), *here), last) if here else self._grouped(date)
            for group in groups:
                course = Course.on(course, group)
            if course is not None:
                told.dates.append(date)
                told.courses.append(course)
        self._told, self._changed = told._replace(more=among), dt.date.max
        return course

    def _names_last(self, date: dt.date, more: list[Outing], last: str) -> tuple[str, ...]:
        """Give the outing that may come last of its day where it is among those of a date."""
        named = any(one.id == last for one in (*more, *self._outings.get(date, ())))
        return (last,) if named else ()

    def _grouped(self, date: dt.date) -> list[Together]:
        if date not in self._groups:
            self._groups[date] = list(in_order(self._outings[date]))
        return self._groups[date]


def _first_that_differs(
    one: dict[dt.date, tuple[object, ...]], other: dict[dt.date, tuple[object, ...]]
) -> dt.date:
    """Return the first date of which two do not hold the very same."""
    differ = (date for date in {*one, *other} if not _is_same(one.get(date, ()), other.get(date, ())))
    return min(differ, default=dt.date.max)


def _is_same(one: tuple[object, ...], other: tuple[object, ...]) -> bool:
    return len(one) == len(other) and all(
        held is its or (held.__class__ is str and held == its) for held, its in zip(one, other, strict=True)
    )


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
