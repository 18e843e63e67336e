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
from paddock_tui.advice.forces import FRICTION, SLOPE, slope_of
from paddock_tui.advice.gearing import gearing
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number
from paddock_tui.trade.acceleration import distance_m, mean_m_s2
from paddock_tui.trade.longitudinal import sliding_m_s2
from paddock_tui.trade.stopping import (
    BEST_M_S2,
    HALF_OF_RIDERS_USE,
    MEAN_DRY_M_S2,
    MEAN_WET_M_S2,
    REACTION_S,
    braking_m,
    reaction_m,
    speed_to_stop_in_m_s,
)
from paddock_tui.trade.wet_grip import RUBBER_DRY, RUBBER_DRY_SLIDING

METHOD = Method(
    "v t + v2 / (2 a), with g sin(slope) added to a; from a friction a = g mu",
    "the same deceleration all the way, no air, no wheel lifting",
    "up to 540 km/h, 20 m/s2",
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
    Input("room", "room to stop", c.LENGTH_OF_STRAIGHT),
    Input("time", "timed stop", Number(0.5, 60, step=0.1, unit="s"), "to standstill", "time of a stop"),
)


def stopping(about: About) -> Calculator:
    """Return the calculator of stopping distances, filled with the fastest speed on the straight."""
    fastest = gearing(about).filled.get("fastest")
    found = {} if fastest is None else {"speed": fastest}
    found["reaction"] = FilledInput(REACTION_S, "assumed: road-safety agency, motorcycles")
    return Calculator("stopping", "stopping", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    # What is typed as deceleration goes before a friction.
    by = "friction" if inputs.known("friction") and not inputs.known("rate") else "rate"
    return (_stop(inputs, by), _room(inputs, by), _timed(inputs))


def _rate(inputs: Inputs, by: str) -> float:
    """Return the deceleration as on the level."""
    return inputs.number("rate") if by == "rate" else sliding_m_s2(inputs.number("friction"))


def _if(inputs: Inputs, by: str) -> str:
    rate = f"{inputs.number('rate'):g} m/s2" if by == "rate" else f"friction {inputs.number('friction'):g}"
    return f"if {rate}"


def _stop(inputs: Inputs, by: str) -> Answer:
    def make() -> Answered:
        speed = inputs.amount("speed", "m/s")
        before = reaction_m(speed, inputs.number("reaction"))
        braking = braking_m(speed, _rate(inputs, by), slope_of(inputs))
        return Answered(
            f"{before + braking:.0f} m, {before:.0f} before the brakes bite, {_if(inputs, by)}",
            more=PUBLISHED,
        )

    return told(inputs, "stop", "stops in", ("speed", "reaction", by), METHOD, make, ("slope",))


def _room(inputs: Inputs, by: str) -> Answer:
    def make() -> Answered:
        room, reaction = inputs.amount("room", "m"), inputs.number("reaction")
        speed = speed_to_stop_in_m_s(room, reaction, _rate(inputs, by), slope_of(inputs))
        return Answered(f"{figures.speed(speed, inputs.units)} at most, {_if(inputs, by)}")

    return told(inputs, "room", "speed for that room", ("room", "reaction", by), METHOD, make, ("slope",))


def _timed(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, time = inputs.amount("speed", "m/s"), inputs.number("time")
        return Answered(
            f"{-mean_m_s2(-speed, time):.1f} m/s2 in the mean, over {distance_m(speed, 0.0, time):.0f} m"
        )

    return told(inputs, "timed", "timed stop was", ("speed", "time"), TIMED, make)
