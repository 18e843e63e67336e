"""Small parts of the store by themselves: what they count, refuse and name."""

import datetime as dt
import os
import stat
import sys
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store import (
    data,
    emergency,
    garage,
    git_consent,
    git_movement,
    guarded,
    index,
    last_commit,
    patch,
    presence,
    reading,
    settings,
    signing,
    steps_as_json,
)
from paddock_tui.store.git import GitFailed
from paddock_tui.store.private import NotOurs, own_folder
from tests.every import every
from tests.small import write


@every(
    ("one", "other", "count"),
    [
        ({}, {}, 0),
        ({"a": 1, "b": {"c": 2}}, {"b": {"c": 2}, "a": 1}, 0),
        ({"a": 1}, {"a": 2}, 1),
        ({"a": 1}, {"a": True}, 1),
        ({"a": 1}, {}, 1),
        ({}, {"a": {"b": {"c": 1}, "d": 2}}, 2),
        ({"a": {"b": 1}, "c": 1, "d": 1}, {"a": {"b": 2}, "c": 1, "e": 1}, 3),
        ({"a": 1}, {"a": {"b": 1}}, 2),
    ],
)
def test_what_differs_is_counted_once_at_every_depth(one: Any, other: Any, count: int) -> None:
    assert data.facts_between(one, other) == count
    assert data.facts_between(other, one) == count


def test_edits_lead_from_one_table_to_another_value_by_value() -> None:
    mine = {
        "same": 1,
        "set": 1,
        "gone": {"x": 1},
        "deep": {"kept": 1, "set": 1},
        "table": {"x": 1},
        "bare": 1,
    }
    theirs = {
        "same": 1,
        "set": 2,
        "deep": {"kept": 1, "set": 2, "new": 3},
        "table": 4,
        "bare": {"x": 1},
        "new": 5,
        "born": {"kept": 1, "set": 1},
    }

    assert data.edits_toward(mine, theirs, ("at",)) == [
        Edit(("at", "set"), 1, 2),
        Edit(("at", "gone"), {"x": 1}, MISSING),
        Edit(("at", "deep", "set"), 1, 2),
        Edit(("at", "deep", "new"), MISSING, 3),
        Edit(("at", "table"), {"x": 1}, MISSING),
        Edit(("at", "table"), MISSING, 4),
        Edit(("at", "bare"), 1, MISSING),
        Edit(("at", "bare"), MISSING, {"x": 1}),
        Edit(("at", "new"), MISSING, 5),
        Edit(("at", "born"), MISSING, {"kept": 1, "set": 1}),
    ]


def test_a_merge_left_unfinished_is_said_with_every_place() -> None:
    ours, theirs = "<<<<<<< HEAD", ">>>>>>> other"
    lines = ["a = 1", ours, "b = 1", "=======", "b = 2", theirs, theirs, ours, "c = 1", theirs]
    found = reading._conflict(lines, "bikes/a.toml")

    assert found is not None
    assert (found.found, found.line) == ("a merge left unfinished by git, lines 2-6, 8-10", 2)
    assert (found.file, found.expected) == ("bikes/a.toml", "one text, not two")
    assert found.mend == "keep one side, and delete the lines of <<<<<<<, ======= and >>>>>>>"
    for half in ([], [ours, "b = 1"], ["b = 1", theirs], ["<<<<<<<HEAD", ">>>>>>> x"]):
        assert reading._conflict(half, "") is None


def test_a_key_of_too_many_parts_is_found_by_its_line() -> None:
    most = ".".join("k" * reading.DEEPEST)
    dots = f'"{"." * 40}"'

    assert reading._dotted(f"{most} = 1\n" * 3) is None
    assert reading._dotted(f"{most} = {dots}\n" * 3) is None
    assert reading._dotted(f"a = {dots}\n{most} = 1\n{most}.k = {dots}\n") == 3
    assert reading._dotted(f"{most}.k = 1\n") == 1


@pytest.mark.parametrize("there", [True, False])
def test_a_commit_is_there_where_git_finds_one(there: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[object] = []

    def git(*words: object) -> bytes:
        asked.append(words)
        if not there:
            raise GitFailed("none")
        return b"1234"

    monkeypatch.setattr(last_commit, "git", git)

    assert last_commit._tracked(Path("/g")) is there
    assert asked == [(Path("/g"), "rev-parse", "--verify", "HEAD^{commit}")]


def test_what_takes_an_edit_back_takes_its_tables_along() -> None:
    small: dict[str, Any] = {"a": {}}
    large: dict[str, Any] = {"a": {"b": {"c": 1}}}
    came = patch._undo(Edit(("a", "b", "c"), MISSING, 1), "x\n", "x\ny\n", small, large)
    went = patch._undo(Edit(("a", "b", "c"), 1, MISSING), "x\ny\n", "x\n", large, small)
    turned = patch._undo(Edit(("a",), 1, 2), "a = 1\n", "a = 2\n", {"a": 1}, {"a": 2})
    none = patch._undo(Edit(("a",), MISSING, MISSING), "x\n", "x\n", {}, {})

    assert (came.path, came.old, came.new) == (("a", "b"), {"c": 1}, MISSING)
    assert (went.path, went.old, went.new) == (("a", "b"), MISSING, {"c": 1})
    assert (turned.path, turned.old, turned.new) == (("a",), 2, 1)
    assert (none.path, none.old, none.new) == (("a",), MISSING, MISSING)
    assert came.raw is not None
    assert (came.raw.line, came.raw.put, came.raw.took) == (1, ("y\n",), ())
    assert turned.raw is not None
    assert (turned.raw.put, turned.raw.took) == (("a = 2\n",), ("a = 1\n",))


OTHERS = "others can read it: remove it"


@every(
    ("mode", "own", "refused"),
    [
        (stat.S_IFREG | 0o600, True, ""),
        (stat.S_IFREG | 0o700, True, ""),
        (stat.S_IFREG | 0o600, False, "key belongs to somebody else: remove it, the records do not need it"),
        (stat.S_IFREG | 0o640, True, OTHERS),
        (stat.S_IFREG | 0o604, True, OTHERS),
        # What is no plain file is refused by whoever reads it, as such.
        (stat.S_IFIFO | 0o666, True, ""),
    ],
)
def test_a_key_is_ones_own_and_nobody_elses_to_read(mode: int, own: bool, refused: str) -> None:
    found: Any = SimpleNamespace(st_uid=os.geteuid() + (not own), st_mode=mode)
    said = ""
    try:
        signing._is_private(found)
    except (NotOurs, guarded.NotRead) as error:
        said = str(error).removeprefix("[Errno 1] ")
    assert said == refused


def test_an_emergency_file_is_named_by_a_riders_id_alone() -> None:
    assert emergency._name("ann-b") == "ann-b.toml"
    for name in ("", "../ann", "Ann B", "a.toml/"):
        with pytest.raises(emergency.NotThisFile, match=r"^no rider has such a name$"):
            emergency._name(name)


DAY = dt.date(2026, 5, 16)


@every(
    "given", [{}, {"date": dt.datetime(2026, 5, 16)}, {"date": "2026-05-16"}, {"date": DAY, "retired": False}]
)
def test_what_has_no_day_or_is_retired_has_no_row(given: dict[str, object]) -> None:
    assert index.row_of(given) is None


@every(
    ("more", "ridden"),
    [
        ({}, False),
        ({"parked": dt.time(11)}, True),
        ({"laps": {"1": "1:45"}}, True),
        ({"laps": {}}, False),
        ({"ridden_laps": 1}, True),
        ({"ridden_laps": 0}, False),
        ({"ridden_laps": True}, False),
        ({"ridden_laps": "3"}, False),
        ({"went_out": dt.time(10)}, False),
        ({"pressures": {"hot": {"front": 2}}}, False),
        ({"went_out": dt.time(10), "pressures": {"hot": {"front": 2}}}, True),
        ({"went_out": dt.time(10), "pressures": {"hot": {"rear": 2}}}, True),
        ({"went_out": dt.time(10), "pressures": {"hot": {"at": 2}}}, False),
        ({"went_out": dt.time(10), "pressures": {"cold": {"front": 2}}}, False),
        ({"went_out": dt.time(10), "pressures": {"hot": "front"}}, False),
        ({"went_out": dt.time(10), "pressures": "hot front"}, False),
    ],
)
def test_a_row_says_whether_it_was_ridden(more: dict[str, object], ridden: bool) -> None:
    assert index.row_of({"date": DAY, **more}) == index.SessionRow(DAY, 0, dt.time(0, 0), ridden)


def test_a_row_holds_names_and_places_of_the_kind_they_are() -> None:
    whole = {
        "date": DAY,
        "number": 3,
        "start": dt.time(10, 20),
        "bike": "b",
        "rider": "r",
        "tyres": "t",
        "day": "d",
        "was": ["older"],
    }
    odd = {"date": DAY, "number": "3", "start": "10:20", "bike": 1, "rider": [], "tyres": None, "day": {}}

    assert index.row_of(whole) == index.SessionRow(
        DAY, 3, dt.time(10, 20), False, "b", "r", "t", "d", False, ("older",)
    )
    assert index.row_of(odd) == index.SessionRow(DAY, 0, dt.time(0, 0), False)


@every(
    ("at", "over", "said"),
    [
        ("/dev/pts/3", "", "pts/3"),
        ("/dev/pts/3", "10.0.0.2 50000 22", "pts/3, over ssh"),
        (None, "10.0.0.2 50000 22", ""),
    ],
)
def test_a_terminal_is_named_with_the_network_it_is_reached_over(
    at: str | None, over: str, said: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def named(file: int) -> str:
        assert file == 7
        if at is None:
            raise OSError("no terminal")
        return at

    monkeypatch.setattr(os, "ttyname", named)
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(fileno=lambda: 7))
    monkeypatch.setenv("SSH_CONNECTION", over)
    assert presence._terminal() == said

    monkeypatch.setattr(sys, "stdin", None)
    assert presence._terminal() == ""


@every(
    ("kind", "name", "found"),
    [
        ("garage", "garage", GARAGE),
        ("bike", "magpie", Ref("bike", "magpie")),
        ("bike", "garage", Ref("bike", "garage")),
        ("session", "2026-05-16-1-a", Ref("session", "2026-05-16-1-a")),
        ("garage", "other", None),
        ("bikes", "magpie", None),
        ("bike", "../magpie", None),
        ("bike", 3, None),
        ("bike", None, None),
        (None, "magpie", None),
    ],
)
def test_a_reference_from_outside_is_one_that_can_be(kind: object, name: object, found: Ref | None) -> None:
    if found is not None:
        assert steps_as_json.checked_ref(kind, name) == found
        return
    with pytest.raises(ValueError, match=r"^no record has such a kind or id$"):
        steps_as_json.checked_ref(kind, name)


ANN, BOB = Ref("rider", "ann"), Ref("rider", "bob")


def test_what_changed_on_the_disk_is_listed_once_and_counted(tmp_path: Path) -> None:
    files = garage.GarageFiles(write(tmp_path, riders__ann='name = "Ann"\nweight = "70 kg"\n'))
    file, bob = tmp_path / "riders" / "ann.toml", tmp_path / "riders" / "bob.toml"
    assert files.changed() == ()
    assert files.data(ANN)["name"] == "Ann"
    assert (files.changed(), files.came_in) == ((), 0)

    os.utime(file, ns=(1, 1))
    assert (files.changed(), files.came_in) == ((), 0)

    file.write_text('name = "Ann B"\nweight = "70 kg"\ngroup = "race"\n')
    assert files.changed([ANN]) == ()
    assert (files.changed(), files.came_in) == ((ANN,), 2)
    assert (files.changed(), files.came_in) == ((), 0)

    file.unlink()
    assert files.changed() == (ANN,)
    bob.write_text('name = "Bob"\n')
    assert files.changed([BOB]) == ()
    bob.unlink()
    assert files.changed() == (BOB,)
    bob.write_text('name = "Bob"\n')
    assert files.changed() == (BOB,)


def test_what_was_saved_here_is_compared_with_its_file_once(tmp_path: Path) -> None:
    files = garage.GarageFiles(write(tmp_path, riders__ann='name = "Ann"\n'))
    file = tmp_path / "riders" / "ann.toml"
    for text, changed, came in (
        ('name = "Ann C"\n\n[feel]\n', (), 0),
        ('name = "Ann C"\ngroup = "race"\n', (ANN,), 1),
    ):
        files.stage(ANN, {"name": "Ann C"})
        assert files.changed() == ()
        file.write_text(text)
        files.unstage(ANN, saved=True)
        assert (files.changed(), files.came_in) == (changed, came)
        assert (files.changed(), files.came_in) == ((), 0)
    files.stage(ANN, {"name": "Ann D"})
    files.unstage(ANN, saved=True)
    file.unlink()
    assert files.changed() == (ANN,)


def test_a_garage_is_known_by_its_whole_random_id_alone(tmp_path: Path) -> None:
    with own_folder(write(tmp_path), ".paddock", make=True) as folder:
        made = signing.garage_id(folder, make=True)
        assert (len(made), signing.garage_id(folder)) == (32, made)
        for cut in (made[:10], made + b"0", made[:31] + b"-"):
            folder.put("id", cut + b"\n")
            assert signing.garage_id(folder) == b""
        assert signing.garage_id(folder, make=True) != made


def test_an_emergency_file_that_is_too_long_is_named_with_why(tmp_path: Path) -> None:
    root = write(tmp_path)
    emergency.write_text(root, "ann", None, "consent = 2026-05-16\n")
    (root / "private" / "ann.toml").write_text("#" * 30_000)

    with pytest.raises(emergency.NotThisFile, match=r"^private/ann\.toml: more than 20000 bytes$"):
        emergency.read_text(root, "ann")


@every(
    ("before", "after"),
    [
        (None, 'theme = "day"\n'),
        ("", 'theme = "day"\n'),
        ('garage = "~/g"\n', 'theme = "day"\ngarage = "~/g"\n'),
        ('theme = "night"  # at dusk\ncopy = true\n', 'theme = "day"\ncopy = true\n'),
        ('[keys]\nundo = "f9"\n', 'theme = "day"\n[keys]\nundo = "f9"\n'),
        ('copy = true\n[keys]\nundo = "f9"\n', 'theme = "day"\ncopy = true\n[keys]\nundo = "f9"\n'),
        ('[steps]\ntheme = "kept"\n', 'theme = "day"\n[steps]\ntheme = "kept"\n'),
    ],
)
def test_a_theme_is_kept_above_the_tables_and_all_else_as_it_stands(before: str | None, after: str) -> None:
    file = settings.settings_file()
    file.unlink(missing_ok=True)
    file.parent.mkdir(parents=True, exist_ok=True)
    if before is not None:
        file.write_text(before, encoding="utf-8")
    assert settings.keep_theme("day") == ""
    assert file.read_text(encoding="utf-8") == after
    file.unlink()


def test_git_was_at_work_while_it_locks_and_for_three_seconds_after_it_wrote(tmp_path: Path) -> None:
    root, now = write(tmp_path / "garage"), [100.0]
    git = tmp_path / ".git"
    git.mkdir()
    (git / "HEAD").write_text("ref: refs/heads/main\n")
    git_consent.allow(root)
    watched = git_movement.GitMovement(root, lambda: now[0])

    def at(seconds: float) -> bool:
        now[0] = seconds
        return watched.lately()

    assert not at(101)
    (git / "index.lock").touch()
    assert at(102)
    (git / "index.lock").unlink()
    assert [at(105), at(105.1)] == [True, False]
    (git / "index").write_text("written")
    assert [at(110), at(113), at(113.1)] == [True, True, False]
    git_consent.forbid(root)
    assert not git_movement.GitMovement(root, lambda: now[0]).lately()


@pytest.mark.skipif(not hasattr(os, "symlink"), reason="no links here")
def test_a_folder_that_two_links_lead_to_is_read_once(tmp_path: Path) -> None:
    root = write(tmp_path, bikes__real__other='name = "Other"\n')
    for name in ("one", "two"):
        (root / "bikes" / name).symlink_to("real")
    files = garage.GarageFiles(root)

    assert files.listing("bike") == (Ref("bike", "other"), Ref("bike", "plain"))
    assert files.strays() == ()
