"""What contradicts itself in a record is found with its place and its mend; what fits is not."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.levels import Levels
from paddock_tui.records.bike import Bike
from paddock_tui.records.contradictions import Contradiction, contradictions
from paddock_tui.records.electronics import Control
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import spell
from paddock_tui.records.reading import read_record
from tests.every import every
from tests.examples import examples
from tests.sample import FILES, read


def found(kind: str, data: Mapping[str, Any]) -> tuple[Contradiction, ...]:
    reading = read_record(kind, data)
    assert reading.troubles == ()
    return contradictions(reading.record)


def of_control(**control: object) -> list[tuple[str, str]]:
    return [(spell(one.path), one.message) for one in found("bike", {"controls": {"traction": control}})]


LEVELS, CHOICES = "controls.traction.levels", "controls.traction.choices"
HELP, FREES, OFF = (f"controls.traction.{key}" for key in ("most_help", "frees_most", "off"))


@every(
    ("control", "expected"),
    [
        ({"levels": [0, 10], "most_help": 10}, []),
        ({"levels": [0, 10], "most_help": 0}, []),
        ({"levels": [3, 3], "most_help": 3}, []),
        ({"levels": [0, 10]}, []),
        ({"levels": [10, 0]}, [(LEVELS, "traction: levels 10 to 0 are no range")]),
        ({"levels": [0, 10], "most_help": 9}, [(HELP, "traction: 9 is not an end of its range")]),
        ({"levels": [0, 10], "most_help": "most"}, [(HELP, "traction: most is not an end of its range")]),
        ({"levels": [0, 10], "frees_most": 11}, [(FREES, "traction: 11 is not an end of its range")]),
        # A level that means off is not counted.
        ({"levels": [0, 3], "most_help": 3, "off": 0}, []),
        ({"levels": [0, 3], "most_help": 1, "off": 0}, []),
        ({"levels": [0, 3], "most_help": 0, "off": 0}, [(HELP, "traction: 0 is not an end of its range")]),
        ({"levels": [1, 4], "most_help": 3, "off": 4}, []),
        ({"levels": [0, 3], "most_help": 3, "off": True}, []),
        ({"levels": [0, 3], "most_help": 0, "off": "off"}, []),
        ({"levels": [0, 0], "off": 0}, [(LEVELS, "traction: no level but off")]),
        ({"levels": [0, 0], "off": 0, "most_help": 0}, [(LEVELS, "traction: no level but off")]),
        ({"levels": [0, 3], "off": 7}, [(OFF, "traction: 7 means off and is not one of its levels")]),
        ({"levels": [0, 3], "off": "none"}, [(OFF, "traction: none means off and is not one of its levels")]),
        ({"levels": [0, 10**8], "most_help": 10**8, "off": 0}, []),
        # Words count by their place.
        ({"choices": ["sharp", "even", "soft"], "most_help": "soft"}, []),
        ({"choices": ["sharp", "even", "soft"], "most_help": "sharp"}, []),
        (
            {"choices": ["sharp", "even", "soft"], "most_help": "even"},
            [(HELP, "traction: even is not an end of its range")],
        ),
        ({"choices": ["off", "armed"], "most_help": "armed"}, []),
        ({"choices": ["none", "some"], "off": "none", "most_help": "some"}, []),
        (
            {"choices": ["none", "some"], "off": "none", "most_help": "none"},
            [(HELP, "traction: none is not an end of its range")],
        ),
        ({"choices": ["off"]}, [(CHOICES, "traction: no choice but off")]),
        ({"choices": ["none"], "off": "none"}, [(CHOICES, "traction: no choice but off")]),
        ({"choices": ["a", "b"], "off": "c"}, [(OFF, "traction: c means off and is not one of its levels")]),
        # Nothing to compare with.
        ({"most_help": 3}, []),
        ({"kind": "switch", "off": 7}, []),
        ({"kind": "speed", "speeds": ["40 km/h"], "off": True}, []),
        ({}, []),
    ],
)
def test_a_control(control: dict[str, Any], expected: list[tuple[str, str]]) -> None:
    assert of_control(**control) == expected


@examples(25)
@given(
    st.integers(-3, 6),
    st.integers(-3, 6),
    st.none() | st.integers(-3, 6) | st.sampled_from(["off", "x"]),
    st.none() | st.booleans() | st.integers(-3, 6) | st.just("off"),
)
def test_levels_without_a_contradiction_always_make_a_scale(
    low: int, high: int, most: int | str | None, off: bool | int | str | None
) -> None:
    control = Control(levels=(low, high), most_help=most, off=off)

    clean = not contradictions(Bike(controls={"x": control}))

    fits = low <= high and not isinstance(most, str)
    try:
        Levels.span(low, high, most if isinstance(most, int) else None, False if off is None else off)
    except Inconsistent:
        fits = False
    assert clean == fits


def of_bike(**data: object) -> list[tuple[str, str, bool]]:
    return [(spell(one.path), one.message, one.harmless) for one in found("bike", data)]


@every("limits", [[0, 20], [0, 0.5], [-3, 3]])
def test_an_adjuster_with_room_to_turn_fits(limits: list[float]) -> None:
    assert of_bike(adjusters={"rebound": {"range": limits}}) == []
    assert of_bike(damping={"live": {"offsets": {"braking": {"range": limits}}}}) == []


@every(("limits", "words"), [([20, 0], "20 to 0"), ([1, 1], "1 to 1"), ([2.5, 2], "2.5 to 2")])
def test_an_adjuster_without_a_range_is_said(limits: list[float], words: str) -> None:
    assert of_bike(adjusters={"front-rebound": {"range": limits}}) == [
        ("adjusters.front-rebound.range", f"front rebound: {words} is no range", False)
    ]
    assert of_bike(damping={"live": {"offsets": {"braking": {"range": limits}}}}) == [
        ("damping.live.offsets.braking.range", "braking: an offset without a range", False)
    ]


def test_a_mode_that_names_what_the_bike_has_not_is_said_and_is_harmless() -> None:
    bike = {
        "controls": {"traction": {}},
        "adjusters": {"rebound": {}},
        "modes": {
            "wet": {
                "fixes": {"traction": 3, "launch": "off"},
                "limits": {"slide": [1, 2]},
                "off_allowed": ["traction", "abs"],
            }
        },
        "damping": {"live": {"closes": {"rebound": True, "preload": True}}},
    }

    assert of_bike(**bike) == [
        ("modes.wet.fixes.launch", "riding mode wet fixes launch, which the bike does not have", True),
        ("modes.wet.limits.slide", "riding mode wet limits slide, which the bike does not have", True),
        ("modes.wet.off_allowed", "riding mode wet lets ABS be off, which the bike does not have", True),
        ("damping.live.closes.preload", "damping live closes preload, which the bike does not have", True),
    ]
    mends = [one.mend for one in found("bike", bike)]
    assert mends == ["one of traction"] * 3 + ["one of rebound"]
    assert [one.mend for one in found("bike", {"modes": {"wet": {"fixes": {"x": 1}}}})] == ["list it first"]


def times(*lines: str) -> dict[str, dict[str, dt.time]]:
    """Make lines of a timetable from words such as 09:00-09:20; either side may be left out."""
    clock = dt.time.fromisoformat
    made = {}
    for number, line in enumerate(lines, 1):
        start, _, end = line.partition("-")
        made[str(number)] = {key: clock(word) for key, word in (("from", start), ("to", end)) if word}
    return made


@every(
    ("lines", "expected"),
    [
        (("09:00-09:20", "09:20-09:40"), []),
        (("10:00-10:20", "09:00-09:20"), []),
        (("09:00-", "09:10-09:20", "-09:15"), []),
        (("09:00-09:20", "09:19-09:40"), [("2.from", "numbers 1 and 2 overlap", "09:20")]),
        (("09:30-09:50", "09:00-09:40"), [("1.from", "numbers 2 and 1 overlap", "09:40")]),
        (("09:00-09:20", "09:00-09:20"), [("2.from", "numbers 1 and 2 overlap", "09:20")]),
        (("09:20-09:00",), [("1.to", "number 1 ends before it starts", "09:20")]),
        (("09:00-09:00",), [("1.to", "number 1 ends before it starts", "09:00")]),
        # A long line overlaps everything in it, not only its neighbour.
        (
            ("09:00-12:00", "09:10-09:20", "10:00-10:20"),
            [("2.from", "numbers 1 and 2 overlap", "12:00"), ("3.from", "numbers 1 and 3 overlap", "12:00")],
        ),
    ],
)
def test_a_timetable(lines: tuple[str, ...], expected: list[tuple[str, str, str]]) -> None:
    day = found("day", {"timetable": {"slow": times(*lines)}})
    stops = found("day", {"stops": times(*lines)})

    assert [(spell(one.path), one.message) for one in day] == [
        (f"timetable.slow.{path}", f"slow: {message}") for path, message, _ in expected
    ]
    assert [(spell(one.path), one.message) for one in stops] == [
        (f"stops.{path}", f"stops: {message}") for path, message, _ in expected
    ]
    assert all(time in one.mend for one, (_, _, time) in zip(day, expected, strict=True))


def test_groups_ride_at_the_same_time_only_in_different_groups() -> None:
    slots = times("09:00-09:20")

    assert found("day", {"timetable": {"slow": slots, "quick": slots}, "stops": slots}) == ()


@pytest.mark.parametrize(
    ("first", "second", "message"),
    [
        ("went_out", "parked", "parked before it went out"),
        ("warmers_on", "warmers_off", "the warmers came off before they went on"),
    ],
)
def test_the_order_of_a_session(first: str, second: str, message: str) -> None:
    early, late = (slot["from"] for slot in times("10:00-", "10:20-").values())

    assert found("session", {first: early, second: late}) == ()
    assert found("session", {first: early, second: early}) == ()
    assert found("session", {first: late}) == ()
    (one,) = found("session", {first: late, second: early})
    said = f"{message} (the clock off by an hour?)"
    assert (one.path, one.message, one.mend) == ((second,), said, "a time after 10:20")


@every(
    ("out", "back", "slip"),
    [
        ("10:00", "09:59", " (the clock off by an hour?)"),
        ("10:00", "09:00", " (the clock off by an hour?)"),
        ("13:20", "12:19", ""),
        ("13:20", "01:40", " (afternoon?)"),
        ("13:20", "01:20", " (afternoon?)"),
        ("13:20", "01:19", ""),
        ("23:50", "00:10", ""),
    ],
)
def test_a_time_before_what_it_follows_is_said_with_the_likely_slip(out: str, back: str, slip: str) -> None:
    went, parked = (dt.time.fromisoformat(text) for text in (out, back))

    (one,) = found("session", {"went_out": went, "parked": parked})
    assert one.message == f"parked before it went out{slip}"


@every("kind", CLASSES)
def test_an_empty_record_contradicts_nothing(kind: str) -> None:
    assert found(kind, {}) == ()


@every("ref", FILES, ids=str)
def test_no_record_of_the_sample_contradicts_itself(ref: Any) -> None:
    assert contradictions(read(ref).record) == ()
