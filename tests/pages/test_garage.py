"""The garage page: sessions newest first, then everything else by kind, and problems at the end."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.garage_list import said_of_ride
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.text import printable, width
from tests.desk.opened import at_desk
from tests.every import every
from tests.small import session, write


def rows(page: Page, title: str) -> list[Row]:
    """List the rows of a section, those of sessions with the earlier ones."""
    return [
        row
        for section in page.sections
        if section.title in (title, f"earlier {title}")
        for row in section.rows
        if row.kind != "add"
    ]


def test_sessions_come_newest_first_with_what_their_name_does_not_say(garage: Path) -> None:
    found = rows(garage_page(at_desk(garage)), "sessions")

    assert [row.label for row in found] == sorted((row.label for row in found), reverse=True)
    assert (found[0].label, found[0].value, found[0].aside) == (
        "2026-06-20-4-magpie",
        "13:20 · wet · ines · track day",
        "current",
    )
    asides = {row.label: row.aside for row in found}
    assert asides["2026-06-20-1-magpie"] == "8 laps"
    assert asides["2026-06-20-2-magpie"] == "9 laps, out CARE"
    assert "current" not in list(asides.values())[1:]
    assert all(row.opens == row.ref and row.opens is not None for row in found)


@every(
    ("data", "said"),
    [
        ({}, "ridden"),
        ({"ridden_laps": 1}, "1 lap"),
        ({"ridden_laps": 0, "parked": dt.time(10, 0)}, "ridden"),
        ({"laps": {"1": "2:01.0", "2": "2:00.0"}}, "2 laps"),
        ({"ridden_laps": 7, "laps": {"1": "2:01.0"}, "out": {"verdict": "HOLD"}}, "7 laps, out HOLD"),
        ({"ridden_laps": "many", "laps": 4, "out": 3}, "ridden"),
        ({"ridden_laps": True}, "ridden"),
    ],
)
def test_a_ride_is_said_by_its_laps_and_what_it_went_out_with(data: dict[str, object], said: str) -> None:
    assert said_of_ride(data) == said


def test_sessions_of_days_gone_by_stand_last(garage: Path) -> None:
    def titled(now: dt.datetime, title: str) -> list[str]:
        page = garage_page(at_desk(garage, now))
        return [row.label for one in page.sections if one.title == title for row in one.rows if row.ref]

    on_day, next_day = dt.datetime(2026, 6, 20, 12, 40), dt.datetime(2026, 6, 21, 9, 0)
    assert [name[:10] for name in titled(on_day, "sessions")] == ["2026-06-20"] * 4
    assert titled(next_day, "sessions") == titled(on_day, "sessions")
    assert titled(on_day, "earlier sessions")[0] == "2026-05-16-5-magpie"
    before = titled(dt.datetime(2026, 6, 1, 9, 0), "sessions")
    assert [name[:10] for name in before] == ["2026-06-20"] * 4
    assert garage_page(at_desk(garage, on_day)).sections[-1].title == "earlier sessions"


def test_a_session_of_any_name_says_date_and_bike(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__tryout=session(2), sessions__later=session(3))

    found = rows(garage_page(at_desk(root, dt.datetime(2026, 5, 16, 8, 0))), "sessions")

    assert [(row.label, row.aside) for row in found] == [("later", "to come"), ("tryout", "current")]
    assert found[1].value == "16 May 2026 · 10:00 · plain · ann · track day"


def test_what_was_not_ridden_on_a_day_gone_by_is_not_to_come(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__tryout=session(2), sessions__later=session(3))

    found = rows(garage_page(at_desk(root, dt.datetime(2026, 5, 17, 8, 0))), "sessions")

    assert [row.aside for row in found] == ["not ridden", "current"]


def test_a_session_that_cannot_be_placed_is_listed(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a="x = = 1\n", sessions__b="number = 1\n")

    page = garage_page(at_desk(root))

    assert [row.label for row in rows(page, "sessions")] == ["a", "b"]
    assert [row.label for row in rows(page, "problems")] == ["sessions/a.toml:1"]


def test_what_is_retired_is_hidden_unless_it_is_asked_for(garage: Path) -> None:
    desk = at_desk(garage)

    assert [row.label for row in rows(garage_page(desk), "bikes")] == ["Badger", "Magpie", "Otter"]
    shrew = rows(garage_page(desk, retired=True), "bikes")[-1]
    assert (shrew.label, shrew.value, shrew.aside) == ("Shrew", "shrew", "retired")


def test_days_come_newest_first(garage: Path) -> None:
    found = [row.label for row in rows(garage_page(at_desk(garage)), "days")]

    assert found[:2] == ["2026-06-20-anvilfen", "2026-05-16-anvilfen"]


def test_of_very_many_the_earlier_years_are_a_row_each_until_they_are_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paddock_tui.pages.garage_list.MANY", 4)
    monkeypatch.setattr("paddock_tui.pages.garage_list.LATEST", 2)
    monkeypatch.setattr("paddock_tui.pages.garage_list.MOST_DAYS", (4, 2))
    days = ("2024-05-01", "2024-06-01", "2025-05-01", "2026-05-01", "2026-06-01")
    root = write(
        tmp_path,
        **{f"sessions__{day}-1-plain": session(date=day) for day in days},
        **{f"days__{day}-here": 'organiser = "b"\n' for day in days},
    )
    desk = at_desk(root)

    def listed(title: str, years: frozenset[str] | None) -> list[str]:
        return [row.label.removesuffix("-1-plain") for row in rows(garage_page(desk, years=years), title)]

    newest = ["2026-06-01", "2026-05-01"]
    assert listed("sessions", frozenset()) == [*newest, "2025", "2024"]
    assert listed("sessions", frozenset({"2024"})) == [*newest, "2025", "2024", "2024-06-01", "2024-05-01"]
    assert listed("sessions", None) == sorted(days, reverse=True)
    assert listed("days", frozenset()) == ["2026-06-01-here", "2026-05-01-here", "2025", "2024"]


def test_an_empty_garage_says_none_yet(tmp_path: Path) -> None:
    (tmp_path / "fresh").mkdir()
    (tmp_path / "fresh" / "garage.toml").write_text("schema = 1\n")

    page = garage_page(at_desk(tmp_path / "fresh"))

    assert page.heading == "garage · fresh"
    assert {section.note for section in page.sections} == {"none yet"}


def test_the_page_is_printable_and_fits_whatever_stands_in_files(tmp_path: Path) -> None:
    nasty = '"\\u001B[2J\\u202E' + "x" * 90 + '"'
    root = write(
        tmp_path / "\x1b[2Jgarage",
        garage="schema = 1\n",
        riders__ann=f"name = {nasty}\ngroup = {nasty}\n",
        sessions__a=session(bike=nasty, rider=nasty),
        days__d=f"organiser = {nasty}\n",
    )

    for columns in (38, 40, 80):
        lines = list(plain_page(garage_page(at_desk(root)), columns))
        assert [line for line in lines if line != printable(line) or width(line) > columns] == []
