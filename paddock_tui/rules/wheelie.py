"""Rules about wheelie control that is off: with a launch armed, and on a strong bike."""

from paddock_tui.calc.levels import HelpScale
from paddock_tui.calc.starting_levels import WHEELIE_FOR_LAUNCH
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.machine import STRONG_BIKE
from paddock_tui.quantities import Quantity
from paddock_tui.rules.aid_words import start
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)


@rule(
    "wheelie-off-with-launch-armed",
    SERIOUS,
    per="control",
    when=("in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("wheelie-off-on-a-strong-bike",),
    rank=AIDS,
)
def wheelie_off_with_launch_armed(
    subject: str, wheelie_off: bool, armed: ShownControl, help_scale: HelpScale, lifting_said: str
) -> Result:
    """Launch armed with wheelie control off: nothing keeps the front down when the clutch bites."""
    wanted = help_scale.level_at_least(WHEELIE_FOR_LAUNCH)
    return RaisedFinding(
        message=f"{start(subject)} is off, and launch is armed.",
        why="A full start without it can put the bike over backwards, or slap the front down into a wobble."
        + lifting_said,
        remedy=Remedy(
            f"Set {subject} to {wanted} or more for the start, or switch launch off.",
            (SetValue(("setup", "controls", subject), wanted),),
        ),
        parts=(subject,),
    )


@rule(
    "wheelie-off-on-a-strong-bike",
    CAUTION,
    per="control",
    when=("in_force", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=(STRONG_BIKE,),
    rank=AIDS,
)
def wheelie_off_on_a_strong_bike(
    subject: str,
    wheelie_off: bool,
    learner: str,
    group: str,
    bike_power: Quantity,
    help_scale: HelpScale,
    lifting_said: str,
    limits: Limits,
) -> Result:
    """Wheelie control off on a strong bike, for a rider who is still learning the track."""
    if bike_power.to("kW") <= limits[STRONG_BIKE]:
        return None
    wanted = help_scale.level_at_least(0.5)
    return RaisedFinding(
        message=f"{start(subject)} is off for {'a' if learner == 'novice' else 'an'} {learner}"
        f" on a bike of {bike_power}.",
        why="Over a crest or out of a slow corner the front comes up, and lands in a wobble." + lifting_said,
        remedy=Remedy(
            f"Switch it on, e.g. {wanted}; less of it once the front has stayed down.",
            (SetValue(("setup", "controls", subject), wanted),),
        ),
    )
