"""What is asked about a run of laps before it is kept, and a list that takes the place of another."""

import datetime as dt
from collections.abc import Mapping

from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.entry.laps import far_lap
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Lap, LapTime
from paddock_tui.store.garage import GarageFiles

LAPS = "laps"
_LAP = LapTime()


def typed_laps(step: Step) -> list[Value]:
    """List the laps that a step adds, in their order."""
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    return [edit.new for edit in edits if edit.path[:1] == (LAPS,) and edit.new is not MISSING]


def held_laps(files: GarageFiles, session: Ref) -> dict[str, Value]:
    """Return the laps that stand in a session, by number, in their order."""
    held = files.data(session).get(LAPS)
    if not isinstance(held, Mapping):
        return {}
    return {key: held[key] for key in sorted((key for key in held if key.isdecimal()), key=int)}


def lap_doubts(files: GarageFiles, session: Ref, step: Step, now: dt.datetime) -> list[str]:
    """Say what makes the laps of a step doubtful: one far from the others, or nobody went out."""
    new = typed_laps(step)
    if not new:
        return []
    laps = [one for one in map(_LAP.load, new) if isinstance(one, Lap)]
    far = far_lap(laps)
    data = files.data(session)
    out = any(key in data for key in ("went_out", "parked", LAPS)) or "hot" in data.get("pressures", {})
    not_out = not out and day_before(files, session, now) is None
    number = data.get("number")
    waits = f"session {number} has not gone out: are these its laps?" if not_out else ""
    return [said for said in (waits, far) if said]


def replacing(files: GarageFiles, session: Ref, step: Step) -> Step:
    """Make the step that puts typed laps in place of those that stand."""
    held, new = held_laps(files, session), typed_laps(step)
    edits = [
        Edit((LAPS, str(number)), held.get(str(number), MISSING), lap) for number, lap in enumerate(new, 1)
    ]
    edits = [edit for edit in edits if edit.old != edit.new]
    gone = [key for key in held if int(key) > len(new)]
    edits += [Edit((LAPS, key), held[key], MISSING) for key in gone]
    return Step(f"{len(new)} laps in place of {len(held)}", (Change(session, tuple(edits)),) if edits else ())


def laps_words(laps: Mapping[str, Value]) -> str:
    """Write the laps that stand in one line."""
    return ", ".join(str(one) for one in laps.values())
