"""The rule about engine braking on a wet track: a two-ended scale, neither end of which is help."""

from paddock_tui.facts.aids import Freed
from paddock_tui.limits import Limits
from paddock_tui.limits.aids import WET_FREED_CAUTION, WET_FREED_SERIOUS
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
    "engine-braking-holds-in-the-wet",
    SERIOUS,
    per="control",
    at="setup:setup.controls.{subject}",
    when=("on_wet", "in_force", "to_come"),
    limits=(WET_FREED_SERIOUS, WET_FREED_CAUTION),
    rank=AIDS,
)
def engine_braking_holds_in_the_wet(subject: str, freed: Freed, surface: str, limits: Limits) -> Result:
    """Engine braking near the end that holds the rear wheel, on a wet track."""
    scale = freed.scale
    serious, caution = (scale.nearest(limits[one]) for one in (WET_FREED_SERIOUS, WET_FREED_CAUTION))
    wanted = max(serious, caution, key=scale.position_of)
    if freed.position >= scale.position_of(wanted):
        return None
    return RaisedFinding(
        message=f"{start(subject)} is strong for {track(surface)}: {shown_of(freed.shown)}.",
        why="In the wet the engine alone can slide the rear on the way in, before the rear brake is touched.",
        remedy=Remedy(
            f"Set {label_of(subject)} to {wanted} or weaker; where it cannot be, stay a gear higher.",
            (SetValue(("setup", "controls", subject), wanted),),
        ),
        severity=SERIOUS if freed.position < scale.position_of(serious) else CAUTION,
    )
