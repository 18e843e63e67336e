"""A record renamed on one laptop while the other goes on under its old id, through real git."""

import shutil
from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.desk import Desk
from paddock_tui.desk.files.records import renaming
from paddock_tui.merge import merged
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from tests.commands.running import NEXT
from tests.merge.test_git import change, data, git, laptops, own_git

__all__ = ["laptops", "own_git"]

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")

DAY = "days/2026-06-20-anvilfen.toml"


def rename(where: Path, ref: Ref, name: str) -> None:
    desk = Desk(where)
    step = renaming(desk.files, ref, name)
    assert isinstance(step, Step), step
    desk.do(step)
    desk.close()
    git(where, "add", "-A")
    git(where, "commit", "-qm", "renamed")


@pytest.mark.parametrize("way", ["merge", "rebase"])
def test_what_the_other_laptop_edits_and_names_under_the_old_id_is_of_the_renamed_record(
    laptops: tuple[Path, Path], way: str, capsys: pytest.CaptureFixture[str]
) -> None:
    home, pits = laptops
    rename(home, Ref("bike", "magpie"), "jay")
    change(pits, "note=chain is new", name="bike/magpie")
    change(pits, "entries.ines.magpie.camera=helmet", name="day/2026-06-20-anvilfen")
    new = pits / "sessions" / "2026" / "2026-06-20-5-magpie.toml"
    new.write_text('date = 2026-06-20\nnumber = 5\nbike = "magpie"\nrider = "ines"\n', encoding="utf-8")
    git(pits, "add", "-A")
    git(pits, "commit", "-qm", "new")
    git(pits, "fetch", "-q")

    git(pits, way, "-q", "origin/main")

    bike = data(pits, "bikes/jay.toml")
    assert (bike["note"], bike["was"]) == ("chain is new", ["magpie"])
    assert not (pits / "bikes" / "magpie.toml").exists()
    assert data(pits, DAY)["entries"]["ines"]["jay"]["camera"] == "helmet"
    assert "magpie" not in data(pits, DAY)["entries"]["ines"]
    assert data(pits, str(new.relative_to(pits)))["bike"] == "magpie"
    assert main(["check", str(pits), "--session", "2026-06-20-5-magpie", "--format", "json"]) in (0, 1, 2)
    assert "There is no bike" not in capsys.readouterr().out
    assert main(["show", str(pits), NEXT]) == 0
    assert git(pits, "status", "--porcelain") == ""


def test_the_ids_of_both_sides_stand_and_one_that_was_taken_back_goes() -> None:
    base = 'name = "b"\nwas = ["a", "b"]\n'

    found = merged(base, 'name = "b"\nwas = ["a", "b", "d"]\n', 'name = "b"\nwas = ["b", "c"]\n')

    assert found.text == 'name = "b"\nwas = ["b", "c", "d"]\n'
    assert found.conflicts == ()


def test_entries_renamed_on_one_side_take_what_the_other_wrote_whichever_is_ours() -> None:
    base = '[entries.ann.owl]\nsigned_on = true\nbriefing = true\ncamera = "none"\n'
    renamed = base.replace("ann", "zoe").replace("owl", "hen").replace("none", "bike")
    other = base.replace("briefing = true", "briefing = false") + "inspected = true\n"

    for ours, theirs in ((renamed, other), (other, renamed)):
        found = merged(base, ours, theirs)
        assert found.conflicts == ()
        assert found.text == (
            '[entries.zoe.hen]\nsigned_on = true\nbriefing = false\ncamera = "bike"\ninspected = true\n'
        )


def test_an_entry_taken_out_and_another_one_put_in_are_no_rename() -> None:
    base = "[entries.ann.owl]\nsigned_on = true\nbriefing = true\n"
    ours = "[entries.zoe.hen]\nsigned_on = false\n"
    theirs = base + "inspected = true\n"

    assert [one.path for one in merged(base, ours, theirs).conflicts] == [("entries", "ann")]
