"""A group's whole timetable in one line."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.timetable import Times, read_times, timetabling
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from tests.desk.opened import at_desk
from tests.every import every

DAY = Ref("day", "2026-06-20-anvilfen")
LUNCH = RidingDay(stops={"1": TimetableSlot(from_=dt.time(12), to=dt.time(13))})


@every(
    ("line", "said"),
    [
        ("9:00 9:20 every 60 x3", "novice: 09:00-09:20, 10:00-10:20, 11:00-11:20"),
        ("Fast Group 900 920 every 60 min x 2", "fast-group: 09:00-09:20, 10:00-10:20"),
        ("11:20 11:40 every 60 x2", "novice: 11:20-11:40, 13:20-13:40; left out in a stop: 12:20"),
        ("9:00-9:20 10:15-10:30", "novice: 09:00-09:20, 10:15-10:30"),
    ],
)
def test_a_line_gives_the_times_of_a_group_and_leaves_the_stops_out(line: str, said: str) -> None:
    times = read_times(line, LUNCH, "novice")

    assert isinstance(times, Times)
    assert times.words() == said


@every(
    ("line", "found"),
    [
        ("9:00 9:20 10:00", "3 times"),
        ("9:20 9:00", "09:00 goes backwards"),
        ("9:00 9:20 8:00 8:20", "08:00 goes backwards"),
        ("9:00 9:20 every 10 x3", "every 10 x3"),
        ("9:00 9:20 every 60 x20", "20 do not fit"),
        ("9:00 soon", '"soon"'),
    ],
)
def test_times_that_go_backwards_overlap_or_lack_an_end_are_refused(line: str, found: str) -> None:
    trouble = read_times(line, LUNCH, "novice")

    assert isinstance(trouble, InputError)
    assert found in trouble.found


def test_without_a_group_anywhere_it_is_everybodys() -> None:
    found = read_times("9:00 9:20", RidingDay(), None)

    assert not isinstance(found, InputError)
    assert found.group == "everybody"


def test_lines_that_are_there_change_and_others_come_and_go_in_one_step(garage: Path) -> None:
    desk = at_desk(garage)
    for line, count in (("9:30 9:50 every 60 x7", 7), ("9:30 9:50 every 60 x2", 2)):
        loaded = desk.files.read(DAY)
        assert loaded is not None
        assert isinstance(loaded.record, RidingDay)
        times = read_times(line, loaded.record, "intermediate")
        assert isinstance(times, Times)
        step = timetabling(desk.files, DAY, times)
        assert isinstance(step, Step)
        desk.do(step)
        desk.settled()

        table = desk.files.data(DAY)["timetable"]
        assert len(table["intermediate"]) == count
        assert table["intermediate"]["1"] == {"from": dt.time(9, 30), "to": dt.time(9, 50)}
        assert table["novice"]["1"]["from"] == dt.time(9, 0)
    desk.close()


def test_times_that_go_backwards_are_refused_by_the_two_that_do() -> None:
    refused = read_times("novice 9:00 9:20 9:10 9:30", RidingDay(), None)

    assert isinstance(refused, InputError)
    assert refused.found == "09:10 goes backwards"
