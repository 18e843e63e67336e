"""Rules about launch control and hard starts."""

from paddock_tui.calc.levels import Levels
from paddock_tui.calc.starting_levels import launch_to_start_with
from paddock_tui.facts.aids import STARTING
from paddock_tui.facts.controls import ShownControl
from paddock_tui.facts.hard_starts import ROW_MINUTES, Starts
from paddock_tui.limits import Limits
from paddock_tui.limits.machine import STARTS_IN_A_ROW
from paddock_tui.rules.aid_words import start, track
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
from paddock_tui.text import clip


@rule(
    "launch-armed-where-nobody-starts",
    SERIOUS,
    per="control",
    when=("to_come",),
    at="setup:setup.controls.{subject}",
    absorbs=("launch-armed-without-grip",),
    rank=AIDS,
)
def launch_armed_where_nobody_starts(
    subject: str, launch_armed: ShownControl, no_start_wanted: str
) -> Result:
    """Launch armed in a session that is neither a race nor a declared start practice."""
    what = "a track day" if no_start_wanted == "track day" else no_start_wanted
    return RaisedFinding(
        message=f"{start(subject)} is armed for {what}.",
        why="At the pit exit it takes hold of throttle and clutch unasked, and most organisers forbid it.",
        remedy=Remedy("Switch it off, and see it off on the dash.", (SetValue(_path(subject), "off"),)),
        parts=(subject,),
        facts=f"{launch_armed}; {no_start_wanted}",
    )


@rule(
    "launch-armed-without-grip",
    CAUTION,
    per="control",
    when=("to_come",),
    at="setup:setup.controls.{subject}",
    rank=AIDS,
)
def launch_armed_without_grip(subject: str, launch_armed: ShownControl, surface: str, column: str) -> Result:
    """Launch armed on a damp or wet track: it is made for grip that is not there."""
    if column == "dry":
        return None
    return RaisedFinding(
        message=f"{start(subject)} is armed on {track(surface)}.",
        why="It holds revs for a dry start: the rear spins up or steps out before an aid catches it.",
        remedy=Remedy("Start by hand, with fewer revs.", (SetValue(_path(subject), "off"),)),
    )


@rule(
    "launch-above-its-gentlest",
    CAUTION,
    per="control",
    when=("to_come",),
    at="setup:setup.controls.{subject}",
    rank=AIDS,
)
def launch_above_its_gentlest(
    subject: str, launch_armed: ShownControl, launch_levels: Levels, launch_starts: int, kind: str
) -> Result:
    """Launch armed at another level than the gentlest by who has made no start with it on this bike."""
    if kind not in STARTING:
        return None
    level = launch_to_start_with(launch_levels, launch_starts)
    if level is None or level == launch_armed.value:
        return None
    return RaisedFinding(
        message=f"{start(subject)} is {clip(str(launch_armed.value), 14)}: no start with it is on record.",
        why="How hard it takes hold of throttle and front wheel is learnt from its gentlest level up.",
        remedy=Remedy(f"Begin with {clip(str(level), 14)}.", (SetValue(_path(subject), level),)),
    )


@rule(
    "starts-too-close-together",
    SERIOUS,
    source="one old source on clutches; paddock practice otherwise",
    when=("to_come",),
    at="session:incidents",
    limits=(STARTS_IN_A_ROW,),
    rank=AIDS,
)
def starts_too_close_together(starts_in_a_row: Starts, limits: Limits) -> Result:
    """So many hard starts within ten minutes that the clutch is hot."""
    if starts_in_a_row.count < limits[STARTS_IN_A_ROW]:
        return None
    return RaisedFinding(
        message=f"{starts_in_a_row.count} hard starts inside {ROW_MINUTES} minutes: the clutch is hot.",
        why="A hot clutch drags, then slips or grabs: the bike creeps on the line, or jumps.",
        remedy=Remedy(
            f"Leave it {ROW_MINUTES} minutes. Smell it; in gear with the lever in, see that it does not drag."
        ),
        subject="clutch",
    )


def _path(subject: str) -> tuple[str, ...]:
    return ("setup", "controls", subject)
