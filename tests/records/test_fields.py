"""What is declared of every record: words, shapes, paths; and the fields of a record in hand."""

import re
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest

from paddock_tui.records.bike import Bike
from paddock_tui.records.fields import ANY, Declared, declared, find_spec, specs, value_at
from paddock_tui.records.fields_of_record import field_at, fields
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import KINDS, Path
from paddock_tui.records.reading import read_record
from paddock_tui.records.shapes import LevelSetting, Number
from tests.every import every
from tests.rules.situations import BIKE_UP, DAY, SESSION, TYRES

EVERY = [
    pytest.param(kind, one, id=f"{kind}.{'.'.join(one.path)}")
    for kind in CLASSES
    for one in declared(CLASSES[kind])
]

KEYS = ("traction", "1", "front", "alone", "8000")
"""One of these fits every rule for keys that the owner chooses."""


def real(record: type, path: Path) -> Path:
    """Put a key that fits where the owner chooses one."""
    if not path:
        return ()
    spec = specs(record)[path[0]][1]
    chosen = tuple(next(key for key in KEYS if re.fullmatch(rule, key)) for rule in spec.keys)
    rest = path[1 + len(chosen) :]
    return (path[0], *chosen, *(real(spec.record, rest) if spec.record is not None else ()))


def test_every_kind_of_record_has_a_class() -> None:
    assert set(CLASSES) == set(KINDS)


@every(("kind", "one"), EVERY)
def test_every_field_has_label_help_and_shape(kind: str, one: Declared) -> None:
    assert kind in CLASSES
    assert 0 < len(one.label) <= 30
    assert "_" not in one.label
    assert len(one.help) >= 8
    assert not one.help.endswith(".")
    assert one.shape.expected


@every("kind", CLASSES)
def test_no_path_is_declared_twice(kind: str) -> None:
    counted = Counter(one.path for one in declared(CLASSES[kind]))
    assert [path for path, times in counted.items() if times > 1] == []


@every("kind", CLASSES)
def test_no_two_fields_of_a_section_have_the_same_label(kind: str) -> None:
    counted = Counter((one.path[:-1], one.label) for one in declared(CLASSES[kind]) if one.path[-1] != ANY)
    assert [entry for entry, times in counted.items() if times > 1] == []


@every("kind", CLASSES)
def test_no_two_tables_of_a_record_have_the_same_label(kind: str) -> None:
    labels = [spec.label for _, spec in specs(CLASSES[kind]).values() if spec.shape is None or spec.keys]
    assert len(set(labels)) == len(labels)


@every(("kind", "one"), EVERY)
def test_every_declared_path_is_found_with_real_keys(kind: str, one: Declared) -> None:
    path = real(CLASSES[kind], one.path)
    spec = find_spec(CLASSES[kind], path)
    assert spec is not None
    assert spec.shape is one.shape
    assert find_spec(CLASSES[kind], (*path, "more")) is None
    assert find_spec(CLASSES[kind], path[:-1]) is None
    found = field_at(kind, path)
    assert found is not None
    assert (found.shape, found.help) == (one.shape, one.help)


@every(
    ("kind", "path"),
    [
        ("session", ("look", "middle", "seen")),
        ("session", ("sag", "front", "both", "extended")),
        ("session", ("laps", "0")),
        ("session", ("laps", "first")),
        ("session", ("no-such",)),
        ("session", ()),
        ("session", ("setup",)),
        ("bike", ("controls", "Traction", "kind")),
        ("bike", ("controls", "traction")),
        ("no-such-kind", ("name",)),
    ],
)
def test_what_nobody_declared_is_not_found(kind: str, path: Path) -> None:
    assert field_at(kind, path) is None


def bike(**more: Any) -> Bike:
    """The bike of the situations, with more in its file."""
    record = read_record("bike", {**BIKE_UP, **more}).record
    assert isinstance(record, Bike)
    return record


def session(**setup: Any) -> Any:
    """A session with this set-up."""
    return read_record("session", {**SESSION, "setup": setup}).record


def under(found: Iterator[Path] | list[Path], *start: str) -> list[str]:
    """List the last keys of the paths that begin so."""
    return [path[-1] for path in found if path[: len(start)] == start]


def test_a_set_up_has_a_field_for_each_control_and_adjuster_of_the_bike_set_or_not() -> None:
    paths = [field.path for field in fields("session", session(), bike())]
    assert under(paths, "setup", "controls") == list(BIKE_UP["controls"])
    assert under(paths, "setup", "adjusters") == ["front-rebound", "front-preload"]
    assert len(set(paths)) == len(paths)


def test_a_set_up_keeps_the_fields_of_values_that_the_bike_does_not_have() -> None:
    paths = [field.path for field in fields("session", session(controls={"launch": "off"}), bike())]
    assert "launch" in under(paths, "setup", "controls")
    assert "traction" in under(paths, "setup", "controls")


def test_offsets_are_those_of_the_damping_mode_in_use() -> None:
    offsets = {"range": [-4, 4]}
    with_offsets = bike(damping={"automatic": {"offsets": {"under-braking": offsets}}})
    by_hand = [field.path for field in fields("session", session(damping="by-hand"), with_offsets)]
    automatic = fields("session", session(damping="automatic"), with_offsets)
    assert under(by_hand, "setup", "offsets") == []
    (offset,) = [field for field in automatic if field.path[:2] == ("setup", "offsets")]
    assert (offset.path[-1], offset.label, offset.shape.band()) == (
        "under-braking",
        "under braking",
        (-4, 4, ""),
    )


def test_the_shape_of_a_control_is_what_the_bike_offers() -> None:
    found = {field.path[-1]: field for field in fields("session", session(), bike())}
    assert found["traction"].shape.expected == "a level from 0 to 10, or off"
    assert found["throttle"].shape.words() == ("sharp", "even", "soft")
    assert found["pit-limiter"].shape.words() == ("off", "40 km/h", "60 km/h")
    assert found["mode"].shape.words() == ("open", "showers")
    assert found["damping"].shape.words() == ("by-hand", "automatic")
    assert found["front-preload"].shape.step(6.5, 1) == 7


def test_ranges_written_from_the_other_end_step_all_the_same() -> None:
    turned = bike(
        controls={"traction": {"kind": "level", "levels": [6, 1]}},
        adjusters={"front-rebound": {"range": [24, 0], "step": 0}},
    )
    found = {field.path[-1]: field.shape for field in fields("session", session(), turned)}
    level, clicks = found["traction"], found["front-rebound"]
    assert isinstance(level, LevelSetting)
    assert isinstance(clicks, Number)
    assert [level.step(3, 1), level.step(6, 1), level.step(1, -1)] == [4, 6, 1]
    assert [clicks.step(3, 1), clicks.step(24, 1), clicks.step(0, -1)] == [4, 24, 0]


def test_a_control_without_any_word_takes_any_setting() -> None:
    empty = bike(controls={"throttle": {"kind": "choice", "choices": []}})
    found = {field.path[-1]: field.shape for field in fields("session", session(), empty)}
    assert found["throttle"].expected == "a level (a whole number) or a word in quotes"
    assert found["throttle"].step("any", 1) is None


@every(
    ("kind", "data", "with_bike"),
    [
        ("session", SESSION, True),
        ("session", SESSION, False),
        ("bike", BIKE_UP, False),
        ("day", DAY, False),
        ("tyres", TYRES, False),
    ],
)
def test_a_field_looked_up_by_its_path_is_the_one_in_the_list(
    kind: str, data: dict[str, Any], with_bike: bool
) -> None:
    record = read_record(kind, data).record
    known = bike() if with_bike else None
    listed = fields(kind, record, known)
    assert listed
    for field in listed:
        found = field_at(kind, field.path, record, known)
        assert found is not None
        assert (found.label, found.section, found.help, found.shape.expected) == (
            field.label,
            field.section,
            field.help,
            field.shape.expected,
        )


def test_a_record_has_its_values_at_the_paths_of_its_fields() -> None:
    record = read_record("session", SESSION).record
    known = {field.path: value_at(record, field.path) for field in fields("session", record)}
    assert known["surface",] == "dry"
    assert known["setup", "adjusters", "front-preload"] == 6.5
    assert str(known["pressures", "cold", "front"]) == "2.10 bar"
    assert known["best_lap",] is None
    assert value_at(record, ("setup", "controls", "no-such")) is None
    assert value_at(record, ("no-such", "path")) is None
    assert value_at(record, ("dash", "read", "deeper")) is None


def test_a_key_that_python_keeps_for_itself_stands_in_the_file_without_an_underscore() -> None:
    data = {"timetable": {"red": {"1": {"from": SESSION["start"]}}}}
    record = read_record("day", data).record
    assert value_at(record, ("timetable", "red", "1", "from")) == SESSION["start"]
