"""What a list shows of a record is what its file says, whoever changed it; no file is held for it."""

import datetime as dt
import random
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.desk.lookup import at_place, glance, in_order, order, without_a_date
from paddock_tui.pages.garage_list import record_rows, session_rows
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.loaded import glimpse
from tests.examples import one_in

_NOW = dt.datetime(2026, 5, 16, 10, 0)
_LINES = ('name = "another"', "retired = 2026-05-01", 'kind = "race"', "date = 2020-01-01", "ridden_laps = 3")


def _said(ref: Ref, data: Mapping[str, Any]) -> tuple[Ref, str]:
    return ref, repr(dict(data))


def _rows(files: GarageFiles) -> list[object]:
    found: list[object] = list(
        session_rows(files, _NOW, retired=True, still_open=lambda _: "", years=frozenset())
    )
    for kind in FOLDERS:
        if kind != "session":
            found += record_rows(files, kind, retired=False)
    return found


def _change(root: Path, files: GarageFiles, chance: random.Random) -> None:
    """Change a record's file as others do: written in place, replaced, taken away, or called otherwise."""
    ref = chance.choice(list(files.all())[1:])
    path = files.path_of(ref)
    assert path is not None
    text = path.read_text(encoding="utf-8")
    what = chance.choice(("in place", "replaced", "taken", "renamed"))
    changed = f"{chance.choice(_LINES)}\n" + "\n".join(
        line for line in text.split("\n") if not line.startswith(tuple(one.split(" =")[0] for one in _LINES))
    )
    if what == "in place":
        path.write_text(changed, encoding="utf-8")
    elif what == "replaced":
        (root / "beside").write_text(changed, encoding="utf-8")
        (root / "beside").replace(path)
    elif what == "taken":
        path.unlink()
    else:
        path.with_stem(f"{path.stem}-x").write_text(f'was = ["{path.stem}"]\n{text}', encoding="utf-8")
        path.unlink()


@pytest.mark.parametrize("seed", range(20 // one_in(2)))
def test_what_is_shown_is_what_the_files_say_after_any_change(garage: Path, seed: int) -> None:
    chance, files = random.Random(seed), GarageFiles(garage)
    for _ in range(6):
        fresh = GarageFiles(garage)
        assert _rows(files) == _rows(fresh)
        for ref in files.all():
            assert glimpse(files, ref, _said) == (ref, repr(dict(fresh.data(ref)))), ref
        _change(garage, files, chance)
        files.changed()


def test_no_file_is_held_for_it_and_one_that_others_hold_stays(garage: Path) -> None:
    files = GarageFiles(garage)
    held = files.listing("session")[0]
    files.read(held)
    for ref in files.all():
        glimpse(files, ref, _said)

    assert [ref for ref in files.all() if ref.kind == "session" and files.is_in_memory(ref)] == [held]


def test_what_is_edited_here_is_shown_at_once(garage: Path) -> None:
    files = GarageFiles(garage)
    ref = files.listing("rider")[0]
    before = glimpse(files, ref, _said)
    files.stage(ref, {"name": "somebody"})
    assert glimpse(files, ref, _said) == (ref, "{'name': 'somebody'}")
    files.unstage(ref)

    assert glimpse(files, ref, _said) == before


def test_a_file_is_read_for_it_once(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    files = GarageFiles(garage)
    for ref in files.all():
        glimpse(files, ref, _said)
    held = [ref for ref in files.all() if files.is_in_memory(ref)]
    monkeypatch.setattr(GarageFiles, "data", lambda *_: pytest.fail("read again"))
    for ref in files.all():
        if ref not in held:
            glimpse(files, ref, _said)


@pytest.mark.parametrize("seed", range(4))
def test_the_order_of_all_sessions_is_that_of_what_each_file_says(garage: Path, seed: int) -> None:
    chance, files = random.Random(seed), GarageFiles(garage)
    for _ in range(4):
        seen = [glance(ref, GarageFiles(garage).data(ref)) for ref in files.listing("session")]
        placed = sorted((one for one in seen if one is not None), key=order)

        assert [at_place(files, ref) for _, ref in in_order(files)] == placed
        assert [one for one, _ in in_order(files)] == [order(one) for one in placed]
        there = {one.ref for one in placed}
        assert list(without_a_date(files)) == [ref for ref in files.listing("session") if ref not in there]
        _change(garage, files, chance)
        files.changed()
