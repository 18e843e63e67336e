"""Back from the track at the desk: which session, when it was parked, and each group as one step."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.debrief.rows import after_this, first_open, following, open_groups
from paddock_tui.desk.debrief.steps import (
    answering,
    back_in,
    doubts,
    minutes_parked,
    parked_earlier,
    stamping,
    why_not_stamped,
    worth,
)
from paddock_tui.desk.edits.entry_line import last_pressures
from paddock_tui.entry.return_rows import ReturnRow
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk
from tests.desk.opened import typed as keyed
from tests.every import every

BACK = dt.datetime(2026, 6, 20, 13, 41, 20)
RIDDEN = Ref("session", "2026-06-20-2-magpie")


def group(desk: Desk, key: str) -> ReturnRow:
    return next(one for one in open_groups(desk.files, NEXT) if one.key == key)


def typed(desk: Desk, key: str, value: Value) -> None:
    step = answering(desk.files, NEXT, group(desk, key), value, desk.now())
    assert isinstance(step, Step), step
    desk.do(step)


def test_the_session_that_comes_back_is_the_one_looked_at_today_else_the_one_in_hand(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    files = desk.files

    assert back_in(files, NEXT, NEXT, BACK) == NEXT
    assert back_in(files, Ref("profile", "magpie-ines-wet"), NEXT, BACK) == NEXT
    assert back_in(files, Ref("session", "2026-05-16-1-magpie"), NEXT, BACK) == NEXT
    assert back_in(files, RIDDEN, NEXT, BACK) == RIDDEN


def test_a_session_that_is_still_to_come_gives_way_to_a_return_that_is_not_done(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    desk.do(stamping(desk.files, NEXT, BACK))
    typed(desk, "notes.change", "two clicks")
    made = after_this(desk.files, NEXT)
    assert made == Ref("session", "2026-06-20-5-magpie")

    assert back_in(desk.files, made, made, BACK) == NEXT


@every(
    ("clock", "said"),
    [
        (dt.datetime(2026, 6, 20, 13, 41), ""),
        (dt.datetime(2026, 6, 20, 12, 55), "it goes out at 13:20"),
        (dt.datetime(2026, 6, 20, 16, 0), "it went out at 13:20: type parked"),
        (dt.datetime(2026, 6, 21, 13, 41), "not of today: type when it was parked"),
    ],
)
def test_parked_is_stamped_only_when_the_bike_can_just_have_come_back(
    garage: Path, clock: dt.datetime, said: str
) -> None:
    found = why_not_stamped(at_desk(garage).files, NEXT, clock)

    assert found.startswith(said)
    assert bool(found) == bool(said)


def test_parked_goes_a_minute_earlier_while_nothing_is_typed(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    desk.do(stamping(desk.files, NEXT, BACK))
    step = parked_earlier(desk.files, NEXT, 1, BACK)
    assert isinstance(step, Step)
    desk.do(step)
    assert desk.files.data(NEXT)["parked"] == dt.time(13, 40)
    assert (
        parked_earlier(desk.files, NEXT, -2, BACK)
        == "that would be before today, or later than now: type the time on its row"
    )

    typed(desk, "pressures.hot.front", "2.38 bar")

    assert parked_earlier(desk.files, NEXT, 1, BACK) == "something is typed already: change parked on its row"


def test_the_first_hot_pressure_notes_when_it_was_read_and_the_second_does_not(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    typed(desk, "pressures.hot.front", "2.38 bar")
    desk.now = lambda: BACK + dt.timedelta(minutes=4)
    typed(desk, "pressures.hot.rear", "2.05 bar")
    desk.close()

    hot = desk.files.data(NEXT)["pressures"]["hot"]
    assert hot == {"front": "2.38 bar", "at": dt.time(13, 41), "rear": "2.05 bar"}


def test_fuel_and_the_change_belong_to_the_next_session_which_is_made_for_them(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    desk.do(stamping(desk.files, NEXT, BACK))
    typed(desk, "fuel_added", "6.5 l")
    typed(desk, "notes.change", "front rebound two softer")
    typed(desk, "notes.change", "front rebound one softer")
    desk.close()

    made = after_this(desk.files, NEXT)
    assert made is not None
    data = desk.files.data(made)
    assert data["fuel_added"] == "6.5 l"
    assert [note["text"] for note in data["notes"].values()] == ["change: front rebound one softer"]
    assert data["copied_from"] == NEXT.id
    assert desk.files.data(NEXT)["fuel_added"] == "4.5 l"


def test_one_symptom_is_asked_for_and_its_details_once_it_is_named(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    what = group(desk, "symptoms.1.what")
    after = following(desk.files, NEXT, what)
    assert after is not None
    assert after.key == "fuel_added"
    typed(desk, "symptoms.1.what", "wallows")
    after = following(desk.files, NEXT, what)
    assert after is not None
    assert after.key == "symptoms.1.corner"
    last = following(desk.files, NEXT, group(desk, "symptoms.1.each_lap"))
    assert last is not None
    assert last.key == "symptoms.2.what"


def test_the_first_open_group_passes_over_what_was_passed_over(garage: Path) -> None:
    desk = at_desk(garage, BACK)
    first = first_open(desk.files, NEXT)
    assert first is not None
    assert first.key == "pressures.hot.front"
    second = first_open(desk.files, NEXT, frozenset({first.key}))
    assert second is not None
    assert second.key == "pressures.hot.rear"


@every(
    ("key", "value", "digits", "said"),
    [
        ("pressures.hot.front", "2.38 bar", "238", ""),
        ("pressures.hot.front", "2.22 bar", "222", "is a key held down"),
        ("pressures.hot.front", "2.99 bar", "299", "while the last was"),
        ("pressures.hot.rear", "2.05 bar", "205", "is below 2.10 bar cold"),
        ("fuel_added", "5.5 l", "055", ""),
    ],
)
def test_a_doubtful_figure_has_to_be_confirmed(
    garage: Path, key: str, value: str, digits: str, said: str
) -> None:
    desk = at_desk(garage, BACK)
    desk.do(_cold(desk))
    found = doubts(desk.files, NEXT, group(desk, key), value, last_pressures(desk.files, NEXT), digits)

    assert (said in found) if said else found == ""


def test_a_reading_is_hot_to_three_minutes_warm_to_eight_and_then_in_no_trend() -> None:
    assert worth(3.0) == "3 min after parking: hot"
    assert worth(3.5).endswith("warm, noted as such")
    assert worth(8.5).endswith("late: saved, in no trend")
    assert worth(None) == "parked is not known"


def _cold(desk: Desk) -> Step:
    return keyed(desk, NEXT, ("pressures.cold.rear", "2.10 bar"))


def test_a_reading_in_the_minute_of_parking_is_of_nought_minutes_and_one_before_it_of_none() -> None:
    assert minutes_parked(dt.time(13, 41), dt.time(13, 41)) == 0.0
    assert minutes_parked(dt.time(13, 41), dt.time(13, 43, 30)) == 2.5
    assert minutes_parked(dt.time(13, 41), dt.time(13, 40, 59)) is None
    assert minutes_parked(None, dt.time(13, 41)) is None


@every(
    ("minutes", "said"),
    [
        (-1, "it goes out at 13:20: i again stamps it parked now"),
        (0, ""),
        (60, ""),
        (61, "it went out at 13:20: type parked and read at, or i again stamps it parked now"),
    ],
)
def test_parked_is_stamped_from_the_start_to_an_hour_after_it(garage: Path, minutes: int, said: str) -> None:
    now = dt.datetime(2026, 6, 20, 13, 20) + dt.timedelta(minutes=minutes)

    assert why_not_stamped(at_desk(garage).files, NEXT, now) == said
