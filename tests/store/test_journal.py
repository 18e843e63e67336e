"""The journal: each step a line, exact; torn, lost or foreign lines cost undo alone."""

import datetime as dt
import json
import string
from pathlib import Path
from unittest.mock import Mock

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.edits import MISSING, Change, Create, Edit, Raw, Rekey, Remove, Rename, Step, Value
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store import journal
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.journal import (
    JournalEntry,
    JournalNote,
    append,
    entries,
    entries_of,
    has_lines_of_others,
)
from paddock_tui.store.lock import hold
from paddock_tui.store.saving import Saved, save
from paddock_tui.store.steps_as_json import dumped, loaded
from paddock_tui.store.undo_history import undo_history
from tests.every import every
from tests.examples import examples
from tests.small import write

PLAIN = Ref("bike", "plain")
AT = dt.datetime(2026, 5, 16, 10, 37, 5)

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
KEYS = st.text(string.ascii_letters + "é-_. ", min_size=1, max_size=6)
PLAINS = st.one_of(
    TEXTS, st.booleans(), st.integers(), st.floats(allow_nan=False), st.dates(), st.times(), st.datetimes()
)
VALUES: st.SearchStrategy[Value] = st.recursive(
    st.one_of(PLAINS, st.lists(PLAINS, max_size=3)),
    lambda inside: st.dictionaries(KEYS, inside, max_size=3),
    max_leaves=6,
)
RAWS = st.builds(
    Raw, st.integers(0, 99), st.lists(TEXTS, max_size=2).map(tuple), st.lists(TEXTS, max_size=2).map(tuple)
)
PATHS = st.lists(KEYS, min_size=1, max_size=3).map(tuple)
EDITS = st.builds(
    Edit,
    PATHS,
    st.one_of(st.just(MISSING), VALUES),
    st.one_of(st.just(MISSING), VALUES),
    st.one_of(st.none(), RAWS),
)
IDS = st.from_regex(r"[a-z0-9]{1,4}(-[a-z0-9]{1,3})?", fullmatch=True)
REFS = st.one_of(st.just(GARAGE), st.builds(Ref, st.sampled_from(["bike", "day"]), IDS))
CHANGES = st.one_of(
    st.builds(Change, REFS, st.lists(EDITS, max_size=3).map(tuple)),
    st.builds(Create, REFS, TEXTS),
    st.builds(Remove, REFS, TEXTS),
    st.builds(Rename, st.builds(Ref, st.just("bike"), IDS), IDS),
    st.builds(Rekey, REFS, PATHS, KEYS),
)
STEPS = st.builds(Step, TEXTS, st.lists(CHANGES, max_size=3).map(tuple))


@examples(25)
@given(STEPS)
def test_any_step_comes_back_from_json_as_it_was(step: Step) -> None:
    assert loaded(json.loads(json.dumps(dumped(step)))) == step


def change(old: str, new: str) -> Step:
    return Step(f"name {old} -> {new}", (Change(PLAIN, (Edit(("name",), old, new),)),))


def kept(root: Path, step: Step, note: JournalNote = JournalNote()) -> Saved:  # noqa: B008
    outcome = save(GarageFiles(root), step, AT, note)
    assert isinstance(outcome, Saved)
    return outcome


def month(root: Path) -> Path:
    return root / ".paddock" / "journal" / "2026-05.jsonl"


def test_a_step_that_is_kept_is_a_line_of_its_month_and_git_sees_none_of_it(tmp_path: Path) -> None:
    root = write(tmp_path)

    done = kept(root, change("Plain", "Other"), JournalNote("run"))

    (one,) = entries(root)
    assert one == JournalEntry(done.id, AT, "run", "do", change("Plain", "Other"), done.undo)
    assert entries_of(root, AT.date()) == [one]
    assert entries_of(root, dt.date(2026, 5, 17)) == []
    assert (root / ".paddock" / ".gitignore").read_text() == "*\n"


def test_a_torn_last_line_loses_itself_alone(tmp_path: Path) -> None:
    root = write(tmp_path)
    kept(root, change("Plain", "A"))
    kept(root, change("A", "B"))
    month(root).write_bytes(month(root).read_bytes()[:-30])

    assert [one.step.label for one in entries(root)] == ["name Plain -> A"]
    kept(root, change("B", "C"))
    assert [one.step.label for one in entries(root)] == ["name Plain -> A", "name B -> C"]


@every(
    "line",
    [b"", b"null", b"[]", b'{"id": 1}', b"\xff\xfe", b"{" * 5000, b'{"what": "do", "step": 3}', b"\x00" * 9],
)
def test_lines_that_cannot_be_read_are_passed_over(tmp_path: Path, line: bytes) -> None:
    root = write(tmp_path)
    kept(root, change("Plain", "A"))
    month(root).write_bytes(month(root).read_bytes() + line + b"\n")
    kept(root, change("A", "B"))

    assert [one.step.label for one in entries(root)] == ["name Plain -> A", "name A -> B"]
    assert not has_lines_of_others(root)


def test_only_the_newest_lines_are_looked_through_over_several_months(tmp_path: Path) -> None:
    root = write(tmp_path)
    step = change("a", "b")
    for number in range(40):
        at = dt.datetime(2026, 1 + number // 10, 1 + number % 10)
        with hold(root) as folder:
            append(folder, JournalEntry(str(number), at, "", "do", step, step), {})

    assert [one.id for one in entries(root)] == [str(number) for number in range(40)]
    few = [one.id for one in entries(root, most=5000)]
    assert few == [str(number) for number in range(40 - len(few), 40)]
    assert 5 < len(few) < 20


def test_a_journal_that_cannot_be_written_is_said_and_the_step_kept(tmp_path: Path) -> None:
    root = write(tmp_path)
    (root / ".paddock").mkdir()
    (root / ".paddock" / "journal").write_text("a file stands here")

    done = kept(root, change("Plain", "Other"))

    assert done.unnoted
    assert 'name = "Other"' in (root / "bikes" / "plain.toml").read_text()


def test_the_whole_text_is_noted_of_what_is_renamed_or_retired(tmp_path: Path) -> None:
    root = write(tmp_path)
    text = (root / "bikes" / "plain.toml").read_text()
    retired = Edit(("retired",), MISSING, dt.date(2026, 5, 16))
    kept(root, Step("retired", (Change(PLAIN, (retired,)),)))
    kept(root, Step("renamed", (Rename(Ref("rider", "ann"), "zoe"),)))

    first, second = (json.loads(line) for line in month(root).read_text().splitlines())

    assert first["texts"] == {"bike/plain": text}
    assert second["texts"] == {"rider/ann": (root / "riders" / "zoe.toml").read_text()}


def line(name: str, what: str, label: str) -> JournalEntry:
    step = Step(label, ())
    return JournalEntry(name, AT, "", what, step, step)  # type: ignore[arg-type]


def test_the_past_is_followed_through_undo_redo_and_new_steps() -> None:
    lines = [line("1", "do", ""), line("2", "do", ""), line("3", "do", ""), line("3", "undo", "")]
    past = undo_history([*lines, line("2", "undo", "")])

    assert ([one.id for one in past.done], [one.id for one in past.undone]) == (["1"], ["3", "2"])
    past = undo_history([*lines, line("2", "undo", ""), line("2", "redo", "")])
    assert ([one.id for one in past.done], [one.id for one in past.undone]) == (["1", "2"], ["3"])
    past = undo_history([*lines, line("4", "do", "")])
    assert ([one.id for one in past.done], past.undone) == (["1", "2", "4"], ())
    past = undo_history([*lines, line("2", "passed", ""), line("9", "undo", ""), line("9", "redo", "")])
    assert ([one.id for one in past.done], [one.id for one in past.undone]) == (["1"], ["3"])


def test_the_newest_number_is_found_without_what_the_lines_did(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = write(tmp_path)
    kept(root, change("Plain", "A"))
    kept(root, change("A", "B"))
    journal._places.clear()
    read = Mock(wraps=loaded)
    monkeypatch.setattr(journal, "loaded", read)

    assert journal.newest_place(root) == 2
    assert read.call_count == 0


def test_a_line_of_ours_that_has_no_number_is_passed_over() -> None:
    assert [journal._place(line) for line in (b'{"place": 7}', b"{}", b"[]", b"no", b'{"place": "x"}')] == [
        7,
        0,
        None,
        None,
        None,
    ]
