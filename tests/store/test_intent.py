"""A step over several files that was cut short at any point is completed or put back by the next start."""

import os
from pathlib import Path

import pytest

from paddock_tui.records.edits import Change, Edit, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import intent, saving
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.journal import entries
from paddock_tui.store.saving import Saved, repair, save
from paddock_tui.store.tree import Tree
from paddock_tui.store.writing import Write, perform
from tests.desk.opened import BEFORE
from tests.small import session, snapshot, write

ANN = Ref("rider", "ann")

STEP = Step(
    "rider ann -> zoe",
    (
        Change(ANN, (Edit(("name",), "Ann", "Zoe"),)),
        Change(Ref("session", "one"), (Edit(("rider",), "ann", "zoe"),)),
        Rename(ANN, "zoe"),
    ),
)


class Killed(BaseException):
    """Stands for the end of the process."""


def cut_short(root: Path, after: int, *, half: bool = False) -> None:
    """Keep the step in a process that dies after so many of its writes; `half`: in the middle of a rename."""
    done = [0]

    def dying(tree: Tree, one: Write) -> None:
        if done[0] == after:
            if half:
                (root / "riders" / "zoe.toml").hardlink_to(root / "riders" / "ann.toml")
            raise Killed
        done[0] += 1
        perform(tree, one)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(saving, "perform", dying)
        with pytest.raises(Killed):
            save(GarageFiles(root), STEP)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write(tmp_path, sessions__one=session())


def whole(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    root = write(tmp_path_factory.mktemp("whole"), sessions__one=session())
    assert isinstance(save(GarageFiles(root), STEP), Saved)
    return snapshot(root)


@pytest.mark.parametrize(("after", "half"), [(0, False), (1, False), (2, False), (2, True)])
def test_it_is_completed_and_can_be_undone(
    root: Path, tmp_path_factory: pytest.TempPathFactory, after: int, half: bool
) -> None:
    before = snapshot(root)
    cut_short(root, after, half=half)

    assert repair(GarageFiles(root), BEFORE) == "rider ann -> zoe: was cut short, has been completed"

    assert snapshot(root) == whole(tmp_path_factory)
    (noted,) = entries(root)
    assert isinstance(save(GarageFiles(root), noted.undo), Saved)
    assert snapshot(root) == before
    assert repair(GarageFiles(root), BEFORE) == ""


def test_the_next_step_sees_to_it_as_well(root: Path) -> None:
    cut_short(root, 1)

    other = Step("", (Change(Ref("bike", "plain"), (Edit(("name",), "Plain", "x"),)),))
    assert isinstance(save(GarageFiles(root), other), Saved)

    assert (root / "riders" / "zoe.toml").exists()
    assert 'rider = "zoe"' in (root / "sessions" / "one.toml").read_text()


def test_it_is_put_back_where_it_can_no_longer_be_completed(root: Path) -> None:
    before = snapshot(root)
    cut_short(root, 1)
    file = root / "sessions" / "one.toml"
    file.write_text(file.read_text().replace('rider = "ann"', 'rider = "bob"'))

    assert repair(GarageFiles(root), BEFORE) == "rider ann -> zoe: was cut short, has been put back"

    assert snapshot(root)["riders/ann.toml"] == before["riders/ann.toml"]
    assert 'rider = "bob"' in file.read_text()
    assert entries(root) == []


def test_where_neither_can_be_it_is_said_once_and_left(root: Path) -> None:
    cut_short(root, 0)
    file = root / "sessions" / "one.toml"
    file.write_text(file.read_text().replace('rider = "ann"', 'rider = "bob"'))
    left = snapshot(root)

    said = repair(GarageFiles(root), BEFORE)

    assert said == "rider ann -> zoe: was cut short, could be neither completed nor put back"
    assert snapshot(root) == left
    assert repair(GarageFiles(root), BEFORE) == ""


def test_a_note_that_cannot_be_read_bars_nothing(root: Path) -> None:
    (root / ".paddock").mkdir()
    (root / ".paddock" / "intent").write_text("{")

    assert "is not completed here" in repair(GarageFiles(root), BEFORE)
    assert (root / ".paddock" / "intent-of-others").read_text() == "{"
    assert isinstance(save(GarageFiles(root), STEP), Saved)


def test_a_note_beside_another_journal_of_the_same_length_is_not_completed(root: Path) -> None:
    """A journal that was put back, or exchanged, tells of other steps than the note was written after."""

    def first(name: str) -> Step:
        return Step("", (Change(Ref("bike", "plain"), (Edit(("name",), "Plain", name),)),))

    files = GarageFiles(root)
    saved = save(files, first("x"))
    assert isinstance(saved, Saved)
    (month,) = (root / ".paddock" / "journal").glob("*.jsonl")
    one_line = month.read_bytes()
    assert isinstance(save(GarageFiles(root), saved.undo), Saved)
    month.unlink()
    assert isinstance(save(GarageFiles(root), first("y")), Saved)
    cut_short(root, 1)
    month.write_bytes(one_line)
    before = snapshot(root)

    assert "is not completed here" in repair(GarageFiles(root), BEFORE)
    assert snapshot(root) == before


@pytest.mark.skipif(not hasattr(os, "symlink"), reason="no links here")
def test_half_a_rename_of_a_link_is_put_back_with_what_it_leads_to_left_alone(root: Path) -> None:
    """The new name is the link itself once more, not the file behind it."""
    real, link, new = (
        root / "bikes" / "real.toml",
        root / "bikes" / "linked.toml",
        root / "bikes" / "new.toml",
    )
    real.write_text('name = "Real"\n')
    link.symlink_to("real.toml")
    os.link(link, new, follow_symlinks=False)
    intent._one_name(GarageFiles(root), Rename(Ref("bike", "linked"), "new"))

    assert (new.is_symlink(), link.is_symlink(), real.read_text()) == (False, True, 'name = "Real"\n')
