"""A profile to start from for another rider or another bike: help is never carried from bike to bike."""

from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.sessions.profile_for_another import profile_for
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.setup import Profile
from tests.desk.opened import NEXT, at_desk
from tests.small import snapshot


def made(desk: Desk, other: Ref, subject: Ref = NEXT) -> Profile:
    ref, step = profile_for(desk.files, desk.about(subject), other)
    assert isinstance(step, Step), step
    desk.do(step)
    desk.settled()
    loaded = desk.files.read(ref)
    assert loaded is not None
    assert isinstance(loaded.record, Profile)
    assert loaded.troubles == ()
    return loaded.record


def test_another_rider_takes_the_set_up_with_own_help_and_preload(garage: Path) -> None:
    desk = at_desk(garage)
    before = snapshot(garage)
    found = made(desk, Ref("rider", "tobin"))
    source = desk.files.data(NEXT)["setup"]
    assert (found.bike, found.rider, found.made_for) == ("magpie", "tobin", "wet")
    assert found.setup.rear_sprocket == source["rear_sprocket"]
    assert found.setup.controls["traction"] == 7
    assert found.note is not None
    assert found.note.startswith("a starting point, not ridden yet")
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


def test_another_bike_gets_its_own_numbers_one_step_more_and_nothing_of_the_old_one(garage: Path) -> None:
    desk = at_desk(garage)
    found = made(desk, Ref("bike", "otter"))
    assert (found.bike, found.rider) == ("otter", "ines")
    assert found.setup.adjusters == {}
    assert found.setup.rear_sprocket is None
    assert found.setup.mode is None
    bike = desk.files.read(Ref("bike", "otter"))
    assert bike is not None
    assert set(found.setup.controls) <= set(getattr(bike.record, "controls", {}))
    assert found.setup.controls


def test_a_bike_without_aids_gets_an_empty_set_up(garage: Path) -> None:
    found = made(at_desk(garage), Ref("bike", "badger"))
    assert found.setup.controls == {}


def test_a_second_one_gets_a_name_of_its_own(garage: Path) -> None:
    desk = at_desk(garage)
    made(desk, Ref("rider", "tobin"))
    made(desk, Ref("rider", "tobin"))
    assert Ref("profile", "magpie-tobin-wet-start-2") in desk.files.listing("profile")


def test_what_cannot_be_read_is_said(garage: Path) -> None:
    desk = at_desk(garage)
    (garage / "riders/tobin.toml").write_text("name = ", encoding="utf-8")
    desk.poll()
    _, step = profile_for(desk.files, desk.about(NEXT), Ref("rider", "tobin"))
    assert isinstance(step, InputError)
