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
from paddock_tui.advice.ridden_so_far import so_far
from paddock_tui.advice.wear_words import wear_in_words
from paddock_tui.calc.wear import WearReading
from paddock_tui.facts.service import since_start
from paddock_tui.limits.brakes import LEAST_PAD
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.session import Session, is_ridden

METHOD = Method(
    "median of the loss a session between all pairs of readings; soonest = (last - least) / the fastest loss",
    "similar sessions; a reading more than 0.5 mm thicker than the one before was of new pads",
    "a thin pad is hotter and may go faster: look before each session, not at this figure",
    "median slopes after Theil and Sen; the maker's and the organiser's least come first",
)

INPUTS = (Input("least", "least thickness", c.TREAD),)


def pads(about: About, end: End) -> Calculator:
    """Return wear of the pads at one end of the bike, over its sessions up to now."""
    readings = tuple(_readings(about, end))
    day = about.situation.day
    least = FilledInput(
        Quantity(Decimal(str(about.situation.limits[LEAST_PAD])), "mm"),
        "paddock practice: no organiser's figure known",
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
        return wear_in_words(f"{end} pads", readings, inputs.amount("least", "mm"), ridden)

    return (told(inputs, "pads", f"{end} pads", ("least",), METHOD, make),)


def pads_answer(about: About, end: End) -> Answer:
    """Return the one answer about the pads at one end."""
    (found,) = pads(about, end).answers(about.units)
    return found
