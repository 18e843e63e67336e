"""`show` prints the pages of the screens as well: as text within the terminal, and as JSON."""

import json
from pathlib import Path

import pytest

from paddock_tui.commands import show_own
from paddock_tui.commands.show import AS_ON_SCREEN, OWN
from paddock_tui.pages.board import BOARD
from paddock_tui.records.paths import FOLDERS
from paddock_tui.screens.registry import ROOMS
from paddock_tui.text import width
from tests.commands.running import NEXT, Runner
from tests.every import every
from tests.small import snapshot

OTHERWISE = {
    "garage": "show without a page",
    "session": "show of the record",
    "record": "show of the record",
    "day": "show of the record",
    "change": "a row of the ledger",
    "why": "what stands behind one row",
    "actions": "keys",
    "help": "keys",
    "guide": "questions that are asked",
}
"""Rooms that `show` does not print by their name, and how it is seen instead."""


def test_every_room_of_the_screens_prints_or_says_where_it_is_seen() -> None:
    printed = {*AS_ON_SCREEN.values(), *OWN}

    assert set(show_own.OWN) == set(OWN)
    assert set(ROOMS) - printed - set(OTHERWISE) == set()
    assert set(AS_ON_SCREEN.values()) <= set(ROOMS)
    assert not set(AS_ON_SCREEN) & set(FOLDERS), "a page is never taken for a record"


@every("page", AS_ON_SCREEN)
def test_a_page_of_the_screens_prints_within_the_terminal_and_as_json(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, page: str
) -> None:
    before = snapshot(garage)
    monkeypatch.setenv("COLUMNS", "40")
    named = page if page in ("limits", "today") else f"{page}/{NEXT}"

    other = ("--from", "magpie-ines-dry") if page == "compare" else ()

    text = run("show", garage, named, *other)
    found = json.loads(run("show", garage, named, *other, "--format", "json").out)

    assert (text.status, text.err) == (0, "")
    assert max(map(width, text.out.splitlines())) <= 40
    assert found["heading"]
    assert found["sections"]
    assert page == "today" or any(section["rows"] for section in found["sections"])
    assert snapshot(garage) == before


def test_the_review_as_json_has_the_verdict_of_check(run: Runner, garage: Path) -> None:
    found = json.loads(run("show", garage, f"review/{NEXT}", "--format", "json").out)
    checked = json.loads(run("check", garage, "--session", NEXT, "--format", "json").out)

    assert found["verdict"].startswith(checked["verdict"])
    assert len(found["findings"]) + len(found["sections"]) > 1


def test_a_page_of_nothing_says_what_to_name(run: Runner, tmp_path: Path) -> None:
    run("new", tmp_path / "bare")

    ran = run("show", tmp_path / "bare", "review")

    assert ran.status == 3
    assert "review/SESSION" in ran.err


def test_the_board_prints_as_text_as_sentences_and_as_data(run: Runner, garage: Path) -> None:
    for named in (BOARD, f"{BOARD}/2026-05-16-anvilfen"):
        text, plain = run("show", garage, named), run("show", garage, named, "--plain")
        found = json.loads(run("show", garage, named, "--format", "json").out)

        assert (text.status, plain.status) == (0, 0)
        date = "2026-05-16" if "/" in named else found["date"]
        assert found["date"] == date
        assert {one["rider"] for one in found["entries"]} == {"ines", "tobin"}
        assert "ines magpie" in text.out
        assert "ines magpie" in plain.out
    assert run("show", garage, f"{BOARD}/nowhere").status == 3
