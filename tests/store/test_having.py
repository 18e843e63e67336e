"""Which records have a table is what their files say, and is told without asking each of them again."""

import json
import os
import random
from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.store import heads as noted
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.heads import having
from paddock_tui.store.listing import Stamp
from paddock_tui.store.seals import sealed

PACKED = '[packing.torch]\nwas = "missing"\n'


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(noted, "MANY", 1)
    # The time of change of a file's status cannot be set: all have rested.
    monkeypatch.setattr(noted, "RESTS_NS", -(10**10))


@pytest.fixture
def root(tmp_path: Path) -> Path:
    days = tmp_path / "garage" / "days"
    days.mkdir(parents=True)
    (tmp_path / "garage" / "garage.toml").write_text("")
    for place in range(1, 10):
        day = days / f"2026-05-0{place}.toml"
        day.write_text(f"date = 2026-05-0{place}\n{PACKED if place % 4 == 1 else ''}")
    return tmp_path / "garage"


def packed(files: GarageFiles) -> list[str]:
    """Name the days with something packed."""
    return [ref.id[-1] for ref in having(files, "day", "packing")]


def plainly(root: Path) -> list[str]:
    """Name them as the text of each file says, one that is broken below too."""
    return [path.stem[-1] for path in sorted((root / "days").glob("*.toml")) if PACKED in path.read_text()]


def never(*_: object) -> None:
    raise AssertionError("looked at again")


def test_a_second_run_asks_no_head(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert packed(GarageFiles(root)) == ["1", "5", "9"]
    monkeypatch.setattr(noted, "_head", never)

    assert packed(GarageFiles(root)) == ["1", "5", "9"]


def test_what_was_looked_at_in_this_run_is_not_looked_at_again(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    packed(GarageFiles(root))
    files = GarageFiles(root)
    for ref in files.listing("day"):
        files.read(ref)
        files.let_go(ref)
    monkeypatch.setattr(GarageFiles, "stamp", never)

    assert packed(files) == ["1", "5", "9"]


def test_a_look_finds_what_changed_since(root: Path) -> None:
    packed(GarageFiles(root))
    files = GarageFiles(root)
    for ref in files.listing("day"):
        files.read(ref)
        files.let_go(ref)
    (root / "days" / "2026-05-02.toml").write_text(f"date = 2026-05-02\n{PACKED}")

    assert files.changed() == (Ref("day", "2026-05-02"),)
    assert packed(files) == ["1", "2", "5", "9"]


def test_it_is_asked_once_in_a_run_while_the_files_stand(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    packed(GarageFiles(root))
    files = GarageFiles(root)
    packed(files)
    monkeypatch.setattr(noted, "_noted", never)
    monkeypatch.setattr(noted, "_head", never)

    assert packed(files) == ["1", "5", "9"]
    (root / "days" / "2026-05-01.toml").unlink()
    files.changed()
    with pytest.raises(AssertionError, match="looked at again"):
        packed(files)


def _write(path: Path) -> None:
    path.write_text(f"date = {path.stem}\n{PACKED}")


def _empty(path: Path) -> None:
    path.write_text(f"date = {path.stem}\n")


def _break(path: Path) -> None:
    path.write_text(f"date = {path.stem}\n{PACKED}[")


def _beside(path: Path) -> None:
    path.with_stem(path.stem.replace("-05-", "-06-")).write_text(f"date = 2026-06-01\n{PACKED}")


CHANGES: tuple[Callable[[Path], None], ...] = (_write, _empty, _break, _beside, Path.unlink)


@pytest.mark.parametrize("seed", range(6))
def test_it_is_what_the_files_say_whatever_was_changed(root: Path, seed: int) -> None:
    draw, files = random.Random(seed), GarageFiles(root)
    for _ in range(8):
        files.changed()
        assert packed(GarageFiles(root)) == packed(GarageFiles(root)) == packed(files) == plainly(root)
        draw.choice(CHANGES)(draw.choice(sorted((root / "days").glob("*.toml"))))


def test_what_is_edited_here_counts_as_it_is_edited(root: Path) -> None:
    packed(GarageFiles(root))
    files, ref = GarageFiles(root), Ref("day", "2026-05-02")
    files.stage(ref, {**files.data(ref), "packing": {"torch": {"was": "borrowed"}}})

    assert packed(files) == ["1", "2", "5", "9"]
    assert packed(GarageFiles(root)) == ["1", "5", "9"]


def test_files_that_did_not_rest_are_not_noted(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(noted, "RESTS_NS", 10**10)
    packed(GarageFiles(root))
    monkeypatch.setattr(noted, "_head", never)

    with pytest.raises(AssertionError, match="looked at again"):
        packed(GarageFiles(root))


def test_every_number_of_every_stamp_counts_however_large() -> None:
    refs = tuple(Ref("day", name) for name in ("one", "two"))
    for large in (5, 1 << 63):
        first: Stamp = (1, 2, 3, 4)
        stamps = first, (1, 2, 3, large)
        others: list[Stamp] = [(9, 2, 3, 4), (1, 9, 3, 4), (1, 2, 9, 4), (1, 2, 3, 9)]
        seals = {sealed(refs, (one, stamps[1])) for one in (first, *others)}
        seals.add(sealed(refs, stamps[::-1]))
        assert len(seals) == 6
        assert sealed(refs[::-1], stamps) not in seals
        assert sealed(refs, stamps) in seals


def test_spoilt_notes_are_no_notes(root: Path) -> None:
    first = packed(GarageFiles(root))
    (kept,) = (root.parent / "cache").rglob("day-packing.json")
    assert os.stat(kept).st_mode & 0o777 == 0o600  # noqa: PTH116
    text = kept.read_text()
    held = json.loads(text)
    changed: tuple[dict[str, object], ...] = (
        {"version": 0},
        {"seal": "x"},
        {"names": 5},
        {"names": [[]]},
        {"names": None},
    )
    for spoilt in ("", "null", "[]", text[:-9], *(json.dumps({**held, **one}) for one in changed)):
        kept.write_text(spoilt)
        assert packed(GarageFiles(root)) == first, spoilt
