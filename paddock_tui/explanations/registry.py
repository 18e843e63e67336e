"""Which explanation belongs to which control, adjuster, offset and field."""

from collections.abc import Mapping
from typing import Final

from paddock_tui.explanations import (
    automatic,
    braking_aids,
    damping,
    drive_aids,
    drive_and_tyres,
    springs,
    states,
)
from paddock_tui.explanations.entry import Explanation
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.paths import Path
from paddock_tui.records.suspension import Adjuster, Offset

OF_FUNCTIONS: Final[Mapping[str, Explanation]] = {
    "traction": drive_aids.TRACTION,
    "wheelie": drive_aids.WHEELIE,
    "slide": drive_aids.SLIDE,
    "front-abs": braking_aids.FRONT_ABS,
    "rear-abs": braking_aids.REAR_ABS,
    "abs": braking_aids.ABS,
    "throttle": drive_aids.THROTTLE,
    "power": drive_aids.POWER,
    "engine-braking": braking_aids.ENGINE_BRAKING,
    "launch": states.LAUNCH,
    "shifter": states.SHIFTER,
    "pit-limiter": states.PIT_LIMITER,
    "other": states.OTHER,
}
"""Every function that a control can have."""

LEVEL_EFFECTS: Final[Mapping[str, Explanation]] = {
    "lean": braking_aids.LEAN,
    "rear_lift": braking_aids.REAR_DOWN,
    "shifts": states.SHIFTER,
    "front": braking_aids.FRONT_ABS,
    "rear": braking_aids.REAR_ABS,
}
"""What a single level of a control may do beside more or less."""

OF_FIELDS: Final[Mapping[str, Explanation]] = {
    "mode": automatic.RIDING_MODE,
    "damping": automatic.DAMPING_MODE,
    "preset": automatic.PRESET,
    "front_spring": springs.FRONT_SPRING,
    "rear_spring": springs.REAR_SPRING,
    "front_sprocket": drive_and_tyres.FRONT_SPROCKET,
    "rear_sprocket": drive_and_tyres.REAR_SPROCKET,
    "links": drive_and_tyres.LINKS,
    "fork_height": springs.FORK_HEIGHT,
    "rear_height": springs.REAR_HEIGHT,
    "front_start": drive_and_tyres.FRONT_START,
    "rear_start": drive_and_tyres.REAR_START,
}
"""The fields of a set-up that every bike has."""

SESSION_FIELDS: Final[Mapping[str, Explanation]] = {"chain_slack": drive_and_tyres.CHAIN_SLACK}
"""Fields of a session that are settings all the same."""

_ADJUSTERS: Final[Mapping[tuple[str, str], Explanation]] = {
    ("front", "preload"): springs.FRONT_PRELOAD,
    ("rear", "preload"): springs.REAR_PRELOAD,
    ("front", "rebound"): damping.FRONT_REBOUND,
    ("rear", "rebound"): damping.REAR_REBOUND,
    ("front", "rebound slow"): damping.FRONT_REBOUND,
    ("rear", "rebound slow"): damping.REAR_REBOUND,
    ("front", "rebound fast"): damping.FRONT_FAST_REBOUND,
    ("rear", "rebound fast"): damping.REAR_FAST_REBOUND,
    ("front", "compression"): damping.FRONT_COMPRESSION,
    ("rear", "compression"): damping.REAR_COMPRESSION,
    ("front", "compression slow"): damping.FRONT_COMPRESSION,
    ("rear", "compression slow"): damping.REAR_COMPRESSION,
    ("front", "compression fast"): damping.FRONT_FAST,
    ("rear", "compression fast"): damping.REAR_FAST,
    ("steering", "damper"): damping.STEERING_DAMPER,
}


def of_control(name: str, control: Control) -> Explanation:
    """Return the explanation of a control; what it does is its function, else not known."""
    return OF_FUNCTIONS[function_of(name, control)]


def of_adjuster(adjuster: Adjuster) -> Explanation | None:
    """Return the explanation of an adjuster; None where its end or what it adjusts is not known."""
    return _ADJUSTERS.get((adjuster.end or "", adjuster.what or ""))


def of_offset(name: str, offset: Offset) -> Explanation:
    """Return the explanation of a trim; without a word of when it acts, one that says so."""
    return automatic.OFFSETS.get(offset.acts or name, automatic.OFFSETS[""])


def of_path(path: Path, bike: Bike, damping_mode: str | None) -> Explanation | None:
    """Return the explanation of one value of a session or profile; None where it is no setting."""
    if path[:1] != ("setup",):
        return SESSION_FIELDS.get(path[0]) if len(path) == 1 else None
    if len(path) == 2:
        return OF_FIELDS.get(path[1])
    table, name = path[1], path[2]
    if table == "controls" and name in bike.controls:
        return of_control(name, bike.controls[name])
    if table == "adjusters" and name in bike.adjusters:
        return of_adjuster(bike.adjusters[name])
    mode = bike.damping.get(damping_mode or "")
    if table == "offsets" and mode is not None and name in mode.offsets:
        return of_offset(name, mode.offsets[name])
    return None
