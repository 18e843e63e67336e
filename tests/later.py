"""A library that is loaded when it is first used: each worker collects all tests, and runs some of them."""

from importlib import import_module
from typing import Any


class Later:
    """Stands for a module until one of its names is asked for."""

    def __init__(self, name: str) -> None:
        self._name = name

    def __getattr__(self, name: str) -> Any:
        """Return what the module has of that name; what pytest asks of all that it collects is none of it."""
        if name.startswith(("_", "pytest")):
            raise AttributeError(name)
        return getattr(import_module(self._name), name)
