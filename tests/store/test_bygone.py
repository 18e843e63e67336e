"""What is read of bygone seasons is what is read of any record, and is looked at for changes all the same."""

import contextlib
import os
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.store.bygone import Bygone
from paddock_tui.store.garage import GarageFiles

_FIRST = Ref("session", "2026-05-16-1-otter")


def _read(files: GarageFiles, ref: Ref) -> object:
    reader = Bygone(files)
    with reader:
        return reader.possible(ref)


def _path(files: GarageFiles, ref: Ref) -> Path:
    path = files.path_of(ref)
    assert path is not None
    return path


def test_each_record_is_read_as_it_is_otherwise_and_not_held(garage: Path) -> None:
    files, others = GarageFiles(garage), GarageFiles(garage)
    reader = Bygone(files)
    with reader:
        for ref in files.all():
            loaded = others.read(ref)
            assert loaded is not None
            assert reader.possible(ref) == loaded.possible
            assert not files.is_in_memory(ref) or ref.kind in ("bike", "garage"), ref
        assert reader.possible(Ref("session", "no-such")) is None
    assert files.sessions_read == {ref.id for ref in files.listing("session")}


def test_no_folder_stays_open(garage: Path) -> None:
    files = GarageFiles(garage)
    list(files.all())
    before = _open()
    for ref in files.all():
        _read(files, ref)

    assert _open() == before


def _open() -> list[int]:
    """List the first handles of this process that are open."""
    found = []
    for handle in range(128):
        with contextlib.suppress(OSError):
            os.fstat(handle)
            found.append(handle)
    return found


@pytest.mark.parametrize(
    ("written", "instead"),
    [
        ("[setup]", "unheard_of = 1\n[setup]"),
        ("[setup]", "humidity = '300 %'\n[setup]"),
        ("[setup]", "[setup"),
        ('rider = "', 'rider = "nobody-'),
    ],
)
def test_one_that_takes_care_is_read_with_care(garage: Path, written: str, instead: str) -> None:
    files, others = GarageFiles(garage), GarageFiles(garage)
    path = _path(files, _FIRST)
    path.write_text(path.read_text(encoding="utf-8").replace(written, instead, 1), encoding="utf-8")
    loaded = others.read(_FIRST)
    assert loaded is not None

    assert _read(files, _FIRST) == loaded.possible


def test_a_change_is_seen_of_what_was_not_held(garage: Path) -> None:
    files = GarageFiles(garage)
    path = _path(files, _FIRST)
    before = _read(files, _FIRST)
    assert files.changed() == ()

    path.write_text(path.read_text(encoding="utf-8") + "\n# looked at again\n", encoding="utf-8")

    assert files.changed() == (_FIRST,)
    assert isinstance(before, Session)


def test_a_link_out_is_followed_by_no_quick_way(garage: Path, tmp_path: Path) -> None:
    files = GarageFiles(garage)
    path = _path(files, _FIRST)
    elsewhere = tmp_path / "elsewhere.toml"
    elsewhere.write_bytes(path.read_bytes())
    path.unlink()
    path.symlink_to(elsewhere)

    assert _read(files, _FIRST) is None


def test_a_folder_that_became_a_link_is_not_entered(garage: Path, tmp_path: Path) -> None:
    files = GarageFiles(garage)
    folder = _path(files, _FIRST).parent
    folder.rename(tmp_path / "moved")
    folder.symlink_to(tmp_path / "moved")

    assert _read(files, _FIRST) is None


def test_what_is_staged_reads_as_it_is_staged(garage: Path) -> None:
    files = GarageFiles(garage)
    data = dict(files.data(_FIRST)) | {"aim": "the second turn"}
    files.let_go(_FIRST)
    files.stage(_FIRST, data)

    found = _read(files, _FIRST)

    assert isinstance(found, Session)
    assert found.aim == "the second turn"


def test_what_is_wrong_in_a_garage_is_what_is_wrong_in_each_of_its_records(garage: Path) -> None:
    every = sorted((garage / "sessions").rglob("*.toml"))
    sessions = [path for path in every if "[setup]" in path.read_text(encoding="utf-8")]
    for path, spoilt in zip(
        sessions, ("[setup", "[setup]\nunheard_of = 1", "[setup]\nlinks = 'x'"), strict=False
    ):
        text = path.read_text(encoding="utf-8")
        path.write_text(text.replace("[setup]", spoilt, 1), encoding="utf-8")
    files, others = GarageFiles(garage), GarageFiles(garage)

    found = list(files.soundness.troubles())

    each = (others.read(ref) for ref in others.all())
    assert found == [trouble for one in each if one is not None for trouble in one.troubles]
    assert len(found) == 2
    assert list(files.soundness.troubles()) == found
