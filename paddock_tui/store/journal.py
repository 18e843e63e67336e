"""The journal: what was saved, undone and done again, a line each, so that undo outlives the program.

It stands in the garage's private folder, a file a month. The records are the truth: they are written first,
and losing the journal costs undo and the list of what changed, nothing else.
"""

import datetime as dt
import json
import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Literal

import attrs

from paddock_tui.records.edits import Change, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.lock import PRIVATE, private_folder
from paddock_tui.store.steps_as_json import dumped, loaded

FOLDER = "journal"

What = Literal["do", "undo", "redo", "passed"]
"""A new step; one taken back; one done again; one that can no longer be, and is passed over."""

LOOKED_BACK = 1_000_000
"""Bytes of the newest lines that undo looks through: some thousand steps."""


@attrs.frozen
class JournalNote:
    """What a step is in the history: whose run, what it does, and of which step."""

    run: str = ""
    what: What = "do"
    of: str = ""


@attrs.frozen
class JournalEntry:
    """One line: `step` as it was written, `undo` that takes it back; undoing keeps the `id` of the step."""

    id: str
    at: dt.datetime
    run: str
    what: What
    step: Step
    undo: Step

    @property
    def refs(self) -> tuple[Ref, ...]:
        """Return the records that the step is about, under the names that they have after it."""
        return tuple(
            dict.fromkeys(
                Ref(one.ref.kind, one.to) if isinstance(one, Rename) else one.ref for one in self.step.changes
            )
        )


def new_id() -> str:
    """Make a name that no other run or step has."""
    return os.urandom(6).hex()


def append(root: Path, entry: JournalEntry, texts: Mapping[str, str]) -> None:
    """Add a line; the garage's lock must be held. `texts` are whole records as they were. Raises OSError."""
    line = {
        "id": entry.id,
        "at": entry.at.replace(microsecond=0, tzinfo=None).isoformat(),
        "run": entry.run,
        "what": entry.what,
        "step": dumped(entry.step),
        "undo": dumped(entry.undo),
    }
    if texts:
        line["texts"] = dict(texts)
    folder = private_folder(root) / FOLDER
    folder.mkdir(exist_ok=True)
    path = folder / f"{entry.at:%Y-%m}.jsonl"
    with path.open("ab", buffering=0) as file:
        torn = file.tell() > 0 and not _ends_a_line(path)
        data = (b"\n" if torn else b"") + json.dumps(line).encode("ascii") + b"\n"
        while data:
            data = data[file.write(data) or 0 :]


def whole_texts(step: Step, before: Mapping[Ref, str]) -> dict[str, str]:
    """Pick the records whose whole text goes into the journal: those that a step renames or retires."""
    kept = [
        one.ref
        for one in step.changes
        if isinstance(one, Rename)
        or (isinstance(one, Change) and any(edit.path == ("retired",) for edit in one.edits))
    ]
    return {str(ref): before[ref] for ref in kept if ref in before}


def entries(root: Path, most: int = LOOKED_BACK) -> list[JournalEntry]:
    """Read the newest lines, oldest first, at most so many bytes; what cannot be read is passed over."""
    found: list[JournalEntry] = []
    for path in sorted((root / PRIVATE / FOLDER).glob("????-??.jsonl"), reverse=True):
        data, whole = _tail(path, most)
        found[:0] = _read(data)
        most -= len(data)
        if most <= 0 or not whole:
            break
    return found


def entries_of(root: Path, day: dt.date) -> list[JournalEntry]:
    """Read what was noted on one day, oldest first."""
    data, _ = _tail(root / PRIVATE / FOLDER / f"{day:%Y-%m}.jsonl", 1 << 40)
    return [one for one in _read(data) if one.at.date() == day]


def _tail(path: Path, most: int) -> tuple[bytes, bool]:
    """Return the end of a file, whole lines only where it is cut; and whether that is all of it."""
    try:
        with path.open("rb") as file:
            size = file.seek(0, os.SEEK_END)
            start = max(0, size - most)
            file.seek(start)
            data = file.read()
    except OSError:
        return b"", True
    return (data.partition(b"\n")[2] if start else data), start == 0


def _read(data: bytes) -> Iterator[JournalEntry]:
    for line in data.splitlines():
        try:
            given: Any = json.loads(line)
            what: What = given["what"]
            if what not in ("do", "undo", "redo", "passed"):
                continue
            yield JournalEntry(
                str(given["id"]),
                dt.datetime.fromisoformat(given["at"]).replace(tzinfo=None),
                str(given["run"]),
                what,
                loaded(given["step"]),
                loaded(given["undo"]),
            )
        except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
            continue


def _ends_a_line(path: Path) -> bool:
    with path.open("rb") as file:
        file.seek(-1, os.SEEK_END)
        return file.read(1) == b"\n"
