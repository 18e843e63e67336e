"""Two laptops and real git: merged by fact, a fact both changed stays open, two outings stay two."""

import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import pytest

import paddock_tui
from paddock_tui.__main__ import main
from paddock_tui.store.emergency import read_text, write_text
from tests.commands.running import FILE, NEXT
from tests.every import every
from tests.small import snapshot

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")


@pytest.fixture(autouse=True)
def own_git(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Give git a home of its own, and the driver this checkout."""
    for key, value in {
        "HOME": str(tmp_path),
        "XDG_STATE_HOME": str(tmp_path / "state"),
        "GIT_CONFIG_NOSYSTEM": "1",
        "GIT_AUTHOR_NAME": "r",
        "GIT_AUTHOR_EMAIL": "r@example.org",
        "GIT_COMMITTER_NAME": "r",
        "GIT_COMMITTER_EMAIL": "r@example.org",
        "PYTHONPATH": str(Path(__file__).parent.parent.parent),
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}",
    }.items():
        monkeypatch.setenv(key, value)
    monkeypatch.setattr(shutil, "which", lambda name: None if name == "paddock-tui" else f"/usr/bin/{name}")


OUTING = 'date = 2026-06-20\nnumber = 3\nbike = "magpie"\nrider = "ines"\n'
SESSION = "sessions/2026/x.toml"


def git(where: Path, *words: str, status: int = 0) -> str:
    done = subprocess.run(("git", "-C", where, *words), capture_output=True, text=True, check=False)
    assert done.returncode == status, done.stdout + done.stderr
    return done.stdout + done.stderr


@pytest.fixture
def laptops(garage: Path, tmp_path: Path) -> tuple[Path, Path]:
    """Return the garage at home and its clone in the pits, both set up."""
    git(garage, "init", "-q", "-b", "main")
    assert main(["git", "setup", str(garage), "--yes"]) == 0
    git(garage, "add", "-A")
    git(garage, "commit", "-qm", "start")
    pits = tmp_path / "pits"
    git(tmp_path, "clone", "-q", str(garage), str(pits))
    assert main(["git", "setup", str(pits), "--yes"]) == 0
    return garage, pits


def change(where: Path, *values: str, name: str = NEXT) -> None:
    assert main(["set", str(where), name, *values]) == 0
    git(where, "commit", "-qam", "change")


def data(where: Path, file: str = FILE) -> dict[str, Any]:
    return tomllib.loads((where / file).read_text(encoding="utf-8"))


def test_different_facts_of_one_record_merge_without_a_question(laptops: tuple[Path, Path]) -> None:
    home, pits = laptops
    change(home, "setup.controls.traction=7", "aim=smooth")
    change(pits, "setup.front_start=2.05 bar", "surface=damp")

    git(pits, "pull", "-q", "--no-rebase", "--no-edit")
    found = data(pits)
    assert (found["setup"]["controls"]["traction"], found["aim"]) == (7, "smooth")
    assert (found["setup"]["front_start"], found["surface"]) == ("2.05 bar", "damp")
    assert "conflict" not in found
    assert git(pits, "status", "--porcelain") == ""


def test_a_riders_emergency_page_goes_to_no_other_laptop(laptops: tuple[Path, Path]) -> None:
    """Adding all, merging, indexing, searching, renaming and the schema leave it where it was written."""
    home, pits = laptops
    write_text(home, "ines", None, 'allergies = "zimtrinde"\n')
    write_text(pits, "ines", None, 'allergies = "zimtnelke"\n')
    change(home, "aim=smooth")
    change(pits, "surface=damp")
    for laptop in (home, pits):
        git(laptop, "add", "-A")
        assert git(laptop, "status", "--porcelain") == ""
    git(pits, "pull", "-q", "--no-rebase", "--no-edit")
    assert (data(pits)["aim"], data(pits)["surface"]) == ("smooth", "damp")
    git(home, "pull", "-q", "--no-rebase", "--no-edit", str(pits), "main")
    for laptop, own in ((home, "zimtrinde"), (pits, "zimtnelke")):
        assert read_text(laptop, "ines") == f'allergies = "{own}"\n'
        assert "private" not in git(laptop, "ls-tree", "-r", "--name-only", "HEAD")
        git(laptop, "grep", "-q", "zimt", "HEAD", status=1)
    assert main(["check", str(home), "--all"]) in (0, 1, 2, 3)
    held = {
        str(one.relative_to(home)) for one in home.rglob("*") if one.is_file() and b"zimt" in one.read_bytes()
    }
    assert held == {"private/ines.toml"}


@pytest.mark.parametrize("way", ["merge", "rebase", "cherry-pick", "stash"])
def test_the_same_fact_changed_differently_stays_open_alone(laptops: tuple[Path, Path], way: str) -> None:
    home, pits = laptops
    change(home, "setup.controls.traction=7", "aim=smooth")
    if way == "stash":
        assert main(["set", str(pits), NEXT, "setup.controls.traction=4", "surface=damp"]) == 0
        git(pits, "stash", "-q")
        git(pits, "pull", "-q")
        git(pits, "stash", "pop", status=1)
    else:
        change(pits, "setup.controls.traction=4", "surface=damp")
        git(pits, "fetch", "-q")
        words = {"merge": ("merge", "-q"), "rebase": ("rebase", "-q"), "cherry-pick": ("cherry-pick",)}[way]
        git(pits, *words, "origin/main", status=1)

    found = data(pits)
    assert "traction" not in found["setup"]["controls"]
    assert (found["aim"], found["surface"]) == ("smooth", "damp")
    held = found["conflict"]["setup.controls.traction"]
    # A rebase and a stash lay our change onto theirs, so git calls theirs ours.
    assert {held["ours"], held["theirs"]} == {4, 7}
    assert held["base"] == 3
    assert "UU" in git(pits, "status", "--porcelain")


def test_two_new_sessions_of_one_name_are_two_outings(laptops: tuple[Path, Path]) -> None:
    home, pits = laptops
    name = "sessions/2026/2026-06-20-5-magpie.toml"
    for where, start in ((home, "14:20:00"), (pits, "14:40:00")):
        text = f'date = 2026-06-20\nnumber = 5\nbike = "magpie"\nrider = "ines"\nstart = {start}\n'
        (where / name).write_text(text, encoding="utf-8")
        git(where, "add", "-A")
        git(where, "commit", "-qm", "new")
    before = (pits / name).read_bytes()
    git(pits, "pull", "-q", "--no-rebase", status=1)
    assert (pits / name).read_bytes() == before

    assert main(["git", "split", str(pits)]) == 0
    assert (pits / name).read_bytes() == before
    other = data(pits, "sessions/2026/2026-06-20-6-magpie.toml")
    assert (other["number"], other["start"].isoformat()) == (6, "14:20:00")
    git(pits, "commit", "-qm", "merged")
    assert git(pits, "status", "--porcelain") == ""


def test_setup_is_shown_touches_nothing_global_and_is_taken_back(
    garage: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    git(garage, "init", "-q")
    before, config = snapshot(garage), git(garage, "config", "--local", "--list")
    assert main(["git", "setup", str(garage)]) == 3
    said = capsys.readouterr()
    assert "merge.paddock-tui.driver = " in said.out
    assert "nothing was changed" in said.err
    assert snapshot(garage) == before

    assert main(["git", "setup", str(garage), "--yes"]) == 0
    assert "merge=paddock-tui" in (garage / ".gitattributes").read_text(encoding="utf-8")
    assert main(["git", "setup", str(garage), "--undo", "--yes"]) == 0
    assert git(garage, "config", "--local", "--list") == config
    assert not (garage / ".gitattributes").exists()
    assert not (tmp_path / ".gitconfig").exists()


def test_a_hostile_configuration_runs_nothing(garage: Path, tmp_path: Path) -> None:
    git(garage, "init", "-q")
    trap = tmp_path / "trap"
    trap.write_text(f"#!/bin/sh\ntouch {tmp_path}/sprung\n", encoding="utf-8")
    trap.chmod(0o755)
    for key in (
        "core.fsmonitor",
        "core.sshCommand",
        "core.pager",
        "diff.external",
        "core.editor",
        "alias.config",
    ):
        git(garage, "config", key, str(trap) if key != "alias.config" else f"!{trap}")
    hooks = garage / ".git" / "hooks"
    for name in ("post-index-change", "pre-commit", "post-checkout"):
        shutil.copy(trap, hooks / name)
    (tmp_path / "sprung").unlink(missing_ok=True)

    assert main(["git", "setup", str(garage), "--yes"]) == 0
    assert main(["git", "split", str(garage)]) == 0
    assert not (tmp_path / "sprung").exists()


@every(
    ("base", "ours", "theirs", "path"),
    [
        ("a = 1\n", "a = \n", "a = 2\n", "bikes/x.toml"),
        ("a = 1\n", "a = 3\n", "<<<<<<< HEAD\n", "bikes/x.toml"),
        ("a = 1\n", "a = 3\n", "a = 1\nschema = 99\n", "garage.toml"),
        ("", "date = 2026-06-20\n", "date = 2026-06-20\nnumber = 1\n", "sessions/2026/x.toml"),
        ("a = 1\n", "a = 3\n", "a = 2\n", "elsewhere/x.toml"),
        ("a = 1\nb = 2\nc = 3\n", "a = 1\nb = 2\nc = 4\n", "name = 'x'\n", "bikes/x.toml"),
        (OUTING, OUTING + "aim = 'x'\n", OUTING.replace("3", "5").replace("magpie", "otter"), SESSION),
    ],
)
def test_what_cannot_be_merged_leaves_every_file_untouched(
    tmp_path: Path, base: str, ours: str, theirs: str, path: str, capsys: pytest.CaptureFixture[str]
) -> None:
    for name, text in (("base", base), ("ours", ours), ("theirs", theirs)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    before = snapshot(tmp_path)
    sides = [str(tmp_path / name) for name in ("base", "ours", "theirs")]
    assert main(["git", "merge", *sides, "--path", path]) == 1
    assert "not merged" in capsys.readouterr().err
    assert snapshot(tmp_path) == before
    assert main(["git", "merge", str(tmp_path / "gone"), *sides[1:], "--path", path]) == 1


def test_the_two_laptops_of_the_help_do_what_it_says(garage: Path, tmp_path: Path) -> None:
    """The ten lines are typed into a shell as they stand, with a session in place of S."""
    topic = Path(paddock_tui.__file__).parent / "help" / "topics" / "merge.md"
    lines = topic.read_text(encoding="utf-8").partition("```console\n")[2].partition("```")[0].splitlines()
    assert len(lines) == 10
    garage.rename(tmp_path / "home")
    home, pits = tmp_path / "home", tmp_path / "pits"

    def shell(*typed: str) -> str:
        text = "\n".join(re.sub(r"\bS\b", NEXT, line) for line in typed)
        done = subprocess.run(
            ("bash", "-c", f'set -e\npaddock-tui() {{ {sys.executable} -m paddock_tui "$@"; }}\n{text}'),
            cwd=tmp_path,
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.returncode in (0, 1, 2), done.stdout + done.stderr
        return done.stdout

    shell(*lines[:5])
    assert (data(pits)["setup"]["controls"]["traction"], data(pits)["surface"]) == (7, "damp")
    said = shell(*lines[5:8])
    assert "front_start" not in data(pits)["setup"]
    assert "front" in said
    shell(*lines[8:])
    assert data(home) == data(pits)
    assert data(home)["setup"]["front_start"] == "2.1 bar"
    assert git(pits, "status", "--porcelain") == git(home, "status", "--porcelain") == ""
