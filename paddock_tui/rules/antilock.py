"""Rules about ABS: a wheel that is left without it, by what the level in force does and not by its number."""

from paddock_tui.facts.aids import Freed, least_watching
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.aids import FREED_WITHOUT_REAR_ABS
from paddock_tui.records.electronics import Control
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.aid_words import ENOUGH, enough_help, track
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    HOLD,
    NOTE,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)


@rule(
    "front-wheel-without-abs-in-the-wet",
    SERIOUS,
    per="control",
    when=("on_wet", "in_force", "surface", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=ENOUGH,
    rank=AIDS,
)
def front_wheel_without_abs_in_the_wet(
    subject: str, control: Control, front_wheel_left: bool, group: str, wet_said: str, limits: Limits
) -> Result:
    """No ABS at the front in the wet: a locked front wheel is a fall."""
    if not front_wheel_left:
        return None
    return RaisedFinding(
        message="The front wheel is without ABS in the wet.",
        why=f"A front wheel that locks on a wet track is a fall before the hand can let go.{wet_said}",
        remedy=_switched_on("Switch ABS on at the front for the wet", subject, control, enough_help(limits)),
        severity=HOLD if group == "novice" else SERIOUS,
    )


@rule(
    "front-wheel-without-abs",
    SERIOUS,
    per="control",
    when=("out_of_the_wet", "in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    rank=AIDS,
)
def front_wheel_without_abs(
    subject: str, control: Control, front_wheel_left: bool, surface: str, column: str, group: str
) -> Result:
    """No ABS at the front on a dry or damp track: what that means depends on who brakes."""
    if not front_wheel_left:
        return None
    usual = NOTE if column == "dry" else CAUTION
    severity = {"novice": SERIOUS, "intermediate": CAUTION}.get(group, usual)
    return RaisedFinding(
        message=f"The front wheel is without ABS on {track(surface)}.",
        why="A panic grab locks the front wheel; it takes practice not to.",
        remedy=_switched_on(
            "Switch ABS on at the front, at least at its lowest setting", subject, control, 0.0
        ),
        severity=severity,
    )


@rule(
    "rear-without-abs-and-little-freed",
    SERIOUS,
    per="control",
    when=("on_wet", "in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("engine-braking-holds-in-the-wet",),
    limits=(FREED_WITHOUT_REAR_ABS,),
    rank=AIDS,
)
def rear_without_abs_and_little_freed(
    subject: str,
    rear_wheel_left: bool,
    engine_brake: Freed,
    surface: str,
    limits: Limits,
) -> Result:
    """No ABS at the rear in the wet, and engine braking that holds the wheel: it locks on the way in."""
    nearest = engine_brake.scale.nearest(limits[FREED_WITHOUT_REAR_ABS])
    if engine_brake.position >= engine_brake.scale.position_of(nearest):
        return None
    name = engine_brake.shown.name
    return RaisedFinding(
        message=f"No ABS at the rear, and strong {_clipped(engine_brake.shown)}, on {track(surface)}.",
        why="Leaned over with the throttle shut, a rear wheel that the engine drags locks.",
        remedy=Remedy(
            f"Switch ABS on at the rear, or set {label_of(name)} to {nearest} or weaker; stay a gear higher.",
            (SetValue(("setup", "controls", name), nearest),),
        ),
        parts=(name,),
    )


def _switched_on(words: str, name: str, control: Control, help_: float) -> Remedy:
    """Say what to switch on, as an edit where the bike's file tells which level does it."""
    level = least_watching(name, control, ("front",), help_)
    if level is None:
        return Remedy(f"{words}.")
    return Remedy(f"{words}: {label_of(name)} {level}.", (SetValue(("setup", "controls", name), level),))


def _clipped(shown: ShownControl) -> str:
    return f"{label_of(shown.name)} {shown.value}"
