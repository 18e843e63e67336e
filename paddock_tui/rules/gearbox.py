"""The rule about shifting down without the clutch while the gearbox misses."""

from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.machine import FALSE_NEUTRALS
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import AIDS, SERIOUS, RaisedFinding, Remedy, Result, rule


@rule(
    "quick-downshift-with-false-neutrals",
    SERIOUS,
    per="control",
    when=("to_come",),
    at="setup:setup.controls.{subject}",
    limits=(FALSE_NEUTRALS,),
    rank=AIDS,
)
def quick_downshift_with_false_neutrals(
    subject: str, in_force: ShownControl, quick_downshift: bool, false_neutrals: int, limits: Limits
) -> Result:
    """Downshifts without the clutch in use although false neutrals were reported."""
    if false_neutrals < limits[FALSE_NEUTRALS]:
        return None
    return RaisedFinding(
        message=f"{false_neutrals} false neutrals, and {label_of(subject)} still shifts down.",
        why="In a false neutral there is no engine braking: the bike arrives too fast, and may over-rev.",
        remedy=Remedy(
            "Shift down with the clutch; look at clutch, linkage and lever height. After a false neutral, "
            "shift up. Write under the incident what was repaired."
        ),
    )
