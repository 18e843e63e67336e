"""A day that runs late: what is still to come is shifted, in one step."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.day.late import delaying, late_minutes
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import snapshot

DAY = Ref("day", "2026-06-20-anvilfen")
NOON = dt.datetime(2026, 6, 20, 12, 55)


@every(
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


def test_a_line_that_was_ridden_early_is_not_shifted_to_be_ridden_again(garage: Path) -> None:
    """Out and back before the planned start, and then the day runs late: nothing counts down to it again."""
    early = dt.datetime(2026, 6, 20, 13, 10)
    desk = at_desk(garage, early)
    times = (Edit(("went_out",), MISSING, dt.time(12, 56)), Edit(("parked",), MISSING, dt.time(13, 8)))
    desk.do(Step("out and back", (Change(NEXT, times),)))
    desk.settled()
    step = delaying(desk.files, DAY, 15, early)
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()
    found = clock_of(desk.files, NEXT, early)
    table = desk.files.data(DAY)["timetable"]["intermediate"]
    desk.close()
    assert table["4"]["from"] == dt.time(13, 20)
    assert table["5"]["from"] > dt.time(14, 20)
    assert found is not None
    assert found.out.time() == table["5"]["from"]


def test_a_session_that_should_be_out_already_shifts_too(garage: Path) -> None:
    late = dt.datetime(2026, 6, 20, 13, 28)
    desk = at_desk(garage, late)
    step = delaying(desk.files, DAY, 15, late)
    assert isinstance(step, Step)
    desk.do(step)

    assert desk.files.data(NEXT)["start"] == dt.time(13, 35)


@every(
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


NIGHT = """date = 2026-06-20
venue = "anvilfen"
group = "night"

[timetable.night.1]
from = 22:30:00
to = 22:50:00

[timetable.night.2]
from = 23:40:00
to = 23:59:00

[timetable.night.3]
from = 00:30:00
to = 00:50:00
"""


def night(garage: Path) -> Ref:
    """Have one group ride over midnight; the session in hand is its second outing."""
    (garage / "days/2026-06-20-night.toml").write_text(NIGHT, encoding="utf-8")
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    text = file.read_text(encoding="utf-8")
    text = text.replace('day = "2026-06-20-anvilfen"', 'day = "2026-06-20-night"', 1)
    file.write_text(text.replace("start = 13:20:00", "start = 23:40:00", 1), encoding="utf-8")
    return Ref("day", "2026-06-20-night")


def test_what_is_late_goes_on_after_midnight_and_takes_the_date_along(garage: Path) -> None:
    day, now = night(garage), dt.datetime(2026, 6, 20, 23, 30)
    before = snapshot(garage)
    desk = at_desk(garage, now)
    step = delaying(desk.files, day, 25, now)
    assert isinstance(step, Step), step
    desk.do(step)
    desk.settled()
    table = desk.files.data(day)["timetable"]["night"]
    assert table["1"] == {"from": dt.time(22, 30), "to": dt.time(22, 50)}
    assert table["2"] == {"from": dt.time(0, 5), "to": dt.time(0, 24)}
    assert table["3"] == {"from": dt.time(0, 55), "to": dt.time(1, 15)}
    held = desk.files.data(NEXT)
    assert (held["date"], held["start"]) == (dt.date(2026, 6, 21), dt.time(0, 5))

    later = now + dt.timedelta(minutes=45)
    again = delaying(desk.files, day, 10, later)
    assert isinstance(again, Step), again
    desk.do(again)
    desk.settled()
    assert desk.files.data(day)["timetable"]["night"]["3"]["from"] == dt.time(1, 5)
    assert (desk.files.data(NEXT)["date"], desk.files.data(NEXT)["start"]) == (
        dt.date(2026, 6, 21),
        dt.time(0, 15),
    )
    desk.undo()
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_the_next_day_nothing_of_a_day_that_ended_before_midnight_is_shifted(garage: Path) -> None:
    files = at_desk(garage, NOON).files
    assert isinstance(delaying(files, DAY, 15, dt.datetime(2026, 6, 21, 0, 20)), InputError)


def test_a_session_that_should_be_out_since_midnight_shifts_too(garage: Path) -> None:
    """No time is a time that nobody gave: midnight is one that somebody did."""
    day, now = night(garage), dt.datetime(2026, 6, 20, 23, 30)
    desk = at_desk(garage, now)
    for minutes in (20, 15):
        step = delaying(desk.files, day, minutes, now)
        assert isinstance(step, Step), step
        desk.do(step)
        assert desk.files.data(NEXT)["start"] == dt.time(0, 0 if minutes == 20 else 15)
        now = dt.datetime(2026, 6, 21, 0, 5)
    desk.close()
