"""What a day asks of a bike beforehand: how long and how far it will be, and what falls due by then."""

import datetime as dt
import statistics
from collections.abc import Iterator
from typing import Literal

import attrs

from paddock_tui.advice.about import About, tyre_of
from paddock_tui.advice.ridden_so_far import so_far
from paddock_tui.facts.past import ENDS, End
from paddock_tui.facts.service import ServiceDue, km_ridden_at, services_due
from paddock_tui.facts.tyre_counts import TyreCount, tyre_count
from paddock_tui.records.day import RidingDay
from paddock_tui.records.papers import Paper
from paddock_tui.records.timetable import group_today, slots_of

DueBefore = Literal["over", "in the day", "later", "not known"]
"""Due before the day, within what the day will take, after it, or nobody can tell."""


@attrs.frozen
class DayExpected:
    """What the timetable and the sessions here before let expect of a day; None where nothing tells it."""

    sessions: int | None
    hours: float | None
    km: float | None
    where: str


@attrs.frozen
class ServiceBefore:
    """An item of service as the day will find it."""

    item: ServiceDue
    due: DueBefore


@attrs.frozen
class TyreBefore:
    """One tyre as the day will find it: its count, and how many heat cycles the rider's own most leaves."""

    end: End
    count: TyreCount
    left: int | None
    due: DueBefore


@attrs.frozen
class PaperBefore:
    """A paper with whose it is; `due` is over where it ends before the day."""

    whose: str
    name: str
    paper: Paper
    due: DueBefore


def day_expected(about: About, day: RidingDay) -> DayExpected:
    """Return the sessions and hours of the rider's group, and the distance that sessions here came to."""
    session = about.session
    group = group_today(day, session.rider, session.bike)
    slots = slots_of(day, group)
    spans = [_hours(slot.from_, slot.to) for slot in slots.values()]
    venue = about.id_of("venue")
    known = km_ridden_at(so_far(about), venue) if venue is not None else ()
    count = len(slots) or None
    return DayExpected(
        count,
        sum(one for one in spans if one is not None) if spans and None not in spans else None,
        count * statistics.median(known) if count is not None and known else None,
        f"timetable of {group or 'the only group'}" if slots else "no timetable of the rider's group",
    )


def _hours(start: dt.time | None, end: dt.time | None) -> float | None:
    if start is None or end is None or end <= start:
        return None
    return ((end.hour - start.hour) * 60 + end.minute - start.minute) / 60.0


def services_before(about: About, date: dt.date, expected: DayExpected) -> tuple[ServiceBefore, ...]:
    """Return each item of service with whether the day comes before it is due, what is due first."""
    bike = about.situation.bike
    if bike is None:
        return ()
    found = [ServiceBefore(one, _due(one, date, expected)) for one in services_due(bike, so_far(about))]
    return tuple(sorted(found, key=lambda one: (_ORDER.index(one.due), one.item.name)))


_ORDER: tuple[DueBefore, ...] = ("over", "in the day", "not known", "later")


def _due(item: ServiceDue, date: dt.date, expected: DayExpected) -> DueBefore:
    """Return when an item is due; what comes first counts, and what is not known is later than nothing."""
    left = ((item.hours, expected.hours), (item.km, expected.km))
    if any(one is not None and one <= 0 for one, _ in left) or (item.date is not None and item.date < date):
        return "over"
    if item.date == date or any(
        one is not None and takes is not None and one <= takes for one, takes in left
    ):
        return "in the day"
    wanted = item.item
    asked = (
        (wanted.every_hours, item.hours is not None and expected.hours is not None),
        (wanted.every_distance, item.km is not None and expected.km is not None and not item.km_lost),
        (wanted.every, item.date is not None),
    )
    if any(every is not None and not told for every, told in asked):
        return "not known"
    return "later" if (item.hours, item.km, item.date) != (None, None, None) else "not known"


def tyres_before(about: About, expected: DayExpected) -> tuple[TyreBefore, ...]:
    """Return both tyres of the set that is on, with the cycles that the rider's own most leaves of them."""
    name, tyres, rider = about.id_of("tyres"), about.situation.tyres, about.situation.rider
    if name is None or tyres is None:
        return ()
    most = rider.limits.heat_cycles if rider is not None else None
    found = []
    for end in ENDS:
        count = tyre_count(so_far(about), name, end, tyres)
        left = most - count.all_cycles if most is not None and count.cycles_before is not None else None
        if left is None:
            due: DueBefore = "not known"
        elif left <= 0:
            due = "over"
        else:
            due = "in the day" if expected.sessions is not None and left < expected.sessions else "later"
        found.append(TyreBefore(end, count, left, due))
    return tuple(found)


def date_code_of(about: About, end: End) -> str | None:
    """Return the date code of the tyre that is on at one end; None where nobody entered it."""
    return tyre_of(about.situation.tyres, end).date_code


RIDERS = ("licence", "medical", "helmet", "insurance")
BIKES = ("noise-certificate", "insurance")
"""Papers that organisers commonly ask of a rider and of a bike: common practice, no source."""


def papers_before(about: About, date: dt.date) -> Iterator[PaperBefore]:
    """Give every paper of the rider and the bike, and those that are commonly asked for."""
    situation = about.situation
    if situation.rider is not None:
        held = situation.rider.papers
        for name in dict.fromkeys((*RIDERS, *held)):
            yield _paper(about.id_of("rider") or "the rider", name, held.get(name, Paper()), date)
    if situation.bike is not None:
        held = situation.bike.papers
        for name in dict.fromkeys((*BIKES, *held)):
            yield _paper(about.id_of("bike") or "the bike", name, held.get(name, Paper()), date)


def _paper(whose: str, name: str, held: Paper, date: dt.date) -> PaperBefore:
    due: DueBefore = "not known" if held.until is None else "over" if held.until < date else "later"
    return PaperBefore(whose, name, held, due)
