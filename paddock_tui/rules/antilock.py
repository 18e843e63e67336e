"""Rules about ABS: a wheel that is left without it, by what the level in force does and not by its number."""

from paddock_tui.facts.aids import Freed, least_watching
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.aids import FREED_WITHOUT_REAR_ABS
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, function_of
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
    Severity,
    rule,
)


@rule(
    "front-wheel-without-abs-in-the-wet",
    SERIOUS,
    per="control",
    when=("on_wet", "in_force", "surface", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("rear-wheel-without-abs",),
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
        parts=(subject,),
    )


@rule(
    "front-wheel-without-abs",
    SERIOUS,
    per="control",
    when=("out_of_the_wet", "in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("rear-wheel-without-abs",),
    rank=AIDS,
)
def front_wheel_without_abs(
    subject: str, control: Control, front_wheel_left: bool, surface: str, column: str, group: str
) -> Result:
    """No ABS at the front on a dry or damp track: what that means depends on who brakes."""
    if not front_wheel_left:
        return None
    severity = _FRONT.get(group, {"damp": CAUTION}).get(column)
    if severity is None:
        return None
    return RaisedFinding(
        message=f"The front wheel is without ABS on {track(surface)}.",
        why="A panic grab locks the front wheel; it takes practice not to.",
        remedy=_switched_on(
            "Switch ABS on at the front, at least at its lowest setting", subject, control, 0.0
        ),
        severity=severity,
        parts=(subject,),
    )


_FRONT: dict[str, dict[str, Severity]] = {
    "novice": {"dry": SERIOUS, "damp": SERIOUS},
    "intermediate": {"dry": CAUTION, "damp": SERIOUS},
}
"""How bad a front wheel without ABS is out of the wet, by group; for the others a caution in the damp."""

_REAR: dict[str, dict[str, Severity]] = {
    "novice": {"dry": CAUTION, "damp": SERIOUS, "wet": SERIOUS},
    "intermediate": {"dry": NOTE, "damp": CAUTION, "wet": SERIOUS},
}
"""How bad a rear wheel without ABS is, by group."""


@rule(
    "rear-wheel-without-abs",
    SERIOUS,
    per="control",
    when=("in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    rank=AIDS,
)
def rear_wheel_without_abs(
    subject: str,
    control: Control,
    rear_wheel_left: bool,
    surface: str,
    column: str,
    group: str,
    cold_track: bool | None,
) -> Result:
    """No ABS at the rear of a bike that has it; for a novice a cold track is judged as a damp one, and one
    whose temperature nobody knows as a cold one.
    """
    held = "damp" if column == "dry" and cold_track is not False and group == "novice" else column
    severity = _REAR.get(group, {"damp": NOTE, "wet": CAUTION}).get(held)
    if severity is None:
        return None
    level = least_watching(subject, control, ("rear",), 0.0)
    put = () if level is None else (SetValue(("setup", "controls", subject), level),)
    return RaisedFinding(
        message=f"The rear wheel is without ABS on {track(surface)}.",
        why="The rear goes light under braking and locks first; it can stall, or step out.",
        remedy=Remedy(f"Switch ABS on at the rear{f': {label_of(subject)} {level}' * bool(put)}.", put),
        severity=severity,
    )


@rule(
    "no-abs-for-a-novice-in-the-wet", NOTE, when=("novice", "on_wet", "to_come"), at="session:bike", rank=AIDS
)
def no_abs_for_a_novice_in_the_wet(bike: Bike, electronics: str) -> Result:
    """A bike without ABS, ridden by a novice in the wet: said once, for nothing can be switched on."""
    if any(function_of(name, one) in ("abs", "front-abs") for name, one in bike.controls.items()):
        return None
    return RaisedFinding(
        message="This bike has no ABS that its record knows, and the track is wet.",
        why="A front wheel that locks in the wet is a fall; nothing lets it go but the hand.",
        remedy=Remedy("Brake early, upright and with a slow squeeze; ask the instructor to watch it."),
        subject="abs",
        facts=f"electronics {electronics}; no ABS listed",
    )


@rule(
    "rear-without-abs-and-little-freed",
    SERIOUS,
    per="control",
    when=("on_wet", "in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("engine-braking-holds-in-the-wet", "rear-wheel-without-abs"),
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
        parts=(name, subject),
    )


def _switched_on(words: str, name: str, control: Control, help_: float) -> Remedy:
    """Say what to switch on, as an edit where the bike's file tells which level does it."""
    level = least_watching(name, control, ("front",), help_)
    if level is None:
        return Remedy(f"{words}.")
    return Remedy(f"{words}: {label_of(name)} {level}.", (SetValue(("setup", "controls", name), level),))


def _clipped(shown: ShownControl) -> str:
    return f"{label_of(shown.name)} {shown.value}"
