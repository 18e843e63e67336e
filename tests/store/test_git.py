"""Two clones of a garage, edited each by itself and merged: every edit stands, or the conflict is listed."""

import os
import shutil
import subprocess
import tomllib
from pathlib import Path

import pytest

from paddock_tui.records.edits import MISSING, Change, Create, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import NotSaved, Saved, save
from tests.desk.opened import at_desk
from tests.small import session, write

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")

ONE = Ref("session", "one")
TRACTION = ("setup", "controls", "traction")


def git(folder: Path, *arguments: str, fails: bool = False) -> str:
    who = {"NAME": "rider", "EMAIL": "rider@example.org"}
    env = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    env |= {f"GIT_{role}_{name}": value for role in ("AUTHOR", "COMMITTER") for name, value in who.items()}
    env |= {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
    ran = subprocess.run(["git", *arguments], cwd=folder, env=env, capture_output=True, text=True)
    assert (ran.returncode != 0) == fails, ran.stderr
    return ran.stdout


def edit(root: Path, path: tuple[str, ...], old: object, new: object) -> None:
    step = Step("", (Change(ONE, (Edit(path, old, new),)),))  # type: ignore[arg-type]
    assert isinstance(save(GarageFiles(root), step), Saved)


@pytest.fixture
def clones(tmp_path: Path) -> tuple[Path, Path]:
    """A garage in git and a clone of it, both on one commit."""
    mine, theirs = tmp_path / "mine", tmp_path / "theirs"
    write(mine, sessions__one=session())
    git(mine, "init", "-q", "-b", "main")
    git(mine, "add", "-A")
    git(mine, "commit", "-qm", "garage")
    git(tmp_path, "clone", "-q", str(mine), str(theirs))
    return mine, theirs


def merged(mine: Path, theirs: Path, *, conflict: bool = False) -> Path:
    for root in (mine, theirs):
        git(root, "add", "-A")
        git(root, "commit", "-qm", "edits")
    git(mine, "fetch", "-q", str(theirs), "main")
    git(mine, "merge", "-q", "-m", "both", "FETCH_HEAD", fails=conflict)
    return mine / "sessions" / "one.toml"


def test_the_tools_own_folder_is_no_business_of_git(clones: tuple[Path, Path]) -> None:
    mine, _ = clones
    edit(mine, TRACTION, 5, 6)

    assert git(mine, "status", "--porcelain").split() == ["M", "sessions/one.toml"]


def test_different_facts_of_one_file_both_stand_after_a_merge(clones: tuple[Path, Path]) -> None:
    mine, theirs = clones
    edit(mine, TRACTION, 5, 6)
    edit(theirs, ("kind",), "track day", "race")
    assert isinstance(save(GarageFiles(mine), Step("", (Create(Ref("rider", "bo"), 'name = "B"\n'),))), Saved)

    data = tomllib.loads(merged(mine, theirs).read_text())

    assert (data["setup"]["controls"]["traction"], data["kind"]) == (6, "race")
    assert (mine / "riders" / "bo.toml").exists()


def test_the_same_fact_set_by_both_is_a_conflict_that_is_listed_with_its_lines(
    clones: tuple[Path, Path],
) -> None:
    mine, theirs = clones
    edit(mine, TRACTION, 5, 6)
    edit(theirs, TRACTION, 5, 7)
    file = merged(mine, theirs, conflict=True)
    first = file.read_text().splitlines().index("<<<<<<< HEAD") + 1
    left = file.read_bytes()

    loaded = GarageFiles(mine).read(ONE)
    refused = save(GarageFiles(mine), Step("", (Change(ONE, (Edit(("aim",), MISSING, "x"),)),)))

    assert loaded is not None
    (trouble,) = loaded.troubles
    assert trouble.found == f"a merge left unfinished by git, lines {first}-{first + 4}"
    assert (trouble.file, trouble.line) == ("sessions/one.toml", first)
    assert "keep one side" in trouble.mend
    assert isinstance(refused, NotSaved)
    assert "a merge left unfinished by git" in refused.reason
    assert file.read_bytes() == left


def test_lines_added_at_one_place_by_both_conflict_or_both_stand(clones: tuple[Path, Path]) -> None:
    mine, theirs = clones
    edit(mine, ("setup", "controls", "wheelie"), MISSING, 3)
    edit(theirs, ("setup", "controls", "slide"), MISSING, 4)
    file = merged(mine, theirs, conflict=True)

    loaded = GarageFiles(mine).read(ONE)

    assert loaded is not None
    assert loaded.record is None
    assert "wheelie = 3" in file.read_text()
    assert "slide = 4" in file.read_text()


def test_a_pull_underneath_shows_and_an_edit_on_top_of_it_keeps_both(clones: tuple[Path, Path]) -> None:
    mine, theirs = clones
    edit(theirs, ("kind",), "track day", "race")
    git(theirs, "commit", "-qam", "theirs")
    desk = at_desk(mine)
    assert desk.files.data(ONE)["kind"] == "track day"

    git(mine, "pull", "-q", str(theirs), "main")

    assert desk.poll() == (ONE,)
    assert desk.files.data(ONE)["kind"] == "race"
    edit(mine, TRACTION, 5, 8)
    data = tomllib.loads((mine / "sessions" / "one.toml").read_text())
    assert (data["setup"]["controls"]["traction"], data["kind"]) == (8, "race")
    desk.close()
