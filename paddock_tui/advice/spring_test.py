"""A spring on the bench: its rate by one load or two, two in series, and a raked fork's rate upright."""

from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.calc.springs import (
    rate_from_load_n_per_mm,
    rate_from_two_loads,
    series_rate_n_per_mm,
    vertical_rate_n_per_mm,
    weight_n,
)
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number

ONE = Method(
    "k = m g / x, x from the free length",
    "a linear spring, pressed straight, the scale on firm ground",
    "within the spring's travel; progressive springs have another rate at every length",
    "Hooke's law; OpenStax College Physics 2e, 16.1",
)
TWO = Method(
    "k = (m2 - m1) g / (L1 - L2)",
    "a linear spring between the two loads; what it was pressed before does not matter",
    "loads far enough apart: a kilogram on ten is a tenth of the rate",
    "Hooke's law",
)
SERIES = Method("1 / k = 1 / k1 + 1 / k2", "one spring on the other", "until one is closed", "elementary")
RAKED = Method(
    "k / cos(rake)^2, both legs together",
    "the fork's travel along its tubes, the wheel's upright",
    "0 to 45 deg",
    "Cossalter, Motorcycle Dynamics, 2nd ed. 2006 (not checked in print)",
)
_LENGTH = Amount("length", "mm", 10, 600, step=0.1)
INPUTS = (
    Input("free", "free length", _LENGTH, "without a load"),
    Input("load", "load", c.MASS, "on the scale", "load on the scale"),
    Input("length", "length under it", _LENGTH, "", "length under the load"),
    Input("load2", "second load", c.MASS, "more than the first", "second load"),
    Input("length2", "length under that", _LENGTH, "", "length under the second load"),
    Input("k1", "one spring", c.SPRING, "", "rate of one spring"),
    Input("k2", "the other on it", c.SPRING, "a top-out or helper spring", "rate of the other spring"),
    Input("fork", "one fork spring, rate", c.SPRING, "", "rate of one fork spring"),
    Input("rake", "rake", Number(0, 45, step=0.1, unit="deg")),
)


def spring_test(about: About) -> Calculator:
    """Return the calculator of a spring on the bench, filled with the fork's spring and rake."""
    bike = about.situation.bike
    found = {}
    if bike is not None:
        where, rake = f"bike {about.id_of('bike')}", bike.chassis.rake
        found = filled(
            fork=if_known(about.setup.front_spring or bike.front.spring, where),
            rake=if_known(None if rake is None else round(rake.to("deg"), 3), where),
        )
    return Calculator("spring-test", "a spring on the bench", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (_one(inputs), _two(inputs), _series(inputs), _raked(inputs))


def _one(inputs: Inputs) -> Answer:
    def make() -> Answered:
        force, pressed = weight_n(inputs.amount("load", "kg")), _pressed(inputs, "free", "length")
        said = figures.rate(rate_from_load_n_per_mm(force, pressed))
        return Answered(said, steps=(f"{force:.0f} N / {pressed:.1f} mm = {said}",))

    return told(inputs, "one", "rate, by one load", ("free", "load", "length"), ONE, make)


def _two(inputs: Inputs) -> Answer:
    def make() -> Answered:
        first, second = (weight_n(inputs.amount(key, "kg")) for key in ("load", "load2"))
        further = _pressed(inputs, "length", "length2")
        found = rate_from_two_loads(first, second, further)
        said = figures.rate(found.rate_n_per_mm)
        step = f"({second:.0f} N - {first:.0f} N) / {further:.1f} mm = {said}"
        before = f"the first load had pressed it {figures.millimetres(found.first_deflection_mm)} from free"
        return Answered(said, more=(before,), steps=(step,))

    return told(inputs, "two", "rate, by two loads", ("load", "length", "load2", "length2"), TWO, make)


def _pressed(inputs: Inputs, longer: str, shorter: str) -> float:
    return inputs.amount(longer, "mm") - inputs.amount(shorter, "mm")


def _series(inputs: Inputs) -> Answer:
    def make() -> Answered:
        first, second = (inputs.amount(key, "N/mm") for key in ("k1", "k2"))
        said = figures.rate(series_rate_n_per_mm(first, second))
        return Answered(said, steps=(f"1 / (1 / {first:g} N/mm + 1 / {second:g} N/mm) = {said}",))

    return told(inputs, "series", "both in series", ("k1", "k2"), SERIES, make)


def _raked(inputs: Inputs) -> Answer:
    def make() -> Answered:
        one, rake = inputs.amount("fork", "N/mm"), inputs.number("rake")
        said = figures.rate(vertical_rate_n_per_mm(2.0 * one, rake))
        return Answered(f"{said}, both legs", steps=(f"2 x {one:g} N/mm / cos({rake:g} deg)^2 = {said}",))

    return told(inputs, "raked", "fork's rate, upright", ("fork", "rake"), RAKED, make)
