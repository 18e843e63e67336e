"""Tyre pressures: where to start cold for a wanted hot figure, what to expect hot, what to do now."""

import datetime as dt
import functools
from collections.abc import Iterable, Iterator
from decimal import Decimal

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.air import ALTITUDE, MEASURED, air_of, filled_air, outside_of, outside_words
from paddock_tui.advice.calculators import (
    START,
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    if_known,
    told,
)
from paddock_tui.advice.tyre_air_learnt import air_left, elsewhere, gas_learnt
from paddock_tui.calc.cooling_pressure import (
    WARM_UNTIL_MIN,
    Parked,
    PressureAdvice,
    after_parking,
    at_gas_temperature,
)
from paddock_tui.calc.errors import Inconsistent, OutOfRange, within
from paddock_tui.calc.outside_pressure import AirMoves, outside_at_both
from paddock_tui.calc.tyre_air import absolute_kpa, gauge_kpa, wet_pressure_after_kpa_abs
from paddock_tui.calc.tyre_air_learning import HOT_WITHIN_MIN
from paddock_tui.calc.tyre_pressure import (
    Ambient,
    cold_band_kpa_gauge,
    hot_expected_kpa_gauge,
    same_air_kpa_gauge,
)
from paddock_tui.facts.tyre_targets import cold_target_of, hot_target_of, target_untold
from paddock_tui.limits.next_change import NEAR_TARGET
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.records.shapes import Amount, Number
from paddock_tui.rules.core import SetValue

TEMPERATURE = Amount("temperature", "C", -40, 150)
MINUTES = Amount("time", "min", 0, 600)

METHOD = Method(
    "(hot + outside) / (tyre air hot, K) = (cold + outside) / (tyre cold, K), pressures by gauge",
    "the same air cold and hot, a tyre cold through, no growth of the tyre",
    "tyre air from -40 to 150 C; a degree wrong is about 0.01 bar wrong",
    "the gas law, as in OpenStax College Physics 2e, 13.3; the vendor's figures come first",
)
NOW = Method(
    f"read within {HOT_WITHIN_MIN:g} minutes: the reading is the hot figure; later only too much is certain",
    "the tyre only cools while it stands",
    f"hot to {HOT_WITHIN_MIN:g} minutes after parking, warm to {WARM_UNTIL_MIN:g}, then late",
    "paddock practice, unpublished",
)
_AIR = (MEASURED.key, ALTITUDE.key)
_FEW_READINGS_K = 5.0
_FEW_READINGS = "assumed: fewer than three readings tell no spread"

_STEPS = {
    PressureAdvice.LET_OUT: "let out",
    PressureAdvice.PUT_IN: "put in",
    PressureAdvice.LEAVE: "leave it",
    PressureAdvice.WAIT: "wait",
}


@functools.cache
def _inputs() -> tuple[Input, ...]:
    pressure, warm, spread = c.TYRE_PRESSURE, TEMPERATURE, Number(0, 60, unit="°C")
    found: list[Input] = []
    for end in ENDS:
        gas = f"{end} tyre air, hot"
        found += [
            Input(f"{end}_hot", f"{end} hot target", pressure, "the vendor's hot figure"),
            Input(f"{end}_gas", f"{end} tyre air, hot", warm, "learnt from hot readings", gas),
            Input(
                f"{end}_spread", f"{end} tyre air, spread", spread, "either way", f"spread of that ({end})"
            ),
        ]
    tyre = "temperature of the cold tyre"
    found += [Input("cold_at", "cold tyre at", warm, "of the air in the shade", tyre)]
    found += [MEASURED, ALTITUDE]
    found += [Input(f"{end}_cold", f"{end} cold pressure", pressure, "as set") for end in ENDS]
    found += [Input(f"{end}_read", f"{end} hot reading", pressure, "as read after riding") for end in ENDS]
    return (
        *found,
        Input("minutes", "read after parking", MINUTES, "minutes", "time from parking to the reading"),
        Input(
            "gas_now",
            "tyre air now, about",
            warm,
            "estimated: only for a tyre that has cooled",
            "air in the tyre now",
        ),
    )


def pressures(about: About) -> Calculator:
    """Return the calculator of tyre pressures, filled from a session."""
    inputs = tuple(_declared(about))
    return Calculator(
        "pressures",
        "tyre pressures",
        inputs,
        _filled(about),
        functools.partial(_compute, about),
        about.situation.limits,
    )


def _declared(about: About) -> Iterator[Input]:
    """Return the inputs; a hot target that only the surface keeps from being known asks for that."""
    surface = about.session.surface
    untold = [f"{end}_hot" for end in ENDS if target_untold(about.tyre(end), surface)]
    for one in _inputs():
        yield attrs.evolve(one, name="surface, for the hot target") if one.key in untold else one


def _filled(about: About) -> dict[str, FilledInput]:
    found = filled_air(about)
    session = about.session
    cold = session.pressures.get("cold", PressureReading())
    hot = session.pressures.get("hot", PressureReading())
    if cold.temperature is not None:
        found["cold_at"] = FilledInput(cold.temperature, "at the cold reading")
    elif isinstance(session.air, Quantity):
        found["cold_at"] = FilledInput(session.air, f"the air of {about.place}")
    for end in ENDS:
        found |= _filled_end(about, end, cold, hot)
        left = None if cold.front or cold.rear else _left(about, end, found)
        if left is not None:
            found[f"{end}_cold"] = left
    minutes = _minutes(session.parked, hot.at)
    if minutes is not None:
        found["minutes"] = FilledInput(minutes, "from parking to the reading")
    return found


def _filled_end(
    about: About, end: End, cold: PressureReading, hot: PressureReading
) -> dict[str, FilledInput]:
    found: dict[str, FilledInput] = {}
    read = getattr(hot, end)
    wanted = _wanted(about, end, read)
    if wanted is not None:
        found[f"{end}_hot"] = wanted
    moves = AirMoves.of(about.situation.limits)
    learnt = gas_learnt(
        about.history, about.id_of("tyres"), end, about.id_of("venue"), about.session.surface, moves
    )
    if learnt is not None:
        gas = Quantity(_tenths(learnt.learnt.median_c), "C")
        found[f"{end}_gas"] = FilledInput(gas, learnt.words())
        if learnt.learnt.spread_k is not None:
            spread = round(learnt.learnt.spread_k, 1)
            found[f"{end}_spread"] = FilledInput(spread, "how far those readings spread, either way")
        else:
            found[f"{end}_spread"] = FilledInput(_FEW_READINGS_K, _FEW_READINGS)
    start = cold_target_of(about.setup, end)
    now = getattr(cold, f"set_to_{end}") or getattr(cold, end)
    if now is not None:
        found[f"{end}_cold"] = FilledInput(now, "as read cold, or what it was then set to")
    elif start is not None:
        found[f"{end}_cold"] = FilledInput(start, f"starting pressure of {about.place}")
    if read is not None:
        found[f"{end}_read"] = FilledInput(read, "the hot reading of this session")
    return found


def _left(about: About, end: End, known: dict[str, FilledInput]) -> FilledInput | None:
    """Return the air that an earlier session of the day left in the tyre, as it would read cold now.

    A starting pressure that was changed since is what the tyre will be set to, and goes before it.
    """
    source = about.situation.source
    carried = cold_target_of(source.setup, end) if source is not None else None
    if cold_target_of(about.setup, end) != carried:
        return None
    moves = AirMoves.of(about.situation.limits)
    left = air_left(about.history, about.id_of("tyres"), end, about.session.date, moves)
    if left is None or "cold_at" not in known:
        return None
    outside = Inputs((MEASURED, ALTITUDE), known, about.units)
    try:
        now = known["cold_at"].value.to("C")
        here = attrs.evolve(air_of(outside), place=about.id_of("venue"), day=about.session.date)
        both = outside_at_both(left.outside, here, moves)
        if both is None:
            return None
        kpa = same_air_kpa_gauge(left.kpa, left.celsius, now, both[0].kpa, both[1].kpa)
    except OutOfRange:
        return None
    cold = figures.quantity(figures.pressure(kpa, about.units))
    return if_known(cold, f"the air left in session {left.session}, as it would read cold")


def _wanted(about: About, end: End, read: Quantity | None) -> FilledInput | None:
    """Return the vendor's hot figure for the surface; of a window what is nearest to the reading."""
    found = hot_target_of(about.tyre(end), about.session.surface)
    if found is None:
        return None
    wanted = found.pressure if read is None else found.nearest(read)
    window = f": {found}" if found.most is not None else ""
    return FilledInput(wanted, f"hot target, {found.figure}, of tyre set {about.id_of('tyres')}{window}")


def _compute(about: About, inputs: Inputs) -> Iterable[Answer]:
    for end in ENDS:
        yield _start(about, inputs, end)
    for end in ENDS:
        yield _expected(inputs, end)
    for end in ENDS:
        yield _now(inputs, end)


def _start(about: About, inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        units, outside = inputs.units, outside_of(inputs)
        hot, cold_c = inputs.amount(f"{end}_hot", "kPa"), inputs.amount("cold_at", "C")
        spread = inputs.number(f"{end}_spread") if inputs.known(f"{end}_spread") else None
        band = cold_band_kpa_gauge(
            hot, cold_c, _gas_c(inputs, end), spread, Ambient(outside.kpa, outside.kpa)
        )
        best = figures.pressure(band.best_kpa_gauge, units)
        if inputs.origin(f"{end}_spread") == _FEW_READINGS:
            best = figures.pressure_coarse(band.best_kpa_gauge, units)
        between = ""
        if band.low_kpa_gauge is not None and band.high_kpa_gauge is not None:
            low, high = (figures.pressure(one, units) for one in (band.low_kpa_gauge, band.high_kpa_gauge))
            between = f", {low} to {high} by the spread"
        wanted = figures.pressure(hot, units)
        at = figures.temperature(cold_c, units)
        gas_c, outer = _gas_c(inputs, end), outside.kpa
        step = (
            f"cold = (hot + outside) x (tyre cold, K) / (air in it hot, K) - outside = ({hot:.1f} kPa + "
            f"{outer:.1f} kPa) x {cold_c + 273.15:.2f} K / {gas_c + 273.15:.2f} K - {outer:.1f} kPa = "
            f"{band.best_kpa_gauge:.1f} kPa: {best}"
        )
        return Answered(
            f"{best} cold at {at} for {wanted} hot{between}",
            f"{best} for {wanted} hot",
            (SetValue(("setup", f"{end}_start"), best),),
            (START, outside_words(outside)),
            (step,),
        )

    needs = (f"{end}_hot", f"{end}_gas", "cold_at")
    found = told(inputs, f"{end}_start", f"{end}, start cold", needs, METHOD, make, (f"{end}_spread", *_AIR))
    tyres = about.id_of("tyres")
    if not inputs.known(f"{end}_gas") and tyres is not None:
        return _with_lines(found, elsewhere(about.history, tyres, end, AirMoves.of(about.situation.limits)))
    return found


def _gas_c(inputs: Inputs, end: End) -> float:
    """Return the temperature of the hot gas; refused where it would be colder than the cold tyre."""
    gas_c, cold_c = inputs.amount(f"{end}_gas", "C"), inputs.amount("cold_at", "C")
    return within("tyre air when hot, over the cold tyre", gas_c, cold_c, 150.0, "C")


def _with_lines(answer: Answer, lines: tuple[str, ...]) -> Answer:
    first, *rest = answer.working
    working = (first, *lines, *rest)
    return Answer(answer.key, answer.label, answer.text, working, missing=answer.missing, known=answer.known)


def _expected(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        outside = outside_of(inputs)
        kpa = hot_expected_kpa_gauge(
            inputs.amount(f"{end}_cold", "kPa"),
            inputs.amount("cold_at", "C"),
            _gas_c(inputs, end),
            Ambient(outside.kpa, outside.kpa),
        )
        said = figures.pressure(kpa, inputs.units)
        cold, cold_c = inputs.amount(f"{end}_cold", "kPa"), inputs.amount("cold_at", "C")
        step = (
            f"hot = (cold + outside) x (air in it hot, K) / (tyre cold, K) - outside = ({cold:.1f} kPa + "
            f"{outside.kpa:.1f} kPa) x {_gas_c(inputs, end) + 273.15:.2f} K / {cold_c + 273.15:.2f} K - "
            f"{outside.kpa:.1f} kPa = {kpa:.1f} kPa: {said}"
        )
        wet = _if_water(inputs, end, cold, cold_c, outside.kpa)
        return Answered(
            f"expect {said}{_give_or_take(inputs, end, kpa)} hot",
            f"expect {said}",
            (),
            (outside_words(outside), *wet),
            (step,),
        )

    needs, uses = (f"{end}_cold", "cold_at", f"{end}_gas"), (f"{end}_spread", *_AIR)
    return told(inputs, f"{end}_expected", f"{end}, hot to expect", needs, METHOD, make, uses)


def _if_water(inputs: Inputs, end: End, cold: float, cold_c: float, outside: float) -> tuple[str, ...]:
    """Say how high it may come where liquid water was left in the tyre, which damp air alone never does."""
    try:
        wet = wet_pressure_after_kpa_abs(absolute_kpa(cold, outside), cold_c, _gas_c(inputs, end))
    except OutOfRange:
        return ()
    return (f"with water left in the tyre up to {figures.pressure(gauge_kpa(wet, outside), inputs.units)}",)


def _give_or_take(inputs: Inputs, end: End, kpa: float) -> str:
    """Say the band that the spread of the air's temperature makes of a hot pressure; empty without one."""
    if not inputs.known(f"{end}_spread"):
        return ""
    outside, hot_k = outside_of(inputs).kpa, _gas_c(inputs, end) + 273.15
    either = (kpa + outside) * inputs.number(f"{end}_spread") / hot_k
    low, high = (figures.pressure(one, inputs.units) for one in (kpa - either, kpa + either))
    return f" ({low.partition(' ')[0]} to {high})"


def _now(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        judged = _judged(inputs, end)
        step = _STEPS[judged.step]
        target = figures.pressure(inputs.amount(f"{end}_hot", "kPa"), inputs.units)
        read = figures.pressure(inputs.amount(f"{end}_read", "kPa"), inputs.units)
        against = f"{read} read, {target} wanted"
        if judged.set_to_kpa_gauge is None:
            return Answered(f"{step}: {judged.why}", step, steps=(f"{against}: {step}",))
        to = figures.pressure(judged.set_to_kpa_gauge, inputs.units)
        if judged.step is PressureAdvice.LEAVE:
            on_target = f"on its target of {target}"
            return Answered(f"{step}: {on_target}", on_target, steps=(f"{against}: {step}",))
        text = f"{step} to {to}: {judged.why}"
        puts = (SetValue(("pressures", "hot", f"set_to_{end}"), to, "session"),)
        return Answered(text, f"{step} to {to}", puts, steps=(f"{against}: {step} to {to}",))

    needs = (f"{end}_read", f"{end}_hot", "minutes")
    uses = ("gas_now", f"{end}_gas", f"{end}_cold")
    return told(inputs, f"{end}_now", f"{end}, now", needs, NOW, make, uses)


def _judged(inputs: Inputs, end: End) -> Parked:
    read, wanted = inputs.amount(f"{end}_read", "kPa"), inputs.amount(f"{end}_hot", "kPa")
    if inputs.known(f"{end}_cold") and read < inputs.amount(f"{end}_cold", "kPa"):
        why = "it is under the cold pressure: air was let out, it leaks, or one of the two is misread"
        raise Inconsistent(f"{end} hot reading", why)
    near = 100.0 * inputs.limits[NEAR_TARGET]
    if inputs.known("gas_now", f"{end}_gas"):
        now, hot = inputs.amount("gas_now", "C"), inputs.amount(f"{end}_gas", "C")
        return at_gas_temperature(read, wanted, now, hot, outside_of(inputs).kpa, near)
    return after_parking(read, wanted, inputs.amount("minutes", "min"), near)


def _minutes(parked: dt.time | None, at: dt.time | None) -> Quantity | None:
    if parked is None or at is None or at < parked:
        return None
    seconds = (at.hour - parked.hour) * 3600 + (at.minute - parked.minute) * 60 + at.second - parked.second
    return Quantity(_tenths(seconds / 60), "min")


def _tenths(number: float) -> Decimal:
    return Decimal(f"{number:.1f}")
