"""Names of a package that are loaded when they are first asked for: nobody waits for what others need.

What a registry holds is asked for as a whole (`Whole`).
"""

import contextlib
import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any, ClassVar


def on_demand(package: str, homes: Mapping[str, str]) -> Callable[[str], object]:
    """Return the `__getattr__` of a package whose names stand in modules of its own, by name.

    Whoever imports a module of the package by its whole name loads none of the others.
    """

    def get(name: str) -> object:
        home = homes.get(name)
        if home is None:
            raise AttributeError(f"module {package!r} has no attribute {name!r}", name=name)
        found = getattr(import_module(f"{package}.{home}"), name)
        setattr(sys.modules[package], name, found)
        return found

    return get


def load_declared() -> None:
    """Load what stands behind every `Later`; what fails to load here fails where it is used."""
    for module in list(Later.declared):
        with contextlib.suppress(Exception):
            import_module(module)
    Later.is_loaded = True


class Whole:
    """Whether all parts of a registry are loaded: nothing may be judged by some of them."""

    def __init__(self, what: str, module: str) -> None:
        self._what, self._module = what, module
        self._is_whole = False

    def set(self) -> None:
        """Note that every part is loaded."""
        self._is_whole = True

    def require(self) -> None:
        """Raise RuntimeError where some parts are not loaded."""
        if not self._is_whole:
            raise RuntimeError(f"{self._what} are not all loaded: import {self._module} before")


def load_later(*modules: str) -> None:
    """Have modules loaded after the first page, though a function that needs one loads it by itself."""
    Later.declared.extend(modules)


class Later:
    """Functions of a module that is loaded when one of them is first called."""

    declared: ClassVar[list[str]] = []
    """The modules that any of these stands for: first what is needed soon, else as they were declared."""

    is_loaded: ClassVar[bool] = False
    """Whether all of them are loaded, so that nothing waits for one."""

    def __init__(self, module: str, *, soon: bool = False) -> None:
        self._module = module
        if soon:
            self.declared.insert(0, module)
        else:
            self.declared.append(module)

    def __call__(self, name: str) -> Callable[..., Any]:
        """Return what calls one of them."""

        def call(*given: Any, **named: Any) -> Any:
            module = sys.modules.get(self._module) if Later.is_loaded else None
            return getattr(module or import_module(self._module), name)(*given, **named)

        call.__name__ = name
        return call


def soon(module: str, *names: str) -> tuple[Callable[..., Any], ...]:
    """Return functions of a module that is loaded before all others of these."""
    return tuple(map(Later(module, soon=True), names))
