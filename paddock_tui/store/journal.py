"""The journal: what was saved, undone and done again, a line each, so that undo outlives the program.

It stands in the garage's private folder, a file a month. The records are the truth: they are written first,
and losing the journal costs undo and the list of what changed, nothing else. Each line is numbered, so that
the order is that of what was done, whatever the clock said; and it bears a mark under this user's key
(`signing`): a line without one is history to read, and is never undone or done again.
"""

import contextlib
import datetime as dt
import json
import os
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Literal

import attrs

from paddock_tui.records.edits import Change, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import system_calls
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.private import Private, private
from paddock_tui.store.signing import Key, garage_id, mark_of, signed, user_key, verifies
from paddock_tui.store.steps_as_json import dumped, loaded
from paddock_tui.store.tree import release

FOLDER = "journal"

What = Literal["do", "undo", "redo", "passed"]
"""A new step; one taken back; one done again; one that can no longer be, and is passed over."""

LOOKED_BACK = 1_000_000
"""Bytes of the newest lines that undo looks through: some thousand steps."""

LARGEST = 1 << 26
"""Bytes of one month's file; a larger one was not written by this program."""

_MONTH = re.compile(r"\d{4}-\d{2}\.jsonl")
_NEAR = 1 << 16
_LINE = 1 << 12
_LOOKED_AT = 4


@attrs.frozen
class JournalNote:
    """What a step is in the history: whose run, what it does, and of which step.

    `doubtful` says that the clock jumped in this run, so that the time may be wrong.
    """

    run: str = ""
    what: What = "do"
    of: str = ""
    doubtful: bool = False


@attrs.frozen
class JournalEntry:
    """One line: `step` as it was written, `undo` that takes it back; undoing keeps the `id` of the step.

    `place` is its number in the order of what was done, `ours` says that this user's program wrote it.
    """

    id: str
    at: dt.datetime
    run: str
    what: What
    step: Step
    undo: Step
    doubtful: bool = attrs.field(default=False, eq=False)
    place: int = attrs.field(default=0, eq=False)
    ours: bool = attrs.field(default=True, eq=False)

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


def append(folder: Private, entry: JournalEntry, texts: Mapping[str, str]) -> None:
    """Add a line to the journal in the private folder that comes with the garage's lock.

    `texts` are whole records as they were. Raises OSError.
    """
    with folder.inside(FOLDER, make=True) as journal:
        reader = _Reader(journal, user_key(), garage_id(folder, make=True))
        place = 1 + max((reader.last_place(name) for name in reader.months()), default=0)
        name = f"{entry.at:%Y-%m}.jsonl"
        file = journal.open(name)
        try:
            end = system_calls.facts(file).st_size
            if end > LARGEST:
                raise OSError(None, "the journal of this month is too large")
            before, torn = _last_line(file, end)
            line = signed(reader.key, reader.garage, before, _line(entry, place, texts))
            data = (b"\n" if torn else b"") + line + b"\n"
            system_calls.seek(file, end)
            while data:
                data = data[system_calls.write(file, data) :]
            reader.remember(name, system_calls.facts(file), place)
        finally:
            release(file)


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
    """Read this user's newest lines in the order of what was done, at most so many bytes of each month.

    What cannot be read, and what others wrote, is passed over.
    """
    with _reading(root) as reader:
        return reader.newest(most) if reader is not None else []


def entries_of(root: Path, day: dt.date) -> list[JournalEntry]:
    """Read what was noted on one day, oldest first, lines of others included."""
    with _reading(root) as reader:
        found = reader.lines(f"{day:%Y-%m}.jsonl", LARGEST)[0] if reader is not None else []
    return [one for one in found if one.at.date() == day]


def newest_place(root: Path) -> int:
    """Return the number of the newest line that this user's program wrote; 0 where there is none."""
    with _reading(root) as reader:
        return max((reader.last_place(name) for name in reader.months()), default=0) if reader else 0


def mark_at(root: Path, place: int) -> str:
    """Return the mark of this user's line of that number, which stands for all lines before it too.

    Nothing where there is no such line among the newest.
    """
    with _reading(root) as reader:
        return reader.mark_at(place) if reader is not None and place > 0 else ""


def has_lines_of_others(root: Path) -> bool:
    """Return whether the journal holds lines that this user's program did not write, or wrote unmarked."""
    with _reading(root) as reader:
        if reader is None:
            return False
        months = sorted(reader.months(), reverse=True)
        return any(not one.ours for name in months for one in reader.lines(name, LOOKED_BACK)[0])


@contextlib.contextmanager
def _reading(root: Path) -> Iterator["_Reader | None"]:
    """Open the journal for reading; None where there is none that can be used."""
    with contextlib.ExitStack() as stack:
        try:
            folder = stack.enter_context(private(root))
            journal = stack.enter_context(folder.inside(FOLDER))
        except OSError:
            yield None
        else:
            yield _Reader(journal, user_key(), garage_id(folder))


_Stamp = tuple[int, int, int]
_places: dict[tuple[bytes, bytes, str], tuple[_Stamp, int]] = {}
"""The last number of a month's file, as it was when it had this stamp."""


@attrs.frozen
class _Reader:
    """The journal while it is open."""

    folder: Private
    key: Key
    garage: bytes

    def months(self) -> list[str]:
        """List the files, by name."""
        try:
            return [name for name in self.folder.names() if _MONTH.fullmatch(name)]
        except OSError:
            return []

    def newest(self, most: int) -> list[JournalEntry]:
        """Read this user's lines of the months that hold the newest, in order."""
        found: list[JournalEntry] = []
        from_here = 0
        for last, name in sorted(((self.last_place(name), name) for name in self.months()), reverse=True):
            if last <= from_here or most <= 0:
                # Lines before this one may be missing: what is older is not looked at.
                from_here = max(from_here, last)
                break
            lines, size, whole = self.lines(name, most)
            ours = [one for one in lines if one.ours]
            if ours and not whole:
                from_here = max(from_here, min(one.place for one in ours) - 1)
            found += ours
            most -= size
        unique = {one.place: one for one in reversed(found) if one.place > from_here}
        return [unique[place] for place in sorted(unique)]

    def lines(self, name: str, most: int) -> tuple[list[JournalEntry], int, bool]:
        """Read the newest lines of a month; with how many bytes that were, and whether it is all of it."""
        try:
            data, whole = self.folder.read_end(name, most, LARGEST)
        except (OSError, NotRead):
            return [], 0, True
        return list(self._read(data, whole)), len(data), whole

    def last_place(self, name: str) -> int:
        """Return the number of the newest line of a month that this user's program wrote; 0 for none."""
        try:
            found = system_calls.status(self.folder.folder, name)
        except OSError:
            return 0
        known = _places.get((self.garage, self.key.secret, name))
        if known is not None and known[0] == _stamp(found):
            return known[1]
        place = 0
        for most in (_NEAR, LARGEST):
            try:
                data, whole = self.folder.read_end(name, most, LARGEST)
            except (OSError, NotRead):
                return 0
            place = self._last_of(data.split(b"\n"), whole)
            if place or whole:
                break
        self.remember(name, found, place)
        return place

    def mark_at(self, place: int) -> str:
        """Return the mark of the line of this number that this user's program wrote; nothing for none."""
        for name in self.months():
            if self.last_place(name) < place:
                continue
            try:
                data, whole = self.folder.read_end(name, LOOKED_BACK, LARGEST)
            except (OSError, NotRead):
                continue
            lines = data.split(b"\n")
            for at in range(len(lines) - 1, -1 if whole else 0, -1):
                entry = _entry(lines[at])
                before = lines[at - 1] if at else b""
                if entry is not None and entry.place == place and self._ours(before, lines[at]):
                    return mark_of(lines[at])
        return ""

    def _ours(self, before: bytes, line: bytes) -> bool:
        return verifies(self.key, self.garage, before, line)

    def remember(self, name: str, found: os.stat_result, place: int) -> None:
        """Remember the number of the newest line of a month, until its file changes."""
        if len(_places) > 1000:
            _places.clear()
        _places[self.garage, self.key.secret, name] = _stamp(found), place

    def _last_of(self, lines: list[bytes], whole: bool) -> int:
        """Return the highest number of the last lines that are ours; 0 where none is."""
        places: list[int] = []
        for at in range(len(lines) - 1, -1 if whole else 0, -1):
            before = lines[at - 1] if at else b""
            if verifies(self.key, self.garage, before, lines[at]):
                place = _place(lines[at])
                places += [place] if place is not None else []
                if len(places) == _LOOKED_AT:
                    break
        return max(places, default=0)

    def _read(self, data: bytes, whole: bool) -> Iterator[JournalEntry]:
        before = b"" if whole else None  # of a file that is cut the first whole line only tells the next
        for line in data.split(b"\n"):
            if before is not None:
                entry = _entry(line)
                if entry is not None:
                    ours = verifies(self.key, self.garage, before, line)
                    yield attrs.evolve(entry, ours=ours)
            before = line


def _stamp(found: os.stat_result) -> _Stamp:
    return found.st_mtime_ns, found.st_size, found.st_ino


def _line(entry: JournalEntry, place: int, texts: Mapping[str, str]) -> bytes:
    line: dict[str, Any] = {
        "id": entry.id,
        "place": place,
        "at": entry.at.replace(microsecond=0, tzinfo=None).isoformat(),
        "run": entry.run,
        "what": entry.what,
        "step": dumped(entry.step),
        "undo": dumped(entry.undo),
    }
    if entry.doubtful:
        line["doubtful"] = True
    if texts:
        line["texts"] = dict(texts)
    return json.dumps(line).encode("ascii")


def _place(line: bytes) -> int | None:
    """Return the number of a line that is ours, without its steps: the last ones of every month are asked."""
    try:
        return int(json.loads(line).get("place", 0))
    except (ValueError, TypeError, AttributeError, RecursionError, OverflowError):
        return None


def _entry(line: bytes) -> JournalEntry | None:
    """Read one line; None where it is none."""
    if not line:
        return None
    try:
        given: Any = json.loads(line)
        what: What = given["what"]
        if what not in ("do", "undo", "redo", "passed"):
            return None
        return JournalEntry(
            str(given["id"]),
            dt.datetime.fromisoformat(given["at"]).replace(tzinfo=None),
            str(given["run"]),
            what,
            loaded(given["step"]),
            loaded(given["undo"]),
            given.get("doubtful") is True,
            int(given.get("place", 0)),
        )
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError, OverflowError):
        return None


def _last_line(file: int, end: int) -> tuple[bytes, bool]:
    """Return the last line of an open file, and whether it lacks its ending."""
    size = _LINE
    while True:
        start = max(0, end - size)
        system_calls.seek(file, start)
        data = b""
        while len(data) < end - start and (piece := system_calls.read(file, end - start - len(data))):
            data += piece
        torn = bool(data) and not data.endswith(b"\n")
        lines = data.removesuffix(b"\n").rpartition(b"\n")
        if lines[1] or not start:
            return lines[2], torn
        size *= 8
