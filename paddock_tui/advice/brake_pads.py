"""Brake pads: what a session takes off them, and how many sessions are left to the least thickness."""

import functools
from collections.abc import Iterable, Iterator
from decimal import Decimal

from paddock_tui.advice.about import About, End
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
from paddock_tui.advice.ridden_so_far import count_words, so_far
from paddock_tui.facts.service import since_start
from paddock_tui.limits.brakes import LEAST_PAD
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.trade.errors import Inconsistent
from paddock_tui.trade.wear import WearReading, wear
from paddock_tui.trade.wear_trend import COVERS, LEAST_READINGS, WearTrend, wear_trend

METHOD = Method(
    "median of the loss a session between all pairs of readings; soonest = (last - least) / the fastest loss",
    "sessions alike; a reading more than 0.5 mm thicker than the one before was of new pads",
    "a thin pad is hotter and may go faster: look before each session, not at this figure",
    "median slopes after Theil and Sen; the maker's and the organiser's least come first",
)
_SHOWN = 6
_FAR = 20
"""Sessions beyond which no figure is given: gauge, track and pace tell no more. Common practice."""

INPUTS = (Input("least", "least thickness", c.TREAD),)


def pads(about: About, end: End) -> Calculator:
    """Return wear of the pads at one end of the bike, over its sessions up to now."""
    readings = tuple(_readings(about, end))
    day = about.situation.day
    least = FilledInput(
        Quantity(Decimal(str(about.situation.limits[LEAST_PAD])), "mm"),
        "common practice: no organiser's figure known",
    )
    if day is not None and day.limits.pads is not None:
        least = FilledInput(day.limits.pads, f"organiser's, day {about.id_of('day')}")
    ridden = _ridden(about)
    compute = functools.partial(_compute, end, readings, ridden)
    return Calculator(f"{end} pads", f"{end} pads", INPUTS, {"least": least}, compute)


def _sessions(about: About) -> tuple[Session, ...]:
    bike = about.situation.bike
    return () if bike is None else tuple(one.session for one in since_start(bike, so_far(about)))


def _ridden(about: About) -> float:
    return float(sum(map(is_ridden, _sessions(about))))


def _readings(about: About, end: End) -> Iterator[WearReading]:
    """List what was measured, by how many sessions the bike had then been ridden since the start."""
    bike = about.situation.bike
    start = None if bike is None else (bike.front if end == "front" else bike.rear).pads_start
    if start is not None:
        yield WearReading(0.0, start.to("mm"))
    ridden = 0
    for one in _sessions(about):
        ridden += is_ridden(one)
        left = one.front_pads if end == "front" else one.rear_pads
        if left is not None:
            yield WearReading(float(ridden), left.to("mm"))


def _compute(end: End, readings: tuple[WearReading, ...], ridden: float, inputs: Inputs) -> Iterable[Answer]:
    def make() -> Answered:
        found = wear(readings)
        if found is None:
            raise Inconsistent(
                f"{end} pads", "no wear to tell yet: it takes two readings and a loss between them"
            )
        rate = f"{found.mm_per_session:.2f} mm a session"
        since = int(ridden - found.last.sessions)
        last = f"last {found.last.mm:g} mm" + (f", {count_words(since)} ago" if since else "")
        shown = ", ".join(f"{one.mm:g} mm after {one.sessions:g}" for one in readings[-_SHOWN:])
        lines = (f"readings: {shown}", f"reckoned from: {found.readings} readings of these pads")
        least = inputs.amount("least", "mm")
        if found.last.mm <= least:
            step = f"{found.last.mm:g} mm, the last reading, is not over {least:g} mm"
            return Answered(
                f"at {least:g} mm or under ({last}): change them", "at their least", (), lines, (step,)
            )
        if found.readings < LEAST_READINGS:
            step = f"median loss of {found.readings} readings = {rate}"
            said = f"{rate} ({last}); how long they last takes {LEAST_READINGS} readings"
            return Answered(said, rate, (), lines, (step,))
        return _by_trend(wear_trend(readings, least, ridden), least, last, lines)

    return (told(inputs, "pads", f"{end} pads", ("least",), METHOD, make),)


def _by_trend(found: WearTrend, least: float, last: str, lines: tuple[str, ...]) -> Answered:
    """Say how soon the limit may come, by the fastest wear the readings allow; never that all is well."""
    rate = f"{found.mm_per_session:.2f} mm a session"
    steps = (
        f"{rate}, {max(found.slowest_mm, 0.0):.2f} to {found.fastest_mm:.2f} mm by {COVERS:.0%} of "
        "such readings",
        f"at the fastest {found.least_mm:.1f} mm by now, to {least:g} mm in = "
        f"{count_words(found.soonest_sessions)}",
    )
    words = count_words(found.soonest_sessions)
    if found.soonest_sessions > _FAR:
        text = f"{rate}; look before each session all the same ({last})"
        far = f"no figure beyond {_FAR} sessions: {rate}"
        return Answered(text, rate, (), lines, (steps[0], far))
    text = f"{rate}: {least:g} mm may come within {words} ({last})"
    return Answered(text, f"{rate}, {least:g} mm within {found.soonest_sessions}", (), lines, steps)


def pads_answer(about: About, end: End) -> Answer:
    """Return the one answer about the pads at one end."""
    (found,) = pads(about, end).answers(about.units)
    return found
