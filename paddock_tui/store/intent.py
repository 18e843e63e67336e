"""What a step over several files is about to do, noted before it begins, so that none stays cut short."""

import contextlib
import json
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.records.edits import Rename, Step
from paddock_tui.records.errors import InputError
from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.files import replace_durably
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.journal import JournalNote, What
from paddock_tui.store.lock import PRIVATE, private_folder
from paddock_tui.store.reading import read_text
from paddock_tui.store.steps_as_json import dumped, loaded
from paddock_tui.store.writing import Write, perform, prepared

_NAME = "intent"


@attrs.frozen
class Intent:
    """A step that is being written, with its undo and its line in the journal."""

    step: Step
    undo: Step
    id: str
    note: JournalNote


def declare(root: Path, intent: Intent) -> None:
    """Note what is about to be done, durably. Raises NotWritten."""
    about = {"id": intent.id, "run": intent.note.run, "what": intent.note.what, "of": intent.note.of}
    line = json.dumps(about | {"step": dumped(intent.step), "undo": dumped(intent.undo)})
    try:
        file = private_folder(root) / _NAME
    except OSError as error:
        raise NotWritten(in_plain_words(error)) from error
    try:
        replace_durably(file, line, create=True)
    except NotWritten as error:
        if not error.replaced:
            withdraw(root)
            raise


def withdraw(root: Path) -> None:
    """Forget it: it is done, or put back."""
    with contextlib.suppress(OSError):
        (root / PRIVATE / _NAME).unlink()


def declared(root: Path) -> bool:
    """Return whether a step is being written, or was cut short."""
    return (root / PRIVATE / _NAME).exists()


def found(root: Path) -> Intent | None:
    """Read what was about to be done; None where there is nothing, or nothing that can be read."""
    text = read_text(root / PRIVATE / _NAME, largest=64_000_000)
    try:
        given: Any = json.loads(text) if not isinstance(text, InputError) else None
        what: What = given["what"]
        note = JournalNote(str(given["run"]), what, str(given["of"]))
        return Intent(loaded(given["step"]), loaded(given["undo"]), str(given["id"]), note)
    except (ValueError, KeyError, TypeError, AttributeError):
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
            perform(write)
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
    with contextlib.suppress(OSError):
        if old.samefile(new) or not new.stat().st_size:
            new.unlink()
