"""The rule about shifting down without the clutch while the gearbox misses."""

from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.machine import FALSE_NEUTRALS
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import AIDS, CAUTION, SERIOUS, RaisedFinding, Remedy, Result, rule


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


@rule("shift-pattern-changed", CAUTION, when=("to_come",), at="bike:drive.shift_pattern", rank=AIDS)
def shift_pattern_changed_since(shift_pattern_changed: str) -> Result:
    """The first outing after the shift pattern was turned round: old habits shift the wrong way."""
    known = {"standard": "first is down", "reversed": "first is up"}.get(shift_pattern_changed)
    return RaisedFinding(
        message=f"Shift pattern changed: {known or 'which way is not written down'}.",
        why="A downshift where an upshift was meant locks the rear wheel or over-revs the engine.",
        remedy=Remedy(
            "Try every gear on the stand, the quickshifter with them; tell everybody who rides it, and two "
            "easy laps saying it aloud."
        ),
        subject="shift-pattern",
    )
