"""Any order of doing, undoing and doing again: memory is disk, and all the way back is the start."""

import itertools
import tempfile
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.desk import Desk
from paddock_tui.desk.files.records import creating, duplicating, renaming
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Saved
from tests.desk.opened import at_desk, typed
from tests.examples import examples
from tests.small import session, snapshot, write

ONE = Ref("session", "one")

SETTINGS = st.tuples(
    st.just("set"),
    st.sampled_from(["setup.controls.traction", "setup.controls.wheelie", "setup.mode", "aim", "number"]),
    st.sampled_from(["", "1", "3", "6"]),
)
FILING = st.tuples(st.just("file"), st.sampled_from(["new", "copy", "rename"]), st.just(""))
MOVES = st.tuples(st.sampled_from(["undo", "undo", "redo"]), st.just(""), st.just(""))


@examples(20)
@given(st.lists(st.one_of(SETTINGS, SETTINGS, FILING, MOVES), max_size=9))
def test_any_way_through_the_history_gives_the_same_bytes(moves: list[tuple[str, str, str]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        root = write(Path(folder), sessions__one=session(mode="None"), riders__bob="")
        desk = at_desk(root)
        states = [snapshot(root)]
        here = 0
        fresh = itertools.count()
        for what, path, text in moves:
            if what == "undo":
                assert (desk.undo() is None) is (here == 0)
                here = max(0, here - 1)
            elif what == "redo":
                assert (desk.redo() is None) is (here == len(states) - 1)
                here = min(len(states) - 1, here + 1)
            else:
                step = _filed(desk, path, next(fresh)) if what == "file" else typed(desk, ONE, (path, text))
                desk.do(step)
                outcomes = desk.settled()
                assert [type(outcome) for outcome in outcomes] == [Saved] * len(step.changes[:1])
                if step.changes:
                    del states[here + 1 :]
                    states.append(snapshot(root))
                    here += 1
            assert all(isinstance(outcome, Saved) for outcome in desk.settled())
            assert snapshot(root) == states[here]
            assert _memory_is_disk(desk)
        while desk.undo() is not None:
            here -= 1
            desk.settled()
            assert snapshot(root) == states[here]
        assert here == 0
        desk.close()


def _filed(desk: Desk, how: str, number: int) -> Step:
    """Make, copy or rename a record under a name that is free."""
    riders = [ref for ref in desk.files.listing("rider") if ref.id != "bob"]
    name = f"rider{number}"
    if how == "new":
        step = creating(desk.files, Ref("rider", name), {"name": "New"})
    elif how == "copy":
        step = duplicating(desk.files, riders[0], name)
    else:
        step = renaming(desk.files, riders[0], name)
    assert isinstance(step, Step)
    return step


def _memory_is_disk(desk: Desk) -> bool:
    """Tell whether every record reads as a desk opened afresh reads it."""
    other = at_desk(desk.files.root)
    return all(
        desk.files.data(ref) == other.files.data(ref)
        for kind in ("session", "rider")
        for ref in other.files.listing(kind)
    ) and desk.files.listing("rider") == other.files.listing("rider")
