"""All values of a record that cannot be read, or cannot be: found once the first was met (`structured`)."""

from collections.abc import Iterator, Mapping
from typing import Any

import attrs
import cattrs
from cattrs.errors import (
    AttributeValidationNote,
    ClassValidationError,
    IterableValidationError,
    IterableValidationNote,
)
from cattrs.gen import make_dict_structure_fn, override

from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.paths import Path
from paddock_tui.records.structured import Hook, UnreadableValue, as_mapping, as_table, by_shape


def structured_as_written(cls: type, raw: Mapping[str, Any]) -> Any:
    """Return the record of a table in which every value can be read, though it may be impossible."""
    return _AS_WRITTEN.structure(raw, cls)


def refused(cls: type, raw: Mapping[str, Any]) -> list[UnreadableValue]:
    """List every value of a table that cannot be read, or cannot be, each with its path."""
    try:
        _POSSIBLE.structure(raw, cls)
    except (ClassValidationError, UnreadableValue) as error:
        return list(_refused(error, ()))
    return []


def _structure_fn(cls: type, converter: cattrs.Converter) -> Hook:
    """Build the function that structures one record class, each attribute by its own shape."""
    overrides: dict[str, Any] = {}
    for key, (name, spec) in specs(cls).items():
        hook = _hook(spec, converter)
        overrides[name] = (
            override(rename=key, struct_hook=hook) if key != name else override(struct_hook=hook)
        )
    inner: Hook = make_dict_structure_fn(cls, converter, **overrides)
    return as_table(cls, inner, possible=converter is _POSSIBLE)


def _hook(spec: Spec, converter: cattrs.Converter) -> Hook:
    """Return the hook of one attribute: its shape or its class, inside as many chosen keys as are
    declared.
    """
    if spec.shape is not None:
        hook = by_shape(spec.shape, possible=converter is _POSSIBLE)
    else:
        hook = _by_class(spec.record or object, converter)
    for _ in spec.keys:
        hook = _by_key(hook)
    return hook


def _by_class(record: type, converter: cattrs.Converter) -> Hook:
    def hook(raw: Any, _: Any) -> Any:
        return converter.structure(raw, record)

    return hook


def _by_key(inner: Hook) -> Hook:
    def hook(raw: Any, as_type: Any) -> Any:
        found: dict[str, Any] = {}
        errors: list[Exception] = []
        for key, value in as_mapping(raw).items():
            try:
                found[key] = inner(value, as_type)
            except Exception as error:
                error.__notes__ = [
                    *getattr(error, "__notes__", []),
                    IterableValidationNote(key, key, as_type),
                ]
                errors.append(error)
        if errors:
            raise IterableValidationError("values that cannot be read", errors, dict)
        return found

    return hook


def _refused(error: Exception, at: Path) -> Iterator[UnreadableValue]:
    """Walk what cattrs raised and give each refusal its path."""
    if isinstance(error, UnreadableValue):
        yield type(error)(attrs.evolve(error.trouble, path=at))
    elif isinstance(error, ClassValidationError | IterableValidationError):
        for child in error.exceptions:
            yield from _refused(child, (*at, *_key_of(child, error)))
    else:
        raise error


def _key_of(child: Exception, parent: Exception) -> Path:
    """Return the key under which an error was raised: of an attribute, or one that the owner chose."""
    notes = reversed(getattr(child, "__notes__", []))
    if isinstance(parent, ClassValidationError):
        # In the file an attribute may be called otherwise: by a name that Python keeps for itself.
        keys = {name: key for key, (name, _) in specs(parent.cl).items()}
        names = (note.name for note in notes if isinstance(note, AttributeValidationNote))
        return tuple(keys[name] for name in names)[:1]
    return tuple(str(note.index) for note in notes if isinstance(note, IterableValidationNote))[:1]


_POSSIBLE = cattrs.Converter(detailed_validation=True)
_POSSIBLE.register_structure_hook_factory(attrs.has, lambda cls: _structure_fn(cls, _POSSIBLE))

_AS_WRITTEN = cattrs.Converter(detailed_validation=True)
_AS_WRITTEN.register_structure_hook_factory(attrs.has, lambda cls: _structure_fn(cls, _AS_WRITTEN))
