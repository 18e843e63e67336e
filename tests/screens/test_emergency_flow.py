"""The emergency page by keyboard: two keys away, kept in the rider's own file, and found nowhere else."""

import json
import stat
from pathlib import Path

import attrs
import pytest

from paddock_tui.__main__ import main
from paddock_tui.desk.emergency import emergency_standing
from paddock_tui.records.emergency import LONGEST, Emergency
from paddock_tui.records.emergency import shapes as shapes_of_page
from paddock_tui.screens.half_typed import half_typed
from paddock_tui.store.crash import report
from tests.screens.rider import BEFORE, riding

PLANTED = "zimtrinde"
"""Stands in the private file, and nowhere else in the garage."""

DAY = BEFORE.date()


def planted_in(folder: Path) -> list[str]:
    """The files below a folder that hold the planted word, in their names or their bytes."""
    files = [one for one in folder.rglob("*") if one.is_file()]
    return [str(one.relative_to(folder)) for one in files if PLANTED.encode() in one.read_bytes()]


def nothing_else_holds_it(garage: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whatever is printed, exported, checked or reported of a garage holds nothing of the private file."""
    file = garage / "private" / "ines.toml"
    assert emergency_standing(garage, "ines", DAY) == "nobody to call"
    assert emergency_standing(garage, "wim", DAY) == "not on this laptop"

    tables = tmp_path / "tables"
    everything = [word for one in ("health", "incidents", "acceptances", "words") for word in ("--with", one)]
    assert main(["export", str(garage), "--to", str(tables), *everything]) == 0
    for printed in ([], ["rider/ines", "--format", "json"], ["card", "--format", "html"], ["ledger"]):
        assert main(["show", str(garage), *printed]) == 0
    assert main(["check", str(garage), "--all"]) in (0, 1, 2, 3)
    assert main(["doctor", str(garage)]) in (0, 1, 3)
    assert main(["set", str(garage), "rider/ines", "note=as before"]) == 0
    assert PLANTED not in capsys.readouterr().out
    try:
        int(file.read_text())
    except ValueError as error:
        report(error)
    assert planted_in(tmp_path) == ["garage/private/ines.toml"]

    assert main(["show", str(garage), "emergency/ines", "--format", "json"]) == 0
    rows = json.loads(capsys.readouterr().out)["sections"][0]["rows"]
    assert {one["label"]: one["value"] for one in rows}["ALLERGIES"] == PLANTED
    assert main(["show", str(garage), "emergency/wim"]) == 3


async def test_it_is_typed_like_any_row_and_goes_nowhere_else(
    garage: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    file = garage / "private" / "ines.toml"
    async with riding(garage) as rider:
        main_screen = rider.app.main
        await rider.types("z")
        assert "not on this laptop" in rider.screen
        await rider.types("1")
        assert "RIDER DOWN · Ines" in rider.screen
        assert "CARE" not in rider.screen

        rider.to("emergency", "ines", "allergies")
        await rider.types("enter text:nuts enter")
        assert "first the rider agrees" in rider.screen
        assert not file.exists()
        await rider.types("escape")

        rider.to("emergency", "ines", "consent")
        await rider.types("y")
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
        assert stat.S_IMODE(file.parent.stat().st_mode) == 0o700
        assert (file.parent / ".gitignore").read_text() == "*\n"
        # Whoever agreed types on: the next row is the first that nobody filled in, and takes letters.
        assert main_screen.board.cursor_row is not None
        assert main_screen.board.cursor_row.path == ("emergency", "ines", "call_first")

        rider.to("emergency", "ines", "allergies")
        await rider.types(f"enter text:{PLANTED} enter")
        rider.to("emergency", "ines", "blood_group")
        await rider.types("enter text:ab- enter")
        assert main_screen.board.cursor_row is not None
        assert main_screen.board.cursor_row.path == ("emergency", "ines", "medicines")
        rider.to("emergency", "ines", "blood_group")
        assert rider.value == "AB-"
        before = file.read_text()
        await rider.types("backspace u")
        assert file.read_text() == before
        await rider.types("y")
        assert "blood_group" not in file.read_text()
        await rider.types("u")

        rider.to("emergency", "ines", "conditions")
        await rider.presses(f"enter text:{PLANTED}")
        assert half_typed(main_screen, main_screen.question_line) is None
        await rider.types("escape")
        rider.to("emergency", "ines", "blood_group")
        await rider.types("g / text:" + PLANTED + " enter")
        assert not [row for row in main_screen.board.page.rows() if PLANTED in row.value + row.aside]
        assert rider.desk.changed_on(DAY) == []
    nothing_else_holds_it(garage, tmp_path, capsys)


async def test_the_fullest_page_needs_no_scrolling(garage: Path) -> None:
    (garage / "private").mkdir(mode=0o700)
    full = {
        key: f'"{"W" * (LONGEST - 9)} the end."'
        for key, (_, _, shape) in shapes_of_page().items()
        if shape.expected.startswith("a text")
    }
    full |= {"blood_group": '"AB-"', "born": "1990-01-01", "consent": "2025-01-01", "as_of": "2025-02-01"}
    assert set(full) == {one.name for one in attrs.fields(Emergency)}
    text = "".join(f"{key} = {value}\n" for key, value in full.items())
    (garage / "private" / "ines.toml").write_text(text + 'implant = "pacemaker"\n')
    async with riding(garage) as rider:
        await rider.types("z 1")
        shown = rider.screen
        assert shown.count("the end.") == sum("the end." in one for one in full.values())
        assert "OVER A YEAR OLD" in shown
        assert "pacemaker" in shown
        assert "more" not in rider.last
        rider.to("emergency", "ines", "as_of")
        await rider.types("enter enter")
        assert rider.value == DAY.isoformat()
        rider.to("emergency", "ines", "consent")
        await rider.types("n enter")
        rider.to("emergency", "ines", "born")
        assert not (garage / "private" / "ines.toml").exists()
        await rider.types("u")
        assert "pacemaker" in (garage / "private" / "ines.toml").read_text()


@pytest.mark.parametrize("what", ["link", "folder link", "second name", "huge", "broken"])
def test_a_file_that_is_not_ours_is_not_used(garage: Path, tmp_path: Path, what: str) -> None:
    victim = tmp_path / "elsewhere"
    victim.mkdir()
    (victim / "ines.toml").write_text(f'allergies = "{PLANTED}"\n')
    folder = garage / "private"
    if what == "folder link":
        folder.symlink_to(victim)
    else:
        folder.mkdir()
    if what == "link":
        (folder / "ines.toml").symlink_to(victim / "ines.toml")
    elif what == "second name":
        (folder / "ines.toml").hardlink_to(victim / "ines.toml")
    elif what in ("huge", "broken"):
        (folder / "ines.toml").write_text("#" * 30_000 if what == "huge" else "allergies =\n")

    assert PLANTED not in emergency_standing(garage, "ines", DAY)
    assert main(["show", str(garage), "emergency/ines"]) == 3
