"""Going back: one value as the check of a change, a whole set-up, each as one step that undoes."""

from pathlib import Path

import pytest

from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.desk.sessions.restore import setting_back, trying_back
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import session, snapshot, write

RIDDEN = "11:00:00"


def two_sessions(root: Path, **more: str) -> Path:
    second = session(2, copied_from='"one"', parked=RIDDEN).replace("traction = 5", "traction = 7")
    return write(root, **({"sessions__one": session(1, parked=RIDDEN), "sessions__two": second} | more))


def tried(root: Path) -> tuple[Ref, Step | InputError]:
    desk = at_desk(root)
    (entry,) = (one for one in ledger(desk).entries if one.label == "traction control")
    return trying_back(desk.files, entry, desk.now())


def test_after_a_ridden_session_the_next_is_made_with_the_old_value_and_the_reason(tmp_path: Path) -> None:
    desk = at_desk(two_sessions(tmp_path))
    before = snapshot(tmp_path)
    ref, step = tried(tmp_path)
    assert isinstance(step, Step)
    desk.do(step)
    data = desk.files.data(ref)

    assert step.label == f"re-test: traction control 7 -> 5 (less help) in {ref.id}"
    assert (data["copied_from"], data["setup"]["controls"]["traction"]) == ("two", 5)
    assert data["because"]["controls"]["traction"]["why"] == "re-test: check of traction control in two"
    assert desk.undo() == step.label
    desk.settled()
    assert snapshot(tmp_path) == before


def test_a_session_to_come_is_changed_in_place_and_undone_byte_for_byte(tmp_path: Path) -> None:
    coming = session(3, copied_from='"two"').replace("traction = 5", "traction = 7")
    desk = at_desk(two_sessions(tmp_path, sessions__three=coming))
    before = snapshot(tmp_path)
    (entry,) = (one for one in ledger(desk).entries if one.label == "traction control")
    ref, step = trying_back(desk.files, entry, desk.now())
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    assert ref == Ref("session", "three")
    assert desk.files.data(ref)["setup"]["controls"]["traction"] == 5
    desk.undo()
    desk.settled()
    assert snapshot(tmp_path) == before


def test_what_stands_so_already_is_said(tmp_path: Path) -> None:
    there = session(3, copied_from='"two"')
    root = two_sessions(tmp_path, sessions__three=there)
    desk = at_desk(root)
    entry = ledger(desk).at("two", ("setup", "controls", "traction"))
    assert entry is not None
    _, step = trying_back(desk.files, entry, desk.now())

    assert isinstance(step, Step)
    assert (step.label, step.changes) == ("it stands so already", ())


def test_a_last_session_that_was_ridden_so_already_needs_no_new_one(tmp_path: Path) -> None:
    desk = at_desk(two_sessions(tmp_path, sessions__three=session(3, copied_from='"two"', parked=RIDDEN)))
    entry = ledger(desk).at("two", ("setup", "controls", "traction"))
    assert entry is not None
    _, step = trying_back(desk.files, entry, desk.now())

    assert isinstance(step, Step)
    assert step.changes == ()
    assert step.label.startswith("the last session stands so already")


@every(
    ("first", "second", "refused"),
    [
        ('what = "bars wobble"', 'what = "dives"', "headshake or wobble in session one"),
        ('what = "weaves"', "", "weaves in session one"),
        ('what = "dives"', 'what = "bars wobble"', ""),
        ('what = "bars wobble"\ncause = "crest"', "", ""),
    ],
)
def test_nobody_is_sent_back_into_a_value_that_a_danger_was_ridden_with(
    tmp_path: Path, first: str, second: str, refused: str
) -> None:
    tables = [f"\n[symptoms.1]\n{one}\n" if one else "" for one in (first, second)]
    one = session(1, parked=RIDDEN) + tables[0]
    two = session(2, copied_from='"one"', parked=RIDDEN).replace("traction = 5", "traction = 7") + tables[1]
    root = write(tmp_path, sessions__one=one, sessions__two=two)
    _, step = tried(root)
    entry = ledger(at_desk(root)).entries[0]

    assert entry.danger_back == refused
    assert (refused in step.found) if isinstance(step, InputError) else not refused


def test_a_way_back_that_brought_a_danger_the_last_time_is_refused(tmp_path: Path) -> None:
    """5 -> 7, back to 5 with a weave, to 7 again: neither of the ways to 5 is offered."""
    raised = "traction = 5", "traction = 7"
    weave = '\n[symptoms.1]\nwhat = "weaves"\n'
    root = write(
        tmp_path,
        sessions__one=session(1, parked=RIDDEN),
        sessions__two=session(2, copied_from='"one"', parked=RIDDEN).replace(*raised),
        sessions__three=session(3, copied_from='"two"', parked=RIDDEN) + weave,
        sessions__four=session(4, copied_from='"three"', parked=RIDDEN).replace(*raised),
    )
    found = {one.session.id: one.danger_back for one in ledger(at_desk(root)).entries}

    assert found == {"four": "weaves in session three", "three": "", "two": "weaves in session three"}


@pytest.mark.parametrize(
    ("label", "before", "after", "said"),
    [
        ("traction control", "wheelie = 2", "wheelie = 2\ntraction = 7", "was not known before"),
        ("gone", "gone = 3", "gone = 4", "not on this bike any more"),
    ],
)
def test_a_value_that_cannot_be_gone_back_to_is_refused(
    tmp_path: Path, label: str, before: str, after: str, said: str
) -> None:
    usual = "traction = 5    # as before"
    first = session(1, parked=RIDDEN).replace(usual, before)
    second = session(2, copied_from='"one"', parked=RIDDEN).replace(usual, after)
    desk = at_desk(write(tmp_path, sessions__one=first, sessions__two=second))
    (entry,) = (one for one in ledger(desk).entries if one.label == label)
    _, step = trying_back(desk.files, entry, desk.now())

    assert isinstance(step, InputError)
    assert said in step.found


def test_a_set_up_goes_back_as_one_step_into_a_session_to_come(garage: Path) -> None:
    desk = at_desk(garage)
    before = snapshot(garage)
    wanted = Ref("session", "2026-05-16-2-magpie")
    ref, step = setting_back(desk.files, NEXT, wanted, desk.now())
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    assert (ref, step.label) == (NEXT, "restored the set-up of 2026-05-16-2-magpie")
    assert desk.files.data(NEXT)["setup"] == desk.files.data(wanted)["setup"]
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


def test_a_session_that_was_ridden_gets_a_next_one_with_the_set_up(garage: Path) -> None:
    desk = at_desk(garage)
    target, wanted = Ref("session", "2026-05-16-5-magpie"), Ref("session", "2026-05-16-2-magpie")
    ref, step = setting_back(desk.files, target, wanted, desk.now())
    assert isinstance(step, Step)
    desk.do(step)

    assert ref not in (target, wanted)
    assert desk.files.data(ref)["setup"] == desk.files.data(wanted)["setup"]
    assert desk.files.data(ref)["copied_from"] == target.id


@pytest.mark.parametrize(
    ("wanted", "said"), [("2026-06-20-4-magpie", "its own"), ("2026-05-16-1-otter", "of another bike")]
)
def test_a_set_up_of_its_own_or_of_another_bike_is_refused(garage: Path, wanted: str, said: str) -> None:
    desk = at_desk(garage)
    _, step = setting_back(desk.files, NEXT, Ref("session", wanted), desk.now())

    assert isinstance(step, InputError)
    assert said in step.found


def test_a_session_without_a_set_up_is_refused(tmp_path: Path) -> None:
    bare = session(1, parked=RIDDEN).split("[setup")[0]
    desk = at_desk(two_sessions(tmp_path, sessions__bare=bare))
    _, step = setting_back(desk.files, Ref("session", "two"), Ref("session", "bare"), desk.now())

    assert isinstance(step, InputError)
    assert "no set-up" in step.found
