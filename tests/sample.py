"""The sample garage, read once for the tests that look at it."""

import functools
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.paths import FOLDERS, GARAGE, Ref
from paddock_tui.records.reading import RecordRead, read_record

SAMPLE = Path(__file__).parent.parent / "sample_garage"

FILES: dict[Ref, Path] = {GARAGE: SAMPLE / "garage.toml"} | {
    Ref(kind, path.stem): path
    for kind, folder in FOLDERS.items()
    for path in sorted((SAMPLE / folder).rglob("*.toml"))
}
"""Every file of the sample by the record it holds."""


@functools.cache
def data_of(ref: Ref) -> dict[str, Any]:
    return tomllib.loads(FILES[ref].read_text(encoding="utf-8"))


@functools.cache
def read(ref: Ref) -> RecordRead:
    data = data_of(ref)
    has_bike = ref.kind in ("session", "profile")
    return read_record(ref.kind, data, bike(data["bike"]) if has_bike else None)


@functools.cache
def bike(name: str) -> Bike:
    found = read(Ref("bike", name)).record
    assert isinstance(found, Bike)
    return found


def records(cls: type[Record]) -> Iterator[tuple[str, Any]]:
    """List id and record of every file of one class."""
    for ref in FILES:
        if CLASSES[ref.kind] is cls:
            yield ref.id, read(ref).record


def named(cls: type[Record]) -> list[Any]:
    return [pytest.param(record, id=name) for name, record in records(cls)]


def amount(value: Quantity | str | None, unit: str) -> float:
    """Give a quantity in a unit; the sample must hold one there."""
    assert isinstance(value, Quantity), value
    return value.to(unit)
