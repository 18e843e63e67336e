"""Records of the sample garage as a line is read against them."""

import datetime as dt
import functools
from typing import Any

import attrs

from paddock_tui.entry import LineContext
from paddock_tui.records.edits import Missing, Value
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref, parse
from tests.sample import FILES, bike, data_of, read

NOW = dt.datetime(2026, 6, 20, 13, 45, 12)

MAGPIE = Ref("session", "2026-06-20-4-magpie")
OTTER = Ref("session", "2026-05-16-4-otter")
BADGER = Ref("session", "2026-04-18-3-badger")
RIDDEN = Ref("session", "2026-06-20-2-magpie")
PROFILE = Ref("profile", "magpie-ines-dry")
RIDER = Ref("rider", "ines")
TYRES = Ref("tyres", "otter-slick")

Edits = dict[Path, Value | Missing]


def _ids(kind: str) -> tuple[str, ...]:
    return tuple(ref.id for ref in FILES if ref.kind == kind)


def context(ref: Ref, **other: Any) -> LineContext:
    """Give a sample record in the afternoon of its last day, with what `other` says."""
    return attrs.evolve(_context(ref), **other) if other else _context(ref)


@functools.cache
def _context(ref: Ref) -> LineContext:
    data = data_of(ref)
    of_bike = ref.kind in ("session", "profile")
    return LineContext(
        kind=ref.kind,
        record=read(ref).record,
        data=data,
        now=NOW,
        bike=bike(data["bike"]) if of_bike else None,
        ids=_ids,
    )


def without_bike(record: Record, data: dict[str, Any]) -> LineContext:
    """Give a session whose bike is not known."""
    return LineContext("session", record, data, NOW)


def by_path(values: dict[str, Value | Missing]) -> Edits:
    """Write edits by their spelled paths."""
    found: Edits = {}
    for spelled, value in values.items():
        path = parse(spelled)
        assert path is not None
        found[path] = value
    return found
