"""The standing noise test: how far from the limit, at which revs it is taken, what a reading counts as."""

import functools
import math
from collections.abc import Iterable
from decimal import Decimal

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
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
from paddock_tui.calc.noise import (
    DISTANCE_M,
    PISTON_SPEED_M_S,
    counted_db,
    level_at_db,
    margin,
    revs_of_test_rpm,
)
from paddock_tui.limits.noise import NEAR_LIMIT
from paddock_tui.quantities import Quantity, rounded
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number, Whole

REVS = Method(
    "30000 c / stroke in mm, c the mean piston speed in m/s",
    "the test goes by piston speed; an organiser may post revs, or a share of the red line, instead",
    "stroke 20 to 120 mm, 5 to 25 m/s",
    "FIM noise control",
)
COUNTED = Method(
    "rounded down, less 1 dB for a meter of type 1 or 2 dB for type 2, less 1 dB under 10 C, 2 dB under 0 C",
    "the organiser allows for meter and cold: not every one does",
    "50 to 140 dB(A), -20 to 50 C",
    "FIM noise control",
)
DISTANCE = Method(
    "L - 20 log10(r2 / r1): 6 dB less at twice the distance",
    "a point source in the open, standing; ground, walls and a moving bike change it",
    "a reading of a passing bike cannot be told from a standing one",
    "the inverse square law, as in OpenStax College Physics 17.3",
)
_METRES = Amount("length", "m", 0.1, 1000)

INPUTS = (
    Input("reading", "noise reading", c.NOISE, "as measured here"),
    Input("limit", "noise limit", c.NOISE, "as posted for the day"),
    Input("stroke", "stroke", Amount("length", "mm", 20, 120, step=0.1)),
    Input("piston", "mean piston speed", Number(5, 25, unit="m/s"), "of the test, where the organiser says"),
    Input("meter", "type of the meter", Whole(1, 2), "1 or 2, stands on it"),
    Input("air", "air", c.AIR_TEMPERATURE, "at the test", "air temperature"),
    Input("measured_at", "measured at", _METRES, "from the exhaust", "distance it was measured at"),
    Input("wanted_at", "limit holds at", _METRES, "from the exhaust", "distance of the limit"),
)


def noise(about: About) -> Calculator:
    """Return the calculator of noise, filled from the day's limit and the entry of this rider and bike."""
    near = about.situation.limits[NEAR_LIMIT]
    return Calculator("noise", "noise", INPUTS, _filled(about), functools.partial(_compute, near))


def method(near_db: float) -> Method:
    """Return how the margin is reckoned, with what counts as close."""
    return Method(
        "limit - reading, both as the organiser measures them",
        "the same meter, distance and revs; another meter or a colder day reads differently",
        f"{near_db:g} dB or less to the limit counts as close: paddock practice, unpublished",
        "elementary; what the organiser's meter says counts",
    )


def noise_of(about: About, reading: Quantity | None, limit: Quantity | None) -> Answer:
    """Return the margin of one reading to one limit."""
    given = (("reading", reading, "this entry"), ("limit", limit, "as posted for the day"))
    found = {key: FilledInput(value, where) for key, value, where in given if value is not None}
    return _margin(about.situation.limits[NEAR_LIMIT], Inputs(INPUTS, found, about.units))


def _filled(about: About) -> dict[str, FilledInput]:
    day, session, bike = about.situation.day, about.session, about.situation.bike
    found = {
        "piston": FilledInput(PISTON_SPEED_M_S, "assumed: world events; the organiser may post another"),
        "measured_at": FilledInput(Quantity(Decimal(str(DISTANCE_M)), "m"), "assumed: world events"),
    }
    if day is not None:
        where = f"day {about.id_of('day')}"
        entry = day.entries.get(session.rider or "", {}).get(session.bike or "")
        if entry is not None and entry.noise.reading is not None:
            found["reading"] = FilledInput(entry.noise.reading, where)
        if day.limits.noise is not None:
            found["limit"] = FilledInput(day.limits.noise, where)
    if bike is not None and bike.drive.stroke is not None:
        found["stroke"] = FilledInput(bike.drive.stroke, f"bike {about.id_of('bike')}")
    if isinstance(session.air, Quantity):
        found["air"] = FilledInput(session.air, about.place)
    return found


def _compute(near_db: float, inputs: Inputs) -> Iterable[Answer]:
    return (_margin(near_db, inputs), _revs(inputs), _counted(inputs), _distance(inputs))


def _margin(near_db: float, inputs: Inputs) -> Answer:
    def make() -> Answered:
        limit = inputs.amount("limit", "dB(A)")
        found = margin(inputs.amount("reading", "dB(A)"), limit)
        side = "over" if found.over else "under"
        said = f"{_db(abs(found.db))} dB {side} the limit"
        reading = inputs.amount("reading", "dB(A)")
        step = f"{_db(limit)} dB(A) - {_db(reading)} dB(A) = {_db(abs(found.db))} dB {side} the limit"
        if found.close(near_db):
            close = f"{said} of {_db(limit)} dB(A): close, another meter may differ"
            return Answered(close, f"{said}: close", steps=(step,))
        return Answered(f"{said} of {_db(limit)} dB(A)", said, steps=(step,))

    return told(inputs, "margin", "to the limit", ("reading", "limit"), method(near_db), make)


def _revs(inputs: Inputs) -> Answer:
    def make() -> Answered:
        revs = figures.revs(revs_of_test_rpm(inputs.amount("stroke", "mm"), inputs.number("piston")))
        stroke, piston = inputs.amount("stroke", "mm"), inputs.number("piston")
        step = f"30000 x {piston:g} m/s / {stroke:g} mm = {revs}"
        text = f"{revs}, where the organiser posts no revs of their own"
        return Answered(text, f"{revs} by the stroke", steps=(step,))

    return told(inputs, "revs", "revs of the test", ("stroke", "piston"), REVS, make)


def _counted(inputs: Inputs) -> Answer:
    def make() -> Answered:
        meter, air = int(inputs.number("meter")), inputs.amount("air", "C")
        found = counted_db(inputs.amount("reading", "dB(A)"), meter, air)
        reading, said = inputs.amount("reading", "dB(A)"), f"{_db(found)} dB(A)"
        off = math.floor(reading) - found
        less = f"less {_db(off)} dB for a meter of type {meter} at {air:g} C"
        step = f"{_db(reading)} dB(A) rounded down, {less} = {said}"
        return Answered(f"{said}, where the organiser allows for meter and cold", steps=(step,))

    return told(inputs, "counted", "counts as", ("reading", "meter", "air"), COUNTED, make)


def _distance(inputs: Inputs) -> Answer:
    def make() -> Answered:
        near, far = inputs.amount("measured_at", "m"), inputs.amount("wanted_at", "m")
        found = level_at_db(inputs.amount("reading", "dB(A)"), near, far)
        reading, said = inputs.amount("reading", "dB(A)"), f"{_db(found)} dB(A)"
        step = f"{_db(reading)} dB(A) - 20 log10({far:g} m / {near:g} m) = {said}"
        return Answered(f"about {said} at {far:g} m, in the open", steps=(step,))

    needs = ("reading", "measured_at", "wanted_at")
    return told(inputs, "distance", "at another distance", needs, DISTANCE, make)


def _db(level: float) -> str:
    return rounded(level, 1).removesuffix(".0")
