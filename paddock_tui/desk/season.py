"""A season of a garage: what was ridden in a year, what it took, and what it cost; by bike and by rider."""

import datetime as dt
import statistics
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from decimal import Decimal
from typing import Any

import attrs

from paddock_tui.advice.session_laps import stint_of
from paddock_tui.desk.answers import MANY_UNREAD, Reading
from paddock_tui.desk.desk import Desk
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import PastSession
from paddock_tui.facts.service import hours_ridden
from paddock_tui.records.bike import Bike
from paddock_tui.records.costs import amounts_of
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Money, TwoCurrencies, total
from paddock_tui.store.heads import heads


@attrs.frozen
class Spent:
    """One amount: when, on which bike, by whom (empty: not said), what for, and which record holds it."""

    on: dt.date
    bike: str
    rider: str
    what: str
    amount: Money
    kept_in: str
    record: str


@attrs.frozen
class Summed:
    """Sessions and money taken together. `km_missing` are sessions whose distance nobody can tell."""

    days: int
    sessions: int
    laps: int
    hours: float
    km: float
    km_missing: int
    tyres: int
    falls: int
    spent: tuple[Spent, ...]


@attrs.frozen
class LapsAt:
    """The clean laps of a rider and bike at one venue in like conditions, in s."""

    venue: str
    column: str
    bike: str
    rider: str
    best_s: float
    median_s: float
    laps: int


@attrs.frozen
class Season:
    """A year of a garage; `years` are all that anything stands for, `currency` the garage's own."""

    year: int
    years: tuple[int, ...]
    currency: str
    whole: Summed
    by_bike: tuple[tuple[str, Summed], ...]
    by_rider: tuple[tuple[str, Summed], ...]
    laps: tuple[LapsAt, ...]


def answer(desk: Desk, year: int | None = None) -> Season | Reading:
    """Return a year of a garage, or how far the reading for it is where many sessions are to be read."""
    today = desk.now().year
    rows = (desk.files.rows.of(ref) for ref in desk.files.listing("session"))
    years = Counter(row.date.year for row in rows if row is not None)
    count = years[year or (today if today in years else max(years, default=today))]
    if count <= MANY_UNREAD:
        return season(desk, year)
    return desk.answers.of(("season", year), count, lambda looks: season(looks, year), today)


def season(desk: LooksAt, year: int | None = None) -> Season:
    """Sum a year of a garage up; without one this year, or the latest one in which something stands.

    Of other years nothing is read but what is known of a session at once.
    """
    bikes, spent = desk.files.listing("bike"), list(all_spent(desk))
    years = {year for bike in bikes for year in _years_ridden(desk, bike)} | {one.on.year for one in spent}
    today = desk.now().year
    wanted = year if year is not None else today if today in years or not years else max(years)
    of_year = [
        one for bike in bikes for one in desk.histories.of_year(desk.files, bike, wanted) if one.ridden
    ]
    paid = [one for one in spent if one.on.year == wanted]
    return Season(
        wanted,
        tuple(sorted(years | {wanted})),
        desk.files.garage().currency or "",
        _summed(of_year, paid),
        _by(of_year, paid, lambda one: one.session.bike or "", lambda one: one.bike),
        _by(of_year, paid, lambda one: one.session.rider or "", lambda one: one.rider),
        tuple(_laps(of_year)),
    )


def all_spent(desk: LooksAt) -> Iterator[Spent]:
    """List every amount that stands in the garage: of days by the day's date, of bikes by their own."""
    for ref, head in heads(desk.files, "day"):
        # Most days say nothing of anybody, or name no cost: those are not read whole.
        loaded = desk.files.read(ref) if "entries" in head and _names_costs(desk.files.data(ref)) else None
        day = loaded.record if loaded is not None else None
        if not isinstance(day, RidingDay) or day.date is None:
            continue
        for rider, bikes in day.entries.items():
            for bike, entry in bikes.items():
                for what, amount in amounts_of(entry.costs):
                    yield Spent(day.date, bike, rider, what, amount, "day", ref.id)
    for ref in desk.files.listing("bike"):
        loaded = desk.files.read(ref)
        record = loaded.record if loaded is not None else None
        for one in record.costs.values() if isinstance(record, Bike) else ():
            if one.on is not None and one.amount is not None:
                yield Spent(one.on, ref.id, one.rider or "", one.what or "", one.amount, "bike", ref.id)


def _names_costs(data: Mapping[str, Any]) -> bool:
    """Return whether costs stand in what a day holds of anybody."""
    riders = data.get("entries")
    bikes = (
        [one for one in riders.values() if isinstance(one, Mapping)] if isinstance(riders, Mapping) else []
    )
    return any("costs" in entry for one in bikes for entry in one.values() if isinstance(entry, Mapping))


def sum_of(spent: Iterable[Spent], currency: str) -> Money | str | None:
    """Add amounts up exactly; a sentence where two currencies stand in the way, None where there is none."""
    try:
        return total((one.amount for one in spent), currency)
    except TwoCurrencies as error:
        return str(error)


def part_of(money: Money, count: float) -> Money:
    """Return an amount for one of so many, to the hundredth, half to even. Raises ValueError at nought."""
    if count <= 0:
        raise ValueError("nothing to share it among")
    return Money((money.amount / Decimal(str(count))).quantize(Decimal("0.01")), money.currency)


def _years_ridden(desk: LooksAt, bike: Ref) -> set[int]:
    rows = desk.files.rows.each([ref for _, ref in of_bike(desk.files, bike.id)])
    return {row.date.year for row in rows if row is not None and row.ridden}


def _summed(ridden: list[PastSession], spent: list[Spent]) -> Summed:
    km = [one.km for one in ridden]
    return Summed(
        len({one.session.date for one in ridden}),
        len(ridden),
        sum(one.session.lap_count for one in ridden),
        sum(hours_ridden(one.session) for one in ridden),
        sum(one for one in km if one is not None),
        sum(one is None for one in km),
        len({one.session.tyres for one in ridden if one.session.tyres}),
        sum(each.what == "fall" for one in ridden for each in one.session.incidents.values()),
        tuple(spent),
    )


def _by(
    ridden: list[PastSession],
    spent: list[Spent],
    of_session: Callable[[PastSession], str],
    of_spent: Callable[[Spent], str],
) -> tuple[tuple[str, Summed], ...]:
    names = sorted({of_session(one) for one in ridden} | {of_spent(one) for one in spent})
    return tuple(
        (
            name,
            _summed(
                [one for one in ridden if of_session(one) == name],
                [one for one in spent if of_spent(one) == name],
            ),
        )
        for name in names
    )


def _laps(ridden: list[PastSession]) -> Iterator[LapsAt]:
    """Gather clean laps by venue, conditions, bike and rider; where no lap may be timed none is told."""
    found: dict[tuple[str, str, str, str], list[float]] = {}
    for one in ridden:
        session = one.session
        if one.venue is None or not one.may_time:
            continue
        key = (one.venue, COLUMN.get(session.surface or "", ""), session.bike or "", session.rider or "")
        clean = [lap.seconds for lap in stint_of(session).clean]
        if clean:
            found.setdefault(key, []).extend(clean)
    for (venue, column, bike, rider), laps in sorted(found.items()):
        yield LapsAt(venue, column, bike, rider, min(laps), statistics.median(laps), len(laps))
