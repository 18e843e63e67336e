"""Steps kept on disk: every file checked first, then written one by one, all or none."""

import datetime as dt
import os
from collections.abc import Mapping
from pathlib import Path as FilePath

import attrs

from paddock_tui.records.edits import Change, Create, Edit, Missing, Remove, Rename, Step, Value
from paddock_tui.records.paths import Ref
from paddock_tui.records.trouble import Trouble
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import check_writable, remove_durably, rename_durably, replace_durably, sweep
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.lock import Locked, hold
from paddock_tui.store.patch import Patched, patch
from paddock_tui.store.reading import read_text

AnyChange = Change | Create | Remove | Rename


@attrs.frozen
class Kept:
    """The step is on disk; `undo` takes it back byte for byte."""

    undo: Step


@attrs.frozen
class Clash:
    """Another program changed the same value meanwhile: what stands there now, and what was expected."""

    ref: Ref
    edit: Edit
    found: Value | Missing


@attrs.frozen
class NotKept:
    """Nothing was written, for this reason."""

    reason: str
    mend: str = ""


Outcome = Kept | Clash | NotKept


@attrs.frozen
class _Write:
    """One prepared change: what to do, how to take it back, and the change that is its undo."""

    change: AnyChange
    path: FilePath
    text: str
    before: str
    undo: AnyChange


def keep(files: GarageFiles, step: Step, now: dt.datetime | None = None) -> Outcome:
    """Keep one step: lock the garage, re-read, see that the old values still stand, patch, replace."""
    if files.newer():
        return NotKept(
            "this garage was written by a newer paddock-tui and is only read", "update this program"
        )
    try:
        with hold(files.root, since=now):
            if not files.swept:
                sweep(files.root)
                files.swept = True
            return _keep_locked(files, step)
    except Locked as error:
        return NotKept(str(error), "try again when it is done")
    except NotWritten as error:
        return NotKept(error.reason, error.mend)


def _keep_locked(files: GarageFiles, step: Step) -> Outcome:
    writes: list[_Write] = []
    texts: dict[FilePath, str] = {}
    for change in step.changes:
        prepared = _prepared(files, change, texts)
        if not isinstance(prepared, _Write):
            return prepared
        texts[prepared.path] = prepared.text
        writes.append(prepared)
    done: list[_Write] = []
    for write in writes:
        try:
            _perform(write)
        except NotWritten as error:
            if error.replaced:
                done.append(write)
                continue
            return _put_back(files, done, write, error)
        done.append(write)
    return Kept(Step(step.label, tuple(write.undo for write in reversed(done))))


def _prepared(
    files: GarageFiles, change: AnyChange, texts: Mapping[FilePath, str]
) -> _Write | Clash | NotKept:
    """Check one change against the files as they are now, and make the text that is to be written.

    `texts` holds what the changes before it in the same step make of their files.
    """
    wanted = Ref(change.ref.kind, change.to) if isinstance(change, Rename) else change.ref
    if isinstance(change, Create | Rename) and files.path_of(wanted) is not None:
        return NotKept(f"there is a {wanted.kind} {wanted.id} already", "choose another name")
    if isinstance(change, Create):
        return _Write(change, files.path_for(change.ref), change.text, "", Remove(change.ref, change.text))
    known = files.path_of(change.ref)
    if known is None:
        return NotKept(f"{change.ref} is not in the garage any more")
    text = texts[known] if known in texts else read_text(known)
    if isinstance(text, Trouble):
        return NotKept(f"{files.name_of(change.ref)}: {text.found}", text.mend)
    try:
        check_writable(known)
    except NotWritten as error:
        return NotKept(f"{files.name_of(change.ref)}: {error.reason}", error.mend)
    if isinstance(change, Rename):
        return _Write(change, known, text, text, Rename(wanted, change.ref.id))
    if isinstance(change, Remove):
        if text != change.text:
            return NotKept(f"{files.name_of(change.ref)} was changed meanwhile, so it is not removed")
        return _Write(change, known, "", text, Create(change.ref, text))
    return _patched(files, change, known, text)


def _patched(files: GarageFiles, change: Change, path: FilePath, text: str) -> _Write | Clash | NotKept:
    patched = patch(text, change.edits)
    if isinstance(patched, Patched):
        return _Write(change, path, patched.text, text, Change(change.ref, patched.undo))
    if patched.why == "clash":
        return Clash(change.ref, patched.edit, patched.found)
    return NotKept(f"{files.name_of(change.ref)}: {patched.reason}", "change it in an editor")


def _perform(write: _Write) -> None:
    change = write.change
    if isinstance(change, Create):
        replace_durably(write.path, write.text, create=True)
    elif isinstance(change, Remove):
        remove_durably(write.path)
    elif isinstance(change, Rename):
        rename_durably(write.path, write.path.with_name(f"{change.to}.toml"))
    else:
        replace_durably(write.path, write.text)


def _put_back(files: GarageFiles, done: list[_Write], failed: _Write, error: NotWritten) -> NotKept:
    """Take back what was written before the failure, last first."""
    stuck: list[str] = []
    for write in reversed(done):
        try:
            _revert(write)
        except NotWritten as second:
            stuck.append(f"{_name(files, write)} ({second.reason})")
    reason = f"{_name(files, failed)}: {error.reason}"
    if stuck:
        reason += f"; could not be put back: {', '.join(stuck)}"
    files.forget_listing()
    return NotKept(reason, error.mend)


def _name(files: GarageFiles, write: _Write) -> str:
    return os.path.relpath(write.path, files.root)


def _revert(write: _Write) -> None:
    change = write.change
    if isinstance(change, Create):
        remove_durably(write.path)
    elif isinstance(change, Remove):
        replace_durably(write.path, write.before, create=True)
    elif isinstance(change, Rename):
        rename_durably(write.path.with_name(f"{change.to}.toml"), write.path)
    else:
        replace_durably(write.path, write.before)
