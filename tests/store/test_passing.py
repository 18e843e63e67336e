"""Of the files of many seasons only the latest read are held, and what is read again reads the same."""

import shutil
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.records.reading import read_record
from paddock_tui.store import garage, loaded
from paddock_tui.store.listing import Stamp
from paddock_tui.store.loaded import FileText
from paddock_tui.store.passing import HELD, PassingFiles
from paddock_tui.store.tree import Tree
from tests.pages.opened import SAMPLE


def _garage(root: Path, sessions: int) -> list[Ref]:
    (root / "sessions" / "2026").mkdir(parents=True)
    (root / "garage.toml").write_text("schema = 1\n", encoding="utf-8")
    refs = [Ref("session", f"2026-06-{1 + one // 30:02}-{one % 30 + 1}-magpie") for one in range(sessions)]
    for one in refs:
        (root / "sessions" / "2026" / f"{one.id}.toml").write_text("date = 2026-06-01\n", encoding="utf-8")
    return refs


def test_no_more_than_the_latest_are_held_however_many_were_read(tmp_path: Path) -> None:
    refs = _garage(tmp_path, 3 * HELD)
    files = PassingFiles(tmp_path)
    most = 0
    for ref in refs:
        assert files.read(ref) is files.read(ref)
        most = max(most, len(files._raw), len(files._loaded))
    assert most == HELD
    assert files.read(refs[-HELD]) is files.read(refs[-HELD])


def test_what_was_let_go_and_reads_as_before_touches_nothing_and_else_it_does(tmp_path: Path) -> None:
    ref, other, *more = _garage(tmp_path, HELD + 2)
    files = PassingFiles(tmp_path)
    before = [files.read(one) for one in (ref, other)]
    for one in more:
        files.read(one)
    place, _ = files.touched_since(0)
    path = files.path_of(other)
    assert path is not None
    path.write_text("date = 2026-06-01\nnumber = 7\n", encoding="utf-8")

    again = [files.read(one) for one in (ref, other)]

    assert {one for one in files.touched_since(place)[1] if one.kind == "session"} == {other}
    assert before[0] is not None
    assert again[0] is not None
    assert again[0] is not before[0]
    assert again[0].record == before[0].record
    assert again[1] is not None
    assert again[1].data["number"] == 7


def test_what_is_only_looked_at_is_read_quickly_and_as_it_is_read_closely(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(SAMPLE, tmp_path / "garage")
    closely, quickly = PassingFiles(tmp_path / "garage"), PassingFiles(tmp_path / "garage")
    troubled = quickly.listing("session")[3]
    path = quickly.path_of(troubled)
    assert path is not None
    path.write_text("no_such_key = 3\n" + path.read_text(encoding="utf-8"), encoding="utf-8")
    with_care: list[Path] = []

    def counted(tree: Tree, path: Path, stamp: Stamp) -> FileText:
        with_care.append(path)
        return loaded.text_of(tree, path, stamp)

    expected = [closely.read(ref) for ref in closely.all()]
    monkeypatch.setattr(garage, "text_of", counted)
    with quickly.looked_at_only():
        assert [quickly.read(ref) for ref in quickly.all()] == expected
    assert path in with_care
    assert sum("sessions" in one.parts for one in with_care) < len(quickly.listing("session")) / 2
    again = quickly.read(troubled)
    assert again is not None
    assert [one.path for one in again.unknown] == [("no_such_key",)]


def test_what_is_only_looked_at_is_read_again_where_it_was_changed_meanwhile(tmp_path: Path) -> None:
    ref, other, *more = _garage(tmp_path, HELD + 2)
    files = PassingFiles(tmp_path)
    with files.looked_at_only():
        files.read(ref)
        path = files.path_of(ref)
        assert path is not None
        path.write_text("date = 2026-06-01\nnumber = 7\n", encoding="utf-8")
        found = files.read(ref)
        for one in (other, *more):
            files.read(one)
        assert files.read(ref) == found
    assert found is not None
    assert found.data["number"] == 7
    assert found.record == found.possible == read_record("session", found.data).record
