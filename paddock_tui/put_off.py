"""Modules of others that are loaded once something of them is asked for, though they are imported before.

The framework and the libraries import what this program never uses: encrypted sockets, checks of attributes,
what the machine is called. Each is there, and is loaded by the first name that is asked of it.
"""

import sys
import threading
from collections.abc import Sequence
from importlib.machinery import ModuleSpec, PathFinder
from types import ModuleType
from typing import Any

UNUSED = {
    "asyncio.sslproto": "_ssl",
    "attr.validators": "",
    "attrs.validators": "",
    "ipaddress": "",
    "ssl": "_ssl",
    "textwrap": "",
    "tokenize": "",
}
"""What is put off, of which whoever imports it asks nothing until it needs it; and what it cannot do without.

Where that is not there, whoever imports the module is to know it at once.
"""


def begin() -> None:
    """Put these modules off from now on; what is loaded already stays as it is."""
    if not any(isinstance(one, _Finder) for one in sys.meta_path):
        sys.meta_path.insert(0, _Finder())


class _Finder:
    """Finds modules that are put off as they are always found, and has them loaded later."""

    def find_spec(
        self, name: str, path: Sequence[str] | None, _target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Return where a module is that is put off; None leaves any other to those who find it."""
        if name not in UNUSED or (UNUSED[name] and PathFinder.find_spec(UNUSED[name]) is None):
            return None
        found = PathFinder.find_spec(name, path)
        if found is None or found.loader is None:
            return None
        found.loader = _Loader(found.loader)  # type: ignore[assignment]
        return found


class _Loader:
    """Loads a module when the first name is asked of it, in whatever thread that is."""

    def __init__(self, own: Any) -> None:
        self._own = own

    def create_module(self, spec: ModuleSpec) -> ModuleType | None:
        """Return the module as its own loader makes it."""
        made: ModuleType | None = self._own.create_module(spec)
        return made

    def exec_module(self, module: ModuleType) -> None:
        """Leave the module empty until something of it is asked for."""
        lock = threading.RLock()
        begun: list[str] = []

        def get(name: str) -> Any:
            with lock:
                if not begun:
                    begun.append(name)
                    module.__loader__ = self._own
                    if module.__spec__ is not None:
                        module.__spec__.loader = self._own
                    self._own.exec_module(module)
                    vars(module).pop("__getattr__", None)
                if name in vars(module):
                    return vars(module)[name]
            raise AttributeError(f"module {module.__name__!r} has no attribute {name!r}", name=name)

        vars(module)["__getattr__"] = get
