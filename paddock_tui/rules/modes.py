"""Rules about what the riding mode and the damping mode make of the set-up."""

from paddock_tui.facts.controls import Mapped
from paddock_tui.facts.suspension import AdjusterShown
from paddock_tui.records.bike import Bike
from paddock_tui.records.in_force import closed_by
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import NOTE, RaisedFinding, Remedy, Result, SetValue, rule

_FILE = "the bike's file: what its modes fix and close"


@rule(
    "fixed-by-the-riding-mode",
    NOTE,
    of_set_up=True,
    source=_FILE,
    per="control",
    at="setup:setup.controls.{subject}",
)
def fixed_by_the_riding_mode(
    subject: str, set_value: int | str, mode_for: Mapped, fixed_by_mode: int | str
) -> Result:
    """The record says one value, the riding mode sets another."""
    fixed = fixed_by_mode
    if fixed == set_value:
        return None
    label = label_of(subject)
    return RaisedFinding(
        message=f"{mode_for.name} sets {label} to {fixed}, not {set_value}.",
        quoted=(mode_for.name, str(set_value)),
        why="The riding mode fixes this control: the mode's value is what counts on the track.",
        remedy=Remedy(
            f"Write {fixed} down, or choose another riding mode.",
            (SetValue(("setup", "controls", subject), fixed),),
        ),
        facts=f"{label} {set_value}; riding mode {mode_for.name} fixes {fixed}",
    )


@rule(
    "closed-by-the-damping-mode",
    NOTE,
    of_set_up=True,
    source=_FILE,
    per="adjuster",
    at="setup:setup.adjusters.{subject}",
)
def closed_by_the_damping_mode(
    subject: str, adjuster_value: AdjusterShown, damping_mode: str, setup: SetUp, bike: Bike
) -> Result:
    """A number is written for an adjuster that does nothing in this damping mode."""
    if not closed_by(subject, setup, bike):
        return None
    return RaisedFinding(
        message=f"{_start(label_of(subject))} is not used in {damping_mode} damping.",
        quoted=(damping_mode,),
        why="In this mode the electronics set the damping: this setting is only used in manual damping.",
        remedy=Remedy("Write down the preset and the offsets instead; keep this figure for manual damping."),
    )


def _start(text: str) -> str:
    return text[:1].upper() + text[1:]
