"""What a step over several files is about to do, noted before it begins, so that none stays cut short."""

import contextlib
import json
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.records.edits import Rename, Step
from paddock_tui.store import system_calls
from paddock_tui.store.cut_short import INTENT
from paddock_tui.store.cut_short import declared as declared
from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.journal import JournalNote, What, mark_at, newest_place
from paddock_tui.store.private import private
from paddock_tui.store.signing import garage_id, signed, user_key, verifies
from paddock_tui.store.steps_as_json import dumped, loaded
from paddock_tui.store.writing import Write, perform, prepared

_ASIDE = "intent-of-others"
_LARGEST = 64_000_000


@attrs.frozen
class Intent:
    """A step that is being written, with its undo and its line in the journal."""

    step: Step
    undo: Step
    id: str
    note: JournalNote


def declare(root: Path, intent: Intent) -> None:
    """Note what is about to be done, durably. Raises NotWritten."""
    about: dict[str, Any] = {"id": intent.id, "run": intent.note.run, "what": intent.note.what}
    newest = newest_place(root)
    about |= {"of": intent.note.of, "after": newest, "beside": mark_at(root, newest)}
    line = json.dumps(about | {"step": dumped(intent.step), "undo": dumped(intent.undo)}).encode("ascii")
    try:
        with private(root, make=True) as folder:
            whole = signed(user_key(), garage_id(folder, make=True), INTENT.encode(), line)
            folder.put_durably(INTENT, whole)
    except OSError as error:
        withdraw(root)
        raise NotWritten(in_plain_words(error)) from error


def withdraw(root: Path) -> None:
    """Forget it: it is done, or put back."""
    with contextlib.suppress(OSError), private(root) as folder:
        folder.remove(INTENT)


def set_aside(root: Path) -> None:
    """Put one that this user's program did not write out of the way, to be read by whoever wants to."""
    with contextlib.suppress(OSError), private(root) as folder:
        system_calls.replace(folder.folder, INTENT, folder.folder, _ASIDE)


def found(root: Path) -> Intent | None:
    """Read what was about to be done; None where there is nothing that this user's program wrote."""
    try:
        with private(root) as folder:
            line = folder.read(INTENT, _LARGEST)
            if not verifies(user_key(), garage_id(folder), INTENT.encode(), line):
                return None
        given: Any = json.loads(line)
        what: What = given["what"]
        # One that is older than the journal was put back there: its step is done, or was given up.
        after = int(given["after"])
        if newest_place(root) not in (after, after + 1) or mark_at(root, after) != given["beside"]:
            return None
        note = JournalNote(str(given["run"]), what, str(given["of"]))
        return Intent(loaded(given["step"]), loaded(given["undo"]), str(given["id"]), note)
    except (OSError, NotRead, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def complete(files: GarageFiles, intent: Intent) -> str:
    """Bring a step that was cut short to one of its ends; return which: completed, put back, or left.

    Its changes were written in order, so that the first so many stand. With the garage's lock held.
    Raises NotWritten where the disk still refuses.
    """
    changes, back = intent.step.changes, intent.undo.changes
    for change in changes:
        if isinstance(change, Rename):
            _one_name(files, change)
    files.forget_listing()
    for done in range(len(changes), -1, -1):
        behind = prepared(files, back[len(changes) - done :])
        if not isinstance(behind, list):
            continue
        ahead = prepared(files, changes[done:])
        _perform(files, ahead if isinstance(ahead, list) else behind)
        if isinstance(ahead, list):
            return "completed"
        return "put back" if done else "left"
    return "left"


def _perform(files: GarageFiles, writes: list[Write]) -> None:
    for write in writes:
        try:
            perform(files.tree, write)
        except NotWritten as error:
            if not error.replaced:
                raise
    files.forget_listing()


def _one_name(files: GarageFiles, change: Rename) -> None:
    """Undo half a rename: the new name beside the old one, for the same file or an empty one."""
    files.forget_listing()
    old = files.path_of(change.ref)
    if old is None:
        return
    new = old.with_name(f"{change.to}.toml")
    with (
        contextlib.suppress(OSError),
        files.tree.place(old, itself=True) as one,
        files.tree.place(new, itself=True) as other,
    ):
        first = system_calls.status(one.folder, one.name)
        second = system_calls.status(other.folder, other.name)
        if (first.st_dev, first.st_ino) == (second.st_dev, second.st_ino) or not second.st_size:
            system_calls.unlink(other.folder, other.name)
