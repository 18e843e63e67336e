"""What is not kept stays on the screen and says so; undo and redo outlive the program."""

import threading
from pathlib import Path

import pytest

from tests.screens.rider import riding
from tests.small import snapshot


async def test_what_cannot_be_kept_stays_marked_on_the_screen_until_it_is(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        rider.file.chmod(0o444)
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6")

        assert rider.last.startswith("not saved")
        assert rider.value == "6"
        assert "1 not saved" in rider.screen
        assert "not saved: the file is marked read-only" in rider.screen
        await rider.types("q")
        assert "1 not saved: enter leaves all the same, escape stays" in rider.last
        await rider.types("escape")
        assert snapshot(garage) == before
        rider.file.chmod(0o644)
        await rider.chooses("again")
        assert "not saved" not in rider.screen
        assert "slide = 6" in rider.text
        await rider.types("u")
    assert snapshot(garage) == before


async def test_what_cannot_be_kept_is_written_elsewhere_and_then_left_without_a_question(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(garage.parent)
    async with riding(garage) as rider:
        kept = rider.text
        rider.file.chmod(0o444)
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6")
        await rider.chooses("elsewhere")
        await rider.types("text:garage/bikes/magpie.toml enter")
        assert "a file of this name is there already" in rider.screen
        await rider.types("ctrl+u text:elsewhere.toml enter")

        assert Path("elsewhere.toml").read_text() == kept.replace("slide = 3", "slide = 6")
        await rider.types("q")
    assert rider.app.return_code == 0
    assert rider.text == kept


async def test_leaving_what_is_not_kept_is_told_by_the_exit_status(garage: Path) -> None:
    async with riding(garage) as rider:
        rider.file.chmod(0o444)
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6 q enter")
    assert rider.app.return_code == 3


async def test_an_edit_on_what_is_not_kept_waits_for_it_and_both_are_kept_in_order(garage: Path) -> None:
    async with riding(garage) as rider:
        rider.file.chmod(0o444)
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6 7")
        assert rider.value == "7"
        assert "2 not saved" in rider.screen
        rider.file.chmod(0o644)
        await rider.types("8")

        assert "slide = 8" in rider.text
        assert rider.desk.unkept() == ()
        await rider.types("u u u")
        assert "slide = 3" in rider.text


async def test_undo_and_redo_go_on_into_earlier_runs(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6 7")
    async with riding(garage) as rider:
        await rider.types("p u")
        assert rider.last.startswith("undone: slide control 6 -> 7 (more help) (of 20 Jun 12:55)")
        await rider.types("u")
        assert snapshot(garage) == before
        await rider.types("u")
        assert "there is nothing to undo" in rider.last
    async with riding(garage) as rider:
        await rider.types("p y y")
        assert "slide = 7" in rider.text
        await rider.chooses("today")
        assert "slide control 6 -> 7" in rider.screen
        assert "done again" in rider.screen


async def test_a_step_that_takes_long_to_keep_is_painted_with_a_mark_until_it_is(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        gate = threading.Event()
        rider.desk._writer.submit(gate.wait)
        try:
            await rider.presses("6")
            assert "not yet saved" in rider.screen
            assert "slide = 6" not in rider.text
        finally:
            gate.set()
        await rider.types("")
        await rider.shows("not yet saved", gone=True)
    assert "slide = 6" in rider.text
