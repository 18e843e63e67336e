"""A day that runs late: what is still to come is shifted, in one step."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk.day.late import delaying, late_minutes
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.small import snapshot

DAY = Ref("day", "2026-06-20-anvilfen")
NOON = dt.datetime(2026, 6, 20, 12, 55)


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("late 15", 15),
        (" LATE 5 min ", 5),
        ("late -5", -5),
        ("late", None),
        ("late 15 t4", None),
        ("t4", None),
    ],
)
def test_the_line_says_by_how_much(line: str, minutes: int | None) -> None:
    assert late_minutes(line) == minutes


def test_the_rest_of_every_group_and_the_sessions_to_come_shift_and_one_undo_takes_it_back(
    garage: Path,
) -> None:
    desk = at_desk(garage, NOON)
    before = snapshot(garage)
    step = delaying(desk.files, DAY, 15, NOON)
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    table = desk.files.data(DAY)["timetable"]
    assert table["intermediate"]["3"]["from"] == dt.time(11, 20)
    assert table["intermediate"]["4"] == {"from": dt.time(13, 35), "to": dt.time(13, 55)}
    assert table["novice"]["4"]["from"] == dt.time(13, 15)
    assert desk.files.data(DAY)["stops"]["1"]["from"] == dt.time(12, 0)
    assert desk.files.data(NEXT)["start"] == dt.time(13, 35)
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_a_session_that_should_be_out_already_shifts_too(garage: Path) -> None:
    late = dt.datetime(2026, 6, 20, 13, 28)
    desk = at_desk(garage, late)
    step = delaying(desk.files, DAY, 15, late)
    assert isinstance(step, Step)
    desk.do(step)

    assert desk.files.data(NEXT)["start"] == dt.time(13, 35)


@pytest.mark.parametrize(
    ("minutes", "now"),
    [(0, NOON), (15, dt.datetime(2026, 6, 21, 12, 0)), (900, NOON), (-900, NOON)],
)
def test_a_shift_out_of_the_day_or_of_another_day_is_refused(
    garage: Path, minutes: int, now: dt.datetime
) -> None:
    assert isinstance(delaying(at_desk(garage, now).files, DAY, minutes, now), InputError)


def test_a_minute_is_later_and_what_is_refused_says_why(garage: Path) -> None:
    files = at_desk(garage).files
    step = delaying(files, DAY, 1, NOON)
    other_day = delaying(files, DAY, 15, NOON + dt.timedelta(days=1))

    assert isinstance(step, Step)
    assert " 1 min later;" in step.label
    assert isinstance(other_day, InputError)
    assert (other_day.found, other_day.expected) == (f"{DAY.id} is not today", "the day that runs late")
    first = delaying(files, DAY, -1, NOON)
    assert isinstance(first, Step)
    assert " 1 min earlier;" in first.label
