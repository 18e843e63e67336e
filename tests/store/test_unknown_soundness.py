"""What is noted to have been read whole has not to be read to look for problems: it is not counted."""

from pathlib import Path

import pytest

from paddock_tui.desk.lookup import glances
from paddock_tui.store.garage import GarageFiles
from tests.store.test_index import SESSIONS, indexes, many, rest, seen

SOME = "sessions/2026/2026-05-07-1-plain.toml"


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr("paddock_tui.store.kept_heads._FEWEST", 1)
    return many(tmp_path / "garage")


def unknown(root: Path) -> int:
    """Count, in a run of its own, what would have to be read to know all problems."""
    files = GarageFiles(root)
    assert list(glances(files))
    return files.soundness.unknown()


def looked_through(root: Path) -> None:
    seen(root)
    for _ in range(2):
        files = GarageFiles(root)
        assert list(glances(files))
        assert list(files.soundness.troubles()) == []
    rest(indexes())


def test_of_a_garage_that_nobody_looked_through_all_is_unknown(root: Path) -> None:
    assert unknown(root) == len(list(GarageFiles(root).all())) > 2 * SESSIONS


def test_nothing_that_is_noted_is_counted(root: Path) -> None:
    looked_through(root)

    # The others were written a moment ago, and nothing is noted of such.
    assert unknown(root) == len(list(GarageFiles(root).all())) - 2 * SESSIONS


def test_of_other_records_neither(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paddock_tui.store.kept_heads.RESTS_NS", -(10**12))
    looked_through(root)

    assert unknown(root) == 0
    bike = next(root.glob("bikes/*.toml"))
    bike.write_text(f"{bike.read_text(encoding='utf-8')}\n# a word more\n", encoding="utf-8")
    assert unknown(root) == 1


def test_a_file_that_is_not_as_noted_is_counted(root: Path) -> None:
    looked_through(root)
    before = unknown(root)
    file = root / SOME
    file.write_text(f"{file.read_text(encoding='utf-8')}\n# a word more\n", encoding="utf-8")

    assert unknown(root) == before + 1
