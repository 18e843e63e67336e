"""Counters as a day leaves them: hours, kilometres, heat cycles, pads and chain, with what the day added."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import ENDS, About, History
from paddock_tui.advice.brake_pads import pads_answer
from paddock_tui.advice.ridden_so_far import count_words, so_far
from paddock_tui.facts.past import PastSession
from paddock_tui.facts.service import chain_measured, distance_covered, engine_hours, hours_ridden
from paddock_tui.facts.tyre_counts import tyre_count
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Row
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.text import printable


def counter_rows(about: About, day: RidingDay, name: str) -> Iterator[Row]:
    """Say each counter after a day's last session, and what the day added to it."""
    bike = about.situation.bike
    past = so_far(about)
    today = [one for one in past.past if one.date == day.date and one.ridden]
    if bike is None:
        yield _said("counters", "", "the bike is not known", name)
        return
    hours = engine_hours(bike, past)
    added = sum(hours_ridden(one.session) for one in today)
    yield _said(
        "hours",
        f"{hours:.1f} h" if hours is not None else "",
        "no start value in the bike's file",
        name,
        f"{added:.1f} h of it on this day",
    )
    yield _distance(bike, past, today, name)
    yield from _cycles(about, past, day, name)
    for end in ENDS:
        answer = pads_answer(about, end)
        yield _said(f"{end} pads", answer.text if answer.known else "", answer.text, name)
    yield chain_row(past, name)


def _said(label: str, value: str, missing: str, name: str, aside: str = "") -> Row:
    """Make the row of one counter; where it is not known, with what is missing."""
    if value:
        return Row(label, printable(value), aside=printable(aside), kind="text", key=f"{name} {label}")
    said = " · ".join(filter(None, (missing, aside)))
    return Row(label, "not known", aside=printable(said), kind="text", key=f"{name} {label}", known=False)


def _distance(bike: Bike, past: History, today: list[PastSession], name: str) -> Row:
    total, lost = distance_covered(bike, past)
    added = sum(one.km or 0.0 for one in today)
    missing = "no start value in the bike's file" if total is None else f"no distance of {count_words(lost)}"
    value = f"{total:.0f} km" if total is not None and not lost else ""
    return _said("distance", value, missing, name, f"{added:.0f} km on this day")


def _cycles(about: About, past: History, day: RidingDay, name: str) -> Iterator[Row]:
    tyres, held = about.id_of("tyres"), about.situation.tyres
    if tyres is None or held is None:
        yield _said("heat cycles", "", "the last session names no tyre set", name)
        return
    day_before = _before(past, day.date)
    for end in ENDS:
        now = tyre_count(past, tyres, end, held)
        before = tyre_count(day_before, tyres, end, held)
        more = count_words(now.all_cycles - before.all_cycles, "heat cycle")
        counted = "" if now.cycles_before is not None else ", counted from no start value"
        yield _said(
            f"{end} tyre",
            f"{count_words(now.all_cycles, 'heat cycle')}, {now.all_km:.0f} km{counted}",
            "",
            name,
            f"{more} on this day",
        )


def _before(past: History, date: dt.date | None) -> History:
    """Return the sessions before a day: the beginning of all, where they stand in their order."""
    earlier = tuple(one for one in past.past if date is None or one.date is None or one.date < date)
    found = attrs.evolve(past, past=earlier)
    if all(one is other for one, other in zip(earlier, past.past, strict=False)):
        found.on_line(past.line.branch(len(earlier)))
    return found


def chain_row(past: History, name: str) -> Row:
    """Say the last slack that was measured, and how many sessions it was ridden since."""
    one, ridden = chain_measured(past)
    slack = one.session.chain_slack if one is not None else None
    if one is None or slack is None:
        return _said("chain slack", "", f"never measured in {count_words(ridden)}", name)
    on = short_date(one.date) if one.date is not None else one.id
    return _said("chain slack", f"{slack}, measured {on}", "", name, f"ridden {count_words(ridden)} since")
