"""What others change shows, whatever was edited here before."""

from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from tests.desk.opened import at_desk, typed
from tests.small import session, write

ONE = Ref("session", "one")
TRACTION = ("setup", "controls", "traction")


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return at_desk(write(tmp_path, sessions__one=session()))


def elsewhere(desk: Desk, old: str, new: str) -> None:
    file = desk.root / "sessions" / "one.toml"
    file.write_text(file.read_text().replace(old, new))


@pytest.mark.parametrize("read_between", [False, True])
def test_a_record_just_edited_here_is_watched_like_any_other(desk: Desk, read_between: bool) -> None:
    desk.do(typed(desk, ONE, ("setup.controls.traction", "6")))
    desk.settled()
    if read_between:
        desk.files.read(ONE)
        assert desk.poll() == ()
    elsewhere(desk, "traction = 6", "traction = 1")

    assert desk.poll() == (ONE,)
    assert lookup(desk.files.data(ONE), TRACTION) == 1
    assert desk.poll() == ()
    desk.close()


def test_an_edit_of_our_own_is_not_said_to_be_another_programs(desk: Desk) -> None:
    for pairs in (("setup.controls.traction", "6"), ("aim", "quiet"), ("setup.controls.traction", "")):
        desk.do(typed(desk, ONE, pairs))
    desk.settled()

    assert desk.poll() == ()
    assert lookup(desk.files.data(ONE), TRACTION) is MISSING
    desk.close()


def test_a_file_that_was_only_touched_is_not_said_to_be_changed(desk: Desk) -> None:
    desk.files.read(ONE)
    (desk.root / "sessions" / "one.toml").touch()

    assert desk.poll() == ()
    desk.close()


def test_a_change_that_leaves_time_and_size_alone_is_seen(desk: Desk) -> None:
    import os

    desk.files.read(ONE)
    file = desk.root / "sessions" / "one.toml"
    before = file.stat()
    with file.open("r+") as stream:
        text = stream.read()
        stream.seek(0)
        stream.write(text.replace("traction = 5", "traction = 7"))
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))

    assert desk.poll() == (ONE,)
    desk.close()
