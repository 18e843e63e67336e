"""The desk: what is done shows at once and is kept behind it; undo, redo, failures, and others' changes."""

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from paddock_tui.desk import Desk, DeskChange
from paddock_tui.desk.files.records import creating
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.records.session import Session
from paddock_tui.store.saving import Clash, NotSaved, Saved, save
from tests.desk.opened import NEXT, at_desk, typed
from tests.small import session, snapshot, write

KEEP = "paddock_tui.desk.desk.save"
"""What the writer thread calls."""


@pytest.fixture
def desk(garage: Path) -> Iterator[Desk]:
    made = at_desk(garage)
    yield made
    made.close()


def traction(desk: Desk) -> object:
    loaded = desk.files.read(NEXT)
    assert loaded is not None
    assert isinstance(loaded.record, Session)
    return loaded.record.setup.controls.get("traction")


def test_what_is_done_shows_at_once_and_is_on_disk_once_settled(
    garage: Path, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = snapshot(garage)
    go = threading.Event()
    monkeypatch.setattr(KEEP, lambda *given: (go.wait(), save(*given))[1])

    desk.do(typed(desk, NEXT, ("setup.controls.traction", "6")))

    assert traction(desk) == 6
    assert desk.pending(NEXT)
    assert snapshot(garage) == before
    go.set()
    (kept,) = desk.settled()
    assert isinstance(kept, Saved)
    assert not desk.pending(NEXT)
    assert traction(desk) == 6
    assert (
        b"traction = 6                # as it was in the dry"
        in (snapshot(garage)["sessions/2026/2026-06-20-4-magpie.toml"])
    )


def test_several_steps_on_one_record_are_kept_in_the_order_they_were_made(garage: Path, desk: Desk) -> None:
    before = snapshot(garage)
    for level in range(4, 10):
        desk.do(typed(desk, NEXT, ("setup.controls.traction", str(level))))

    assert traction(desk) == 9
    assert [type(outcome) for outcome in desk.settled()] == [Saved] * 6
    labels = [desk.undo() for _ in range(6)]
    assert labels[0] == "traction control 8 -> 9 (more help)"
    assert labels[-1] == "traction control 3 -> 4 (more help)"
    assert desk.undo() is None
    desk.settled()
    assert snapshot(garage) == before


def test_the_review_follows_what_is_done_before_it_is_kept(desk: Desk) -> None:
    assert desk.review().verdict == "CARE"

    desk.do(typed(desk, NEXT, ("setup.controls.traction", "99")))

    assert desk.review().verdict == "HOLD"
    desk.undo()
    assert desk.review().verdict == "CARE"


def test_what_became_of_a_step_is_told_once_whenever_it_is_asked(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__one=session()))
    one = Ref("session", "one")
    desk.do(typed(desk, one, ("aim", "smooth")))
    created = creating(desk.files, Ref("rider", "bo"), {})
    assert isinstance(created, Step)
    desk.do(created)
    assert desk.files.listing("rider") == (Ref("rider", "ann"), Ref("rider", "bo"))

    assert [type(outcome) for outcome in desk.settled()] == [Saved, Saved]
    assert desk.settled() == ()
    desk.close()


def test_a_step_that_changes_nothing_is_no_step(desk: Desk) -> None:
    desk.do(typed(desk, NEXT, ("setup.controls.traction", "3")))
    desk.do(Step("nothing", ()))

    assert desk.can_undo() is None
    assert desk.settled() == ()


def test_a_new_step_forgets_what_could_be_done_again(desk: Desk) -> None:
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.undo()
    assert desk.can_redo() == "fatigue 2 -> 3"

    desk.do(typed(desk, NEXT, ("fatigue", "4")))

    assert desk.can_redo() is None
    assert desk.redo() is None
    assert desk.can_undo() == "fatigue 2 -> 4"


def test_a_step_that_is_not_kept_forgets_nothing_that_could_be_done_again(garage: Path, desk: Desk) -> None:
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.undo()
    desk.settled()
    tobin = Ref("rider", "tobin")
    step = typed(desk, tobin, ("note", "x"))
    (garage / "riders" / "tobin.toml").chmod(0o444)

    desk.do(step)
    desk.settled()

    assert [done.label for done in desk.unkept()] == [step.label]
    assert desk.can_redo() == "fatigue 2 -> 3"
    assert desk.redo() == "fatigue 2 -> 3"
    assert desk.files.data(NEXT)["fatigue"] == 3


def test_listeners_hear_of_a_step_when_it_shows_and_when_it_is_kept(desk: Desk) -> None:
    told: list[DeskChange] = []
    desk.on_change.append(told.append)

    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.settled()

    assert [one.refs for one in told] == [(NEXT,), (NEXT,)]
    assert {type(one.outcome) for one in told} == {type(None), Saved}


# ---- what is not kept ------------------------------------------------------------------------------


def test_a_clash_shows_their_value_again_and_is_no_step_of_the_history(garage: Path, desk: Desk) -> None:
    path = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    assert traction(desk) == 3
    step = typed(desk, NEXT, ("setup.controls.traction", "6"))
    path.write_text(path.read_text().replace("traction = 3 ", "traction = 7 "))
    theirs = snapshot(garage)

    desk.do(step)
    (clash,) = desk.settled()

    assert isinstance(clash, Clash)
    assert (clash.found, clash.edit.old, clash.edit.new) == (7, 3, 6)
    assert desk.changed_on(desk.now().date()) == []
    assert traction(desk) == 7
    assert desk.can_undo() is None
    assert snapshot(garage) == theirs


def test_a_step_that_is_not_kept_is_given_up_by_undo_and_the_ones_before_it_undone(
    garage: Path, desk: Desk
) -> None:
    before = snapshot(garage)
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.settled()
    tobin = garage / "riders" / "tobin.toml"
    tobin.chmod(0o444)

    desk.do(typed(desk, Ref("rider", "tobin"), ("note", "x")))
    assert desk.undo() == "note thinks in psi and miles -> x"
    assert desk.files.data(Ref("rider", "tobin"))["note"] == "thinks in psi and miles"
    assert desk.undo() == "fatigue 2 -> 3"
    assert desk.undo() is None

    desk.settled()
    assert desk.unkept() == ()
    assert snapshot(garage) == before
    assert desk.can_redo() == "fatigue 2 -> 3"


def test_an_undo_that_cannot_be_written_can_be_tried_again(garage: Path, desk: Desk) -> None:
    before = snapshot(garage)
    path = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.settled()
    path.chmod(0o444)

    desk.undo()
    (refused,) = desk.settled()

    assert isinstance(refused, NotSaved)
    assert (desk.can_undo(), desk.can_redo()) == ("fatigue 2 -> 3", None)
    path.chmod(0o644)
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before
    assert (desk.can_undo(), desk.can_redo()) == (None, "fatigue 2 -> 3")


def test_an_undo_that_clashes_does_not_bar_the_older_ones(garage: Path, desk: Desk) -> None:
    path = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    desk.do(typed(desk, NEXT, ("aim", "smooth")))
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    desk.settled()
    path.write_text(path.read_text().replace("fatigue = 3", "fatigue = 5"))
    desk.poll()

    desk.undo()
    (clash,) = desk.settled()

    assert isinstance(clash, Clash)
    assert desk.can_undo() == "aim drive out of 7 on the line, leave 4 alone -> smooth"
    assert desk.undo() is not None
    assert isinstance(desk.settled()[0], Saved)
    assert "leave 4 alone" in path.read_text()
    assert "fatigue = 5" in path.read_text()


def test_an_error_in_the_writer_is_an_outcome_with_a_report_and_stops_nothing(
    garage: Path, desk: Desk, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def breaks(*_: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    monkeypatch.setattr("sys.platform", "linux")
    with monkeypatch.context() as patched:
        patched.setattr(KEEP, breaks)
        desk.do(typed(desk, NEXT, ("fatigue", "3")))
        assert desk.settled() == (NotSaved("an unexpected error", f"a report is in {the_report(tmp_path)}"),)

    assert [done.label for done in desk.unkept()] == ["fatigue 2 -> 3"]
    desk.do(typed(desk, NEXT, ("fatigue", "4")))
    assert [type(outcome) for outcome in desk.settled()] == [Saved, Saved]
    assert desk.unkept() == ()
    assert b"fatigue = 4" in snapshot(garage)["sessions/2026/2026-06-20-4-magpie.toml"]


def the_report(tmp_path: Path) -> Path:
    (found,) = (tmp_path / "state" / "paddock-tui").iterdir()
    return found


# ---- others change files ------------------------------------------------------------------------------


def test_poll_tells_of_a_change_from_outside_once_it_was_read_again(garage: Path, desk: Desk) -> None:
    told: list[DeskChange] = []
    desk.on_change.append(told.append)
    assert traction(desk) == 3
    assert desk.poll() == ()

    path = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    path.write_text(path.read_text().replace("traction = 3 ", "traction = 8 "))

    assert desk.poll() == (NEXT,)
    assert told == [DeskChange((NEXT,))]
    assert traction(desk) == 8
    assert desk.poll() == ()


def test_poll_tells_of_a_file_that_went(garage: Path, desk: Desk) -> None:
    assert traction(desk) == 3
    (garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml").unlink()

    assert desk.poll() == (NEXT,)
    assert desk.files.read(NEXT) is None
    assert desk.poll() == ()


def test_poll_does_not_tell_of_what_this_desk_wrote(desk: Desk) -> None:
    assert traction(desk) == 3
    desk.do(typed(desk, NEXT, ("setup.controls.traction", "6")))
    desk.settled()

    assert desk.poll() == ()


# ---- units and reviews --------------------------------------------------------------------------------


def test_a_riders_own_units_stand_over_the_garages(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        garage='schema = 1\n[units]\npressure = "bar"\nmass = "kg"\n',
        riders__ann='[units]\npressure = "psi"\n',
    )
    desk = at_desk(root)

    assert desk.units() == Units(pressure="bar", mass="kg")
    assert desk.units("ann") == Units(pressure="psi", mass="kg")
    assert desk.units("nobody") == Units(pressure="bar", mass="kg")


def test_a_garage_without_a_session_is_not_judged(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path))

    assert desk.session_in_hand() is None
    assert desk.review().verdict == "not assessed"


def test_the_garage_itself_can_be_changed_and_changed_back(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__one=session())
    before = snapshot(root)
    desk = at_desk(root)

    desk.do(typed(desk, GARAGE, ("units.pressure", "psi")))
    assert desk.units().pressure == "psi"
    desk.undo()
    desk.close()

    assert snapshot(root) == before


def test_what_the_writer_did_is_read_only_once_it_is_taken_over(
    garage: Path, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A key reads one state of the garage from beginning to end, whatever the writer does meanwhile."""
    go = threading.Event()
    monkeypatch.setattr(KEEP, lambda *given: (go.wait(), save(*given))[1])
    desk.do(typed(desk, NEXT, ("fatigue", "3")))
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    file.write_text(file.read_text(encoding="utf-8").replace("fatigue = 2", "fatigue = 4"), encoding="utf-8")
    go.set()
    desk.wait()

    for _ in range(2):
        assert desk.files.data(NEXT)["fatigue"] == 3
        assert desk.pending(NEXT)
        assert desk.unkept() == ()

    desk.take_over()

    assert desk.files.data(NEXT)["fatigue"] == 4
    assert not desk.pending(NEXT)
    assert isinstance(desk.settled()[0], Clash)
