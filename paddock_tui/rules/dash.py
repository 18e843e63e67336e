"""Rules about the dash: read since it may have changed, and the same as the plan."""

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.facts.dash import DashShown, ModeShown, undone_by
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    HOLD,
    NOTE,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)

_ASK = "Set the dash to the plan and read it again, or change the plan and let it be judged."


@rule(
    "dash-not-read",
    SERIOUS,
    when=("to_come",),
    at="session:dash.read",
    todo=ToDo("read the dash after the last ignition-on", 3),
    rank=AIDS,
)
def dash_not_read(dash_to_read: bool, session: Session, bike: Bike) -> Result:
    """The dash was not read, or something came since that may have changed it."""
    if not dash_to_read:
        return None
    since = undone_by(session, bike)
    said = f"The dash was read before this: {since}."
    return RaisedFinding(
        message=said if since else "The dash was not read after the last ignition-on.",
        quoted=(since,),
        why="Aids and riding modes may go back to their base when the ignition or the battery was off.",
        remedy=Remedy("Ignition on, start, read every value on the dash, and enter when it was read."),
        facts=f"dash not read{f' since: {since}' if since else ''}",
    )


@rule(
    "dash-differs-from-the-plan",
    SERIOUS,
    per="control",
    when=("to_come",),
    at="session:dash.values.{subject}",
    rank=AIDS,
)
def dash_differs_from_the_plan(
    subject: str, control: Control, dash_shown: DashShown, session: Session
) -> Result:
    """The dash showed another value than planned: more help is a note, in the wet less help a hold.

    Where nobody knows which of the two helps more, it is taken for less.
    """
    shown, planned = dash_shown.shown, dash_shown.planned
    helping = function_of(subject, control) in HELP_FUNCTIONS
    fewer = _helps_less(subject, control, shown, planned) if helping else False
    less = fewer is not False
    more = helping and _helps_less(subject, control, planned, shown) is True
    wet = _may_be_wet(session)
    return RaisedFinding(
        message=f"The dash shows {label_of(subject)} {shown}, the plan is {planned}.",
        quoted=(str(shown), str(planned)),
        why="What the dash shows is what acts on the track" + _than_planned(fewer, session, more=more),
        remedy=Remedy(_ASK),
        severity=HOLD if less and wet else NOTE if more else SERIOUS,
        facts=f"{dash_shown}; surface {session.surface or 'not known'}",
    )


@rule(
    "dash-in-another-riding-mode",
    CAUTION,
    when=("to_come",),
    at="session:dash.shown_mode",
    rank=AIDS,
)
def dash_in_another_riding_mode(mode_shown: ModeShown, session: Session, bike: Bike) -> Result:
    """The dash showed another riding mode; in the wet one that may fix less help is a hold."""
    wet = _may_be_wet(session)
    less = [
        label_of(name)
        for name, control in bike.controls.items()
        if _less_in_mode(name, control, session, bike, mode_shown)
    ]
    planned, there = (bike.modes.get(one) for one in (mode_shown.planned, mode_shown.shown))
    dry = planned is not None and planned.use == "wet" and (there is None or there.use != "wet")
    return RaisedFinding(
        message=f"The dash shows riding mode {mode_shown.shown}, the plan is {mode_shown.planned}.",
        quoted=(mode_shown.shown, mode_shown.planned),
        why="Another mode fixes and limits other values"
        + (f"; less help there, or nobody knows: {', '.join(less)}." if less else ".")
        + " It is not made for the wet as the planned one is." * (dry and wet),
        remedy=Remedy(_ASK),
        severity=HOLD if (less or dry) and wet else CAUTION,
        subject="mode",
        facts=f"{mode_shown}; surface {session.surface or 'not known'}",
    )


def _than_planned(less: bool | None, session: Session, *, more: bool) -> str:
    """Say how what the dash shows helps against the plan, where that makes the finding worse or better."""
    if more:
        return ": more help than planned."
    if less is False or not _may_be_wet(session):
        return ", and what was judged is the plan."
    where = "in the wet" if session.surface is not None else "and nobody said what the track is like"
    return f": {'perhaps ' * (less is None)}less help than planned, {where}."


def _may_be_wet(session: Session) -> bool:
    """Return whether the track is wet; one that nobody looked at may be."""
    return COLUMN.get(session.surface or "") in ("wet", None)


def _less_in_mode(name: str, control: Control, session: Session, bike: Bike, mode: ModeShown) -> bool:
    """Return whether an aid helps less in the mode shown, or whether nobody can tell."""
    if function_of(name, control) not in HELP_FUNCTIONS:
        return False
    there = value_in_force(name, attrs.evolve(session.setup, mode=mode.shown), bike)
    here = value_in_force(name, attrs.evolve(session.setup, mode=mode.planned), bike)
    if there is None or here is None:
        return True
    return there != here and _helps_less(name, control, there, here) is not False


def _helps_less(name: str, control: Control, one: Setting, other: Setting) -> bool | None:
    """Return whether a value helps less than another; None where that cannot be told."""
    levels = levels_of(name, control)
    scale = levels.help_if_known() if levels is not None else None
    if scale is None:
        return None
    try:
        return scale.help_of(one) < scale.help_of(other)
    except (Inconsistent, OutOfRange):
        return None
