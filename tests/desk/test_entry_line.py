"""The entry line at the desk: one line is one step, undone as one."""

from collections.abc import Mapping
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.desk.desk import Desk
from paddock_tui.desk.edits.entry_line import entering, entry_context, last_pressures
from paddock_tui.entry import read_line
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.small import session, snapshot, write


def entered(desk: Desk, ref: Ref, text: str) -> Step:
    context = entry_context(desk, ref)
    assert context is not None
    step = entering(desk.files, ref, read_line(text, context))
    assert isinstance(step, Step), step
    return step


def test_a_line_is_one_step_with_one_patch_and_one_undo_gives_back_the_same_bytes(garage: Path) -> None:
    before = snapshot(garage)
    with closing(at_desk(garage)) as desk:
        step = entered(desk, NEXT, "t4 hot 2.38 2.05 note rear slid")

        assert len(step.changes) == 1
        assert isinstance(step.changes[0], Change)
        assert step.label.startswith("traction control 3 -> 4 (more help); hot front not known -> 2.38 bar; ")
        desk.do(step)
        desk.settled()
        assert snapshot(garage) != before
        desk.undo()
        desk.settled()

    assert snapshot(garage) == before


def test_a_line_that_is_not_clear_becomes_a_step_without_changes(garage: Path) -> None:
    with closing(at_desk(garage)) as desk:
        assert entered(desk, NEXT, "t4 zzz").changes == ()


def test_the_last_pressures_are_those_of_the_same_bike_before_this_session(tmp_path: Path) -> None:
    def hot(front: str) -> str:
        return f'\n[pressures.hot]\nfront = "{front}"\n'

    root = write(
        tmp_path,
        sessions__2026__a=session(1) + hot("2.40 bar") + 'rear = "2.20 bar"\n',
        sessions__2026__b=session(2) + hot("2.45 bar"),
        sessions__2026__c=session(3),
        sessions__2026__d=session(4) + hot("1.90 bar"),
        sessions__2026__e=session(2, "09:00:00", bike='"other"') + hot("3.30 bar"),
    )
    with closing(at_desk(root)) as desk:
        found = last_pressures(desk.files, Ref("session", "c"))

    assert found == {("pressures", "hot", "front"): "2.45 bar", ("pressures", "hot", "rear"): "2.20 bar"}


def test_no_more_sessions_are_read_than_it_takes_to_find_the_last_pressure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    hot = '\n[pressures.hot]\nfront = "2.40 bar"\n'
    made = {f"sessions__2026__s{number}": session(number) + hot for number in range(1, 9)}
    root = write(tmp_path, **made, sessions__2026__t=session(9))
    with closing(at_desk(root)) as desk:
        context = entry_context(desk, Ref("session", "t"))
        assert context is not None
        looked: list[str] = []
        data = desk.files.data

        def looking(ref: Ref) -> Mapping[str, Any]:
            looked.append(ref.id)
            return data(ref)

        monkeypatch.setattr(desk.files, "data", looking)

        assert context.last[("pressures", "hot", "front")] == "2.40 bar"
        assert looked == ["s8"]
        assert ("pressures", "hot", "rear") not in context.last
        assert sorted(set(looked)) == [f"s{number}" for number in range(1, 9)]


def test_a_record_that_cannot_be_read_has_no_line(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__2026__a="date = \n")
    with closing(at_desk(root)) as desk:
        assert entry_context(desk, Ref("session", "a")) is None
        assert entry_context(desk, Ref("session", "none")) is None
