"""What lists show of records: made of a file's data once, and the file is not held in memory for it."""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple, TypeVar
from weakref import WeakKeyDictionary

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import Stamp

Shown = TypeVar("Shown")
Make = Callable[[Ref, Mapping[str, Any]], Shown]


class _Known(NamedTuple):
    stamp: Stamp | None
    made: Any


class _Glimpses:
    def __init__(self) -> None:
        self.known: dict[tuple[Ref, Make[Any]], _Known] = {}
        self.by_ref: dict[Ref, list[Make[Any]]] = {}
        self.place = 0

    def forget_touched(self, files: GarageFiles) -> None:
        self.place, touched = files.touched_since(self.place)
        for ref in touched:
            for make in self.by_ref.pop(ref, ()):
                del self.known[ref, make]

    def keep(self, ref: Ref, make: Make[Any], known: _Known) -> None:
        if (ref, make) not in self.known:
            self.by_ref.setdefault(ref, []).append(make)
        self.known[ref, make] = known


_OF: WeakKeyDictionary[GarageFiles, _Glimpses] = WeakKeyDictionary()


def glimpse(files: GarageFiles, ref: Ref, make: Make[Shown]) -> Shown:
    """Return what `make` makes of a record's data, which is all that it may look at.

    A file that nobody else has in memory is let go of, and goes on being looked at for changes.
    """
    if files.is_in_memory(ref):
        return make(ref, files.data(ref))
    here = _OF.setdefault(files, _Glimpses())
    here.forget_touched(files)
    known = here.known.get((ref, make))
    if known is not None and known.stamp == files.stamp(ref):
        found: Shown = known.made
        return found
    made = make(ref, files.data(ref))
    files.let_go(ref)
    # Reading it touched it: what was made knows that already.
    here.forget_touched(files)
    if not files.is_in_memory(ref):
        here.keep(ref, make, _Known(files.rows.indexed.get(ref), made))
    return made
