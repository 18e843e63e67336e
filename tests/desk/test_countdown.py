"""The clock of the day in hand."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.board import BoardMemory, board_of
from paddock_tui.desk.day.countdown import clock_of, next_due
from paddock_tui.desk.debrief.steps import stamping
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.timetable import slots_of
from tests.desk.opened import NEXT, at_desk


def test_the_session_in_hand_says_when_it_goes_out_and_what_is_done(garage: Path) -> None:
    now = dt.datetime(2026, 6, 20, 12, 55)
    clock = clock_of(at_desk(garage, now).files, NEXT, now)

    assert clock is not None
    assert (clock.out, clock.session) == (dt.datetime(2026, 6, 20, 13, 20), NEXT)
    done = {item.what: item.done for item in clock.items}
    assert done["fuel"]
    assert done["hot pressures"]
    assert not done["dash"]
    due = next_due(clock, now)
    assert due is not None
    assert (due.what, due.at) == ("dress", dt.datetime(2026, 6, 20, 13, 10))


def test_after_the_return_the_next_line_of_the_riders_group_counts(garage: Path) -> None:
    now = dt.datetime(2026, 6, 20, 13, 41)
    desk = at_desk(garage, now)
    desk.do(stamping(desk.files, NEXT, now))
    clock = clock_of(desk.files, NEXT, now)

    assert clock is not None
    assert (clock.out, clock.session) == (dt.datetime(2026, 6, 20, 14, 20), None)
    due = next_due(clock, now)
    assert due is not None
    assert (due.what, due.at) == ("hot pressures", dt.datetime(2026, 6, 20, 13, 44))


def test_who_is_back_before_the_planned_start_waits_for_the_line_after_it(garage: Path) -> None:
    back = dt.datetime(2026, 6, 20, 13, 12)
    desk = at_desk(garage, back)
    desk.do(stamping(desk.files, NEXT, back))
    clock = clock_of(desk.files, NEXT, back)

    assert clock is not None
    assert (clock.out, clock.session) == (dt.datetime(2026, 6, 20, 14, 20), None)
    entry = next(one for one in board_of(desk, back.date(), BoardMemory()) if one.session == NEXT)
    assert (entry.state, entry.starts) == ("none made", clock.out)


def test_what_nobody_can_tell_is_over_once_its_minute_has_passed(garage: Path) -> None:
    now = dt.datetime(2026, 6, 20, 13, 15)
    clock = clock_of(at_desk(garage, now).files, NEXT, now)

    assert clock is not None
    due = next_due(clock, now)
    assert due is not None
    assert due.what == "dash"


def test_on_another_day_there_is_no_clock(garage: Path) -> None:
    now = dt.datetime(2026, 6, 21, 12, 0)

    assert clock_of(at_desk(garage, now).files, NEXT, now) is None


def test_a_group_is_found_as_it_is_written_or_by_its_id() -> None:
    slot = TimetableSlot(from_=dt.time(9))
    day = RidingDay(timetable={"fast-group": {"1": slot}})

    assert slots_of(day, "Fast Group") == slots_of(day, "fast-group") == {"1": slot}
    assert slots_of(day, None) == {"1": slot}, "the only group is everybody's"
    assert slots_of(RidingDay(timetable={"fast": {"1": slot}, "slow": {"1": slot}}), None) == {}
