"""Methods of classes that are made quickly: a pattern for so many fields, with the names of a class's own."""

import functools
import threading
from collections.abc import Callable
from types import CodeType, FunctionType
from typing import Any

import attrs

NOTHING: Any = attrs.NOTHING
DECLARED: Any = type(attrs.field())
"""What `attrs.field` declares a field by."""
_FACTORY: Any = attrs.Factory
_POST = "__attrs_post_init__"


class Field:
    """A field as far as methods need to know it; `given` stands for its value where none is given."""

    __slots__ = ("declared", "default", "eq", "given", "init", "kw_only", "name", "repr")

    def __init__(self, name: str, value: Any) -> None:
        self.name = name
        if value.__class__ is DECLARED:
            self.declared, self.default, self.kw_only = value, value._default, bool(value.kw_only)
            self.init, self.eq, self.repr = value.init, value.eq, value.repr
        else:
            self.declared, self.default, self.kw_only = None, value, False
            self.init = self.eq = self.repr = True
        self.given = NOTHING if self.default.__class__ is _FACTORY else self.default

    @property
    def alias(self) -> str:
        """The name that it is given by."""
        return self.name.lstrip("_")

    def is_known(self) -> bool:
        """Return whether nothing is asked of it but what is done here."""
        one = self.declared
        if one is None:
            return True
        plain = (
            one._validator is one.converter is one.on_setattr is one.hash is one.alias is one.eq_key is None
        )
        return plain and one.repr.__class__ is bool

    def setter(self, put: Callable[[Any, Any], None]) -> Callable[[Any, Any], None]:
        """Return what sets it to what was given, or to its default where that is to be made."""
        default = self.default
        if default.__class__ is not _FACTORY:
            return put

        def put_or_make(instance: Any, value: Any) -> None:
            if value is NOTHING:
                value = default.factory(instance) if default.takes_self else default.factory()
            put(instance, value)

        return put_or_make


def init_method(cls: type, asked: list[Field], setters: dict[str, Any], *, rest: bool) -> FunctionType:
    """Return the `__init__` of a class; what it sets fields by is filled in once there is the class."""

    def complete(init: FunctionType) -> CodeType:
        positional = [one for one in asked if not one.kw_only]
        init.__defaults__ = tuple([one.given for one in positional if one.default is not NOTHING])
        init.__kwdefaults__ = {
            one.alias: one.given for one in asked if one.kw_only and one.default is not NOTHING
        }
        return _init_code(len(asked), rest=rest, post=hasattr(cls, _POST)).replace(
            co_varnames=("self", *[one.alias for one in asked]),
            co_argcount=1 + len(positional),
            co_kwonlyargcount=len(asked) - len(positional),
        )

    return _late(cls, "__init__", setters, complete)


def over_fields(cls: type, name: str, pattern: Callable[[int], CodeType], fields: list[str]) -> FunctionType:
    """Return a method over fields, by the pattern for so many."""

    def complete(_: FunctionType) -> CodeType:
        code = pattern(len(fields))
        by_place = {f"field_{place}": field for place, field in enumerate(fields)}
        return code.replace(co_names=tuple([by_place.get(one, one) for one in code.co_names]))

    return _late(cls, name, {"salt": cls.__qualname__}, complete)


def _late(
    cls: type, name: str, known: dict[str, Any], complete: Callable[[FunctionType], CodeType]
) -> FunctionType:
    """Return a method that is completed when it is first called; its code comes last, for other threads."""
    method = FunctionType(_STUB, known, name)

    def become(given: tuple[Any, ...], named: dict[str, Any]) -> Any:
        method.__module__, method.__qualname__ = cls.__module__, f"{cls.__qualname__}.{name}"
        method.__code__ = complete(method).replace(co_name=name, co_qualname=method.__qualname__)
        return method(*given, **named)

    known["become"] = become
    return method


def _compiled(source: str) -> CodeType:
    made: dict[str, Any] = {}
    exec(compile(source, "<methods of classes>", "exec"), made)
    code: CodeType = made["made"].__code__
    return code


_STUB = _compiled("def made(*given, **named): return become(given, named)")


@functools.cache
def _init_code(count: int, *, rest: bool, post: bool) -> CodeType:
    lines = [f"put{place}(self, given{place})" for place in range(count)]
    lines += ["put_rest(self)"] * rest + [f"self.{_POST}()"] * post
    given = "".join(f", given{place}" for place in range(count))
    return _compiled(f"def made(self{given}): {'; '.join(lines) or 'pass'}")


@functools.cache
def eq_code(count: int) -> CodeType:
    same = " and ".join(f"self.field_{place} == other.field_{place}" for place in range(count))
    return _compiled(
        "def made(self, other):\n"
        " if other.__class__ is not self.__class__: return NotImplemented\n"
        f" return {same or True}"
    )


@functools.cache
def hash_code(count: int) -> CodeType:
    values = "".join(f", self.field_{place}" for place in range(count))
    return _compiled(f"def made(self): return hash((salt{values}))")


def worked_out(properties: dict[str, Callable[[Any], Any]]) -> Callable[[Any, str], Any]:
    """Return the `__getattr__` of a class with cached properties, asked for what stands in no slot yet."""

    def __getattr__(self: Any, name: str) -> Any:  # noqa: N807 - a method of the class that is made
        work_out = properties.get(name)
        if work_out is None:
            raise AttributeError(
                f"{type(self).__name__!r} object has no attribute {name!r}", name=name, obj=self
            )
        found = work_out(self)
        object.__setattr__(self, name, found)
        return found

    return __getattr__


def put_rest_method(rest: list[tuple[Callable[[Any, Any], None], Field]]) -> Callable[[Any], None]:
    """Return what sets the fields that `__init__` is not given."""

    def put_rest(instance: Any) -> None:
        for put, one in rest:
            put(instance, one.given)

    return put_rest


_SHOWING: set[tuple[int, int]] = set()
"""What is being shown right now, by thread: what holds itself is not shown in itself again."""


def repr_method(names: list[tuple[str, bool]]) -> Callable[[Any], str]:
    """Return a `__repr__` that shows these fields; one that `__init__` does not set may not be there yet."""

    def __repr__(self: Any) -> str:  # noqa: N807 - a method of the class that is made
        showing = (id(self), threading.get_ident())
        if showing in _SHOWING:
            return "..."
        _SHOWING.add(showing)
        try:
            values = (
                (name, getattr(self, name) if given else getattr(self, name, NOTHING))
                for name, given in names
            )
            shown = ", ".join(f"{name}={value!r}" for name, value in values)
            return f"{type(self).__qualname__.rpartition('>.')[2]}({shown})"
        finally:
            _SHOWING.discard(showing)

    return __repr__


def state_methods(names: list[str]) -> tuple[Callable[..., Any], Callable[..., Any]]:
    """Return what copies and pickles an object take of it, and give to it."""

    def __getstate__(self: Any) -> dict[str, Any]:  # noqa: N807
        return {name: getattr(self, name) for name in names}

    def __setstate__(self: Any, state: dict[str, Any]) -> None:  # noqa: N807
        for name, value in state.items():
            object.__setattr__(self, name, value)

    return __getstate__, __setstate__
