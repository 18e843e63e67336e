"""When the bike goes out, or came in, in ever fewer words."""

import datetime as dt

from paddock_tui.desk.lookup import Glance
from paddock_tui.pages.when import clock_forms, planned_forms, ridden_forms
from paddock_tui.records.paths import Ref
from tests.every import every

DAY = dt.date(2026, 6, 20)
START, PARKED = dt.time(13, 20), dt.time(13, 41)
ONE = Glance(Ref("session", "a"), DAY, 4, START, ridden=False)


@every(
    ("clock", "said"),
    [
        ("out 13:20 in 40 min · kit on in 30 min", ("out 13:20 in 40 min", "out 13:20", "13:20")),
        ("grid 13:10 in 5 min", ("grid 13:10 in 5 min", "grid 13:10", "13:10")),
        ("out since 13:20 · flag 13:40 in 12 min", ("out since 13:20", "since 13:20")),
        ("stopped since 13:31 · when does it go on?", ("stopped since 13:31",)),
    ],
)
def test_the_clock_is_said_in_ever_fewer_words(clock: str, said: tuple[str, ...]) -> None:
    assert clock_forms(clock) == said


@every(
    ("data", "today", "said"),
    [
        ({"parked": PARKED}, DAY, ("parked 13:41",)),
        ({"parked": PARKED}, DAY + dt.timedelta(days=30), ("parked 13:41, 20 Jun", "parked 13:41")),
        ({}, DAY, ("ridden today",)),
        ({}, DAY + dt.timedelta(days=1), ("ridden 20 Jun",)),
    ],
)
def test_what_was_ridden_says_when_it_was_parked(
    data: dict[str, object], today: dt.date, said: tuple[str, ...]
) -> None:
    assert ridden_forms(ONE, data, today) == said


@every(
    ("data", "today", "said"),
    [
        ({"start": START}, DAY, ("out 13:20", "13:20")),
        ({}, DAY, ("no start time yet", "no start")),
        ({"start": START}, DAY - dt.timedelta(days=2), ("out 20 Jun 13:20", "20 Jun 13:20", "20 Jun")),
        ({}, DAY - dt.timedelta(days=2), ("out 20 Jun", "20 Jun")),
        ({"start": START}, DAY + dt.timedelta(days=1), ()),
    ],
)
def test_what_is_planned_says_its_day_where_that_is_another_one(
    data: dict[str, object], today: dt.date, said: tuple[str, ...]
) -> None:
    assert planned_forms(ONE, data, today) == said
