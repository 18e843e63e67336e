"""Brake pads: what a session takes off them, and how many sessions are left to the least thickness."""

import functools
from collections.abc import Iterable
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
from paddock_tui.facts.brakes import pads_since_start
from paddock_tui.limits.brakes import LEAST_PAD
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c

METHOD = Method(
    "median of the loss a session between all pairs of readings; soonest = (last - least) / the fastest loss",
    "similar sessions; a reading more than 0.5 mm thicker than the one before was of new pads",
    "a thin pad is hotter and may go faster: look before each session, not at this figure",
    "median slopes after Theil and Sen; the maker's and the organiser's least come first",
)

INPUTS = (Input("least", "least thickness", c.TREAD),)


def pads(about: About, end: End) -> Calculator:
    """Return wear of the pads at one end of the bike, over its sessions up to now."""
    bike = about.situation.bike
    read, ridden = ([], 0) if bike is None else pads_since_start(bike, end, so_far(about))
    readings = tuple([WearReading(float(sessions), mm) for sessions, mm in read])
    day = about.situation.day
    least = FilledInput(
        Quantity(Decimal(str(about.situation.limits[LEAST_PAD])), "mm"),
        "paddock practice: no organiser's figure known",
    )
    if day is not None and day.limits.pads is not None:
        least = FilledInput(day.limits.pads, f"organiser's, day {about.id_of('day')}")
    compute = functools.partial(_compute, end, readings, float(ridden))
    return Calculator(f"{end} pads", f"{end} pads", INPUTS, {"least": least}, compute)


def _compute(end: End, readings: tuple[WearReading, ...], ridden: float, inputs: Inputs) -> Iterable[Answer]:
    def make() -> Answered:
        return wear_in_words(f"{end} pads", readings, inputs.amount("least", "mm"), ridden)

    return (told(inputs, "pads", f"{end} pads", ("least",), METHOD, make),)


def pads_answer(about: About, end: End) -> Answer:
    """Return the one answer about the pads at one end."""
    (found,) = pads(about, end).answers(about.units)
    return found
