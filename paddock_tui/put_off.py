"""Modules of others that are loaded once something of them is asked for, though they are imported before.

The framework and the libraries import what this program never uses: encrypted sockets, checks of attributes,
reading of source. Each is there, and is loaded by the first name that is asked of it. The standard library's
own lazy loader loads a module as soon as it is imported a second time, as the framework imports these.
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
        own = self._own

        class PutOff(ModuleType):
            """The module until it is whole: whoever asks meanwhile waits, but for the thread that loads."""

            def __getattribute__(self, name: str) -> Any:
                known = ModuleType.__getattribute__(self, "__dict__")
                if name in _OF_ANY or (name.startswith("__") and name in known):
                    return ModuleType.__getattribute__(self, name)
                with lock:
                    if not begun:
                        begun.append(name)
                        known["__loader__"] = known["__spec__"].loader = own
                        own.exec_module(self)
                        self.__class__ = ModuleType  # type: ignore[assignment]
                    return ModuleType.__getattribute__(self, name)

        module.__class__ = PutOff


_OF_ANY = frozenset({"__class__", "__dict__"})
"""What is asked of any object, and says nothing of a module."""
