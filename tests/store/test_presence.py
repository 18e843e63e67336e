"""Who has a garage open: noted while the screens run, shown to others, and never believed too far."""

import datetime as dt
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from paddock_tui.store import presence
from paddock_tui.store.presence import others

NOW = dt.datetime(2026, 6, 20, 9, 30)


def note(garage: Path, name: str, **other: object) -> None:
    found = {"pid": 1, "host": "pit", "user": "ben", "terminal": "pts/3", "since": "2026-06-20T09:12:00"}
    (garage / ".paddock" / "open" / name).write_text(json.dumps({**found, **other}))


@pytest.fixture
def opened(tmp_path: Path) -> Path:
    """Return a garage that this run has open."""
    presence.enter(tmp_path, NOW)
    return tmp_path


def test_who_else_has_it_open_is_said_with_where_and_since_when(opened: Path) -> None:
    note(opened, "pit-1")

    assert [str(one) for one in others(opened, NOW)] == ["ben on pit (pts/3) since 09:12"]


def test_this_run_is_not_among_them_and_leaves_nothing(opened: Path) -> None:
    assert others(opened, NOW) == ()
    assert len(list((opened / ".paddock" / "open").iterdir())) == 1

    presence.leave(opened)

    assert list((opened / ".paddock" / "open").iterdir()) == []


def test_one_of_this_computer_counts_while_its_process_runs(
    opened: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("platform.node", lambda: "here")
    gone = subprocess.Popen([sys.executable, "-c", ""])
    gone.wait()
    note(opened, f"here-{gone.pid}", pid=gone.pid, host="here", user="gone")
    note(opened, f"here-{os.getppid()}", pid=os.getppid(), host="here", user="runs")

    assert [one.user for one in others(opened, NOW) if one.host == "here"][:1] == ["runs"]
    assert "gone" not in {one.user for one in others(opened, NOW)}
    presence.enter(opened, NOW)
    assert not (opened / ".paddock" / "open" / f"here-{gone.pid}").exists()


@pytest.mark.parametrize(
    "other",
    [
        {"since": "2026-06-18T09:12:00"},
        {"since": "soon"},
        {"pid": "x" * 2000},
        {"pid": None},
    ],
)
def test_an_old_note_or_one_that_is_none_is_passed_over(opened: Path, other: dict[str, object]) -> None:
    note(opened, "pit-2", **other)

    assert others(opened, NOW) == ()


def test_a_note_is_no_link_and_long_names_are_cut(opened: Path, tmp_path: Path) -> None:
    outside = tmp_path / "elsewhere"
    outside.write_text(json.dumps({"pid": 1, "host": "pit", "user": "evil", "since": "2026-06-20T09:00:00"}))
    (opened / ".paddock" / "open" / "pit-9").symlink_to(outside)
    note(opened, "pit-8", user="u" * 300)

    assert [one.user for one in others(opened, NOW)] == ["u" * 30]
