"""Reading is tolerant: a bad value loses only that fact, and everything that is wrong is said at once."""

import datetime as dt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.bike import Bike
from paddock_tui.records.fields import ANY, declared, specs, value_at
from paddock_tui.records.fields_of_record import fields
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path, spell
from paddock_tui.records.reading import read_record
from tests.every import every
from tests.examples import examples
from tests.rules.situations import BIKE_DOWN, BIKE_UP, WHOLE

KINDS = list(CLASSES)


def bike(data: dict[str, Any] = BIKE_UP) -> Bike:
    """Read a bike."""
    record = read_record("bike", data).record
    assert isinstance(record, Bike)
    return record


def troubles(kind: str, data: dict[str, Any], on: Bike | None = None) -> list[tuple[str, str]]:
    """List what could not be read: the path and what was found."""
    return [(spell(one.path), one.found) for one in read_record(kind, data, on).troubles]


@every("kind", KINDS)
def test_an_empty_file_is_a_record_of_which_nothing_is_known(kind: str) -> None:
    found = read_record(kind, {})
    assert found.troubles == ()
    assert all(value_at(found.record, field.path) is None for field in fields(kind, found.record))


def test_a_whole_situation_is_read_without_trouble() -> None:
    for role, data in WHOLE.items():
        found = read_record(role, data, bike())
        assert (found.troubles, found.unknown) == ((), ()), role


def test_a_bad_value_loses_only_that_fact() -> None:
    data = {"surface": "dmap", "number": 3, "pressures": {"cold": {"front": "2,1 bar", "rear": "1.90 bar"}}}
    found = read_record("session", data)
    assert value_at(found.record, ("number",)) == 3
    assert value_at(found.record, ("surface",)) is None
    assert str(value_at(found.record, ("pressures", "cold", "rear"))) == "1.90 bar"
    assert value_at(found.record, ("pressures", "cold", "front")) is None


def test_everything_that_cannot_be_read_is_said_at_once_with_its_path() -> None:
    data = {
        "surface": "dmap",
        "number": "3",
        "pressures": {"cold": {"front": 2.1}},
        "setup": {"adjusters": {"front-rebound": "12"}, "fork_height": True},
        "laps": {"1": "fast"},
        "sag": {"front": {"rider": {"pushed": "30"}}},
        "dash": {"values": {"traction": True}},
    }
    assert sorted(troubles("session", data)) == [
        ("dash.values.traction", "true"),
        ("laps.1", '"fast"'),
        ("number", '"3"'),
        ("pressures.cold.front", "2.1"),
        ("sag.front.rider.pushed", '"30" (no unit)'),
        ("setup.adjusters.front-rebound", '"12"'),
        ("setup.fork_height", "true"),
        ("surface", '"dmap"'),
    ]


def test_every_trouble_is_one_sentence_with_what_was_expected() -> None:
    (trouble,) = read_record("session", {"surface": "dmap"}).troubles
    expected = "dry, damp, drying, wet or standing water"
    assert trouble.sentence() == f'"dmap": expected {expected}; did you mean damp?'


def test_a_value_where_a_table_should_be() -> None:
    data = {"setup": 4, "laps": "1:44", "sag": {"front": 3}, "dash": [1], "number": 2}
    assert sorted(troubles("session", data)) == [
        ("dash", "an array"),
        ("laps", '"1:44"'),
        ("sag.front", "3"),
        ("setup", "4"),
    ]
    assert value_at(read_record("session", data).record, ("number",)) == 2


def test_a_table_where_a_value_should_be() -> None:
    data = {"surface": {"now": "dry"}, "laps": {"1": {"time": "1:44"}}, "date": {}}
    assert sorted(troubles("session", data)) == [
        ("date", "a table"),
        ("laps.1", "a table"),
        ("surface", "a table"),
    ]


def test_unknown_keys_are_noted_and_kept_out() -> None:
    data = {
        "colour": "red",
        "look": {"middle": {"seen": ["cord"]}, "front": {"seen": ["cord"], "smell": "burnt"}},
        "laps": {"0": "1:44", "1": "1:45"},
        "sag": {"front": {"both": {}}},
    }
    found = read_record("session", data)
    assert found.troubles == ()
    assert sorted(map(spell, found.unknown)) == [
        "colour",
        "laps.0",
        "look.front.smell",
        "look.middle",
        "sag.front.both",
    ]
    assert value_at(found.record, ("laps",)).keys() == {"1"}
    assert value_at(found.record, ("look",)).keys() == {"front"}


def test_what_stands_under_an_unknown_key_is_no_trouble() -> None:
    assert troubles("session", {"look": {"middle": {"seen": 5}}, "laps": {"x": 7}}) == []


def test_keys_that_end_in_an_underscore_are_found_again() -> None:
    data = {"because": {"adjusters_": {"x": {"why": 3}}}}
    assert troubles("session", data) == [("because.adjusters_.x.why", "3")]
    assert troubles("bike", {"controls": {"abs": {"effects": {"a_": {"lean": 1}}}}}) == [
        ("controls.abs.effects.a_.lean", "1")
    ]


def test_a_key_that_python_keeps_for_itself_is_named_as_in_the_file() -> None:
    assert troubles("day", {"stops": {"1": {"from": "noon"}}}) == [("stops.1.from", '"noon"')]


BY_BIKE: list[tuple[str, object]] = [
    ("traction", "4"),
    ("traction", "high"),
    ("throttle", 3),
    ("pit-limiter", 60),
    ("pit-limiter", "60"),
    ("abs", {}),
]


@every(("control", "value"), BY_BIKE)
def test_with_the_bike_a_control_is_read_as_that_control_is(control: str, value: object) -> None:
    data = {"setup": {"controls": {control: value, "wheelie": 5}}, "dash": {"values": {control: value}}}
    found = read_record("session", data, bike())
    assert {one.path for one in found.troubles} == {
        ("setup", "controls", control),
        ("dash", "values", control),
    }
    assert value_at(found.record, ("setup", "controls")) == {"wheelie": 5}


def test_without_the_bike_any_level_or_word_can_be_read() -> None:
    data = {"setup": {"controls": {"traction": "high", "throttle": 3, "pit-limiter": "60 km/h"}}}
    assert troubles("session", data) == []


def test_what_can_be_read_is_kept_even_where_the_bike_cannot_be_at_it() -> None:
    data = {"setup": {"controls": {"traction": 99}, "adjusters": {"front-rebound": 99}}}
    found = read_record("session", data, bike())
    assert found.troubles == ()
    assert value_at(found.record, ("setup", "controls", "traction")) == 99


def test_the_data_are_left_as_they_were() -> None:
    data = {"surface": "dmap", "colour": "red", "setup": {"controls": {"traction": True}}}
    before = {"surface": "dmap", "colour": "red", "setup": {"controls": {"traction": True}}}
    read_record("session", data, bike())
    assert data == before


PLAIN = (
    st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=8)
    | st.sampled_from(
        ["2.1 bar", "dry", "off", "on", "1:44.3", "listed", "", 10**400, dt.date(2026, 5, 16), dt.time(9)]
    )
    | st.dates()
    | st.times()
    | st.datetimes()
)


def tables(record: type, depth: int = 0) -> st.SearchStrategy[Any]:
    """Make tables that look a little like this record: its own keys or others, with anything in them."""
    known: list[str] = []
    below: dict[str, st.SearchStrategy[Any]] = {}
    for key, (_, spec) in specs(record).items():
        known.append(key)
        inner = tables(spec.record, depth + 1) if spec.record is not None and depth < 2 else PLAIN
        chosen = st.sampled_from(["traction", "1", "front", "alone", "rider", "a_", "x y", "_"])
        for _ in spec.keys:
            inner = st.dictionaries(chosen, inner | ANY_DATA, max_size=2)
        below[key] = inner | ANY_DATA
    some = st.lists(st.sampled_from(known), max_size=5, unique=True)
    own = some.flatmap(lambda keys: st.fixed_dictionaries({key: below[key] for key in keys}))
    return st.builds(
        lambda one, other: {**other, **one}, own, st.dictionaries(st.text(max_size=3), PLAIN, max_size=1)
    )


ANY_DATA: st.SearchStrategy[Any] = st.recursive(
    PLAIN,
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(st.text(max_size=4), inner, max_size=2),
    max_leaves=3,
)

BIKES = [None, bike(BIKE_UP), bike(BIKE_DOWN), bike({"controls": {"traction": {}, "1": {"kind": "speed"}}})]

TABLES = {kind: tables(cls) for kind, cls in CLASSES.items()}


@pytest.mark.parametrize("kind", KINDS)
def test_a_value_that_cannot_be_read_is_told_where_it_stands_whatever_its_field(kind: str) -> None:
    for one in declared(CLASSES[kind]):
        path = tuple("front" if key == ANY else key for key in one.path)
        raw: Any = {"neither": "this"}
        for key in reversed(path):
            raw = {key: raw}
        found = read_record(kind, raw)
        told = [*(trouble.path for trouble in found.troubles), *found.unknown]
        assert told, path
        assert all(place[: len(path)] == path[: len(place)] for place in told), path


@pytest.mark.parametrize("kind", KINDS)
@examples(12)
@given(data=st.data())
def test_whatever_stands_in_a_file_is_read_without_failing(kind: str, data: st.DataObject) -> None:
    made = data.draw(TABLES[kind])
    found = read_record(kind, made, data.draw(st.sampled_from(BIKES)))
    for trouble in found.troubles:
        assert trouble.path
        assert trouble.found
        assert trouble.expected
        assert _at(made, trouble.path), trouble
    for path in found.unknown:
        assert _at(made, path)
    fields(kind, found.record, data.draw(st.sampled_from(BIKES)))


def _at(data: Any, path: Path) -> bool:
    """Tell whether something stands in the data at a path."""
    for key in path:
        if not isinstance(data, dict) or key not in data:
            return False
        data = data[key]
    return True
