"""The fields of one record in hand: what is declared, with real keys, and what its bike adds."""

from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.fields import find_spec, specs
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes import Shape
from paddock_tui.records.shapes_of_bike import choice_shape, label_at, label_of, offered

SET_UP = "setup"

_READ_MODES = (("dash", "planned_mode"), ("dash", "shown_mode"))
"""Values outside the set-up that name one of the bike's riding modes."""


@attrs.frozen
class Field:
    """One value of one record: where it stands, how it is read and shown, and what it is.

    `section` names the headings it stands under, outermost first.
    """

    path: Path
    label: str
    section: tuple[str, ...]
    shape: Shape[Any]
    help: str
    call: str = ""
    carry: bool = False


def fields(kind: str, record: Record, bike: Bike | None = None) -> tuple[Field, ...]:
    """List the fields of a record in the order of their declarations.

    A set-up has a field for each control, adjuster and offset of the bike, set or not; other tables
    that grow have fields for the keys that are there.
    """
    own = _own(CLASSES[kind], record, (), ())
    if bike is None or not hasattr(record, SET_UP):
        return tuple(own)
    extra = {field.path: field for field in _of_bike(record, bike)}
    found = [_on(bike, extra.pop(field.path, field)) for field in own]
    at = next((place for place, field in enumerate(found) if field.path[0] == SET_UP), len(found))
    end = at + sum(1 for field in found if field.path[0] == SET_UP)
    return tuple(_in_order(found[:at], found[at:end] + list(extra.values()), found[end:]))


def field_at(kind: str, path: Path, record: Record | None = None, bike: Bike | None = None) -> Field | None:
    """Return the field at a path, whether a value stands there or not; None where nothing is declared."""
    if bike is not None and record is not None and path[:1] == (SET_UP,):
        found = _by_path(record, bike).get(path)
        if found is not None:
            return found
    spec = find_spec(CLASSES[kind], path) if kind in CLASSES else None
    if spec is None or spec.shape is None:
        return None
    label = spec.label if not spec.keys else label_of(path[-1])
    section = tuple(_headings(CLASSES[kind], path))
    field = Field(path, label, section, spec.shape, spec.help, spec.call, spec.carry)
    return field if bike is None else _on(bike, field)


def _on(bike: Bike, field: Field) -> Field:
    """Return a field with the words of this bike, where it names one of its riding modes."""
    if field.path not in _READ_MODES:
        return field
    return attrs.evolve(field, shape=choice_shape(bike, "mode", None))


def _headings(cls: type, path: Path) -> Iterator[str]:
    """Return the headings above the value at a path: the labels of its tables, and the keys chosen there."""
    spec = specs(cls)[path[0]][1]
    chosen = path[1 : 1 + len(spec.keys)]
    if spec.record is not None:
        yield from (spec.label, *map(label_of, chosen))
        yield from _headings(spec.record, path[1 + len(spec.keys) :])
    elif chosen:
        yield from (spec.label, *map(label_of, chosen[:-1]))


def _own(cls: type, record: Any, at: Path, section: tuple[str, ...]) -> Iterator[Field]:
    for key, (name, spec) in specs(cls).items():
        value = getattr(record, name)
        for keys, inner in below(value, len(spec.keys)):
            path = (*at, key, *keys)
            if spec.shape is not None:
                label = label_of(keys[-1]) if keys else spec.label
                heading = (*section, spec.label, *map(label_of, keys[:-1])) if keys else section
                yield Field(path, label, heading, spec.shape, spec.help, spec.call, spec.carry)
            elif spec.record is not None:
                yield from _own(spec.record, inner, path, (*section, spec.label, *map(label_of, keys)))


def below(value: Any, depth: int) -> Iterator[tuple[Path, Any]]:
    """List what stands below `depth` chosen keys, with those keys."""
    if depth == 0:
        yield (), value
        return
    for key, inner in value.items() if isinstance(value, Mapping) else ():
        for keys, deeper in below(inner, depth - 1):
            yield (key, *keys), deeper


_MOST = 16
_BY_PATH: dict[tuple[int, str | None], tuple[Bike, dict[Path, Field]]] = {}
"""What bikes add, by the bike's identity and the damping mode; the bike is held, so that it stays its own."""


def _by_path(record: Any, bike: Bike) -> Mapping[Path, Field]:
    """Return what a bike adds to a record, by its places: thousands of changes are said of one bike."""
    asked = id(bike), record.setup.damping
    kept = _BY_PATH.get(asked)
    if kept is None or kept[0] is not bike:
        if len(_BY_PATH) >= _MOST:
            _BY_PATH.clear()
        kept = _BY_PATH[asked] = bike, {field.path: field for field in reversed([*_of_bike(record, bike)])}
    return kept[1]


def _of_bike(record: Any, bike: Bike) -> Iterator[Field]:
    setup = record.setup
    headings = {"controls": "controls", "adjusters": "adjusters", "offsets": "offsets"}
    for key in ("mode", "damping", "preset"):
        spec = specs(type(setup))[key][1]
        shape = choice_shape(bike, key, setup.damping)
        yield Field((SET_UP, key), spec.label, ("set-up",), shape, spec.help, spec.call, True)
    for place in offered(bike, setup.damping):
        section = ("set-up", headings[place.path[0]])
        yield Field((SET_UP, *place.path), place.label, section, place.shape, place.help, place.call, True)


def _in_order(before: list[Field], setup: list[Field], after: list[Field]) -> Iterator[Field]:
    """Put the bike's own fields beside the others of their heading, headings in the order first seen."""
    yield from before
    headings: dict[tuple[str, ...], list[Field]] = {}
    for field in setup:
        headings.setdefault(field.section, []).append(field)
    for group in headings.values():
        yield from group
    yield from after


def label_in(kind: str, path: Path) -> str:
    """Return the label of a value of a record; where no field is declared for it, its key as words."""
    field = field_at(kind, path)
    return field.label if field is not None else label_at(path)
