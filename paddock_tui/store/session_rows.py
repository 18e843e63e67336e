"""What the sessions of a garage say in short: out of memory, else the index, else their files."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from paddock_tui.records.paths import Ref
from paddock_tui.store.index import SessionIndex, SessionRow, Stamp, row_of


class SessionRows:
    """Remembers each session's row until its record is touched. Nothing is looked at that nobody asks for.

    `real` is the garage's real path, `stamp_of` looks at a file, `held` gives the data that is in memory,
    `data_of` reads it.
    """

    def __init__(
        self,
        real: Callable[[], Path],
        stamp_of: Callable[[Ref], Stamp | None],
        held: Callable[[Ref], Mapping[str, Any] | None],
        data_of: Callable[[Ref], tuple[Stamp | None, Mapping[str, Any]]],
    ) -> None:
        self._real, self._stamp_of, self._held, self._data_of = real, stamp_of, held, data_of
        self._index: SessionIndex | None = None
        self._rows: dict[Ref, SessionRow | None] = {}
        self.indexed: dict[Ref, Stamp] = {}
        """The stamps of the files whose rows are the index's: they were not read in this run."""

    def of(self, ref: Ref) -> SessionRow | None:
        """Return what a session says; None where it is retired or its date is not known."""
        try:
            return self._rows[ref]
        except KeyError:
            found = self._rows[ref] = self._found(ref)
            return found

    def forget(self, ref: Ref) -> None:
        """Look at a session anew when it is next asked for."""
        self._rows.pop(ref, None)
        self.indexed.pop(ref, None)

    def take(self, other: "SessionRows") -> None:
        """Begin with what another remembers."""
        self._rows, self.indexed, self._index = dict(other._rows), dict(other.indexed), other._index

    def write(self) -> None:
        """Write the index where enough is new in it."""
        if self._index is not None:
            self._index.write()

    def _found(self, ref: Ref) -> SessionRow | None:
        held = self._held(ref)
        if held is not None:
            return row_of(held)
        index = self._opened()
        stamp = self._stamp_of(ref) if index is not None else None
        row = index.row(ref.id, stamp) if index is not None and stamp is not None else None
        if row is not None and stamp is not None:
            self.indexed[ref] = stamp
            return row
        stamp, data = self._data_of(ref)
        row = row_of(data)
        if index is not None and stamp is not None and row is not None:
            index.note(ref.id, stamp, row)
        return row

    def _opened(self) -> SessionIndex | None:
        if self._index is None:
            try:
                self._index = SessionIndex(self._real())
            except (OSError, RuntimeError):
                return None
        return self._index
