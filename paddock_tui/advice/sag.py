"""Sag and springs of one end: what was measured, preload for the wanted sag, and whether the spring suits."""

import functools
from collections.abc import Iterable, Mapping
from decimal import Decimal

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import About, End, latest_sag
from paddock_tui.advice.bounce import INPUTS as BOUNCE
from paddock_tui.advice.bounce import bounce
from paddock_tui.advice.calculators import (
    START,
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    told,
)
from paddock_tui.advice.forces import filled_chassis
from paddock_tui.advice.sag_lengths import ALONE, RIDER, check_points, sag_mm
from paddock_tui.advice.spring_loads import INPUTS as LOADS
from paddock_tui.advice.spring_loads import loads
from paddock_tui.advice.spring_rates import rate_at_wheel, rate_to_serve
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.instruments import TAPE_MM, band
from paddock_tui.calc.preload import PreloadAdjuster, PreloadPlan, preload_for_sag
from paddock_tui.calc.sag import (
    percent_of_travel,
    sag_of_lengths,
)
from paddock_tui.calc.spring_choice import (
    FREE_FRONT_MM,
    FREE_REAR_MM,
    PreloadAt,
    Windows,
    judge_rate,
)
from paddock_tui.facts.sag import rider_window, wanted_sag
from paddock_tui.limits.sag import AGREES
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.bike import BikeEnd
from paddock_tui.records.shapes import Number, Word
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.suspension import Adjuster
from paddock_tui.rules.core import SetValue

MEASURED = Method(
    "sag = fully extended - (pushed + lifted) / 2; the gap of the two is stiction",
    "the bike upright, in full kit, no bounce between the two lengths",
    "sag up to 200 mm",
    "paddock practice, unpublished",
)
PRELOAD = Method(
    "turns = (sag - target) x motion ratio / preload per turn",
    "one motion ratio over that distance; the same rider and fuel as measured",
    "within the adjuster's range; measure again afterwards",
    "elementary; paddock practice, unpublished",
)
VERDICT = Method(
    "rider sag on target with little free sag: soft; with much: stiff; preload at its end says the same",
    "a spring that is nearly linear, no top-out springs at work, or a technician's figures",
    "a reason to ask, not an order",
    "paddock practice, unpublished",
)
_NO_FREE_MM = 0.5
_IN_USE = "middle of the window in common use, unpublished"

_LENGTHS_ALONE = "three lengths with the bike alone"
_LENGTHS_RIDER = "three lengths with the rider on"


@functools.cache
def _inputs(end: End) -> tuple[Input, ...]:
    length, small = c.LENGTH, c.SMALL
    what = "fork" if end == "front" else "shock"
    return (
        Input("extended", "alone, fully extended", length, "wheel off the ground", _LENGTHS_ALONE),
        Input("alone_pushed", "alone, pushed", length, "pushed, let rise slowly", _LENGTHS_ALONE),
        Input("alone_lifted", "alone, lifted", length, "lifted, let drop slowly", _LENGTHS_ALONE),
        Input("rider_extended", "rider, fully extended", length, "wheel off the ground", _LENGTHS_RIDER),
        Input("rider_pushed", "rider on, pushed", length, "pushed, let rise slowly", _LENGTHS_RIDER),
        Input("rider_lifted", "rider on, lifted", length, "lifted, let drop slowly", _LENGTHS_RIDER),
        Input("wanted_rider", "target rider sag", small),
        Input("wanted_free", "target free sag", small),
        Input("preload", "preload when measured", Number(-100, 200, step=0.25), "in the adjuster's unit"),
        Input(
            "per_step",
            "spring mm per step",
            Number(0.1, 20, unit="mm", step=0.1),
            "what one turn, click or mm of the adjuster moves",
            "preload of one turn or click",
        ),
        Input("ratio", "motion ratio", Number(0.1, 1.5, step=0.01), "spring travel over wheel travel"),
        Input("rate", f"one {what} spring, rate", c.SPRING, "", f"rate of one {what} spring"),
        Input("travel", "wheel travel", c.TRAVEL),
        Input("top_out", "top-out springs", Word("fitted", "none")),
        *BOUNCE,
        *LOADS,
    )


def sag(about: About, end: End) -> Calculator:
    """Return the calculator of one end's sag and spring, filled with the last reading of this rider."""
    compute = functools.partial(_compute, about, end)
    return Calculator(f"sag-{end}", f"sag and spring, {end}", _inputs(end), _filled(about, end), compute)


def adjuster_of(about: About, end: End) -> tuple[str, Adjuster] | None:
    """Return the preload adjuster of an end with its name; None where there is none, or more than one."""
    bike = about.situation.bike
    found = [
        (name, one)
        for name, one in (bike.adjusters if bike is not None else {}).items()
        if one.what == "preload" and one.end == end
    ]
    return found[0] if len(found) == 1 else None


def _filled(about: About, end: End) -> dict[str, FilledInput]:
    found: dict[str, FilledInput] = {}
    for load, keys in (("alone", ALONE), ("rider", RIDER)):
        measured = latest_sag(about, end, load, about.session.rider)
        if measured is None:
            continue
        reading = measured.reading
        for key, value in zip(keys, (reading.extended, reading.pushed, reading.lifted), strict=True):
            if value is not None:
                found[key] = FilledInput(value, f"measured in {measured.where}")
        if reading.preload is not None:
            found["preload"] = FilledInput(reading.preload, f"noted in {measured.where}")
    on_wheel = _load(about, end)
    if on_wheel is not None:
        found["load"] = on_wheel
    found["fuel_share"] = FilledInput(50.0, "assumed: a tank about the middle")
    return found | _wanted(about, end) | _of_bike(about, end)


def _load(about: About, end: End) -> FilledInput | None:
    """Return the mass on one wheel with the rider on, by the place of the centre of mass."""
    known = filled_chassis(about)
    if not {"bike", "rider", "wheelbase", "ahead"} <= known.keys():
        return None
    mass = known["bike"].value.to("kg") + known["rider"].value.to("kg")
    share = known["ahead"].value.to("mm") / known["wheelbase"].value.to("mm")
    kg = mass * (share if end == "front" else 1.0 - share)
    return FilledInput(Quantity(Decimal(f"{kg:.0f}"), "kg"), "whole mass by its place, wheel not taken off")


def _wanted(about: About, end: End) -> dict[str, FilledInput]:
    """Return the technician's figures where there are some, else the middle of the windows in common use.

    Of rider sag where tables serve. The window of the front's free sag is too weak for a figure to be taken
    from it.
    """
    bike = about.situation.bike
    own: BikeEnd = getattr(bike, end) if bike is not None else BikeEnd()
    wanted = wanted_sag(own, about.session.kind == "road", about.situation.limits)
    window = _usual(about, end, None)
    aims: dict[str, tuple[Quantity | None, float | None]] = {
        "wanted_rider": (own.technician_rider_sag, wanted.aim_mm if wanted is not None else None),
        "wanted_free": (
            own.technician_free_sag,
            (window.free_low_mm + window.free_high_mm) / 2 if end == "rear" else None,
        ),
    }
    found = {}
    for key, (given, mm) in aims.items():
        if given is not None:
            found[key] = FilledInput(given, f"the technician's figure, bike {about.id_of('bike')}")
        elif mm is not None:
            found[key] = FilledInput(Quantity(Decimal(f"{mm:g}"), "mm"), _IN_USE)
    return found


def _of_bike(about: About, end: End) -> dict[str, FilledInput]:
    bike = about.situation.bike
    if bike is None:
        return {}
    own, where = getattr(bike, end), f"bike {about.id_of('bike')}"
    found: dict[str, FilledInput] = {}
    if own.motion_ratio is not None:
        found["ratio"] = FilledInput(own.motion_ratio, where)
    elif end == "front":
        found["ratio"] = FilledInput(1.0, "a fork moves with its wheel")
    fitted = getattr(about.setup, f"{end}_spring")
    if fitted is not None or own.spring is not None:
        found["rate"] = FilledInput(fitted or own.spring, about.place if fitted is not None else where)
    if own.travel is not None:
        found["travel"] = FilledInput(own.travel, where)
    if own.top_out_springs is not None:
        found["top_out"] = FilledInput(own.top_out_springs, where)
    adjuster = adjuster_of(about, end)
    if adjuster is not None and adjuster[1].unit == "mm":
        found["per_step"] = FilledInput(1.0, "the adjuster counts mm")
    elif adjuster is not None and adjuster[1].unit == "turn" and own.preload_per_turn is not None:
        found["per_step"] = FilledInput(own.preload_per_turn.to("mm"), where)
    return found


def _compute(about: About, end: End, inputs: Inputs) -> Iterable[Answer]:
    yield _sag(inputs, "free", "free sag", ALONE)
    yield _sag(inputs, "rider", "rider sag", RIDER)
    yield _preload(about, end, inputs)
    yield _verdict(about, end, inputs)
    yield rate_to_serve(end, inputs)
    yield rate_at_wheel(end, inputs)
    yield from bounce(end, inputs)
    yield from loads(end, inputs)


def _sag(inputs: Inputs, key: str, label: str, lengths: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        extended, pushed, lifted = (inputs.amount(one, "mm") for one in lengths)
        found = sag_of_lengths(extended, pushed, lifted)
        share = ""
        if inputs.known("travel"):
            share = f", {percent_of_travel(found.sag_mm, inputs.amount('travel', 'mm')):.0f} % of travel"
        low, high = _sag_band_mm(inputs, lengths)
        either = (
            f", {figures.millimetres(low).removesuffix(' mm')} to {figures.millimetres(high)} by the tape"
        )
        said = f"{figures.millimetres(found.sag_mm)}{share}{either}"
        return Answered(
            f"{said}, stiction {figures.millimetres(found.stiction_mm)}",
            f"{label} {figures.millimetres(found.sag_mm)}",
            more=(f"the band: each length within {TAPE_MM:g} mm",),
            steps=(
                f"stiction = {lifted:g} mm - {pushed:g} mm = {figures.millimetres(found.stiction_mm)}",
                f"sag = {extended:g} mm - ({pushed:g} mm + {lifted:g} mm) / 2"
                f" = {figures.millimetres(found.sag_mm)}",
            ),
        )

    return told(inputs, key, label, lengths, MEASURED, make, ("travel",))


def _sag_band_mm(inputs: Inputs, lengths: tuple[str, ...]) -> tuple[float, float]:
    """Return the least and greatest sag that lengths read to the millimetre leave open."""

    def sag_of(one: Mapping[str, float]) -> float:
        settled = sorted(one[key] for key in lengths[1:])
        return sag_of_lengths(one[lengths[0]], *settled).sag_mm

    at = {key: inputs.amount(key, "mm") for key in lengths}
    return band(sag_of, at, dict.fromkeys(lengths, TAPE_MM))


@attrs.frozen
class _Numbers:
    """The adjuster's own numbers as preload: counted from closed, more preload is a lower number."""

    low: float
    high: float
    turned: bool

    def preload(self, number: float) -> float:
        return self.low + self.high - number if self.turned else number


def _numbers(record: Adjuster) -> _Numbers | None:
    if record.range is None:
        return None
    low, high = sorted(record.range)
    return _Numbers(low, high, record.counted_from == "closed")


def _preload(about: About, end: End, inputs: Inputs) -> Answer:
    found = adjuster_of(about, end)

    def make() -> Answered:
        numbers = _numbers(found[1]) if found is not None else None
        if found is None or numbers is None:
            raise Inconsistent("adjuster", "this end has no single preload adjuster with a range in its file")
        within = _in_window(about, end, inputs)
        if within:
            return Answered(within, steps=(within,))
        name, record = found
        plan = _plan(inputs, numbers, record.step or 1.0)
        number = round(numbers.preload(plan.set_to), 4)
        unit = f"{record.unit}s" if record.unit in ("turn", "click") else record.unit or ""
        wanted = figures.millimetres(inputs.amount("wanted_rider", "mm"))
        said = f"{number:g} {unit}".strip()
        per = inputs.number("per_step"), inputs.number("ratio")
        apart = f"{figures.millimetres(sag_mm(inputs, RIDER))} - {wanted}"
        step = f"({apart}) x {per[1]:g} / {per[0]:g} mm = {plan.change:+g} of preload, so {said}"
        if not plan.reachable:
            after = figures.millimetres(plan.sag_after_mm)
            out = f"out of reach: {said}, its end, leaves {after} where the target is {wanted}"
            return Answered(out, said, steps=(step, f"at its end: {after}"))
        text = f"{said} for {wanted}: {figures.millimetres(plan.sag_after_mm)} to expect"
        value = int(number) if float(number).is_integer() else number
        puts = (SetValue(("setup", "adjusters", name), value),)
        return Answered(text, f"{said} for {wanted}", puts, (START,), (step, f"set to: {said}"))

    needs = (*RIDER, "wanted_rider", "preload", "per_step", "ratio")
    return told(inputs, "preload", "preload for that", needs, PRELOAD, make)


def _in_window(about: About, end: End, inputs: Inputs) -> str:
    """Say that there is nothing to turn, where the wanted sag is but the middle of a window."""
    if inputs.origin("wanted_rider") != _IN_USE:
        return ""
    window, found_mm = _usual(about, end, inputs), sag_mm(inputs, RIDER)
    if not window.rider_low_mm <= found_mm <= window.rider_high_mm:
        return ""
    bounds = _bounds(window.rider_low_mm, window.rider_high_mm)
    return f"nothing to turn: {figures.millimetres(found_mm)} is within {bounds}"


def _bounds(low_mm: float, high_mm: float) -> str:
    return f"{show_number(round(low_mm, 1))} to {show_number(round(high_mm, 1))} mm"


def _plan(inputs: Inputs, numbers: _Numbers, step: float) -> PreloadPlan:
    adjuster = PreloadAdjuster(
        numbers.low, numbers.high, inputs.number("per_step"), step, inputs.number("ratio")
    )
    return preload_for_sag(
        sag_mm(inputs, RIDER),
        inputs.amount("wanted_rider", "mm"),
        numbers.preload(inputs.number("preload")),
        adjuster,
    )


def _usual(about: About, end: End, inputs: Inputs | None) -> Windows:
    """Return the windows in common use: of rider sag those in force."""
    travel = _travel_mm(about, end, inputs)
    rider = rider_window(travel, about.session.kind == "road", about.situation.limits)
    return Windows(rider.low_mm, rider.high_mm, *(FREE_FRONT_MM if end == "front" else FREE_REAR_MM))


def _windows(about: About, end: End, inputs: Inputs) -> Windows:
    common, bike = _usual(about, end, inputs), about.situation.bike
    if bike is None or getattr(bike, end).technician_rider_sag is None:
        return common
    if not inputs.known("wanted_rider"):
        return common
    rider = inputs.amount("wanted_rider", "mm")
    free = inputs.amount_or("wanted_free", "mm", (common.free_low_mm + common.free_high_mm) / 2)
    slack = about.situation.limits[AGREES]
    return Windows(rider - slack, rider + slack, max(free - slack, 0.0), free + slack, True)


def _travel_mm(about: About, end: End, inputs: Inputs | None) -> float | None:
    """Return the wheel travel as it stands on the bench, else in the bike's file; None where not known."""
    if inputs is not None:
        return inputs.amount("travel", "mm") if inputs.known("travel") else None
    bike = about.situation.bike
    travel = getattr(bike, end).travel if bike is not None else None
    return travel.to("mm") if travel is not None else None


def _verdict(about: About, end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        free = sag_mm(inputs, ALONE) if inputs.known(*ALONE) else None
        if free is not None:
            check_points(inputs)
            if free < _NO_FREE_MM and inputs.value("top_out") == "fitted":
                raise Inconsistent(
                    "free sag", "none, with top-out springs at work: it tells nothing of the rate"
                )
        top_out = {"fitted": True, "none": False}.get(inputs.value("top_out"))
        windows = _windows(about, end, inputs)
        found = judge_rate(sag_mm(inputs, RIDER), free, windows, _preload_at(about, end, inputs), top_out)
        rider = _bounds(windows.rider_low_mm, windows.rider_high_mm)
        free_sag = _bounds(windows.free_low_mm, windows.free_high_mm)
        whose = "about the technician's figures" if windows.from_technician else "in common use"
        more = f"windows {whose}: rider {rider}, free {free_sag}"
        return Answered(f"rate {found.rate.value}: {found.why}", f"rate {found.rate.value}", (), (more,))

    uses = (*ALONE, "wanted_rider", "wanted_free", "preload", "top_out")
    return told(inputs, "verdict", "does the spring suit", RIDER, VERDICT, make, uses)


def _preload_at(about: About, end: End, inputs: Inputs) -> PreloadAt:
    found = adjuster_of(about, end)
    numbers = _numbers(found[1]) if found is not None else None
    if numbers is None or not inputs.known("preload"):
        return PreloadAt.UNKNOWN
    at = numbers.preload(inputs.number("preload"))
    if at <= numbers.low:
        return PreloadAt.LEAST
    return PreloadAt.MOST if at >= numbers.high else PreloadAt.BETWEEN
