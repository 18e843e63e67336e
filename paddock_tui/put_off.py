"""Modules of others that are loaded once something of them is asked for, though they are imported before.

The framework and the libraries import what this program never uses: a palette of commands, encrypted
sockets, checks of attributes. Each is there, and is loaded by the first name that is asked of it; where names
are taken from it at once, by the first use of one. The standard library's own lazy loader loads a module as
soon as it is imported a second time, as the framework imports these.
"""

import sys
import threading
from importlib.machinery import ModuleSpec, PathFinder
from types import ModuleType

from paddock_tui.stand_ins import StandIn

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

UNUSED = {
    "ast": "_ast",
    "asyncio.sslproto": "_ssl",
    "attr.validators": "",
    "attrs.validators": "",
    "bz2": "_bz2",
    "inspect": "",
    "locale": "_locale",
    "lzma": "_lzma",
    "mimetypes": "",
    "ssl": "_ssl",
    "tokenize": "",
    "traceback": "",
}
"""What is put off, of which whoever imports it asks nothing until it needs it; and what it cannot do without.

Where that is not there, whoever imports the module is to know it at once.
"""

NAMES = {
    "ast": ("NodeVisitor", "literal_eval"),
    "gettext": ("gettext", "ngettext"),
    "pickle": ("dumps", "loads"),
    "rich.markup": ("render",),
    "rich.padding": ("Padding",),
    "rich.panel": ("Panel",),
    "rich.table": ("Table",),
    "rich.tree": ("Tree",),
    "textual.canvas": ("Canvas", "Rectangle"),
    "textual.command": (
        "CommandListItem",
        "CommandPalette",
        "DiscoveryHit",
        "Hit",
        "Hits",
        "Provider",
        "SimpleProvider",
    ),
    "textual.css._help_renderables": ("Bullet", "Example", "HelpText"),
    "textual.file_monitor": ("FileMonitor",),
    "textual.markup": ("parse_style",),
    "textual.suggestions": ("get_suggestion",),
    "textual.widgets._toast": ("ToastRack",),
    "traceback": ("extract_stack",),
    "urllib.parse": ("quote_from_bytes",),
    "uuid": ("uuid4",),
}
"""What is put off although names are taken from it: each of these gets a stand-in, by any other it is loaded.

None is a class of errors: what a stand-in stands for cannot be caught.
"""


def begin() -> None:
    """Put these modules off from now on; what is loaded already stays as it is."""
    if not any(isinstance(one, _Finder) for one in sys.meta_path):
        sys.meta_path.insert(0, _Finder())


class _Finder:
    """Finds modules that are put off as they are always found, and has them loaded later."""

    def find_spec(
        self, name: str, path: "Sequence[str] | None", _target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Return where a module is that is put off; None leaves any other to those who find it."""
        if name not in UNUSED and name not in NAMES:
            return None
        needed = UNUSED.get(name)
        if needed and PathFinder.find_spec(needed) is None and needed not in sys.builtin_module_names:
            return None
        found = PathFinder.find_spec(name, path)
        if found is None or found.loader is None:
            return None
        found.loader = _Loader(found.loader)  # type: ignore[assignment]
        return found


class _Loader:
    """Loads a module when the first name is asked of it, in whatever thread that is."""

    def __init__(self, own: "Any") -> None:
        self._own = own
        self._lock = threading.RLock()
        self.has_begun = False

    def create_module(self, spec: ModuleSpec) -> ModuleType | None:
        """Return the module as its own loader makes it."""
        made: ModuleType | None = self._own.create_module(spec)
        return made

    def exec_module(self, module: ModuleType) -> None:
        """Leave the module empty until something of it is asked for."""
        loader = self
        stand_ins = {name: self._stand_in(module, name) for name in NAMES.get(module.__name__, ())}

        class PutOff(ModuleType):
            """The module until it is whole: whoever asks meanwhile waits, but for the thread that loads."""

            def __getattribute__(self, name: str) -> "Any":
                known = ModuleType.__getattribute__(self, "__dict__")
                if name in _OF_ANY or (name.startswith("__") and name in known):
                    return ModuleType.__getattribute__(self, name)
                if not loader.has_begun and name in stand_ins:
                    return stand_ins[name]
                return loader.load(self, name)

        module.__class__ = PutOff

    def load(self, module: ModuleType, name: str) -> "Any":
        """Return what a name of the module stands for, which is whole then."""
        with self._lock:
            if not self.has_begun:
                self.has_begun = True
                known = ModuleType.__getattribute__(module, "__dict__")
                known["__loader__"] = known["__spec__"].loader = self._own
                self._own.exec_module(module)
                module.__class__ = ModuleType
            return ModuleType.__getattribute__(module, name)

    def _stand_in(self, module: ModuleType, name: str) -> StandIn:
        return StandIn(lambda: self.load(module, name), lambda: self.has_begun)


_OF_ANY = frozenset({"__class__", "__dict__", "__path__"})
"""What is asked of any module, and says nothing of what is in it."""
