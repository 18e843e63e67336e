"""Methods of attrs classes, compiled when they are first called: most that a command loads never are.

attrs writes `__init__`, `__eq__`, `__hash__` and `__repr__` of each class as source and compiles it at once,
which is half of what a class costs. Here each gets a function that compiles its own source at its first call,
and then is that method. `begin` stands on a private part of attrs: where that is not as it is known, nothing
is changed.
"""

import inspect
from types import CodeType, FunctionType
from typing import Any

import attr

_KNOWN = ("_script_snippets", "_cls_dict", "_cls")
"""What a builder of attrs holds, as it is known here."""


def begin() -> bool:
    """Have classes that are made from now on compile their methods late; whether attrs is as it is known."""
    builder: Any = getattr(getattr(attr, "_make", None), "_ClassBuilder", None)
    if not is_known(builder):
        return False
    own, builder._eval_snippets = builder._eval_snippets, _attach_stubs
    if not _works():
        builder._eval_snippets = own
        return False
    return True


def _works() -> bool:
    """Return whether a class that is made so does what it should: attrs may mean something else by a name."""
    try:
        made: Any = attr.make_class("_Tried", ["value"])
        return bool(made(1) == made(1) != made(2) and made(1).value == 1)
    except Exception:
        return False


def is_known(builder: Any) -> bool:
    """Return whether attrs' builder of classes still is what is replaced here."""
    method = getattr(builder, "_eval_snippets", None)
    held = getattr(builder, "__slots__", ())
    return (
        method is not None
        and all(name in held for name in _KNOWN)
        and list(inspect.signature(method).parameters) == ["self"]
    )


def _attach_stubs(builder: Any) -> None:
    """Give a class what stands for each of its methods until that is called."""
    for source, names, attach in builder._script_snippets:
        attach(builder._cls_dict, _Stubs(source, names, f"<attrs methods of {builder._cls.__qualname__}>"))


class _Stubs(dict[str, Any]):
    """The methods that a source defines, as attrs asks for them by name."""

    def __init__(self, source: str, names: dict[str, Any], file: str) -> None:
        super().__init__()
        self._source, self._names, self._file = source, names, file

    def __missing__(self, name: str) -> Any:
        """Return what stands for a method until that is called."""
        names = {**self._names, "_compile_and_call": self._compile_and_call}
        stub = FunctionType(_STUB, names, name)
        names["_stub"] = stub
        self[name] = stub
        return stub

    def _compile_and_call(self, stub: Any, given: tuple[Any, ...], named: dict[str, Any]) -> Any:
        """Make a stub the method that it stands for, and call it: the code comes last, for other threads."""
        made: dict[str, Any] = {}
        exec(compile(self._source, self._file, "exec"), stub.__globals__, made)
        method = made[stub.__name__]
        stub.__defaults__, stub.__kwdefaults__ = method.__defaults__, method.__kwdefaults__
        stub.__code__ = method.__code__
        return stub(*given, **named)


def _stub_code() -> CodeType:
    made: dict[str, Any] = {}
    exec("def stub(*given, **named): return _compile_and_call(_stub, given, named)", {}, made)
    code: CodeType = made["stub"].__code__
    return code


_STUB = _stub_code()
