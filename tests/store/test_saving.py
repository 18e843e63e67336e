"""Steps kept on disk: undone to the same bytes, all or none, and never over somebody else's change."""

import datetime as dt
import subprocess
import sys
import threading
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.records.edits import MISSING, Change, Create, Edit, Remove, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import lock as locking
from paddock_tui.store import saving, writing
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Clash, NotSaved, Saved, save
from paddock_tui.store.tree import Tree
from tests.every import every
from tests.small import snapshot, write

ANN, PLAIN = Ref("rider", "ann"), Ref("bike", "plain")


def change(*edits: Edit, ref: Ref = PLAIN) -> Step:
    return Step("a change", (Change(ref, edits),))


@every(
    "edit",
    [
        Edit(("name",), "Plain", "Other"),
        Edit(("wet_mass",), MISSING, "201 kg"),
        Edit(("suspension",), "listed", MISSING),
        Edit(("tank",), MISSING, {"capacity": "17 l", "reserve": "3 l"}),
        Edit(
            ("controls", "wheelie"),
            {"kind": "level", "levels": [1, 6], "most_help": 1},
            MISSING,
        ),
    ],
    ids=["set a value", "add a line", "drop a line", "add a table", "drop a table"],
)
def test_each_of_the_five_edits_is_kept_and_undone_to_the_same_bytes(tmp_path: Path, edit: Edit) -> None:
    root = write(tmp_path)
    files = GarageFiles(root)
    before = snapshot(root)

    kept = save(files, change(edit))

    assert isinstance(kept, Saved)
    once = snapshot(root)
    assert {name for name in once if once[name] != before[name]} == {"bikes/plain.toml"}
    undone = save(files, kept.undo)
    assert isinstance(undone, Saved)
    assert snapshot(root) == before
    assert isinstance(save(files, undone.undo), Saved)
    assert snapshot(root) == once


def test_a_clash_names_the_value_that_stands_and_the_one_expected(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)

    clash = save(GarageFiles(root), change(Edit(("name",), "Old name", "New name")))

    assert isinstance(clash, Clash)
    assert (clash.ref, clash.found, clash.edit.old) == (PLAIN, "Plain", "Old name")
    assert snapshot(root) == before


def test_one_clash_keeps_the_whole_step_back(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    step = Step(
        "two files",
        (
            Change(ANN, (Edit(("name",), "Ann", "Anna"),)),
            Change(PLAIN, (Edit(("name",), "Nothing like it", "x"),)),
        ),
    )

    assert isinstance(save(GarageFiles(root), step), Clash)
    assert snapshot(root) == before


def test_two_changes_of_one_file_in_one_step_both_stand(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    step = Step(
        "twice",
        (
            Change(PLAIN, (Edit(("name",), "Plain", "First"),)),
            Change(PLAIN, (Edit(("wet_mass",), MISSING, "190 kg"),)),
        ),
    )

    kept = save(GarageFiles(root), step)

    assert isinstance(kept, Saved)
    text = (root / "bikes" / "plain.toml").read_text()
    assert 'name = "First"   # any bike' in text
    assert 'wet_mass = "190 kg"' in text
    assert isinstance(save(GarageFiles(root), kept.undo), Saved)
    assert snapshot(root) == before


def test_a_file_marked_read_only_is_refused_whoever_asks(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    (root / "bikes" / "plain.toml").chmod(0o444)

    refused = save(GarageFiles(root), change(Edit(("name",), "Plain", "x")))

    assert isinstance(refused, NotSaved)
    assert refused.reason == "bikes/plain.toml: the file is marked read-only"
    assert "chmod u+w" in refused.mend
    assert snapshot(root) == before


def test_the_second_file_marked_read_only_is_seen_before_the_first_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = write(tmp_path)
    (root / "bikes" / "plain.toml").chmod(0o444)
    written: list[Path] = []
    monkeypatch.setattr(writing, "replace_durably", lambda path, *_, **__: written.append(path))
    step = Step(
        "two files",
        (Change(ANN, (Edit(("name",), "Ann", "A"),)), Change(PLAIN, (Edit(("name",), "Plain", "x"),))),
    )

    assert isinstance(save(GarageFiles(root), step), NotSaved)
    assert written == []


def test_a_garage_of_a_newer_program_is_only_read(tmp_path: Path) -> None:
    root = write(tmp_path, garage="schema = 99\n")
    before = snapshot(root)

    refused = save(GarageFiles(root), change(Edit(("name",), "Plain", "x")))

    assert isinstance(refused, NotSaved)
    assert "newer" in refused.reason
    assert "update" in refused.mend
    assert snapshot(root) == before


def test_a_garage_whose_own_file_is_broken_still_keeps_notes(tmp_path: Path) -> None:
    root = write(tmp_path, garage="schema = 1\n[units\n")

    assert isinstance(save(GarageFiles(root), change(Edit(("name",), "Plain", "x"))), Saved)


def test_a_lock_that_another_process_holds_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    code = (
        "import sys, pathlib\n"
        "from paddock_tui.store.lock import hold\n"
        "with hold(pathlib.Path(sys.argv[1])): print('held', flush=True); sys.stdin.read()\n"
    )
    real = locking.hold
    monkeypatch.setattr(saving, "hold", lambda root, since: real(root, wait=0.0, since=since))
    with subprocess.Popen(
        [sys.executable, "-c", code, str(root)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout is not None
        assert other.stdin is not None
        assert other.stdout.readline() == "held\n"
        refused = save(GarageFiles(root), change(Edit(("name",), "Plain", "x")))
        other.stdin.close()

    assert isinstance(refused, NotSaved)
    assert f"process {other.pid} on " in refused.reason
    assert "try again" in refused.mend
    assert snapshot(root) == before
    assert isinstance(save(GarageFiles(root), change(Edit(("name",), "Plain", "x"))), Saved)


@pytest.mark.parametrize("step", [Create(ANN, "x = 1\n"), Rename(Ref("rider", "bob"), "ann")])
def test_a_name_that_is_taken_is_refused(tmp_path: Path, step: Create | Rename) -> None:
    root = write(tmp_path, riders__bob='name = "Bob"\n')
    before = snapshot(root)

    refused = save(GarageFiles(root), Step("", (step,)))

    assert refused == NotSaved("there is a rider ann already", "choose another name")
    assert snapshot(root) == before


def test_a_name_taken_since_the_folder_was_looked_at_is_refused(tmp_path: Path) -> None:
    root = write(tmp_path)
    files = GarageFiles(root)
    files.listing("rider")
    (root / "riders" / "bob.toml").write_text("theirs = 1\n")

    refused = save(files, Step("", (Create(Ref("rider", "bob"), "ours = 1\n"),)))

    assert isinstance(refused, NotSaved)
    assert "riders/bob.toml" in refused.reason
    assert (root / "riders" / "bob.toml").read_text() == "theirs = 1\n"


def test_a_created_file_is_removed_by_undo_unless_it_was_changed_meanwhile(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    files = GarageFiles(root)
    ref = Ref("session", "2026-05-16-1-plain")

    kept = save(files, Step("new", (Create(ref, "number = 1\n"),)))
    files.forget_listing()

    assert isinstance(kept, Saved)
    assert kept.undo.changes == (Remove(ref, "number = 1\n"),)
    path = root / "sessions" / "2026" / "2026-05-16-1-plain.toml"
    assert path.read_text() == "number = 1\n"
    path.write_text("number = 2\n")
    refused = save(files, kept.undo)
    assert isinstance(refused, NotSaved)
    assert "changed meanwhile" in refused.reason
    path.write_text("number = 1\n")
    assert isinstance(save(files, kept.undo), Saved)
    assert snapshot(root) == before


def test_a_rename_moves_the_file_and_its_undo_moves_it_back(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    files = GarageFiles(root)

    kept = save(files, Step("rename", (Rename(ANN, "anna"),)))
    files.forget_listing()

    assert isinstance(kept, Saved)
    assert files.listing("rider") == (Ref("rider", "anna"),)
    assert isinstance(save(files, kept.undo), Saved)
    assert snapshot(root) == before


@pytest.mark.parametrize("ref", [Ref("rider", "nobody"), Ref("session", "../../outside")])
def test_a_record_that_is_not_listed_is_never_written(tmp_path: Path, ref: Ref) -> None:
    root = write(tmp_path / "inner")
    before = snapshot(tmp_path)

    refused = save(GarageFiles(root), change(Edit(("name",), MISSING, "x"), ref=ref))

    assert isinstance(refused, NotSaved)
    assert "not in the garage" in refused.reason
    assert snapshot(tmp_path) == before


def test_a_file_that_is_no_toml_is_left_as_it_is(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann="name = = 1\n")

    refused = save(GarageFiles(root), change(Edit(("name",), MISSING, "x"), ref=ANN))

    assert isinstance(refused, NotSaved)
    assert refused.mend == "change it in an editor"
    assert (root / "riders" / "ann.toml").read_text() == "name = = 1\n"


class _Breaks:
    """Stands for one of the functions that write, and fails at its n-th call."""

    def __init__(self, name: str, at: int) -> None:
        self.name, self.at, self.calls = name, at, 0
        self.real = getattr(writing, name)

    def __call__(self, *args: object, **more: object) -> None:
        self.calls += 1
        if self.calls == self.at:
            raise NotWritten("no space left on the disk")
        self.real(*args, **more)


THREE = (
    Create(Ref("venue", "new"), 'name = "N"\n'),
    Change(ANN, (Edit(("name",), "Ann", "Anna"),)),
    Change(PLAIN, (Edit(("name",), "Plain", "x"),)),
    Rename(ANN, "anna"),
)


@every(
    ("name", "at", "failed"),
    [
        ("replace_durably", 1, "venues/new.toml"),
        ("replace_durably", 2, "riders/ann.toml"),
        ("replace_durably", 3, "bikes/plain.toml"),
        ("rename_durably", 1, "riders/ann.toml"),
    ],
)
def test_a_step_over_several_files_is_all_or_none(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, at: int, failed: str
) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    monkeypatch.setattr(writing, name, _Breaks(name, at))

    refused = save(GarageFiles(root), Step("all", THREE))

    assert refused == NotSaved(f"{failed}: no space left on the disk")
    assert snapshot(root) == before
    assert isinstance(save(GarageFiles(root), Step("all", THREE)), Saved)
    after = snapshot(root)
    assert after["riders/anna.toml"].startswith(b'name = "Anna"')
    assert "riders/ann.toml" not in after


def test_what_could_not_be_put_back_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = write(tmp_path)

    def fails(_tree: Tree, path: Path, text: str, **_: object) -> None:
        if text.startswith('name = "Anna"'):
            path.write_text(text)
            return
        raise NotWritten("the disk reports an error")

    monkeypatch.setattr(writing, "replace_durably", fails)

    refused = save(GarageFiles(root), Step("", THREE[1:3]))

    assert isinstance(refused, NotSaved)
    assert "could not be put back: riders/ann.toml" in refused.reason


def test_a_disk_that_did_not_confirm_keeps_the_step(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = write(tmp_path)
    real = replace_durably

    def unsure(tree: Tree, path: Path, text: str, **more: Any) -> None:
        real(tree, path, text, **more)
        raise NotWritten("written, but the disk did not confirm it", replaced=True)

    monkeypatch.setattr(writing, "replace_durably", unsure)

    assert isinstance(save(GarageFiles(root), change(Edit(("name",), "Plain", "x"))), Saved)


def test_two_threads_that_set_different_values_both_are_kept(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann="\n".join(f"k{number} = 0" for number in range(12)) + "\n")
    outcomes: list[object] = []

    def work(numbers: range) -> None:
        files = GarageFiles(root)
        outcomes.extend(save(files, change(Edit((f"k{n}",), 0, n + 1), ref=ANN)) for n in numbers)

    threads = [threading.Thread(target=work, args=(range(start, 12, 2),)) for start in (0, 1)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert all(isinstance(outcome, Saved) for outcome in outcomes)
    assert (root / "riders" / "ann.toml").read_text() == "".join(f"k{n} = {n + 1}\n" for n in range(12))


def test_two_processes_that_set_different_values_both_are_kept(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann='name = "Ann"\nweight = "60 kg"\n')
    code = (
        "import sys, pathlib\n"
        "from paddock_tui.records.edits import Change, Edit, Step\n"
        "from paddock_tui.records.paths import Ref\n"
        "from paddock_tui.store.garage import GarageFiles\n"
        "from paddock_tui.store.saving import Saved, save\n"
        "root, key, old, new = sys.argv[1:]\n"
        "step = Step('', (Change(Ref('rider', 'ann'), (Edit((key,), old, new),)),))\n"
        "sys.stdin.readline()\n"
        "assert isinstance(save(GarageFiles(pathlib.Path(root)), step), Saved)\n"
    )
    wanted = [("name", "Ann", "Anna"), ("weight", "60 kg", "61 kg")]
    others = [
        subprocess.Popen([sys.executable, "-c", code, str(root), *one], stdin=subprocess.PIPE, text=True)
        for one in wanted
    ]
    for other in others:
        assert other.stdin is not None
        other.stdin.write("go\n")
        other.stdin.close()

    assert [other.wait() for other in others] == [0, 0]
    assert (root / "riders" / "ann.toml").read_text() == 'name = "Anna"\nweight = "61 kg"\n'


def test_the_time_of_the_lock_is_the_one_given(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = write(tmp_path)
    seen: list[object] = []
    monkeypatch.setattr(writing, "replace_durably", lambda *_, **__: seen.append(locking.holder(root)))

    save(GarageFiles(root), change(Edit(("name",), "Plain", "x")), dt.datetime(2026, 5, 16, 10, 37, 5))

    assert isinstance(seen[0], locking.Holder)
    assert seen[0].since == dt.datetime(2026, 5, 16, 10, 37, 5)
