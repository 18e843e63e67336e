"""The declaration of fields: one place says label, shape and help of each value of a record.

A record class is an attrs class whose attributes are made by the four functions below. The same
declaration reads the file, renders the row, reads the keyboard and documents the format.
"""

import functools
import re
from collections.abc import Hashable, Iterator, Mapping
from typing import Any, Literal, cast

import attrs

from paddock_tui.quick_classes import metadata_of
from paddock_tui.records.paths import ANY as ANY
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes.base import Shape

NUMBERED = r"[1-9]\d{0,3}"
"""The rule for the keys of tables that grow: plain numbers."""

NAMED = r"[a-z0-9]+([._-][a-z0-9]+)*"
"""The rule for keys that the owner names: lower case, digits, hyphens."""

ENDS = "front|rear"

Nature = Literal["one", "values", "nested values", "table", "tables", "nested"]

CHOSEN_KEYS = {"one": 0, "values": 1, "nested values": 2, "table": 0, "tables": 1, "nested": 2}
"""How many keys that the owner chooses stand below the key of a declaration."""


@attrs.frozen
class Spec:
    """What is declared of one attribute of a record class."""

    nature: Nature
    label: str
    help: str = ""
    shape: Shape[Any] | None = None
    record: type | None = None
    key: str = ""
    keyed_by: str = ""
    keys: tuple[str, ...] = ()
    call: str = ""
    carry: bool = False


@attrs.frozen
class Declared:
    """One kind of value that a record may hold; `path` has ANY where the owner chooses the key."""

    path: Path
    label: str
    help: str
    shape: Shape[Any]
    call: str
    carry: bool


def one(
    shape: Shape[Any], label: str, help_text: str, *, call: str = "", carry: bool = False, key: str = ""
) -> Any:
    """Declare a single value. `key` is its key in the file where that is not a Python name."""
    spec = Spec("one", label, help_text, shape, key=key, call=call, carry=carry)
    return attrs.field(default=None, metadata={"spec": spec})


def values(
    shape: Shape[Any], label: str, help_text: str, *, keyed_by: str, keys: str = NAMED, carry: bool = False
) -> Any:
    """Declare a table of single values under keys that the owner chooses; `keys` is the rule for them."""
    spec = Spec("values", label, help_text, shape, keyed_by=keyed_by, keys=(keys,), carry=carry)
    return attrs.field(factory=dict, metadata={"spec": spec})


def nested_values(shape: Shape[Any], label: str, help_text: str, *, keyed_by: str) -> Any:
    """Declare single values under two chosen keys, outer and inner."""
    spec = Spec("nested values", label, help_text, shape, keyed_by=keyed_by, keys=(NAMED, NAMED))
    return attrs.field(factory=dict, metadata={"spec": spec})


def table(record: type, label: str, *, carry: bool = False) -> Any:
    """Declare a table with declared fields of its own."""
    return attrs.field(factory=record, metadata={"spec": Spec("table", label, record=record, carry=carry)})


def tables(record: type, label: str, *, keyed_by: str, keys: str = NAMED) -> Any:
    """Declare tables of one class under keys that the owner chooses; `keys` is the rule for them."""
    spec = Spec("tables", label, record=record, keyed_by=keyed_by, keys=(keys,))
    return attrs.field(factory=dict, metadata={"spec": spec})


def nested(record: type, label: str, *, keyed_by: str, keys: tuple[str, str] = (NAMED, NAMED)) -> Any:
    """Declare tables of one class under two chosen keys, outer and inner, each with its rule."""
    spec = Spec("nested", label, record=record, keyed_by=keyed_by, keys=keys)
    return attrs.field(factory=dict, metadata={"spec": spec})


def specs(record: type) -> Mapping[str, tuple[str, Spec]]:
    """Return the attributes of a record class: key in the file -> (attribute name, declaration)."""
    return _specs(cast(Hashable, record))


@functools.cache
def _specs(record: Hashable) -> Mapping[str, tuple[str, Spec]]:
    found: dict[str, tuple[str, Spec]] = {}
    for name, metadata in metadata_of(cast(type, record)):
        spec: Spec | None = metadata.get("spec")
        if spec is not None:
            found[spec.key or name] = (name, spec)
    return found


@functools.cache
def _specs_of(cls: Hashable) -> Mapping[str, tuple[str, Spec]]:
    """Return the attributes of a class as `specs` does; of one that is no record none."""
    return _specs(cls) if attrs.has(cast(type, cls)) else {}


def declared(record: type, at: Path = ()) -> Iterator[Declared]:
    """List every kind of value of a record class, in the order of the declarations."""
    for key, (_, spec) in specs(record).items():
        here = (*at, key, *[ANY] * CHOSEN_KEYS[spec.nature])
        if spec.shape is not None:
            yield Declared(here, spec.label, spec.help, spec.shape, spec.call, spec.carry)
        elif spec.record is not None:
            yield from declared(spec.record, here)


def find_spec(record: type, path: Path) -> Spec | None:
    """Return the declaration of the value at a path of real keys; None where nothing is declared there."""
    known = specs(record).get(path[0]) if path else None
    if known is None:
        return None
    spec = known[1]
    chosen = path[1 : 1 + len(spec.keys)]
    if not all(re.fullmatch(rule, key) for rule, key in zip(spec.keys, chosen, strict=False)):
        return None
    rest = path[1 + CHOSEN_KEYS[spec.nature] :]
    if spec.record is not None:
        return find_spec(spec.record, rest)
    return spec if not rest and len(path) == 1 + CHOSEN_KEYS[spec.nature] else None


def find_table(record: type, path: Path) -> Spec | None:
    """Return the declaration of the table that grows at a path of real keys; None where there is none."""
    known = specs(record).get(path[0]) if path else None
    if known is None:
        return None
    spec = known[1]
    rest = path[1 + len(spec.keys) :]
    if len(path) == 1:
        return spec if spec.keys else None
    return find_table(spec.record, rest) if rest and spec.record is not None else None


def entry_of(record: type, path: Path) -> tuple[Path, Path] | None:
    """Return the innermost table that grows around a path, and the entry of it that the path lies in."""
    known = specs(record).get(path[0]) if path else None
    if known is None:
        return None
    spec = known[1]
    depth = 1 + len(spec.keys)
    inner = entry_of(spec.record, path[depth:]) if spec.record is not None and len(path) > depth else None
    if inner is not None:
        return (*path[:depth], *inner[0]), (*path[:depth], *inner[1])
    return (path[:1], path[:depth]) if spec.keys and len(path) >= depth else None


def value_at(record: Any, path: Path) -> Any:
    """Return the value that a record holds at a path of real keys; None where it is not known."""
    here = record
    for key in path:
        if here is None:
            return None
        cls = here.__class__
        if cls is dict or isinstance(here, Mapping):
            here = here.get(key)
            continue
        known = _specs_of(cls).get(key)
        here = getattr(here, known[0]) if known else None
    return here
