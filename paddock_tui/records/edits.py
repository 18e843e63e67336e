"""Edits of records: what changes, what it was, and the steps that are undone as one."""

import datetime as dt
import enum
from collections.abc import Mapping, Sequence
from typing import Final, TypeAlias

import attrs

from paddock_tui.records.paths import Path, Ref

Plain: TypeAlias = str | int | float | bool | dt.date | dt.time | dt.datetime
"""A value that TOML writes on one line and that is not an array."""

Value: TypeAlias = Plain | Sequence["Plain"] | Mapping[str, "Value"]
"""What may stand at a path: a plain value, an array of plain values, or a table."""


class _Missing(enum.Enum):
    MISSING = "missing"

    def __repr__(self) -> str:
        return "MISSING"


Missing: TypeAlias = _Missing
MISSING: Final = _Missing.MISSING
"""Stands for 'no value at this path': the fact is not known."""


@attrs.frozen
class Raw:
    """The exact lines of an edit that was made, so that its undo gives back the same bytes.

    At `line` (0-based) the file holds `put`; the undo replaces those lines by `took`. Lines carry
    their own line endings.
    """

    line: int
    put: tuple[str, ...]
    took: tuple[str, ...]


@attrs.frozen
class Edit:
    """One change of one value: set it, add it, drop it; a mapping adds or drops a whole table.

    `old` is what must still stand there; MISSING means nothing did.
    """

    path: Path
    old: Value | Missing
    new: Value | Missing
    raw: Raw | None = None


@attrs.frozen
class Change:
    """Edits to one record: one file, one patch."""

    ref: Ref
    edits: tuple[Edit, ...]


@attrs.frozen
class Create:
    """A new record, with the text of its file."""

    ref: Ref
    text: str


@attrs.frozen
class Remove:
    """The undo of a creation; `text` is the whole file, so that a redo gives it back."""

    ref: Ref
    text: str


@attrs.frozen
class Rename:
    """A record that changes its id; the references to it are changed by Changes of the same step."""

    ref: Ref
    to: str


@attrs.frozen
class Rekey:
    """A table inside a record whose last key becomes another: its lines and comments stay where they are."""

    ref: Ref
    path: Path
    to: str


AnyChange: TypeAlias = Change | Create | Remove | Rename | Rekey


@attrs.frozen
class Step:
    """What one undo takes back, with the words that the last line shows."""

    label: str
    changes: tuple[AnyChange, ...]
