"""Only what this user's own program noted is undone or completed; all else is history to read."""

import datetime as dt
import json
import os
from pathlib import Path

import pytest

from paddock_tui.records.edits import AnyChange, Create, Remove, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.intent import Intent, declare
from paddock_tui.store.journal import JournalNote, entries, entries_of, has_lines_of_others
from paddock_tui.store.outcomes import Saved
from paddock_tui.store.saving import cut_short, repair
from paddock_tui.store.steps_as_json import dumped
from tests.attacks.trap import PLAIN, Trap, everything, naming, trap
from tests.desk.opened import BEFORE, at_desk
from tests.small import snapshot


@pytest.fixture
def attack(tmp_path: Path) -> Trap:
    return trap(tmp_path)


def line(undo: Step, place: int = 1, **more: object) -> str:
    """Write a line as an earlier version wrote it, or as a stranger might."""
    about = {"id": "a1", "at": "2026-06-20T07:00:00", "run": "r", "what": "do", "place": place}
    return json.dumps({**about, "step": dumped(naming("a", "b")), "undo": dumped(undo), **more}) + "\n"


def month(attack: Trap) -> Path:
    return attack.private / "journal" / "2026-06.jsonl"


def undone(attack: Trap) -> str | None:
    desk = at_desk(attack.root)
    label = desk.undo()
    desk.close()
    return label


EVIL: dict[str, AnyChange] = {
    "a new file outside": Create(Ref("bike", "../../home/x"), "evil"),
    "a new file by an absolute name": Create(Ref("bike", "/tmp/x"), "evil"),
    "the removal of a record": Remove(PLAIN, ""),
    "a new name outside": Rename(PLAIN, "../../home/x"),
    "a kind that is none": Create(Ref("../home", "x"), "evil"),
}


@pytest.mark.parametrize("name", EVIL)
def test_a_line_of_a_stranger_undoes_nothing(attack: Trap, name: str) -> None:
    before = snapshot(attack.root)
    change = EVIL[name]
    if isinstance(change, Remove):
        change = Remove(PLAIN, (attack.root / "bikes" / "plain.toml").read_text())
    month(attack).write_text(line(Step("evil", (change,))))

    assert undone(attack) is None

    assert snapshot(attack.root) == before
    assert attack.unharmed()
    assert entries(attack.root) == []


def test_a_line_from_before_marks_is_history_to_read(attack: Trap) -> None:
    month(attack).write_text(line(naming("Plain", "x")))

    assert undone(attack) is None
    assert has_lines_of_others(attack.root)
    (one,) = entries_of(attack.root, dt.date(2026, 6, 20))
    assert (one.step.label, one.ours) == ("name a -> b", False)


@pytest.mark.parametrize("change", ["a value", "cut off the mark", "another garage", "moved", "another key"])
def test_a_line_that_was_touched_does_not_count(
    attack: Trap, change: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    for old, new in (("Plain", "A"), ("A", "B")):
        desk = at_desk(attack.root)
        desk.do(naming(old, new))
        desk.close()
    first, second = month(attack).read_bytes().splitlines(keepends=True)
    assert [one.step.label for one in entries(attack.root)] == ["name Plain -> A", "name A -> B"]

    if change == "a value":
        month(attack).write_bytes(first + second.replace(b"name A -> B", b"name A -> C"))
    elif change == "cut off the mark":
        month(attack).write_bytes(first + second.rpartition(b', "mark"')[0] + b"}\n")
    elif change == "another garage":
        (attack.private / "id").write_text("0" * 32)
    elif change == "moved":
        month(attack).write_bytes(second + first)
    else:
        monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))

    left = [one.step.label for one in entries(attack.root)]

    assert left == (["name Plain -> A"] if change in ("a value", "cut off the mark") else [])
    assert has_lines_of_others(attack.root)


def test_an_intent_of_a_stranger_is_not_completed(attack: Trap) -> None:
    step = Step("evil", (Create(Ref("bike", "new"), "evil"), Create(Ref("rider", "../../home/x"), "evil")))
    about = {"id": "a", "run": "r", "what": "do", "of": "", "step": dumped(step), "undo": dumped(step)}
    (attack.private / "intent").write_text(json.dumps(about))
    before = snapshot(attack.root)

    assert "not completed here" in cut_short(attack.files())
    assert "not completed here" in repair(attack.files(), BEFORE)

    assert snapshot(attack.root) == before
    assert attack.unharmed()
    assert repair(attack.files(), BEFORE) == ""


def test_an_intent_of_our_own_that_is_put_back_later_is_not_completed(attack: Trap) -> None:
    step = Step("old", (Create(Ref("bike", "new"), 'name = "N"\n'), Create(Ref("rider", "new"), "")))
    undo = Step("old", (Remove(Ref("rider", "new"), ""), Remove(Ref("bike", "new"), 'name = "N"\n')))
    declare(attack.root, Intent(step, undo, "a1", JournalNote("run")))
    kept = (attack.private / "intent").read_bytes()
    assert "has been completed" in repair(attack.files(), BEFORE)
    (attack.root / "bikes" / "new.toml").unlink()
    (attack.root / "riders" / "new.toml").unlink()
    for old, new in (("Plain", "A"), ("A", "B")):
        assert isinstance(attack.save(old, new), Saved)
    before = snapshot(attack.root)

    (attack.private / "intent").write_bytes(kept)

    assert "not completed here" in repair(attack.files(), BEFORE)
    assert snapshot(attack.root) == before


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to root")
def test_where_no_folder_for_a_key_can_be_made_undo_lasts_for_the_run(
    attack: Trap, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "closed").mkdir(mode=0o500)
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "closed"))

    saved = attack.save("Plain", "x")

    assert isinstance(saved, Saved)
    assert "no key can be saved" in saved.unnoted


def test_where_the_key_cannot_be_saved_undo_lasts_for_the_run_and_that_is_said_once(
    attack: Trap, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "file"))
    desk = at_desk(attack.root)
    desk.do(naming("Plain", "A"))
    desk.do(naming("A", "B"))

    said = [one.unnoted for one in desk.settled() if isinstance(one, Saved)]

    assert len(said) == 2
    assert "no key can be saved" in said[0]
    assert said[1] == ""
    assert desk.undo() == "name A -> B"
    desk.close()


def test_the_key_is_32_bytes_for_this_user_alone_and_one_that_others_can_read_is_not_used(
    attack: Trap, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    assert isinstance(attack.save("Plain", "x"), Saved)

    key = tmp_path / "state" / "paddock-tui" / "key"
    assert (key.stat().st_mode & 0o777, key.stat().st_size) == (0o600, 32)
    assert key.parent.stat().st_mode & 0o777 == 0o700

    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "other"))
    wide = tmp_path / "other" / "paddock-tui" / "key"
    wide.parent.mkdir(parents=True)
    wide.write_bytes(key.read_bytes())
    wide.chmod(0o644)
    saved = attack.save("x", "y")
    assert isinstance(saved, Saved)
    assert "others can read it" in saved.unnoted


@pytest.mark.parametrize("command", [("show",), ("check",), ("check", "--all"), ("slip",)])
def test_what_only_shows_writes_nothing_inside_the_garage(attack: Trap, command: tuple[str, ...]) -> None:
    from paddock_tui.__main__ import main

    (attack.private / "intent").write_text("{}")
    before = everything(attack.root)

    main([command[0], str(attack.root), *command[1:]])

    assert everything(attack.root) == before
