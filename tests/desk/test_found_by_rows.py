"""What is looked for among all sessions is found by their rows in the index: no file is parsed for it."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk.sessions.came_from import comes_from
from paddock_tui.desk.sessions.numbers import next_number
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.screens.rider import Rider
from tests.small import write
from tests.store.parsed_files import count_parsed
from tests.store.test_index import SESSIONS, indexes, many, rest, seen

DATE = dt.date(2026, 5, SESSIONS)
RIDDEN = "2025-05-03-1-plain"
PROFILE = Ref("profile", "base")


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    found = many(tmp_path / "garage")
    write(found, profiles__base='bike = "plain"\nrider = "ann"\n')
    ridden = found / f"sessions/{RIDDEN[:4]}/{RIDDEN}.toml"
    ridden.write_text(f"ridden_laps = 5\n{ridden.read_text(encoding='utf-8')}", encoding="utf-8")
    seen(found)
    rest(indexes())
    return found


@pytest.fixture
def parsed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The sessions that were parsed since the index was written."""
    return count_parsed(monkeypatch)


def sessions(parsed: list[str]) -> set[str]:
    return {name for name in parsed if name.startswith("sessions")}


def test_what_a_rider_comes_from(root: Path, parsed: list[str]) -> None:
    assert comes_from(GarageFiles(root), PROFILE) == (Ref("session", RIDDEN),)
    assert sessions(parsed) == set()
    assert parsed


def test_the_next_number_of_a_day_is_read_from_the_sessions_of_that_day_alone(
    root: Path, parsed: list[str]
) -> None:
    assert next_number(GarageFiles(root), DATE, "plain") == 2
    assert sessions(parsed) == {f"sessions/2026/{DATE}-1-plain.toml"}


def test_what_a_set_up_is_compared_with(root: Path, parsed: list[str]) -> None:
    from paddock_tui.screens.rooms.compare import _known

    found = _known(Rider(root).desk, PROFILE)
    assert found[0] == Ref("session", f"{DATE}-1-plain")
    assert len(found) == 2 * SESSIONS
    assert sessions(parsed) == set()
