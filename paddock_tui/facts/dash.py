"""The dash: whether it was read since it may have changed, and what it showed beside the plan."""

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import old_to_new
from paddock_tui.records.electronics import Control
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import label_of

_BY_KEY = ("key-on", "key-off", "stall", "red flag", "wait in the lane")
"""What a value that survives the key survives; a fuse or the battery takes everything."""


@attrs.frozen
class DashShown:
    """What the dash shows of a control, and what the plan says."""

    name: str
    shown: Setting
    planned: Setting

    def __str__(self) -> str:
        return f"dash {label_of(self.name)} {self.shown}, plan {self.planned}"


@attrs.frozen
class ModeShown:
    """The riding mode on the dash, and the one of the plan."""

    shown: str
    planned: str

    def __str__(self) -> str:
        return f"dash riding mode {self.shown}, plan {self.planned}"


@fact("the dash", at="session:dash.read")
def dash_to_read(session: Session, bike: Bike, electronics: str) -> bool | Unknown | Absent:
    """Return whether the dash still has to be read; absent on a bike without controls."""
    if electronics == "none" or not bike.controls:
        return ABSENT
    if session.dash.planned_mode is not None and session.setup.mode is None:
        return UNKNOWN
    return session.dash.read is None or bool(undone_by(session, bike))


@fact("what the dash shows of {subject}", at="session:dash.values.{subject}", per="control", show=str)
def dash_shown(
    subject: str, control: Control, session: Session, setup: SetUp, bike: Bike
) -> DashShown | Unknown | Absent:
    """Return what the dash showed of a control where that was written down and the plan says something
    else.
    """
    shown = session.dash.values.get(subject)
    if shown is None:
        return ABSENT
    planned = value_in_force(subject, setup, bike)
    if planned is None:
        return UNKNOWN
    return ABSENT if shown == planned else DashShown(subject, shown, planned)


@fact("the riding mode on the dash", at="session:dash.shown_mode", show=str)
def mode_shown(session: Session, setup: SetUp) -> ModeShown | Absent:
    """Return the riding mode that the dash showed where it is not the planned one."""
    shown, planned = session.dash.shown_mode, setup.mode
    return ABSENT if None in (shown, planned) or shown == planned else ModeShown(str(shown), str(planned))


def undone_by(session: Session, bike: Bike) -> str:
    """Say what came after the reading that may have changed the dash; empty where nothing did.

    What has no time may have come after it. A stall or the key undoes nothing on a bike whose controls
    all keep their values.
    """
    dash = session.dash
    if dash.read is None:
        return ""
    if None not in (dash.planned_mode, session.setup.mode) and dash.planned_mode != session.setup.mode:
        return f"riding mode {old_to_new(str(dash.planned_mode), str(session.setup.mode))}"
    keeps = all(control.key_off == "keeps" for control in bike.controls.values())
    for event in session.events.values():
        if (event.at is None or event.at > dash.read) and not (keeps and event.what in _BY_KEY):
            return event.what or "something with the ignition"
    for one in session.incidents.values():
        if one.what == "fall" and (one.at is None or one.at > dash.read):
            return "a fall"
    return ""
