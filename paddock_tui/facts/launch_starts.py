"""Starts with launch control: how its levels go, and how many starts a rider has made with it."""

from collections.abc import Iterable

from paddock_tui.calc.levels import Levels
from paddock_tui.facts.aids import STARTING
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import History
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.shapes_of_bike import is_off


@fact("which level of {subject} is the gentlest", at="bike:controls.{subject}.gentlest", per="control")
def launch_levels(subject: str, is_launch: bool, control: Control) -> Levels | Unknown | Absent:
    """Return the levels of launch control; absent with a single one, not known without the gentlest."""
    found = levels_of(subject, control)
    if found is None or len([one for one in found.values if not found.is_off(one)]) < 2:
        return ABSENT
    return found if found.most is not None else UNKNOWN


@fact("starts made with launch", at="session:rider", show=lambda count: f"{count} starts with launch")
def launch_starts(session: Session, bike: Bike, history: History) -> int | Unknown:
    """Return how many earlier starts of this rider on this bike were made with launch armed."""
    if session.rider is None:
        return UNKNOWN
    return starts_of(session.rider, bike, (one.session for one in history.past))


def starts_of(rider: str, bike: Bike, sessions: Iterable[Session]) -> int:
    """Count a rider's ridden races, practice sessions and noted practice starts with launch armed."""
    names = [name for name, control in bike.controls.items() if function_of(name, control) == "launch"]
    made = 0
    for session in sessions:
        armed = any(
            (value := session.setup.controls.get(name)) is not None and not is_off(bike.controls[name], value)
            for name in names
        )
        if session.rider != rider or not armed or not is_ridden(session):
            continue
        noted = [one for one in session.incidents.values() if one.what == "practice starts"]
        made += sum(one.count or 1 for one in noted) or (1 if session.kind in STARTING else 0)
    return made
