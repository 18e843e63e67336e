"""Rules about the cold pressures that a bike goes out with: far too low, and not as planned."""

from paddock_tui.facts.past import End
from paddock_tui.facts.tyre_pressures import PressureRead, StartPressure
from paddock_tui.facts.tyre_targets import StartWindow
from paddock_tui.limits import Limits
from paddock_tui.limits.pressures import (
    OUTSIDE_WINDOW,
    START_FRONT,
    START_OFF_PLAN,
    START_REAR,
    START_SERIOUS_MORE,
)
from paddock_tui.quantities import Quantity
from paddock_tui.rules.core import (
    CAUTION,
    PRESSURES,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)

_JUDGED = ("road", "sport-touring", "track-day")
"""Kinds whose cold pressures are much alike; race rubber and rain tyres have their vendor's own."""


@rule(
    "starting-pressure-too-low",
    CAUTION,
    per="end",
    at="setup:setup.{subject}_start",
    when=("organised", "to_come"),
    absorbs=("starting-pressure-off-the-plan",),
    limits=(START_FRONT, START_REAR, START_SERIOUS_MORE),
    rank=PRESSURES,
)
def starting_pressure_too_low(
    end: End, goes_out_with: StartPressure, tyre_kind_at: str, limits: Limits
) -> Result:
    """A cold pressure with which a road or track-day tyre folds and overheats."""
    under = limits[START_FRONT if end == "front" else START_REAR] - goes_out_with.pressure.to("bar")
    if tyre_kind_at not in _JUDGED or under <= 1e-9:
        return None
    return RaisedFinding(
        message=f"The {end} goes out with {goes_out_with.pressure} cold: far too little.",
        why="So soft it folds, steers as if flat, overheats and tears, and may unseat the bead.",
        remedy=Remedy(
            "Read it again with another gauge and look for a leak; then the tyre vendor's figure: many "
            "start at 2.1 to 2.3 front, 1.9 to 2.2 rear."
        ),
        severity=SERIOUS if under > limits[START_SERIOUS_MORE] + 1e-9 else CAUTION,
        path=("pressures", "cold", end) if goes_out_with.read else None,
        role="session" if goes_out_with.read else None,
        parts=(end,),
    )


@rule(
    "starting-pressure-off-the-plan",
    CAUTION,
    per="end",
    at="session:pressures.cold.{subject}",
    when=("to_come",),
    limits=(START_OFF_PLAN,),
    rank=PRESSURES,
)
def starting_pressure_off_the_plan(
    end: End, cold_read: PressureRead, planned_start: Quantity, limits: Limits
) -> Result:
    """A cold pressure that was read far from the planned one, and nobody wrote what it was set to."""
    off = cold_read.pressure.to("bar") - planned_start.to("bar")
    if cold_read.set_to is not None or abs(off) <= limits[START_OFF_PLAN] + 1e-9:
        return None
    return RaisedFinding(
        message=f"The {end} was read at {cold_read.pressure} cold; the plan is {planned_start}.",
        why="The gauge or the plan is off, front and rear are swapped, or air has gone.",
        remedy=Remedy(
            "Read it again; set it to the plan and enter what it was set to, or change the plan.",
            (SetValue(("pressures", "cold", f"set_to_{end}"), str(planned_start), "session"),),
        ),
    )


@rule(
    "start-outside-the-vendors-window",
    CAUTION,
    source="the tyre vendor's window, as entered",
    per="end",
    at="session:pressures.cold.set_to_{subject}",
    when=("to_come",),
    limits=(OUTSIDE_WINDOW,),
    rank=PRESSURES,
)
def start_outside_the_vendors_window(end: End, start_window: StartWindow, limits: Limits) -> Result:
    """A starting pressure, cold or on the warmers, outside the window that the tyre's vendor gives."""
    off = start_window.off_bar
    if abs(off) <= limits[OUTSIDE_WINDOW] + 1e-9:
        return None
    nearest = start_window.high if off > 0 else start_window.low
    way, name = ("over" if off > 0 else "under"), "cold" if start_window.how == "cold" else "warmers"
    return RaisedFinding(
        message=f"The {end} is {abs(off):.2f} bar {way} the vendor's window {start_window.how}.",
        why="It is what the carcass was made for: under it the tyre folds, over it the middle overheats.",
        remedy=Remedy(
            "Set it into the window with the same gauge and enter what it was set to, or correct the window.",
            (SetValue(("pressures", name, f"set_to_{end}"), str(nearest), "session"),),
        ),
        path=("pressures", name, f"set_to_{end}"),
    )
