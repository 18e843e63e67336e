"""Last time here beside now: what differs first, each row to be taken over."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.desk.sessions.last_time import last_time
from paddock_tui.pages.last_time import last_time_page, puts_of
from paddock_tui.pages.rows import Page
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk, typed
from tests.small import snapshot

NOON = dt.datetime(2026, 6, 20, 12, 55)


def page_of(desk: Desk, ref: Ref = NEXT) -> Page:
    loaded = desk.files.read(ref)
    assert loaded is not None
    found = last_time(desk.assembled(ref).situation)
    return last_time_page(loaded, found, bike_of(desk.files, ref), "session 4", desk.units("ines"))


def test_what_differs_stands_first_and_all_but_pressures_of_other_tyres_can_be_taken_over(
    garage: Path,
) -> None:
    page = page_of(at_desk(garage, NOON))
    titles = [section.title for section in page.sections]
    differs = page.sections[1]

    assert titles == ["last time here: session 5 of 16 May", "differs", "how it was", "the same"]
    assert page.sections[0].rows[0].value.startswith("the last one here: front tyre wet, now track-day")
    assert ("traction control", "3", "was 8; help 80 % -> 30 %") in [
        (row.label, row.value, row.aside) for row in differs.rows
    ]
    kept = [(row.path, row.aside) for row in differs.rows if not row.offer]
    assert kept == [(("setup", "rear_start"), "was 1.90 bar, in other conditions")]
    assert not any(row.offer for section in page.sections[2:] for row in section.rows)


def test_with_the_wet_tyres_on_the_conditions_are_alike(garage: Path) -> None:
    desk = at_desk(garage, NOON)
    desk.do(typed(desk, NEXT, ("tyres", "magpie-wet")))

    page = page_of(desk)
    assert page.sections[0].rows[0].value == "in similar conditions; not known: track temperature"
    assert any(row.offer and row.path == ("setup", "rear_start") for row in page.sections[1].rows)


def test_without_the_surface_of_today_no_conditions_are_called_alike(garage: Path) -> None:
    desk = at_desk(garage, NOON)
    desk.do(typed(desk, NEXT, ("surface", ""), ("tyres", "magpie-wet")))
    said = page_of(desk).sections[0].rows[0].value

    assert said == "conditions not compared, not known: surface, track temperature"


def test_the_whole_set_up_is_taken_over_in_one_step_that_one_undo_takes_back(garage: Path) -> None:
    desk = at_desk(garage, NOON)
    before = snapshot(garage)
    step = offering(desk.files, NEXT, puts_of(page_of(desk)))
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    assert puts_of(page_of(desk)) == ()
    assert desk.files.data(NEXT)["setup"]["controls"]["traction"] == 8
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_on_the_first_day_here_it_says_that_there_is_nothing_to_compare(garage: Path) -> None:
    page = page_of(at_desk(garage, NOON), Ref("session", "2026-05-16-1-magpie"))

    assert "not at this venue on an earlier day" in page.sections[0].rows[0].value
