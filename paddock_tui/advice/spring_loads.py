"""What the load on a wheel says of its spring: preload, whole deflection, and what a full tank adds."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.about import End
from paddock_tui.advice.calculators import Answer, Answered, Input, Inputs, Method, told
from paddock_tui.advice.sag_lengths import RIDER, sag_mm
from paddock_tui.advice.spring_rates import at_wheel_n_per_mm
from paddock_tui.calc.fuel import fuel_mass
from paddock_tui.calc.preload import preload_mm, preload_of_turns_mm
from paddock_tui.calc.sag import sag_shift_mm
from paddock_tui.calc.springs import deflection_mm, weight_n
from paddock_tui.calc.vibration import frequency_of_deflection_hz
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

PRELOAD = Method(
    "m g / wheel rate - rider sag, times the motion ratio at the spring",
    "a linear spring and linkage, friction averaged out, no top-out spring at work",
    "a check of what the adjuster's turns say, some mm either way",
    "Hooke's law",
)
TANK = Method(
    "mass of the fuel x share on this wheel x g / wheel rate",
    "the share as typed: a tank sits about the middle",
    "petrol of 0.720 to 0.775 kg/l (EN 228)",
    "Hooke's law",
)
TURNS = Method(
    "turns x preload of a turn", "counted from the spring just loose", "any collar", "ISO 261 pitches"
)
INPUTS: Final = (
    Input("fuel", "fuel more", c.VOLUME, "than when the sag was measured", "fuel more than then"),
    Input("fuel_share", "share of it here", Number(0, 100, step=5, unit="%"), "", "share of the fuel here"),
    Input("turns", "turns from loose", Number(0, 60, step=0.25), "collar turned down", "turns from loose"),
)


def loads(end: End, inputs: Inputs) -> Iterable[Answer]:
    """Return preload by load and sag, preload by turns, and the sag of a fuller tank."""
    return (_preload(end, inputs), _turns(inputs), _tank(end, inputs))


def _preload(end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        rate, force = at_wheel_n_per_mm(end, inputs), weight_n(inputs.amount("load", "kg"))
        pressed, sag = deflection_mm(force, rate), sag_mm(inputs, RIDER)
        at_wheel, ratio = preload_mm(pressed, sag), inputs.number("ratio")
        said = figures.millimetres(at_wheel * ratio)
        steps = (
            f"{force:.0f} N / {figures.rate(rate)} = {pressed:.1f} mm in all, which alone bounces at "
            f"{frequency_of_deflection_hz(pressed):.1f} Hz",
            f"({pressed:.1f} mm - {sag:.1f} mm) x {ratio:g} = {said}",
        )
        return Answered(f"about {said} at the spring", steps=steps)

    needs = (*RIDER, "load", "rate", "ratio")
    return told(inputs, "preload_by_load", "preload by load, sag", needs, PRELOAD, make)


def _turns(inputs: Inputs) -> Answer:
    def make() -> Answered:
        turns, each = inputs.number("turns"), inputs.number("per_step")
        said = figures.millimetres(preload_of_turns_mm(turns, each))
        return Answered(f"{said} at the spring", steps=(f"{turns:g} x {each:g} mm = {said}",))

    return told(inputs, "preload_by_turns", "preload by turns", ("turns", "per_step"), TURNS, make)


def _tank(end: End, inputs: Inputs) -> Answer:
    def make() -> Answered:
        litres, share = inputs.amount("fuel", "l"), inputs.number("fuel_share") / 100.0
        kg, rate = fuel_mass(litres).high_kg, at_wheel_n_per_mm(end, inputs)
        said = figures.millimetres(sag_shift_mm(kg, share, rate))
        step = f"{kg:.1f} kg x {round(share, 3):g} x 9.81 m/s2 / {figures.rate(rate)} = {said}"
        return Answered(f"{said} more sag", steps=(step,))

    needs = ("fuel", "fuel_share", "rate", "ratio")
    return told(inputs, "fuel_sag", "sag for fuel load", needs, TANK, make)
