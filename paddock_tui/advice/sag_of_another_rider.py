"""Another rider on the same bike: the sag to expect, and what preload has to make up."""

from collections.abc import Iterable
from decimal import Decimal

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About, End, latest_sag
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
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.sag import for_other_rider, sag_of_lengths
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.session_parts import SagReading

METHOD = Method(
    "free sag + (rider sag - free sag) x other weight / weight measured with",
    "both sit the same, in kit; preload is for the weight, whether damping is automatic or by hand",
    "30 to 250 kg, while there is some free sag",
    "by proportion; paddock practice, unpublished",
)
INPUTS = (
    *(
        Input(f"{end}_{load}", f"{end} {words}", c.SMALL)
        for end in ENDS
        for load, words in (("free", "free sag"), ("rider", "rider sag"))
    ),
    Input("measured", "weight, rider measured", c.MASS, "in kit", "weight of the rider measured"),
    Input("other", "weight, other rider", c.MASS, "in kit", "weight of the other rider"),
)


def riders(about: About) -> Calculator:
    """Return the calculator of another rider's sag; `other` is this session's rider where somebody else
    measured.
    """
    return Calculator("riders", "another rider", INPUTS, _filled(about), _compute)


def _filled(about: About) -> dict[str, FilledInput]:
    found: dict[str, FilledInput] = {}
    who: str | None = None
    for end in ENDS:
        for key, load in (("free", "alone"), ("rider", "rider")):
            measured = latest_sag(about, end, load)
            value = _sag(measured.reading) if measured is not None else None
            if measured is not None and value is not None:
                found[f"{end}_{key}"] = FilledInput(value, f"measured in {measured.where}")
                who = measured.rider if load == "rider" else who
    rider = about.history.riders.get(who or "")
    if rider is not None and rider.weight is not None:
        found["measured"] = FilledInput(rider.weight, f"rider {who}")
    here = about.situation.rider
    if who not in (None, about.id_of("rider")) and here is not None and here.weight is not None:
        found["other"] = FilledInput(here.weight, f"rider {about.id_of('rider')}")
    return found


def _sag(reading: SagReading) -> Quantity | None:
    lengths = (reading.extended, reading.pushed, reading.lifted)
    try:
        found = sag_of_lengths(*(one.to("mm") for one in lengths if one is not None))
    except (OutOfRange, Inconsistent):
        return None
    return Quantity(Decimal(f"{found.sag_mm:g}"), "mm")


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return [_expected(inputs, end) for end in ENDS]


def _expected(inputs: Inputs, end: End) -> Answer:
    keys = (f"{end}_free", f"{end}_rider")

    def make() -> Answered:
        free, rider = (inputs.amount(key, "mm") for key in keys)
        found = for_other_rider(free, rider, inputs.amount("measured", "kg"), inputs.amount("other", "kg"))
        sag = figures.millimetres(found.rider_sag_mm)
        kg = [inputs.amount(key, "kg") for key in ("measured", "other")]
        step = f"{free:g} mm + ({rider:g} mm - {free:g} mm) x {kg[1]:g} kg / {kg[0]:g} kg = {sag}"
        if abs(found.make_up_mm) < 0.05:
            return Answered(f"{sag}, as measured", steps=(step,))
        make_up = figures.millimetres(abs(found.make_up_mm))
        way = "more" if found.make_up_mm > 0 else "less"
        last = f"{sag} against {rider:g} mm measured = {make_up}"
        return Answered(f"{sag}: {make_up} at the wheel to make up by {way} preload", steps=(step, last))

    return told(inputs, end, f"{end}, sag expected", (*keys, "measured", "other"), METHOD, make)
