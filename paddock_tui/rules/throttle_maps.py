"""The rule about throttle and power maps in the wet: sharp and full ones."""

from paddock_tui.calc.levels import HelpScale
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.aids import WET_SOFTENING
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.aid_words import shown_of, start, track
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
    "sharp-map-in-the-wet",
    CAUTION,
    per="control",
    when=("on_wet", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=(WET_SOFTENING,),
    rank=AIDS,
)
def sharp_map_in_the_wet(
    subject: str,
    in_force: ShownControl,
    map_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    surface: str,
    group: str,
    limits: Limits,
) -> Result:
    """Throttle or power at or near its sharpest on a wet track."""
    threshold = help_scale.snap(limits[WET_SOFTENING])
    if help_in_force >= threshold:
        return None
    wanted = help_scale.nearest(threshold)
    return RaisedFinding(
        message=f"{start(subject)} is sharp for {track(surface)}: {shown_of(in_force)}.",
        why="The first degrees of throttle bring more than a wet rear tyre takes, before any aid can act.",
        remedy=Remedy(
            f"Set {label_of(subject)} to {wanted}, or softer.",
            (SetValue(("setup", "controls", subject), wanted),),
        ),
        severity=SERIOUS if group == "novice" else CAUTION,
    )
