"""Rules about the aids of which nobody can tell what they do: no value, no direction, no levels known."""

from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import AIDS, CAUTION, RaisedFinding, Remedy, Result, rule


@rule(
    "direction-not-known",
    CAUTION,
    per="control",
    when=("help_unsaid", "in_force"),
    at="bike:controls.{subject}.most_help",
    rank=AIDS,
)
def direction_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of an aid in use helps most: nothing about it can be judged."""
    if levels_of(subject, control) is None:
        return _no_levels(subject)
    return _direction(subject, "helps most", "most help at")


@rule("aids-not-set", CAUTION, when=("to_come",), at="setup:setup.controls", rank=AIDS)
def aids_not_set(aids_unset: tuple[str, ...]) -> Result:
    """What the traction control or the ABS at the front is set to is written nowhere."""
    named = [label_of(name) for name in aids_unset[:2]]
    more = [f"{len(aids_unset) - 2} more"] if len(aids_unset) > 2 else []
    *first, last = (*named, *more)
    listed = f"{', '.join(first)} and {last}" if first else last
    return RaisedFinding(
        message=f"What {listed} {'is' if len(aids_unset) == 1 else 'are'} set to is not known.",
        quoted=(listed,),
        why='Whether an aid is on, and how much of it, comes first: "no findings" would be a guess.',
        remedy=Remedy("Choose the riding mode and the levels, or read them on the dash, and enter them."),
        path=("setup", "controls", aids_unset[0]),
        facts=f"not set: {', '.join(aids_unset)}",
    )


@rule(
    "freeing-end-not-known",
    CAUTION,
    per="control",
    when=("freeing_unsaid", "in_force"),
    at="bike:controls.{subject}.frees_most",
    rank=AIDS,
)
def freeing_end_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of the engine braking frees the rear: makers count both ways."""
    if levels_of(subject, control) is None:
        return _no_levels(subject)
    return _direction(subject, "brakes least", "engine brakes least at")


def _direction(subject: str, does: str, row: str) -> RaisedFinding:
    return RaisedFinding(
        message=f"Which end of {label_of(subject)} {does} is not known.",
        why="Bikes count up or down, and a guess may praise the dangerous end: nothing is judged.",
        remedy=Remedy(f"Look it up in the bike's manual, and enter it on the bike's page, \"{row}\"."),
    )


def _no_levels(subject: str) -> RaisedFinding:
    return RaisedFinding(
        message=f"The levels of {label_of(subject)} are not known, or do not fit together.",
        why='Nothing about it can be judged, and "no findings" would be a guess.',
        remedy=Remedy("Enter its levels or words in the bike's file, with an end of them as the named end."),
        path=("controls", subject, "levels"),
    )
