"""The clock in words: whole minutes, what is due first."""

import datetime as dt

from paddock_tui.desk.day.countdown import Countdown, DueItem
from paddock_tui.pages.countdown import clock_section, clock_words
from tests.every import every


def at(hour: int, minute: int = 0, second: int = 0) -> dt.datetime:
    return dt.datetime(2026, 6, 20, hour, minute, second)


CLOCK = Countdown(
    at(13, 20),
    (
        DueItem("fuel", at(13, 10), True),
        DueItem("dress", at(13, 10), False),
        DueItem("dash", at(13, 17), False),
    ),
)


@every(
    ("now", "said"),
    [
        (at(12, 57), "out 13:20 in 23 min · kit on in 13 min"),
        (at(12, 57, 30), "out 13:20 in 22 min · kit on in 12 min"),
        (at(13, 10), "out 13:20 in 10 min · kit on now"),
        (at(13, 11), "out 13:20 in 9 min · dash in 6 min"),
        (at(13, 18), "out 13:20 in 2 min · dash now"),
        (at(13, 20), "out 13:20 in 0 min · dash now"),
        (at(13, 30), "out since 13:20"),
        (at(14, 30), ""),
    ],
)
def test_it_counts_down_in_whole_minutes(now: dt.datetime, said: str) -> None:
    assert clock_words(CLOCK, now) == said


def test_without_a_time_to_go_out_it_says_nothing() -> None:
    assert clock_words(None, at(12)) == ""
    assert clock_section(None, at(12)) is None


def test_the_section_lists_everything_in_order_and_going_out_last() -> None:
    section = clock_section(CLOCK, at(12, 57))

    assert section is not None
    assert [(row.label, row.value, row.aside) for row in section.rows] == [
        ("13:10", "fuel", "done"),
        ("13:10", "kit on", "in 13 min"),
        ("13:17", "dash", "in 20 min"),
        ("13:20", "out", "in 23 min"),
    ]
