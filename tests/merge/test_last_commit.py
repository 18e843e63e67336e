"""Which commit last changed a value: asked of git only where that was agreed to, and running nothing."""

import asyncio
from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.store.last_commit import NOT_COMMITTED, Commit, last_commit
from tests.commands.running import FILE, NEXT
from tests.merge.test_git import git, laptops, own_git, pytestmark  # noqa: F401
from tests.screens.rider import riding

PATH = ("setup", "controls", "traction")


def said(garage: Path, value: object) -> Commit | str | None:
    return last_commit(garage, garage / FILE, PATH, value)


def test_author_and_date_of_the_commit_that_changed_the_line(laptops: tuple[Path, Path]) -> None:  # noqa: F811
    home, _ = laptops
    git(home, "-c", "user.name=Ines", "commit", "--allow-empty", "-qm", "later")
    assert main(["set", str(home), NEXT, "setup.controls.traction=7"]) == 0
    assert said(home, 7) == NOT_COMMITTED
    git(home, "commit", "-qam", "seven", "--author", "Ben <b@example.org>", "--date", "2026-06-19T12:00:00")

    found = said(home, 7)

    assert str(found) == "Ben, 2026-06-19"
    assert said(home, 3) == NOT_COMMITTED


def test_without_consent_git_is_not_started(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paddock_tui.store.last_commit.git", lambda *_: pytest.fail("git was started"))

    assert said(garage, 3) is None


def test_a_hostile_repository_runs_nothing(laptops: tuple[Path, Path], tmp_path: Path) -> None:  # noqa: F811
    home, _ = laptops
    ran = tmp_path / "ran"
    evil = f"sh -c 'touch {ran}; cat'"
    for key in (
        "diff.evil.textconv",
        "filter.evil.clean",
        "filter.evil.smudge",
        "filter.evil.process",
        "core.fsmonitor",
        "core.pager",
        "pager.blame",
        "alias.blame",
        "alias.cat-file",
        "diff.external",
        "core.editor",
    ):
        git(home, "config", key, f"!{evil}" if key.startswith("alias") else evil)
    (home / ".git" / "info" / "attributes").write_text("*.toml diff=evil filter=evil\n")

    assert isinstance(said(home, 3), Commit)
    assert not ran.exists()


async def test_why_says_it_beside_the_value_once_git_has_answered(laptops: tuple[Path, Path]) -> None:  # noqa: F811
    home, _ = laptops
    async with riding(home) as rider:
        await rider.types("p")
        rider.to(*PATH)
        await rider.types("w")
        for _ in range(200):
            values = {one.label: one.value for one in rider.app.main.board.page.rows()}
            if values["last commit"] != "asking git":
                break
            await asyncio.sleep(0.05)
    assert values["last commit"].startswith("r, 20")
