"""What is asked about a run of laps before it is kept, and a list that takes the place of another."""

from collections.abc import Mapping

from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.desk.desk import Desk
from paddock_tui.desk.usual_lap import usual_lap_s
from paddock_tui.entry.laps import far_lap
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Lap, LapTime
from paddock_tui.store.garage import GarageFiles

LAPS = "laps"
BEST = ("best_lap",)
_LAP = LapTime()


def typed_laps(step: Step) -> list[Value]:
    """List the laps that a step adds, in their order."""
    return [edit.new for edit in _edits(step) if edit.path[:1] == (LAPS,) and edit.new is not MISSING]


def held_laps(files: GarageFiles, session: Ref) -> dict[str, Value]:
    """Return the laps that stand in a session, by number, in their order."""
    held = files.data(session).get(LAPS)
    if not isinstance(held, Mapping):
        return {}
    return {key: held[key] for key in sorted((key for key in held if key.isdecimal()), key=int)}


def lap_doubts(desk: Desk, session: Ref, step: Step) -> list[str]:
    """Say what makes the laps of a step doubtful: one far from the others or the usual; nobody went out."""
    new, best = typed_laps(step), [edit.new for edit in _edits(step) if edit.path == BEST]
    best = [one for one in best if one is not MISSING]
    if session.kind != "session" or not (new or best):
        return []
    data = desk.files.data(session)
    usual_s = usual_lap_s(desk, session)
    not_dry = COLUMN.get(str(data.get("surface")), "dry") != "dry"
    far = [
        far_lap(
            [one for one in map(_LAP.load, laps) if isinstance(one, Lap)], usual_s, slower_is_usual=not_dry
        )
        for laps in (new, best)
    ]
    said = {*data, *(edit.path[0] for edit in _edits(step) if edit.path[0] != LAPS)}
    out = not said.isdisjoint(("went_out", "parked", LAPS))
    not_out = bool(new) and not out and day_before(desk.files, session, desk.now()) is None
    waits = f"session {data.get('number')} has not gone out: are these its laps?" if not_out else ""
    return [said for said in (waits, *far) if said]


def _edits(step: Step) -> list[Edit]:
    return [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]


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
