"""The return page: rows in the order typed, each with its rule, and what can wait below."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.debrief.rows import open_groups
from paddock_tui.desk.debrief.steps import stamping
from paddock_tui.entry.return_rows import groups
from paddock_tui.pages.debrief import return_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row
from tests.desk.opened import NEXT, at_desk, typed

BACK = dt.datetime(2026, 6, 20, 13, 41)


def page_of(desk: Desk, no_laps: str = "") -> Page:
    loaded = desk.files.read(NEXT)
    assert loaded is not None
    found = open_groups(desk.files, NEXT)
    return return_page(desk.files, loaded, found, "session 4", desk.units("ines"), desk.now(), no_laps)


def row(page: Page, label: str) -> Row:
    return next(one for one in page.rows() if one.label == label)


def test_the_rows_that_are_typed_stand_in_the_order_of_the_groups(garage: Path) -> None:
    page = page_of(at_desk(garage, BACK))

    asked = [one.label for one in page.rows() if one.kind == "ask"]
    assert asked == ["was it met?", "parked", "read at", *(one.label for one in groups()), "laps"]
    assert [one.title for one in page.sections] == [
        "the aim",
        "back in",
        "hot pressures",
        "feel",
        "symptom",
        "for the next session",
        "later",
        "what happened",
        "tyre look",
        "travel",
        "readings",
        "brakes and chain",
        "for next time",
        "this morning",
        "bike and tyres, in their own files",
        "not written down yet, asked until it is",
    ]
    learnt, once = (one.rows for one in page.sections[-2:])
    assert [one.label for one in learnt][:4] == ["front repair", "rear repair", "wheels", "coolant"]
    assert {one.ref.kind for one in learnt if one.ref is not None} == {"tyres", "bike"}
    assert once
    assert not any(one.known for one in once)
    assert all(one.path[0] == "controls" and one.path[-1] == "value_after_key_off" for one in learnt[4:])


def test_each_row_says_its_rule_until_it_is_answered(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    assert row(page_of(desk), "front, hot").aside == "238 is 2.38 bar"
    desk.do(
        typed(
            desk,
            NEXT,
            ("parked", "13:41"),
            ("pressures.hot.front", "2.38 bar"),
            ("pressures.hot.at", "13:43"),
        )
    )

    found = row(page_of(desk), "front, hot")

    assert (found.value, found.aside, found.known) == ("2.38 bar", "2 min after parking: hot", True)


def test_parked_says_what_a_pressure_read_now_is_worth(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    desk.do(stamping(desk.files, NEXT, BACK))
    for minutes, word in ((3, "hot"), (5, "warm"), (9, "late")):
        desk.now = lambda minutes=minutes: BACK + dt.timedelta(minutes=minutes)  # type: ignore[misc]
        assert f"{minutes} min ago; a pressure read now is {word}" in row(page_of(desk), "parked").aside


def test_what_belongs_to_the_next_session_says_so(garage: Path) -> None:
    assert row(page_of(at_desk(garage, BACK)), "fuel added").aside == "makes the next session; 065 is 6.5 l"


def test_laps_say_count_and_best_and_take_no_key_where_timing_is_forbidden(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    desk.do(typed(desk, NEXT, ("laps.1", "1:58.9 out"), ("laps.2", "1:44.3"), ("laps.3", "1:43.9")))

    assert row(page_of(desk), "laps").value == "3 laps, best 1:43.9"
    assert row(page_of(desk, "this day forbids lap timing"), "laps").shut == "this day forbids lap timing"


def test_the_page_reads_as_plain_text_within_its_width(garage: Path) -> None:
    for columns in (40, 80):
        lines = list(plain_page(page_of(at_desk(garage, BACK)), columns))
        assert all(len(line) <= columns for line in lines)
        assert any("front, hot" in line for line in lines)
