"""The clock of a race, of what is stopped on the way, over midnight, and when summer time begins or ends."""

import datetime as dt
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import attrs
import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.desk.day.board import BoardMemory, board_date, board_of
from paddock_tui.desk.day.countdown import by_pace, clock_of, gone_through, next_start
from paddock_tui.desk.day.moments import after, before, in_order, minutes_to
from paddock_tui.desk.day.out_now import out_now
from paddock_tui.desk.day.timetable import read_times
from paddock_tui.desk.debrief.steps import back_in, minutes_parked, stamping, why_not_stamped
from paddock_tui.desk.venue_clock import VenueClock, read_here
from paddock_tui.pages.board import board_page
from paddock_tui.pages.countdown import clock_words
from paddock_tui.pages.day import day_page
from paddock_tui.records.common import Units
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk, typed

DATE = dt.date(2026, 6, 20)


def on(hour: int, minute: int = 0, day: int = 20) -> dt.datetime:
    return dt.datetime(2026, 6, day, hour, minute)


def words(garage: Path, now: dt.datetime, *pairs: tuple[str, str]) -> str:
    """Say the clock of the session in hand after something was typed."""
    desk = at_desk(garage, now)
    desk.do(typed(desk, NEXT, *pairs))
    said = clock_words(clock_of(desk.files, NEXT, now), now)
    desk.close()
    return said


RACE = (("kind", "race"), ("race.grid", "13:10"), ("race.tyre_choice", "12:55"), ("planned_laps", "8"))


def test_a_race_counts_down_to_the_tyre_choice_the_grid_and_the_start(garage: Path) -> None:
    now = on(12, 50)
    desk = at_desk(garage, now)
    desk.do(typed(desk, NEXT, *RACE, ("warmers", "used")))
    clock = clock_of(desk.files, NEXT, now)

    assert clock is not None
    assert [(item.what, f"{item.at:%H:%M}") for item in gone_through(clock)][-6:] == [
        ("tyre choice", "12:55"),
        ("dress", "13:00"),
        ("dash", "13:07"),
        ("warmers off", "13:09"),
        ("grid", "13:10"),
        ("start", "13:20"),
    ]
    assert clock_words(clock, now).startswith("grid 13:10 in 20 min")
    desk.settled()
    assert words(garage, on(13, 12), ("went_out", "13:08")) == "start 13:20 in 8 min"


def test_the_class_says_until_when_tyres_are_chosen(garage: Path) -> None:
    desk = at_desk(garage, on(12, 50))
    day = next(ref for ref in desk.files.listing("day") if ref.id == "2026-06-20-anvilfen")
    desk.do(typed(desk, day, ("classes.open.tyre_choice", "15 min")))
    desk.do(typed(desk, NEXT, ("kind", "race")))
    clock = clock_of(desk.files, NEXT, on(12, 50))

    assert clock is not None
    assert {item.what: item.at for item in clock.items}["tyre choice"] == on(13, 5)


def test_what_is_out_counts_to_the_flag_in_minutes_or_laps(garage: Path) -> None:
    out = (("went_out", "13:20"),)

    assert words(garage, on(13, 28), *out) == "out since 13:20 · flag 13:40 in 12 min"
    desk = at_desk(garage, on(13, 28))
    desk.do(typed(desk, NEXT, ("planned_time", ""), ("planned_laps", "8")))
    clock = clock_of(desk.files, NEXT, on(13, 28))
    assert clock is not None
    assert clock_words(clock, on(13, 28)) == "out since 13:20", "nobody knows the usual lap"
    paced = by_pace(clock, 120.0)
    assert clock_words(paced, on(13, 28)) == "out since 13:20 · about 4 laps to the flag"
    assert clock_words(paced, on(13, 20)) == "out since 13:20 · about 8 laps to the flag"


STOP = (
    ("went_out", "13:20"),
    ("dash.read", "13:17"),
    ("events.1.what", "red flag"),
    ("events.1.at", "13:26"),
)


def test_a_red_flag_counts_down_to_the_restart_with_the_dash_to_read_again(garage: Path) -> None:
    assert words(garage, on(13, 28), *STOP) == "stopped since 13:26 · when does it go on?"
    again = (("events.1.restart", "13:45"), ("events.1.laps_left", "4"))
    assert words(garage, on(13, 30), *again) == "restart 13:45 in 15 min · dash in 12 min"
    assert words(garage, on(13, 30), ("dash.read", "13:29")) == "restart 13:45 in 15 min"

    desk = at_desk(garage, on(13, 30))
    ines = next(one for one in board_of(desk, DATE, BoardMemory()) if one.rider == "ines")
    assert (ines.state, ines.starts) == ("stopped", on(13, 45))
    shown = board_page(desk, BoardMemory()).rows()
    assert "restart 13:45 in 15 min" in [row.label for row in shown]


def test_what_goes_out_after_midnight_counts_down_before_it_and_stays_out_over_it(garage: Path) -> None:
    late = (("date", "2026-06-21"), ("start", "00:10"), ("day", ""))
    assert words(garage, on(23, 45), *late) == "out 00:10 in 25 min · kit on in 15 min"
    desk = at_desk(garage, on(23, 45))
    desk.do(typed(desk, NEXT, ("date", "2026-06-20"), ("start", "23:50"), ("went_out", "23:51")))
    now = on(0, 5, day=21)
    assert clock_words(clock_of(desk.files, NEXT, now), now) == "out since 23:51 · flag 00:10 in 5 min"
    assert out_now(desk.files, now) == (NEXT,)
    assert board_date(desk) == DATE, "the day is not over while somebody is out"
    assert back_in(desk.files, None, None, now) is None
    assert back_in(desk.files, NEXT, NEXT, now) == NEXT
    assert why_not_stamped(desk.files, NEXT, now) == ""
    desk.do(stamping(desk.files, NEXT, on(0, 12, day=21)))
    desk.settled()
    assert day_before(desk.files, NEXT, on(0, 14, day=21)) is None, "it just came back"
    assert minutes_parked(dt.time(23, 58), dt.time(0, 1)) == 3
    assert day_before(desk.files, NEXT, on(14, 0, day=21)) == DATE
    assert clock_of(desk.files, NEXT, on(14, 0, day=21)) is None


def test_a_timetable_may_go_on_after_midnight_once(garage: Path) -> None:
    day = RidingDay(date=DATE, group="night")
    times = read_times("22:00-22:30 23:45-0:15 1:00-1:30", day, None)
    assert not hasattr(times, "found"), times
    assert times.words() == "night: 22:00-22:30, 23:45-00:15, 01:00-01:30"
    assert hasattr(read_times("9:00-9:20 8:00-8:20", day, None), "found"), "an hour back is a slip"

    files = at_desk(garage, on(12)).files
    held = files.read(Ref("day", "2026-06-20-anvilfen"))
    assert held is not None
    night = RidingDay(
        date=DATE,
        timetable={
            "night": {str(at): TimetableSlot(from_=span[0]) for at, span in enumerate(times.spans, 1)}
        },
    )
    loaded = attrs.evolve(held, record=night)
    labels = [row.label for row in day_page(loaded, Units()).sections[0].rows]
    assert labels == ["22:00", "23:45", "01:00"], "what is after midnight stands last"
    assert next_start(files, night, DATE, "ines", "magpie", on(0, 30, day=21)) == on(1, 0, day=21)

    slots = {"1": TimetableSlot(from_=dt.time(23, 45)), "2": TimetableSlot(from_=dt.time(1))}
    lines = [(slot.from_, key) for key, slot in slots.items() if slot.from_ is not None]
    assert list(in_order(DATE, lines)) == [(on(23, 45), "1"), (on(1, 0, day=21), "2")]
    assert after(on(23, 0), dt.time(0, 10)) == on(0, 10, day=21)
    assert before(on(0, 10, day=21), dt.time(23, 50)) == on(23, 50)
    assert before(on(9, 20), dt.time(9, 20)) == on(9, 20)


@pytest.fixture
def vienna(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("TZ", "Europe/Vienna")
    time.tzset()
    yield
    monkeypatch.undo()
    time.tzset()


@pytest.mark.usefixtures("vienna")
def test_minutes_are_those_that_pass_when_summer_time_begins_and_ends() -> None:
    spring, autumn = dt.date(2026, 3, 29), dt.date(2026, 10, 25)
    one, four = dt.time(1, 30), dt.time(4, 0)

    assert minutes_to(dt.datetime.combine(spring, four), dt.datetime.combine(spring, one)) == 90
    assert minutes_to(dt.datetime.combine(autumn, four), dt.datetime.combine(autumn, one)) == 210
    assert minutes_to(on(4), on(1, 30)) == 150


@pytest.mark.usefixtures("vienna")
def test_at_a_venue_in_another_time_zone_its_clock_counts(garage: Path) -> None:
    venue = garage / "venues/anvilfen.toml"
    venue.write_text('time_zone = "Europe/Lisbon"\n' + venue.read_text())
    local = [dt.datetime(2026, 6, 20, 13, 55)]
    files = at_desk(garage, on(12)).files
    clock = VenueClock(files, lambda: local[0])

    assert clock() == on(12, 55), "Lisbon is an hour behind Vienna"
    assert clock.name == "Europe/Lisbon"
    desk = Desk(garage, clock)
    assert clock_words(clock_of(desk.files, NEXT, desk.now()), desk.now()).startswith("out 13:20 in 25 min")
    labels = [row.label for row in board_page(desk, BoardMemory()).rows() if row.kind == "link"]
    assert labels[0] == "13:20 in 25 min"
    late = VenueClock(files, lambda: dt.datetime(2026, 6, 21, 0, 30))
    assert late() == on(23, 30), "the day there is not over yet"
    local[0] = dt.datetime(2026, 7, 15, 12)
    assert clock() == local[0], "weeks away from the day the laptop's own time counts"


@pytest.mark.usefixtures("vienna")
def test_a_clock_that_was_made_while_everything_was_loaded_follows_the_files_where_it_is_taken_over(
    garage: Path,
) -> None:
    """The screens are loaded in a thread of their own, and go on in the one that draws."""
    made: list[VenueClock] = []
    desk = at_desk(garage, on(12))

    def load() -> None:
        made.append(VenueClock(desk.files, lambda: on(13, 55)))
        made[0]()

    thread = threading.Thread(target=load)
    thread.start()
    thread.join()
    clock = made[0]
    desk.do(typed(desk, Ref("venue", "anvilfen"), ("time_zone", "Europe/Lisbon")))
    assert clock() == on(13, 55), "not this thread's: its files are not read here"
    read_here(clock)

    assert clock() == on(12, 55)
    desk.close()


def test_a_time_zone_that_nobody_knows_is_said_and_no_clock_goes_by_it(garage: Path) -> None:
    venue = garage / "venues/anvilfen.toml"
    venue.write_text('time_zone = "Europe/Nowhere"\n' + venue.read_text())
    desk = at_desk(garage, on(12))
    loaded = desk.files.read(Ref("venue", "anvilfen"))

    assert loaded is not None
    assert [one.path for one in loaded.troubles] == [("time_zone",)]
    assert VenueClock(desk.files, lambda: on(12))() == on(12)
