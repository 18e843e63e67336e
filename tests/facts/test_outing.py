"""What is known of the outing, the day and the suspension."""

import datetime as dt
from typing import Any

from paddock_tui.facts import ABSENT, NotKnown
from paddock_tui.records.session import Session, is_ridden
from tests.every import every
from tests.rules.situations import Change, files, put, situation, without


def get(name: str, *changes: Change, subject: str | None = None) -> Any:
    """Give one fact of the whole situation, changed."""
    return situation(files(*changes)).facts().get(name, subject)


COLUMNS = [
    ("dry", "dry"),
    ("damp", "damp"),
    ("drying", "damp"),
    ("wet", "wet"),
    ("standing water", "wet"),
]


@every(("surface", "column"), COLUMNS)
def test_drying_is_judged_as_damp_and_standing_water_as_wet(surface: str, column: str) -> None:
    assert get("column", put("session", "surface", surface)) == column


RIDDEN = [
    (put("session", "parked", dt.time(10, 59)), True),
    (put("session", "laps.1", "1:58.900 out"), True),
    (put("session", "pressures.hot.rear", "1.95 bar"), False),
    (put("session", "pressures.hot.at", dt.time(11, 1)), False),
    (put("session", "went_out", dt.time(10, 40)), False),
]


@every(("change", "ridden"), RIDDEN)
def test_a_session_is_ridden_once_parked_or_with_a_lap(change: Change, ridden: bool) -> None:
    session = situation(files(change)).session
    assert isinstance(session, Session)
    assert is_ridden(session) is ridden
    assert (get("to_come", change) is ABSENT) is ridden


NO_READING = without("session", "pressures")


@every("name", ["cold", "warmers", "leaving"])
def test_the_starting_pressures_are_the_pair_that_was_read(name: str) -> None:
    found = get(
        "cold_pressures",
        NO_READING,
        put("session", f"pressures.{name}", {"front": "2.2 bar", "rear": "1.9 bar"}),
    )
    assert [str(one) for one in found] == ["2.2 bar", "1.9 bar"]


def test_one_tyre_is_no_pair() -> None:
    assert isinstance(get("cold_pressures", without("session", "pressures.cold.front")), NotKnown)


def test_on_the_road_there_is_no_day_and_no_organiser() -> None:
    road = (put("session", "kind", "road"), without("session", "day"), without("day"))
    assert get("organised", *road) is ABSENT
    assert get("posted_pit_limit", *road) is ABSENT
    assert isinstance(get("posted_pit_limit", without("day")), NotKnown)


def test_the_limit_of_the_day_is_never_replaced_by_the_usual_one() -> None:
    usual = put("venue", "usual.pit_lane", "60 km/h")
    assert isinstance(get("posted_pit_limit", usual, without("day", "limits")), NotKnown)


def test_the_paper_is_that_of_this_rider_on_this_bike() -> None:
    assert get("entry").signed_on is True
    assert get("entry", put("session", "rider", "tobin")).signed_on is None


MODES: list[tuple[str, tuple[Change, ...], Any]] = [
    ("by hand", (), "by-hand"),
    ("automatic", (put("session", "setup.damping", "automatic"),), "automatic"),
    (
        "no other",
        (without("bike", "damping"), without("session", "setup.damping")),
        "by-hand",
    ),
]


@every(("changes", "mode"), [row[1:] for row in MODES], ids=[row[0] for row in MODES])
def test_the_damping_mode(changes: tuple[Change, ...], mode: str) -> None:
    assert get("damping_mode", *changes) == mode


@every(
    "changes",
    [
        (without("session", "setup.damping"),),
        (put("session", "setup.damping", "magic"),),
        (without("bike", "damping"), without("bike", "suspension")),
    ],
)
def test_a_damping_mode_that_nobody_named_is_not_known(changes: tuple[Change, ...]) -> None:
    assert isinstance(get("damping_mode", *changes), NotKnown)


ADJUSTERS = [
    (12, "front rebound 12 clicks (range 0-24)"),
    (1, "front rebound 1 click (range 0-24)"),
    (6.5, "front rebound 6.5 clicks (range 0-24)"),
]


@every(("value", "words"), ADJUSTERS)
def test_an_adjuster_is_quoted_with_unit_and_range(value: float, words: str) -> None:
    made = situation(files(put("session", "setup.adjusters.front-rebound", value))).facts()
    assert made.shown("adjuster_value", "front-rebound") == words


def test_an_adjuster_range_is_lowest_first_however_it_is_written() -> None:
    change = put("bike", "adjusters.front-rebound.range", [24, 0])
    assert get("adjuster_range", change, subject="front-rebound") == (0, 24)


def test_an_adjuster_that_was_not_written_down_is_left_alone() -> None:
    change = without("session", "setup.adjusters.front-rebound")
    assert get("adjuster_value", change, subject="front-rebound") is ABSENT
