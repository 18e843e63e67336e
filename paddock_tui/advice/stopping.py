"""Stopping: what is ridden before the brakes bite, braking, on a slope, and what a timed stop was."""

from collections.abc import Iterable

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
from paddock_tui.advice.forces import (
    AHEAD,
    BALANCE,
    FRICTION,
    HEIGHT,
    SLOPE,
    WHEELBASE,
    balance_of,
    filled_chassis,
    in_g,
    slope_of,
)
from paddock_tui.advice.gearing import gearing
from paddock_tui.calc.acceleration import distance_m, mean_m_s2
from paddock_tui.calc.stopping import (
    BEST_M_S2,
    HALF_OF_RIDERS_USE,
    MEAN_DRY_M_S2,
    MEAN_WET_M_S2,
    REACTION_S,
    Braking,
    Decides,
    braking_by_friction,
    braking_by_rate,
    reaction_m,
    speed_to_stop_in_m_s,
    stopping_m,
)
from paddock_tui.calc.wet_grip import RUBBER_DRY, RUBBER_DRY_SLIDING
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

METHOD = Method(
    "v t + v^2 / (2 a), a the least of what was typed, and what lifts the rear",
    "one deceleration all the way; drag and engine braking left out, which shorten it; brakes and tyres warm",
    "up to 400 km/h, 20 m/s2; a best case, not a braking marker",
    "OpenStax University Physics 1; Garber and Hoel, eq. 3.27; reaction of 1 s: a road-safety agency",
)
TIMED = Method("v / t, and v t / 2", "slowing steadily", "up to 540 km/h", "OpenStax University Physics 1")
PUBLISHED = (
    f"published means on the road: {MEAN_DRY_M_S2:g} dry, {MEAN_WET_M_S2:g} wet, {BEST_M_S2:g} m/s2 at best",
    f"half of the riders in a trial used {HALF_OF_RIDERS_USE * 100:.0f} % or less of what they had",
    f"a locked wheel holds {RUBBER_DRY_SLIDING / RUBBER_DRY:g} of a rolling one (rubber on dry concrete)",
)
INPUTS = (
    Input("speed", "braking from", c.SPEED, "", "speed to brake from"),
    Input(
        "reaction", "reaction", Number(0, 5, step=0.1, unit="s"), "before the brakes bite", "reaction time"
    ),
    Input("rate", "deceleration", Number(0.5, 20, step=0.5, unit="m/s2"), "or a friction", "deceleration"),
    FRICTION,
    SLOPE,
    WHEELBASE,
    HEIGHT,
    AHEAD,
    Input("room", "room to stop", c.LENGTH_OF_STRAIGHT),
    Input("time", "timed stop", Number(0.5, 60, step=0.1, unit="s"), "to standstill", "time of a stop"),
)


_MARKER = "a best case, not a braking marker"


def stopping(about: About) -> Calculator:
    """Return the calculator of stopping distances, filled with the fastest speed on the straight."""
    fastest = gearing(about).filled.get("fastest")
    found = {} if fastest is None else {"speed": fastest}
    found["reaction"] = FilledInput(REACTION_S, "assumed: road-safety agency, motorcycles")
    found |= {key: one for key, one in filled_chassis(about).items() if key in BALANCE}
    return Calculator("stopping", "stopping", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    # What is typed as deceleration goes before a friction.
    by = "friction" if inputs.known("friction") and not inputs.known("rate") else "rate"
    return (_stop(inputs, by), _room(inputs, by), _timed(inputs))


def _braking(inputs: Inputs, by: str) -> Braking:
    """Return the deceleration along the road: the least of what was typed and what lifts the rear."""
    balance = balance_of(inputs) if inputs.known(*BALANCE) else None
    if by == "rate":
        return braking_by_rate(inputs.number("rate"), balance, slope_of(inputs))
    return braking_by_friction(inputs.number("friction"), balance, slope_of(inputs))


def _decides(inputs: Inputs, by: str, found: Braking) -> str:
    """Name what sets the braking, and whether the lift of the rear could be told."""
    if found.by is Decides.LIFT:
        return f"the rear lifts at {in_g(found.m_s2)}"
    rate = f"{inputs.number('rate'):g} m/s2" if by == "rate" else f"friction {inputs.number('friction'):g}"
    return f"if {rate}" + ("" if inputs.known(*BALANCE) else "; the rear may lift sooner")


def _rate_step(inputs: Inputs, by: str, found: Braking) -> str:
    """Write the deceleration with the numbers put in."""
    slope = f", slope {inputs.number('slope'):g} %" if inputs.known("slope") else ""
    if found.by is Decides.LIFT:
        base, height, ahead = (f"{inputs.amount(key, 'm'):.3f} m" for key in BALANCE)
        return (
            f"a = g ((p - b) / h cos + sin) = 9.81 m/s2 x ({base} - {ahead}) / {height}{slope}"
            f" = {found.m_s2:.2f} m/s2"
        )
    if by == "rate":
        return f"a = {inputs.number('rate'):g} m/s2 + g sin{slope} = {found.m_s2:.2f} m/s2"
    mu = f"{inputs.number('friction'):g}"
    return f"a = g (mu cos + sin) = 9.81 m/s2 x {mu}{slope} = {found.m_s2:.2f} m/s2"


def _stop(inputs: Inputs, by: str) -> Answer:
    def make() -> Answered:
        speed, reaction = inputs.amount("speed", "m/s"), inputs.number("reaction")
        found = _braking(inputs, by)
        before, whole = reaction_m(speed, reaction), stopping_m(speed, reaction, found.m_s2)
        said, bite = figures.metres_at_least(whole), figures.metres_at_least(before)
        steps = (
            f"v = {speed:.2f} m/s",
            _rate_step(inputs, by, found),
            f"v t + v^2 / (2 a) = {speed:.2f} m/s x {reaction:g} s + ({speed:.2f} m/s)^2 / "
            f"(2 x {found.m_s2:.2f} m/s2) = {before:.1f} m + {whole - before:.1f} m, rounded up: {said}",
        )
        text = f"{said} at best, {bite} before the brakes bite, {_decides(inputs, by, found)}; not a marker"
        return Answered(text, more=(_MARKER, *PUBLISHED), steps=steps)

    uses = ("slope", *BALANCE)
    return told(inputs, "stop", "stops in", ("speed", "reaction", by), METHOD, make, uses)


def _room(inputs: Inputs, by: str) -> Answer:
    def make() -> Answered:
        room, reaction, found = inputs.amount("room", "m"), inputs.number("reaction"), _braking(inputs, by)
        speed = speed_to_stop_in_m_s(room, reaction, found.m_s2)
        said = figures.speed_at_most(speed, inputs.units)
        steps = (
            _rate_step(inputs, by, found),
            f"v = sqrt((a t)^2 + 2 a d) - a t, a t = {found.m_s2:.2f} m/s2 x {reaction:g} s, "
            f"d = {room:g} m: {speed:.2f} m/s, rounded down: {said}",
        )
        text = f"{said} at the very most, {_decides(inputs, by, found)}; not a marker"
        return Answered(text, more=(_MARKER,), steps=steps)

    uses = ("slope", *BALANCE)
    return told(inputs, "room", "speed for that room", ("room", "reaction", by), METHOD, make, uses)


def _timed(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, time = inputs.amount("speed", "m/s"), inputs.number("time")
        rate, over = -mean_m_s2(-speed, time), distance_m(speed, 0.0, time)
        steps = (
            f"v t / 2 = {speed:.2f} m/s x {time:g} s / 2 = {over:.0f} m",
            f"v / t = {speed:.2f} m/s / {time:g} s = {rate:.1f} m/s2",
        )
        return Answered(f"{rate:.1f} m/s2 in the mean, over {over:.0f} m", steps=steps)

    return told(inputs, "timed", "timed stop was", ("speed", "time"), TIMED, make)
