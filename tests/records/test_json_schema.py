"""Schemas against a general validator: they take the whole sample, and refuse what the reader refuses."""

import datetime as dt
import tomllib
from collections.abc import Iterator
from typing import Any

from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.json_schema import record_schema
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import FOLDERS
from paddock_tui.records.reading import read_record
from paddock_tui.records.shapes import Day, TimeOfDay
from tests.every import every
from tests.later import Later
from tests.sample import SAMPLE

jsonschema = Later("jsonschema")

TRIED: tuple[Any, ...] = (
    True,
    0,
    3,
    -7,
    10**12,
    10**12 + 1,
    2.5,
    1e13,
    "",
    " ",
    "off",
    "dry",
    "bar",
    "2.1 bar",
    "2.1bar",
    "2,1 bar",
    "31 psi",
    "-3 °C",
    "17 C",
    "0 l/100km",
    "6.5 l/100km",
    "12 mm",
    "2.1  bar",
    "1e3 mm",
    "2623",
    "5499",
    "0126",
    "190/55 ZR17 M/C (75W)",
    "190/55",
    "1:44.310",
    "1:44.310 out",
    "0:00",
    "1:61.2",
    "104.31 traffic",
    "1:44.310 pit",
    "your-bike",
    "Your Bike",
    "a" * 81,
    [],
    [1, 2],
    [1, 2.5],
    [1, 2, 3],
    [1, "two"],
    ["dry", "wet"],
    ["dry", "dry"],
    [""],
    {"a": 1},
)
"""Values that a file may hold: each must fare alike with the reader and the schema of every field."""


def as_json(data: Any) -> Any:
    """Return plain data of a TOML file as JSON has it: dates and times as ISO texts."""
    if isinstance(data, dict):
        return {key: as_json(value) for key, value in data.items()}
    if isinstance(data, list):
        return [as_json(value) for value in data]
    return data.isoformat() if isinstance(data, dt.date | dt.time) else data


@every("kind", CLASSES)
def test_each_schema_is_one_by_its_own_standard(kind: str) -> None:
    jsonschema.Draft202012Validator.check_schema(record_schema(kind))


@every("kind", CLASSES)
def test_the_whole_sample_is_valid(kind: str) -> None:
    validator = jsonschema.Draft202012Validator(record_schema(kind))
    files = [SAMPLE / "garage.toml"] if kind == "garage" else sorted((SAMPLE / FOLDERS[kind]).rglob("*.toml"))
    assert files
    for file in files:
        errors = list(validator.iter_errors(as_json(tomllib.loads(file.read_text(encoding="utf-8")))))
        assert not errors, (file.name, errors[0].json_path, errors[0].message)


@every("kind", CLASSES)
def test_reader_and_schema_refuse_the_same_values(kind: str) -> None:
    for one in declared(CLASSES[kind]):
        if isinstance(one.shape, Day | TimeOfDay):
            continue
        validator = jsonschema.Draft202012Validator(one.shape.schema())
        for raw in (*TRIED, one.shape.dump(one.shape.example())):
            refused = isinstance(one.shape.load(raw), InputError)
            assert refused != validator.is_valid(raw), (
                one.path,
                raw,
                "reader refuses" if refused else "reads",
            )


@every(("raw", "good"), [("2026-05-16", True), ("16.5.2026", False), ("2026-5-16", False), (20260516, False)])
def test_a_date_is_an_iso_text(raw: object, good: bool) -> None:
    assert jsonschema.Draft202012Validator(Day().schema()).is_valid(raw) is good


@every(
    ("raw", "good"),
    [("10:40:00", True), ("24:00:00", False), ("10:60:00", False), ("ten", False), (10, False)],
)
def test_a_time_of_day_is_an_iso_text_without_zone(raw: object, good: bool) -> None:
    assert jsonschema.Draft202012Validator(TimeOfDay().schema()).is_valid(raw) is good


def test_a_key_that_nobody_declared_and_a_bad_key_of_a_table_are_refused() -> None:
    validator = jsonschema.Draft202012Validator(record_schema("session"))
    assert validator.is_valid({"laps": {"1": "1:44.3"}})
    assert not validator.is_valid({"lapse": {"1": "1:44.3"}})
    assert not validator.is_valid({"laps": {"first": "1:44.3"}})


def test_labels_and_helps_stand_in_the_schema() -> None:
    for kind, cls in CLASSES.items():
        found = record_schema(kind)
        for one in declared(cls):
            if len(one.path) == 1:
                here = found["properties"][one.path[0]]
                assert (here["title"], here.get("description", "")) == (one.label, one.help)


def _leaves(data: Any, at: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    for key, value in data.items():
        yield from _leaves(value, (*at, key)) if isinstance(value, dict) else ((*at, key),)


def _with(data: Any, leaf: tuple[str, ...], value: Any) -> None:
    for key in leaf[:-1]:
        data = data[key]
    data[leaf[-1]] = value


@every("kind", CLASSES)
def test_a_record_with_other_values_fails_where_the_reader_says_so_too(kind: str) -> None:
    """Each value of the sample's records is replaced by the next one of those tried, all at once."""
    validator = jsonschema.Draft202012Validator(record_schema(kind))
    files = [SAMPLE / "garage.toml"] if kind == "garage" else sorted((SAMPLE / FOLDERS[kind]).rglob("*.toml"))
    tried = [one for one in TRIED if not isinstance(one, dict)]
    refused = 0
    for turn, file in enumerate(files * 2):
        data = tomllib.loads(file.read_text(encoding="utf-8"))
        leaves = list(_leaves(data))
        for place, leaf in enumerate(leaves):
            _with(data, leaf, tried[(7 * turn + place) % len(tried)])
        read = read_record(kind, data)
        said = {one.path for one in read.troubles} | set(read.unknown)
        errors = {tuple(map(str, one.absolute_path)) for one in validator.iter_errors(as_json(data))}
        for leaf in leaves:
            by_reader = any(path[: len(leaf)] == leaf for path in said)
            by_schema = any(path[: len(leaf)] == leaf for path in errors)
            refused += by_reader
            assert by_reader == by_schema, (file.name, leaf, "the reader refuses" if by_reader else "reads")
    assert refused > len(files)
