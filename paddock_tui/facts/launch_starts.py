"""Starts with launch control: how its levels go, and how many starts a rider has made with it."""

import json
from collections.abc import Callable

from paddock_tui.calc.levels import Levels
from paddock_tui.facts.aids import STARTING
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import Alongs, History, PastSession
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.settings import OFF


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
    return starts_before(session.rider, bike, history)


def starts_before(rider: str, bike: Bike, history: History) -> int:
    """Count a rider's ridden races, practice sessions and noted practice starts with launch armed."""
    off = {
        name: None if isinstance(control.off, bool) else control.off
        for name, control in bike.controls.items()
        if function_of(name, control) == "launch"
    }
    return _STARTS.of(json.dumps(off, sort_keys=True)).of(history).get(rider, 0) if off else 0


_Starts = dict[str, int]


def _counting(controls: str) -> Callable[[_Starts, PastSession], _Starts]:
    """Return what counts starts by rider, with any of these controls armed; each with its value when off."""
    off: dict[str, Setting | None] = json.loads(controls)

    def count(so_far: _Starts, one: PastSession) -> _Starts:
        if one.rider is None or not one.ridden:
            return so_far
        session = one.session
        at = ((session.setup.controls.get(name), value) for name, value in off.items())
        if not any(now not in (None, OFF, value) for now, value in at):
            return so_far
        noted = [held for held in session.incidents.values() if held.what == "practice starts"]
        made = sum(held.count or 1 for held in noted) or (1 if session.kind in STARTING else 0)
        return {**so_far, one.rider: so_far.get(one.rider, 0) + made} if made else so_far

    return count


_STARTS: Alongs[_Starts] = Alongs("launch-starts", {}, _counting)
