"""What a bike has behind it and what is due: engine hours, distance, items of service."""

import datetime as dt
import functools
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About, PastSession
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    told,
)
from paddock_tui.advice.ridden_so_far import count_words, counted_words, day_of, so_far, until_words
from paddock_tui.facts.service import RiddenSince, ServiceDue, ridden_since, services_due, since_start
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount

COUNTED = Method(
    "start value + what each session since its date shows",
    "hours by ridden time, laps, or from going out to parking; distance as entered or laps x lap length",
    "warming up, and what was ridden without a session, is not in it",
    "elementary",
)
DUE = Method(
    "hours or distance at the last service + interval - those by now; date of the last + months",
    "whichever comes first; hard riding asks for a shorter interval",
    "a month that is too short ends it on its last day",
    "the intervals in the bike's file; the manual comes first",
)
_DAYS_A_MONTH = 365.2425 / 12.0

INPUTS = (
    Input("from", "counted from", c.DAY, "", "date of the start values"),
    Input("hours", "engine hours at the start", c.HOURS),
    Input("distance", "distance at the start", c.DISTANCE),
)
SERVICE = (
    Input("every_hours", "every, hours", c.HOURS, "", "interval in hours"),
    Input("last_hours", "last at, hours", c.HOURS, "", "hours at the last service"),
    Input("start", "engine hours at the start", c.HOURS, "", "engine hours at the start"),
    Input("every_distance", "every, distance", c.DISTANCE, "", "interval as a distance"),
    Input("last_distance", "last at, distance", c.DISTANCE, "", "distance at the last service"),
    Input("covered", "distance at the start", c.DISTANCE, "", "distance at the start"),
    Input("every", "every", Amount("age", "months", 1, 240), "", "interval in months"),
    Input("last", "last on", c.DAY, "", "date of the last service"),
)


def bike_counts(about: About) -> Calculator:
    """Return the engine hours and distance of the bike in question, up to now."""
    bike = about.situation.bike
    found: dict[str, FilledInput] = {}
    since: tuple[PastSession, ...] = ()
    ridden = RiddenSince()
    if bike is not None:
        since, ridden = since_start(bike, so_far(about)), ridden_since(bike, so_far(about))
        given = (("from", bike.start.on), ("hours", bike.start.hours), ("distance", bike.start.kilometres))
        where = f"bike {about.id_of('bike')}"
        found = {key: FilledInput(value, where) for key, value in given if value is not None}
    lines = (f"sessions since: {len(since)}", until_words(about))
    return Calculator(
        "bike counts", "counters", INPUTS, found, functools.partial(_compute, since, ridden, lines)
    )


def _compute(
    since: tuple[PastSession, ...], ridden: RiddenSince, lines: tuple[str, ...], inputs: Inputs
) -> Iterable[Answer]:
    counted = counted_words(len(since), since[-1].id if since else "")
    return (_hours(ridden, counted, lines, inputs), _distance(ridden, counted, lines, inputs))


def _hours(ridden: RiddenSince, counted: str, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        lost = ridden.timeless
        said = f"{'at least ' if lost else ''}{inputs.amount('hours', 'h') + ridden.hours:.1f} h"
        more = (f"of {count_words(lost)} nobody knows how long",) if lost else ()
        return Answered(
            f"{said}: {ridden.hours:.1f} h in {counted}",
            f"{said} by now",
            (),
            lines + more,
        )

    return told(inputs, "hours", "engine hours", ("hours",), COUNTED, make, ("from",))


def _distance(ridden: RiddenSince, counted: str, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        lost = ridden.any_lost
        whole = figures.odometer(inputs.amount("distance", "km") + ridden.any_km, inputs.units)
        said = f"{'at least ' if lost else ''}{whole}"
        more = (f"of {count_words(lost)} nobody knows how far",) if lost else ()
        here = figures.odometer(ridden.any_km, inputs.units)
        return Answered(f"{said}: {here} in {counted}", f"{said} by now", (), lines + more)

    return told(inputs, "distance", "distance", ("distance",), COUNTED, make, ("from",))


def service_answers(about: About) -> dict[str, tuple[Answer, Answer, Answer]]:
    """Return for each item of the bike's service what is left of it in hours, as a distance, and by date."""
    bike = about.situation.bike
    if bike is None:
        return {}
    found = {}
    for due in services_due(bike, so_far(about)):
        item = due.item
        given = (
            ("every_hours", item.every_hours),
            ("last_hours", item.last_hours),
            ("start", bike.start.hours),
            ("every_distance", item.every_distance),
            ("last_distance", item.last_distance),
            ("covered", bike.start.kilometres),
            ("every", item.every),
            ("last", item.last),
        )
        where = f"bike {about.id_of('bike')}"
        filled = {key: FilledInput(value, where) for key, value in given if value is not None}
        inputs = Inputs(SERVICE, filled, about.units)
        lines = (until_words(about),)
        by_date = _by_date(due, day_of(about), inputs)
        found[due.name] = (_in_hours(due, lines, inputs), _in_distance(due, lines, inputs), by_date)
    return found


def _in_hours(due: ServiceDue, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        if due.hours is None:
            return Answered("these figures cannot be: see the review")
        side = "to go" if due.hours > 0 else "over"
        said = f"{abs(due.hours):.1f} h {side}"
        return Answered(f"{due.label}: {said}", said, (), lines)

    return told(inputs, due.name, due.label, ("every_hours", "last_hours", "start"), DUE, make)


def _in_distance(due: ServiceDue, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        if due.km is None:
            return Answered("these figures cannot be: see the review")
        whole = figures.odometer(abs(due.km), inputs.units)
        said = (
            f"{'at most ' if due.km_lost and due.km > 0 else ''}{whole} {'to go' if due.km > 0 else 'over'}"
        )
        more = (f"of {count_words(due.km_lost)} nobody knows how far",) if due.km_lost else ()
        return Answered(f"{due.label}: {said}", said, (), lines + more)

    return told(inputs, due.name, due.label, ("every_distance", "last_distance", "covered"), DUE, make)


def _by_date(due: ServiceDue, on: dt.date, inputs: Inputs) -> Answer:
    def make() -> Answered:
        if due.date is None:
            return Answered("these figures cannot be: see the review")
        days = (due.date - on).days
        side = "to go" if days >= 0 else "over"
        months = (
            f"{abs(days) / _DAYS_A_MONTH:.1f} months" if abs(days) >= 60 else count_words(abs(days), "day")
        )
        return Answered(
            f"{due.label}: due {due.date}, {months} {side} on {on}", f"{months} {side}, {due.date}"
        )

    return told(inputs, f"{due.name}_date", due.label, ("every", "last"), DUE, make)
