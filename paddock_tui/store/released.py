"""Files of which others made what they need: no more in memory, and looked at for changes all the same."""

from collections.abc import Container, Iterator, Mapping
from typing import NamedTuple

from paddock_tui.records.paths import Ref
from paddock_tui.store.index import Stamp
from paddock_tui.store.loaded import FileText
from paddock_tui.store.references import reference_fields


MANY = 400
"""So many files in memory, and those read for their rows alone are let go of."""


class _Released(NamedTuple):
    """What tells whether a file reads as it did: its stamp, its text, and the records that it names."""

    stamp: Stamp
    text: int
    names: tuple[Ref, ...]


class Released:
    """Remembers of each what it takes to tell that it reads as it did."""

    def __init__(self) -> None:
        self._held: dict[Ref, _Released] = {}

    def __contains__(self, ref: Ref) -> bool:
        return ref in self._held

    def took(self, ref: Ref, raw: FileText, there: Mapping[str, Container[str]]) -> bool:
        """Remember a file that is let go of; gives whether it may be.

        It may not where it is not as written, or where what it names is not `there` and may be found later.
        """
        named = ((kind, raw.data.get(path[0])) for path, kind in reference_fields(ref.kind))
        names = tuple(Ref(kind, name) for kind, name in named if isinstance(name, str))
        if raw.stamp is None or raw.data is not raw.written or _names_others(names, there):
            return False
        self._held[ref] = _Released(raw.stamp, hash(raw.text), names)
        return True

    def forget(self, ref: Ref, stamp: Stamp | None) -> bool:
        """Forget a file that is read again; gives whether it is as it was."""
        held = self._held.pop(ref, None)
        return held is not None and held.stamp == stamp

    def is_same(self, ref: Ref, raw: FileText) -> bool:
        """Return whether a file that was written again holds the same text; then that is remembered of it."""
        held = self._held[ref]
        if raw.stamp is None or held.text != hash(raw.text):
            return False
        self._held[ref] = held._replace(stamp=raw.stamp)
        return True

    def naming_others(self, there: Mapping[str, Container[str]]) -> list[Ref]:
        """List those that name a record that is not there: it may be called otherwise by now."""
        return [ref for ref, held in self._held.items() if _names_others(held.names, there)]

    def stamps(self, *refs: Ref) -> Iterator[tuple[Ref, Stamp]]:
        """Give these, or all, each with its stamp."""
        return ((ref, self._held[ref].stamp) for ref in refs or self._held)

    def take(self, other: "Released", but: Container[Ref] = ()) -> None:
        """Take over what another knows, but for some."""
        self._held.update({ref: held for ref, held in other._held.items() if ref not in but})


def _names_others(names: tuple[Ref, ...], there: Mapping[str, Container[str]]) -> bool:
    return any(name.id not in there.get(name.kind, ()) for name in names)
