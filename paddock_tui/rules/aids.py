"""Rules about the aids of which nobody can tell what they do: a direction or levels that nobody knows."""

from paddock_tui.facts.controls import levels_of
from paddock_tui.records.electronics import Control
from paddock_tui.records.of_bike import label_of
from paddock_tui.rules.core import AIDS, CAUTION, Raise, Remedy, Result, rule


@rule(
    "direction-not-known",
    CAUTION,
    per="control",
    when=("is_aid", "in_force"),
    at="bike:controls.{subject}.most_help",
    rank=AIDS,
)
def direction_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of an aid in use helps most: nothing about it can be judged."""
    levels = levels_of(subject, control)
    if levels is None:
        return _no_levels(subject)
    return None if levels.help_if_known() is not None else _direction(subject, "helps most", "most_help")


@rule(
    "freeing-end-not-known",
    CAUTION,
    per="control",
    when=("is_engine_braking", "in_force"),
    at="bike:controls.{subject}.frees_most",
    rank=AIDS,
)
def freeing_end_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of the engine braking frees the rear: makers count both ways."""
    levels = levels_of(subject, control)
    if levels is None:
        return _no_levels(subject)
    return (
        None if levels.scale_if_known() is not None else _direction(subject, "frees the rear", "frees_most")
    )


def _direction(subject: str, does: str, key: str) -> Raise:
    return Raise(
        message=f"Which end of {label_of(subject)} {does} is not known.",
        why="Bikes count up or down, and a guess may praise the dangerous end: nothing is judged.",
        remedy=Remedy(f"Look it up in the bike's manual, and enter it once in the bike's file ({key})."),
    )


def _no_levels(subject: str) -> Raise:
    return Raise(
        message=f"The levels of {label_of(subject)} are not known, or do not fit together.",
        why="Nothing about it can be judged, and clear would be a guess.",
        remedy=Remedy("Enter its levels or words in the bike's file, with an end of them as the named end."),
        path=("controls", subject, "levels"),
    )
