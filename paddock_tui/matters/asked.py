"""Which kinds of matters an outing can open: of forty-eight most have nothing to do with most sessions.

What a kind reads of an outing in which nothing is written down is watched once. Whether a kind opens anything
follows from what it reads, so that it opens nothing either of an outing in which all of that is not written
down: such a kind need not be asked.
"""

import functools
from collections.abc import Iterable
from typing import Any

from paddock_tui.matters.core import KINDS, MatterKind, Outing
from paddock_tui.matters.seen import Seen
from paddock_tui.records.session import Session

_BLANK = Outing("", Session())


class Asked:
    """Gives the kinds that an outing may open something of, in their order."""

    def __init__(self, kinds: Iterable[MatterKind]) -> None:
        self._kinds = [(kind, _read_of_nothing(kind)) for kind in kinds]
        names = {name for _, read in self._kinds if read is not None for name in read}
        self._of_session = tuple(sorted(name for whose, name in names if whose == "session"))
        self._of_outing = tuple(sorted(name for whose, name in names if whose == "outing"))
        self._known: dict[tuple[bool, ...], tuple[MatterKind, ...]] = {}

    def of(self, outing: Outing) -> tuple[MatterKind, ...]:
        """Return the kinds that may open something; all others open nothing, whatever went before."""
        session = outing.session
        written = (
            *(_is_written(getattr(session, name), _SESSION[name]) for name in self._of_session),
            *(_is_written(getattr(outing, name), _OUTING[name]) for name in self._of_outing),
        )
        found = self._known.get(written)
        if found is None:
            names = (
                *(("session", name) for name in self._of_session),
                *(("outing", name) for name in self._of_outing),
            )
            there = {name for name, is_there in zip(names, written, strict=True) if is_there}
            found = tuple(kind for kind, read in self._kinds if read is None or read & there)
            self._known[written] = found
        return found


class _OfBlank(dict[str, Any]):
    """The values of a session, or of an outing, in which nothing is written down."""

    def __init__(self, blank: object) -> None:
        super().__init__()
        self._blank = blank

    def __missing__(self, name: str) -> Any:
        found = self[name] = getattr(self._blank, name)
        return found


_SESSION, _OUTING = _OfBlank(_BLANK.session), _OfBlank(_BLANK)


def _is_written(value: object, blank: object) -> bool:
    return value is not blank and (type(value) is not type(blank) or value != blank)


class _ReadsBefore(Exception):
    """What went before is read: whether anything is opened does not follow from the outing alone."""


class _Watched:
    """A session or an outing in which nothing is written down; notes what is read of it."""

    def __init__(self, whose: str, blank: object, read: set[tuple[str, str]]) -> None:
        self._whose, self._blank, self._read = whose, blank, read

    def __getattr__(self, name: str) -> Any:
        if name == "session" and self._whose == "outing":
            return _Watched("session", _BLANK.session, self._read)
        if self._whose == "seen":
            raise _ReadsBefore
        self._read.add((self._whose, name))
        return getattr(self._blank, name)


def _read_of_nothing(kind: MatterKind) -> frozenset[tuple[str, str]] | None:
    """Return what a kind reads of an outing in which nothing is written down; None: it is always asked."""
    read: set[tuple[str, str]] = set()
    outing: Any = _Watched("outing", _BLANK, read)
    before: Any = _Watched("seen", Seen(), read)
    try:
        opens = list(kind.opens(outing, before))
    except _ReadsBefore:
        return None
    return None if opens else frozenset(read)


@functools.cache
def asked(_count: int) -> Asked:
    """Return what knows of all kinds, of which there are so many, which are asked."""
    return Asked(KINDS.values())
