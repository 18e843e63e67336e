"""Rules about the dash: read since it may have changed, and the same as the plan."""

import attrs

from paddock_tui.facts.dash import DashShown, ModeShown, undone_by
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import AIDS, HOLD, SERIOUS, RaisedFinding, Remedy, Result, ToDo, rule
from paddock_tui.trade.errors import Inconsistent, OutOfRange

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
    """The dash showed another value than planned; in the wet one with less help is a hold."""
    shown, planned = dash_shown.shown, dash_shown.planned
    less = _helps_less(subject, control, shown, planned)
    wet = COLUMN.get(session.surface or "") == "wet"
    return RaisedFinding(
        message=f"The dash shows {label_of(subject)} {shown}, the plan is {planned}.",
        quoted=(str(shown), str(planned)),
        why="What the dash shows is what acts on the track"
        + (": less help than planned, in the wet." if less and wet else ", and what was judged is the plan."),
        remedy=Remedy(_ASK),
        severity=HOLD if less and wet else SERIOUS,
        facts=f"{dash_shown}; surface {session.surface or 'not known'}",
    )


@rule(
    "dash-in-another-riding-mode",
    SERIOUS,
    when=("to_come",),
    at="session:dash.shown_mode",
    rank=AIDS,
)
def dash_in_another_riding_mode(mode_shown: ModeShown, session: Session, bike: Bike) -> Result:
    """The dash showed another riding mode; in the wet one that fixes less help is a hold."""
    wet = COLUMN.get(session.surface or "") == "wet"
    less = [
        label_of(name)
        for name, control in bike.controls.items()
        if _less_in_mode(name, control, session, bike, mode_shown)
    ]
    return RaisedFinding(
        message=f"The dash shows riding mode {mode_shown.shown}, the plan is {mode_shown.planned}.",
        quoted=(mode_shown.shown, mode_shown.planned),
        why="Another mode fixes and limits other values"
        + (f"; less help there: {', '.join(less)}." if less else ", and what was judged is the plan."),
        remedy=Remedy(_ASK),
        severity=HOLD if less and wet else SERIOUS,
        subject="mode",
        facts=f"{mode_shown}; surface {session.surface or 'not known'}",
    )


def _less_in_mode(name: str, control: Control, session: Session, bike: Bike, mode: ModeShown) -> bool:
    there = value_in_force(name, attrs.evolve(session.setup, mode=mode.shown), bike)
    here = value_in_force(name, attrs.evolve(session.setup, mode=mode.planned), bike)
    return there is not None and here is not None and _helps_less(name, control, there, here)


def _helps_less(name: str, control: Control, one: Setting, other: Setting) -> bool:
    """Return whether a value helps less than another; no where that cannot be told."""
    levels = levels_of(name, control) if function_of(name, control) in HELP_FUNCTIONS else None
    scale = levels.help_if_known() if levels is not None else None
    if scale is None:
        return False
    try:
        return scale.help_of(one) < scale.help_of(other)
    except (Inconsistent, OutOfRange):
        return False
