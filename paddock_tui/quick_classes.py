"""Classes of attrs, made without compiling their methods: most of what a start took went into these.

attrs writes the methods of each class as source, compiles it, and describes every field, which few ever ask
for. Here a class of this package gets its slots and its methods at once. The code of a method for so many
fields is compiled when the first such method is called, and each class has it with the names of its fields.
What describes the fields (`__attrs_attrs__`) is made by attrs when it is first asked for, so that
`attrs.fields`, `attrs.evolve` and cattrs know these classes like any other. A class that asks for more than
is known here is left to attrs; and where attrs is not as it is known here, all are.
"""

import functools
from collections.abc import Mapping
from types import FunctionType
from typing import Any, ClassVar

import attr
import attrs

from paddock_tui.quick_methods import (
    DECLARED,
    NOTHING,
    Field,
    eq_code,
    hash_code,
    init_method,
    over_fields,
    put_rest_method,
    repr_method,
    state_methods,
    worked_out,
)

_OWN_FROZEN, _OWN_DEFINE = attrs.frozen, attrs.define
_READ = frozenset(("_default", "_validator", "alias", "converter", "eq", "eq_key", "hash", "init", "kw_only"))
_READ |= {"on_setattr", "repr"}
"""What attrs' declaration of a field holds, as far as it is read here."""
_LEFT_TO_ATTRS = frozenset(("__init__", "__eq__", "__ne__", "__hash__", "__lt__", "__slots__"))
_LEFT_TO_ATTRS |= {"__setattr__", "__delattr__", "__getattr__", "__getstate__", "__setstate__", "__replace__"}
_LEFT_TO_ATTRS |= {"__match_args__", "__attrs_pre_init__", "__attrs_init_subclass__"}
"""What a class may have of its own that is not known here."""
_FIELDS = "__attrs_attrs__"
_CLASS_VARIABLE: Any = type(ClassVar[int])


def begin() -> bool:
    """Have classes of this package be made here from now on; whether attrs is as it is known."""
    if attrs.frozen is not _OWN_FROZEN:
        return True
    if not is_known(DECLARED) or not _works():
        return False
    for name, own in (("frozen", _OWN_FROZEN), ("define", _OWN_DEFINE)):
        setattr(attrs, name, functools.partial(_decorated, own))
    return True


def is_known(declared: type) -> bool:
    """Return whether attrs' declaration of a field still holds what is read here."""
    return set(getattr(declared, "__slots__", ())) >= _READ


def _works() -> bool:
    """Return whether a class made here does what it should: attrs may mean something else by a name."""
    body = {"__module__": __name__, "__annotations__": {"_a": int, "b": list}, "b": attrs.field(factory=list)}
    try:
        made: Any = _made(type("_Tried", (), body), is_frozen=True)
        one = attrs.evolve(made(1, [2]), a=3)
        return bool(one == made(3, [2]) != made(2) and made(3).b == [])
    except Exception:
        return False


def _decorated(own: Any, cls: Any = None, /, **how: Any) -> Any:
    """Make a class as `attrs.frozen` or `attrs.define` is asked to, which is the first given."""
    if cls is None:
        return functools.partial(_decorated, own, **how)
    if how.keys() <= {"eq"} and cls.__module__.startswith("paddock_tui."):
        made = _made(cls, is_frozen=own is _OWN_FROZEN, eq=how.get("eq", True))
        if made is not None:
            return made
    return own(cls, **how)


def metadata_of(cls: type) -> list[tuple[str, Mapping[Any, Any]]]:
    """List the fields of a class with what was declared beside each, which takes no description by attrs."""
    described = vars(cls)[_FIELDS]
    if described.__class__ is not _Described:
        return [(one.name, one.metadata) for one in described]
    return [(one.name, getattr(one.declared, "metadata", {})) for one in described.fields]


class _Described:
    """What describes the fields of a class, made by attrs when it is first asked for."""

    __slots__ = ("_declared", "_made", "cached", "fields", "is_frozen")

    def __init__(self, declared: type, fields: list[Field], *, is_frozen: bool) -> None:
        self._declared, self.fields, self.is_frozen = declared, fields, is_frozen
        self.cached = [
            name for name, value in vars(declared).items() if value.__class__ is functools.cached_property
        ]
        self._made: Any = None

    def __get__(self, instance: object, owner: type) -> Any:
        """Return the fields as attrs has them."""
        if self._made is None:
            self._made = self._made_by_attrs()
        return self._made

    def _made_by_attrs(self) -> tuple[Any, ...]:
        """Have attrs begin with the class, and stop it once it knows the fields: the methods are there."""
        own = vars(self._declared).get("__annotations__", {})
        these = {
            one.name: one.declared or attr.ib(default=one.default) for one in self.fields if one.name in own
        }
        try:
            attr.s(self._declared, these=these, field_transformer=_stop, collect_by_mro=True)
        except _Known as known:
            return known.fields
        raise TypeError(self._declared)


class _Known(Exception):
    """The fields of a class are known."""

    def __init__(self, fields: tuple[Any, ...]) -> None:
        super().__init__()
        self.fields = fields


def _stop(_: type, fields: list[Any]) -> list[Any]:
    raise _Known(tuple(fields))


def _made(cls: Any, *, is_frozen: bool, eq: bool = True) -> Any:
    """Return the class that is made of one that was declared; None to leave it to attrs."""
    fields = _fields(cls, is_frozen=is_frozen)
    if fields is None:
        return None
    body = dict(vars(cls))
    names = [one.name for one in fields]
    described = body[_FIELDS] = _Described(cls, fields, is_frozen=is_frozen)
    for name in (*names, "__dict__", "__weakref__"):
        body.pop(name, None)
    cells = _cells(body)
    asked = [one for one in fields if one.init]
    if any(one.kw_only for one in asked):
        asked.sort(key=_is_by_name)
    setters: dict[str, Any] = {}
    body["__init__"] = init_method(cls, asked, setters, rest=len(asked) != len(fields))
    body["__match_args__"] = tuple([one.name for one in asked if not one.kw_only])
    body["__slots__"] = _slots(cls, [*names, *described.cached])
    body["__qualname__"] = cls.__qualname__
    _add_methods(cls, described, body, eq=eq)
    made: Any = type(cls.__name__, cls.__bases__, body)
    for cell in cells:
        cell.cell_contents = made
    for place, one in enumerate(asked):
        setters[f"put{place}"] = one.setter(getattr(made, one.name).__set__)
    if len(asked) != len(fields):
        rest = [one for one in fields if not one.init and one.default is not NOTHING]
        setters["put_rest"] = put_rest_method(
            [(one.setter(getattr(made, one.name).__set__), one) for one in rest]
        )
    return made


def _add_methods(cls: type, described: _Described, body: dict[str, Any], *, eq: bool) -> None:
    """Give the body of a class all its methods but `__init__`."""
    fields = described.fields
    if described.is_frozen:
        body["__setattr__"], body["__delattr__"] = _FROZEN_METHODS
    if eq:
        compared = [one.name for one in fields if one.eq]
        body["__eq__"], body["__ne__"] = over_fields(cls, "__eq__", eq_code, compared), _NE
        body["__hash__"] = over_fields(cls, "__hash__", hash_code, compared) if described.is_frozen else None
    if "__repr__" not in body:
        body["__repr__"] = repr_method([(one.name, one.init) for one in fields if one.repr])
    if described.cached:
        body["__getattr__"] = worked_out({name: body.pop(name).func for name in described.cached})
    body["__getstate__"], body["__setstate__"] = state_methods([one.name for one in fields])


def _is_by_name(one: Field) -> bool:
    return one.kw_only


def _fields(cls: Any, *, is_frozen: bool) -> list[Field] | None:
    """Return the fields of a class, with those of its base first; None where something is not known here."""
    body = vars(cls)
    above = _fields_above(cls, is_frozen=is_frozen)
    if type(cls) is not type or above is None or not _LEFT_TO_ATTRS.isdisjoint(body):
        return None
    kinds = body.get("__annotations__", {})
    own = [Field(name, body.get(name, NOTHING)) for name, kind in kinds.items() if not _is_of_class(kind)]
    if any(value.__class__ is DECLARED and name not in kinds for name, value in body.items()):
        return None
    names = {one.name for one in own}
    fields = [one for one in above if one.name not in names] + own if above else own
    return fields if all(one.is_known() for one in own) and _is_in_order(fields) else None


def _fields_above(cls: Any, *, is_frozen: bool) -> list[Field] | None:
    """Return the fields of the base that has some; None where that is not made here, or is one of several."""
    having = [base for base in cls.__mro__[1:-1] if _FIELDS in vars(base)]
    if not having:
        return None if issubclass(cls, BaseException) else []
    described = vars(having[0])[_FIELDS]
    if len(cls.__bases__) > 1 or described.__class__ is not _Described or described.is_frozen != is_frozen:
        return None
    if described.cached:
        return None
    return list(described.fields)


def _is_of_class(kind: Any) -> bool:
    """Return whether an annotation is that of a variable of the class, which is no field."""
    if kind.__class__ is str:
        return "ClassVar" in kind
    return kind is ClassVar or (kind.__class__ is _CLASS_VARIABLE and kind.__origin__ is ClassVar)


def _is_in_order(fields: list[Field]) -> bool:
    """Return whether no field that has to be given comes after one that need not."""
    need = [one.default is NOTHING for one in fields if one.init and not one.kw_only]
    return need == sorted(need, reverse=True)


def _slots(cls: type, names: list[str]) -> tuple[str, ...]:
    """Return the slots that no base has."""
    slots = (*names, "__weakref__")
    if cls.__bases__ == (object,):
        return slots
    above = {name for base in cls.__mro__[1:-1] for name in vars(base).get("__slots__", ())}
    above |= {"__weakref__" for base in cls.__mro__[1:-1] if "__weakref__" in vars(base)}
    return tuple(name for name in slots if name not in above)


_HOLDERS: dict[type, str] = {property: "fget", classmethod: "__func__", staticmethod: "__func__"}
_HOLDERS[functools.cached_property] = "func"
"""What holds a method, and where."""


def _cells(body: dict[str, Any]) -> list[Any]:
    """Return where methods keep their class, as those with `super()` do: it is another once it is made."""
    cells = []
    for value in body.values():
        method = value
        if value.__class__ in _HOLDERS:
            method = getattr(value, _HOLDERS[value.__class__])
        if method.__class__ is FunctionType and "__class__" in method.__code__.co_freevars:
            place = method.__code__.co_freevars.index("__class__")
            cells.append((method.__closure__ or ())[place])
    return cells


@_OWN_FROZEN
class _Frozen:
    """A class as attrs makes it, for the methods that are the same for all."""


_FROZEN_METHODS = [vars(_Frozen)[name] for name in ("__setattr__", "__delattr__")]
_NE = vars(_Frozen)["__ne__"]
