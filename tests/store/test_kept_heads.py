"""What is noted of records is what their files say, whoever changed these or the notes."""

import datetime as dt
import json
import os
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.records.shapes_of_bike import set_up_troubles
from paddock_tui.store import kept_heads
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.heads import days_of, heads
from paddock_tui.store.kept_heads import head_of
from paddock_tui.store.soundness import DECIDING
from tests.sample import FILES, bike, data_of

_ADDED = (
    "retired = 2026-05-01",
    "date = 2020-01-01",
    'was = ["an-old-id"]',
    'name = ["no name"]',
    "unheard_of = 1",
    "[",
    '[packing.torch]\nwas = "missing"',
    '[bring]\n1 = "chalk"',
    "x = '''\n[not.a.table]\n'''",
)


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(kept_heads, "_FEWEST", 1)


def _rested(root: Path, path: Path, at: int) -> None:
    """Have a file look as if it was written long ago, at a time of its own."""
    if root in path.parents:
        os.utime(path, ns=(10**18 + at, 10**18 + at))


def _said(files: GarageFiles, monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    # The time of change of its status cannot be set: to the notes all files have rested.
    monkeypatch.setattr(kept_heads, "RESTS_NS", -(10**10))
    problems = [one.sentence() for one in files.soundness.troubles()]
    former = [one.sentence() for one in files.former.troubles(files.name_of)]
    seen = [
        (ref, head.get("date"), "retired" in head, "packing" in head, "bring" in head)
        for kind in FOLDERS
        if kind != "session"
        for ref, head in heads(files, kind)
    ]
    return [problems, former, seen, list(days_of(files, lambda date: date.year > 2019))]


def _change(files: GarageFiles, chance: random.Random, at: int) -> None:
    ref = chance.choice([ref for ref in files.all() if ref.kind != "garage"])
    path = files.path_of(ref)
    assert path is not None
    text, added = path.read_text(encoding="utf-8"), chance.choice(_ADDED)
    path.write_text(f"{text}\n{added}\n" if added[0] == "[" else f"{added}\n{text}", encoding="utf-8")
    _rested(files.root, path, at)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_noted_is_what_the_files_say(
    garage: Path, seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    chance = random.Random(seed)
    for path in garage.rglob("*.toml"):
        _rested(garage, path, 0)
    for at in range(1, 6):
        noted = [_said(GarageFiles(garage), monkeypatch) for _ in range(2)]
        with monkeypatch.context() as alone:
            alone.setenv("XDG_CACHE_HOME", str(garage.parent / f"no-cache-{at}"))
            assert noted == [_said(GarageFiles(garage), monkeypatch)] * 2
        _change(GarageFiles(garage), chance, at)


def test_nothing_is_read_again_that_is_noted(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = _said(GarageFiles(garage), monkeypatch)
    others = GarageFiles(garage)
    read: list[Ref] = []
    of_data = GarageFiles.data

    def data(files: GarageFiles, ref: Ref) -> Any:
        read.append(ref)
        return of_data(files, ref)

    monkeypatch.setattr(GarageFiles, "data", data)
    monkeypatch.setattr("paddock_tui.store.heads.read_text", lambda *_: pytest.fail("read again"))
    assert _said(others, monkeypatch) == before
    assert {ref.kind for ref in read} <= {"bike", "day", "garage", "profile"}


def _spoilt(text: str) -> Iterator[str]:
    given = json.loads(text)
    yield from ("", "null", "[]", "{", text[: len(text) // 2], json.dumps({**given, "version": 0}))
    for name in list(given["rows"])[:2]:
        for place in range(9):
            row = list(given["rows"][name])
            row[place] = {"no": "such"}
            yield json.dumps({**given, "rows": {**given["rows"], name: row}})


def test_spoilt_notes_are_no_notes(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = _said(GarageFiles(garage), monkeypatch)
    (kept,) = (garage.parent / "cache").rglob("others.json")
    text = kept.read_text(encoding="utf-8")
    for spoilt in _spoilt(text):
        kept.write_text(spoilt, encoding="utf-8")
        assert _said(GarageFiles(garage), monkeypatch) == before, spoilt[:80]


def test_a_file_that_just_changed_is_not_noted(garage: Path) -> None:
    files, ref = GarageFiles(garage), Ref("day", "2026-05-16-quernstone")
    stamp = files.stamp(next(iter(files.listing("day"))))
    assert stamp is not None
    files.rows.others.note(ref, stamp, head_of({}))
    assert files.rows.others.head(ref, stamp) is None


def test_the_notes_hold_no_words_of_the_rider(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    _said(GarageFiles(garage), monkeypatch)
    (kept,) = (garage.parent / "cache").rglob("others.json")
    for name, (*_, date, retired, tables, was) in json.loads(kept.read_text())["rows"].items():
        assert date == "" or dt.date.fromisoformat(date), name
        assert type(retired) is bool
        assert all(word in data_of(_ref(name)) for word in tables), name
        assert was == []


def _ref(name: str) -> Ref:
    kind, _, own = name.partition("/")
    return Ref(kind, own or kind)


class _Seen:
    """A bike that tells what of it was looked at."""

    def __init__(self, of: Bike) -> None:
        self._of, self.seen = of, set[str]()

    def __getattr__(self, name: str) -> Any:
        self.seen.add(name)
        return getattr(self._of, name)


def test_nothing_else_of_a_bike_decides_whether_a_session_can_be_read() -> None:
    looked_at: set[str] = set()
    for ref in FILES:
        if ref.kind in ("session", "profile"):
            seen: Any = _Seen(bike(data_of(ref)["bike"]))
            list(set_up_troubles(data_of(ref), seen))
            looked_at |= seen.seen
    assert looked_at == set(DECIDING)
