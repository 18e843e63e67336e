"""How one end bounces by itself, and how firmly a push test says it is damped."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.about import End
from paddock_tui.advice.calculators import Answer, Answered, Input, Inputs, Method, told
from paddock_tui.advice.sag_lengths import ALONE
from paddock_tui.advice.spring_rates import at_wheel_n_per_mm
from paddock_tui.calc.sag import sag_of_lengths
from paddock_tui.calc.vibration import (
    critical_damping_n_s_per_m,
    damping_ratio,
    damping_ratio_of,
    friction_n,
    natural_frequency_hz,
    undamped_hz,
)
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number

FREQUENCY = Method(
    "f = sqrt(wheel rate / mass on it) / (2 pi)",
    "one mass on one linear spring: the other end, the tyre and the seat are left out",
    "an estimate: some tenths of a hertz off",
    "OpenStax College Physics 2e, 16.3",
)
PUSH = Method(
    "d = ln(first / last) / swings, z = d / sqrt(4 pi^2 + d^2)",
    "the end was pushed once and let swing; whole swings counted, up to up; damping that goes with speed",
    "where friction stops it, it takes the same each time, and no ratio holds",
    "Inman, Engineering Vibration (not checked in print)",
)
DAMPER = Method(
    "z = c / (2 sqrt(k m))",
    "one figure for the damper, at the wheel: rebound and compression, slow and fast differ",
    "near the speed at which it was measured",
    "Inman, Engineering Vibration (not checked in print)",
)
FRICTION = Method(
    "half of the gap between push and lift x wheel rate",
    "the two lengths were taken slowly, without a bounce",
    "it says how much sticks, not where: seals, bushes or an axle clamped askew",
    "Hooke's law; paddock practice",
)
INPUTS: Final = (
    Input("load", "mass on this wheel", c.WET_MASS, "rider on, less wheel and brake", "mass on this wheel"),
    Input("first", "first swing", Amount("length", "mm", 1, 200), "height of it over rest"),
    Input("last", "last swing", Amount("length", "mm", 0.5, 200, step=0.5), "height of it over rest"),
    Input("swings", "swings between them", Number(0.5, 20, step=0.5), "counted, up to up", "swings counted"),
    Input("damper", "damper at the wheel", Number(0, 20000, step=50, unit="N s/m"), "from a dynamometer"),
    Input("swing_time", "time of those swings", Number(0.1, 30, step=0.1, unit="s")),
)


def bounce(end: End, inputs: Inputs) -> Iterable[Answer]:
    """Return the frequency, the damping of a push test, and the friction between push and lift."""
    return (_frequency(end, inputs), _damping(inputs), _by_damper(end, inputs), _friction(end, inputs))


def _frequency(end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        rate, mass = at_wheel_n_per_mm(end, inputs), inputs.amount("load", "kg")
        found = natural_frequency_hz(rate, mass)
        said = f"{found:.1f} Hz"
        steps = (
            f"2 sqrt(k m) = {critical_damping_n_s_per_m(rate, mass):.0f} N s/m would stop every swing",
            f"sqrt({rate * 1000:.0f} N/m / {mass:g} kg) / (2 pi) = {said}",
        )
        return Answered(f"{said}, undamped", f"bounces at {said}", steps=steps)

    return told(inputs, "frequency", "natural frequency", ("rate", "ratio", "load"), FREQUENCY, make)


def _damping(inputs: Inputs) -> Answer:
    def make() -> Answered:
        first, last = inputs.amount("first", "mm"), inputs.amount("last", "mm")
        swings = inputs.number("swings")
        found = damping_ratio(first, last, swings)
        said = f"{found * 100:.0f} % of critical"
        steps = [f"d = ln({first:g} mm / {last:g} mm) / {swings:g}", f"d / sqrt(4 pi^2 + d^2) = {said}"]
        more = ""
        if inputs.known("swing_time"):
            counted = swings / inputs.number("swing_time")
            more = f"; undamped {undamped_hz(counted, found):.1f} Hz by the count"
            steps.insert(0, f"{swings:g} swings / {inputs.number('swing_time'):g} s = {counted:.1f} Hz")
        return Answered(f"{said}{more}", f"damped {said}", steps=tuple(steps))

    needs = ("first", "last", "swings")
    return told(inputs, "damping", "damping by a push", needs, PUSH, make, ("swing_time",))


def _by_damper(end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        rate, mass = at_wheel_n_per_mm(end, inputs), inputs.amount("load", "kg")
        damper = inputs.number("damper")
        said = f"{damping_ratio_of(damper, rate, mass) * 100:.0f} % of critical"
        step = (
            f"c / (2 sqrt(k m)) = {damper:g} N s/m / {critical_damping_n_s_per_m(rate, mass):.0f} "
            f"N s/m = {said}"
        )
        return Answered(said, steps=(step,))

    needs = ("damper", "rate", "ratio", "load")
    return told(inputs, "by_damper", "damping by damper", needs, DAMPER, make)


def _friction(end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        lengths = (inputs.amount(key, "mm") for key in ALONE)
        gap, rate = sag_of_lengths(*lengths).stiction_mm, at_wheel_n_per_mm(end, inputs)
        said = f"{friction_n(gap, rate):.0f} N"
        step = f"{figures.millimetres(gap)} / 2 x {figures.rate(rate)} = {said}"
        return Answered(f"{said} either way", f"friction {said}", steps=(step,))

    return told(inputs, "friction", "friction, push/lift", (*ALONE, "rate", "ratio"), FRICTION, make)
