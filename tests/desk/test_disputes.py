"""Facts that two laptops disagree on: shown first, not known, and decided by one key as one step."""

from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.desk import Desk
from paddock_tui.desk.edits.disputes import deciding
from paddock_tui.pages.record import record_page
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from tests.commands.running import FILE, NEXT
from tests.screens.rider import riding
from tests.small import snapshot

HERE = Ref("session", NEXT)
KEY = "setup.controls.traction"


@pytest.fixture
def disputed(garage: Path) -> Path:
    """Return the garage with traction disputed: before 3, ours 4, theirs 7."""
    file = garage / FILE
    text = file.read_text(encoding="utf-8")
    lines = [line for line in text.splitlines(keepends=True) if not line.startswith("traction = ")]
    assert len(lines) < len(text.splitlines())
    held = f'\n[conflict."{KEY}"]\nbase = 3\nours = 4\ntheirs = 7\n'
    file.write_text("".join(lines) + held, encoding="utf-8")
    return garage


def test_a_disputed_fact_is_not_known_and_said_by_the_review(disputed: Path) -> None:
    desk = Desk(disputed)
    loaded = desk.files.read(HERE)
    assert loaded is not None
    assert isinstance(loaded.record, Session)
    assert "traction" not in loaded.record.setup.controls
    assert (loaded.troubles, loaded.unknown) == ((), ())
    found = [one for one in desk.review(HERE).findings if one.rule == "two-laptops-disagree"]
    assert [(one.subject, str(one.severity)) for one in found] == [(KEY, "serious")]
    first = record_page(loaded).sections[0]
    assert [row.value for row in first.rows] == ["not known until decided", "3", "4", "7"]


@pytest.mark.parametrize(("side", "value"), [("ours", 4), ("theirs", 7), ("base", 3)])
def test_one_side_is_taken_as_one_step_and_undone_to_the_byte(disputed: Path, side: str, value: int) -> None:
    before = (disputed / FILE).read_bytes()
    desk = Desk(disputed)
    step = deciding(desk.files, HERE, KEY, side)
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()
    assert desk.files.data(HERE)["setup"]["controls"]["traction"] == value
    assert "conflict" not in desk.files.data(HERE)
    desk.undo()
    desk.settled()
    assert (disputed / FILE).read_bytes() == before
    desk.close()


def test_what_is_not_disputed_cannot_be_decided(disputed: Path) -> None:
    assert isinstance(deciding(Desk(disputed).files, HERE, "aim", "ours"), InputError)
    assert isinstance(deciding(Desk(disputed).files, HERE, KEY, "mine"), InputError)


def test_the_command_takes_a_side(disputed: Path) -> None:
    assert main(["git", "take", str(disputed), NEXT, KEY, "theirs"]) == 0
    assert Desk(disputed).files.data(HERE)["setup"]["controls"]["traction"] == 7
    assert main(["git", "take", str(disputed), NEXT, KEY, "theirs"]) == 3


async def test_enter_on_its_row_takes_it(disputed: Path) -> None:
    before = snapshot(disputed)
    async with riding(disputed, 80, 24) as rider:
        await rider.types("s home down down enter")
        assert rider.desk.files.data(HERE)["setup"]["controls"]["traction"] == 4
        await rider.types("u")
    after = {name: text for name, text in snapshot(disputed).items() if ".paddock" not in name}
    assert after == {name: text for name, text in before.items() if ".paddock" not in name}
