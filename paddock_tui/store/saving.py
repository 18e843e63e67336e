"""Steps saved on disk: every file checked first, then written one by one, all or none, and noted."""

import datetime as dt
import os
import re
import stat

from paddock_tui.records.edits import AnyChange, Rename, Step
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store import intent as intents
from paddock_tui.store.crash import report
from paddock_tui.store.cut_short import INTENT
from paddock_tui.store.errors import NotWritten, Replaced, in_plain_words
from paddock_tui.store.files import sweep
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.intent import Intent
from paddock_tui.store.journal import JournalEntry, JournalNote, append, entries, new_id, whole_texts
from paddock_tui.store.lock import Locked, hold
from paddock_tui.store.outcomes import Clash as Clash
from paddock_tui.store.outcomes import NotSaved as NotSaved
from paddock_tui.store.outcomes import Outcome as Outcome
from paddock_tui.store.outcomes import Saved as Saved
from paddock_tui.store.private import Private
from paddock_tui.store.signing import user_key
from paddock_tui.store.writing import Write, perform, prepared, revert

_TRIES = 5
"""How often a file that another program writes at the same moment is read again."""

NEW = JournalNote()

OF_OTHERS = "a step that another program noted as cut short is not completed here: look through the records"


def save(files: GarageFiles, step: Step, now: dt.datetime | None = None, note: JournalNote = NEW) -> Outcome:
    """Save one step: lock the garage, re-read, see that the old values still stand, patch, replace, note.

    Blocks for as long as the lock is waited for; safe from any thread, one at a time for one `files`.
    """
    if is_newer(files):
        return NotSaved(
            "this garage was written by a newer paddock-tui and is only read", "update this program", False
        )
    moment = now or dt.datetime.now()
    try:
        with hold(files.root, since=now) as folder:
            try:
                _mended(files, folder, moment)
                return _save_locked(files, folder, step, moment, note)
            finally:
                # Behind the step: it looks at every name in the garage, of many seasons thousands.
                _swept(files)
    except Locked as error:
        return NotSaved(str(error), "try again when it is done")
    except NotWritten as error:
        return NotSaved(error.reason, error.mend)


def _swept(files: GarageFiles) -> None:
    """Remove what dead processes left half-written, once in a run; what that meets is not the step's."""
    if not files.swept:
        files.swept = True
        try:
            sweep(files.tree)
        except Exception as error:
            report(error)


def repair(files: GarageFiles, now: dt.datetime) -> str:
    """Complete, or put back, a step that was cut short; return what to say, nothing where there was none."""
    if not intents.declared(files.root) or is_newer(files):
        return ""
    try:
        with hold(files.root, since=now) as folder:
            return _mended(files, folder, now)
    except Locked:
        return ""  # whoever is writing is alive
    except NotWritten as error:
        return f"a step that was cut short cannot be completed: {error.reason}"


def cut_short(files: GarageFiles) -> str:
    """Return what to say of a step that was cut short, without completing it: for those who only read."""
    if not intents.declared(files.root):
        return ""
    intent = intents.found(files.root)
    if intent is None:
        return OF_OTHERS
    return f"{intent.step.label}: was cut short; the screens complete it, and so does paddock-tui undo"


def pass_over(files: GarageFiles, entry: JournalEntry, now: dt.datetime) -> None:
    """Note that a step can no longer be undone or done again, so that the next one is tried instead."""
    try:
        with hold(files.root, since=now) as folder:
            append(folder, entry, {})
    except (Locked, NotWritten, OSError):
        return


def _mended(files: GarageFiles, folder: Private, now: dt.datetime) -> str:
    if not folder.has(INTENT):
        return ""
    intent = intents.found(files.root)
    if intent is None:
        intents.set_aside(files.root)
        return OF_OTHERS
    if (intent.id, intent.note.what) in {(one.id, one.what) for one in entries(files.root)}:
        intents.withdraw(files.root)  # all of it was done, and noted
        return ""
    end = intents.complete(files, intent)
    if end == "completed":
        _noted(files, folder, _entry(intent, now), {})
    intents.withdraw(files.root)
    words = "could be neither completed nor put back" if end == "left" else f"has been {end}"
    return f"{intent.step.label}: was cut short, {words}"


def _save_locked(
    files: GarageFiles, folder: Private, step: Step, now: dt.datetime, note: JournalNote
) -> Outcome:
    for _ in range(_TRIES):
        try:
            return _save_once(files, folder, step, now, note)
        except Replaced as error:
            last = NotSaved(error.reason, error.mend)
    return last


def _save_once(
    files: GarageFiles, folder: Private, step: Step, now: dt.datetime, note: JournalNote
) -> Outcome:
    """Try once. Raises Replaced where another program wrote a file since it was read here."""
    writes = prepared(files, step.changes)
    if not isinstance(writes, list):
        return writes
    undo = Step(step.label, tuple(write.undo for write in reversed(writes)))
    intent = Intent(step, undo, note.of or new_id(), note)
    several = len(writes) > 1 or any(isinstance(one, Rename) for one in step.changes)
    if several:
        intents.declare(files.root, intent)
    try:
        failed = _write_all(files, writes)
    except Replaced:
        intents.withdraw(files.root)
        raise
    if failed is not None:
        if several and failed.again:
            intents.withdraw(files.root)
        return failed
    unnoted = _noted(files, folder, _entry(intent, now), _texts(writes))
    if several:
        intents.withdraw(files.root)
    return Saved(undo, intent.id, unnoted)


def _write_all(files: GarageFiles, writes: list[Write]) -> NotSaved | None:
    done: list[Write] = []
    for write in writes:
        try:
            perform(files.tree, write)
        except NotWritten as error:
            if not error.replaced:
                return _put_back(files, done, write, error)
        done.append(write)
    return None


def _put_back(files: GarageFiles, done: list[Write], failed: Write, error: NotWritten) -> NotSaved:
    """Take back what was written before the failure, last first."""
    stuck: list[str] = []
    for write in reversed(done):
        try:
            revert(files.tree, write)
        except NotWritten as second:
            if not second.replaced:
                stuck.append(f"{_name(files, write)} ({second.reason})")
    files.forget_listing()
    if isinstance(error, Replaced) and not stuck:
        raise error
    reason = f"{_name(files, failed)}: {error.reason}"
    if stuck:
        reason += f"; could not be put back: {', '.join(stuck)}"
    # What is neither done nor put back stays declared: the next step, or the next start, sees to it.
    return NotSaved(reason, error.mend, again=not stuck)


def _name(files: GarageFiles, write: Write) -> str:
    return os.path.relpath(write.path, files.root)


def _entry(intent: Intent, now: dt.datetime) -> JournalEntry:
    note = intent.note
    return JournalEntry(intent.id, now, note.run, note.what, intent.step, intent.undo, note.doubtful)


def _noted(files: GarageFiles, folder: Private, entry: JournalEntry, texts: dict[Ref, str]) -> str:
    """Write a line of the journal; return why only this run can undo it, or nothing."""
    hidden = [ref for ref in entry.refs if _is_hidden(files, ref)] if folder.shared else []
    if hidden:
        return f"{files.name_of(hidden[0])} is readable for you alone, and the garage's journal is not"
    try:
        append(folder, entry, whole_texts(entry.step, texts))
    except (OSError, NotRead) as error:
        return error.found if isinstance(error, NotRead) else in_plain_words(error)
    lost = "" if files.said_no_key else user_key().lost
    files.said_no_key = True
    return lost


def _texts(writes: list[Write]) -> dict[Ref, str]:
    """Return each record's text as it was before the step."""
    found: dict[Ref, str] = {}
    for write in writes:
        change: AnyChange = write.change
        found.setdefault(change.ref, write.before)
    return found


_SCHEMA_LINE = re.compile(r"^\s*schema\s*=\s*(\d{1,9})\s*(?:#.*)?$", re.MULTILINE)


def is_newer(files: GarageFiles) -> bool:
    """Return whether the garage was written by a newer program, so that it must not be written to.

    Where the garage's own file is lost, its line `schema = ...` is looked for in the text.
    """
    from paddock_tui.records.garage import SCHEMA, Garage

    loaded, schema = files.read(GARAGE), None
    if loaded is not None and isinstance(loaded.record, Garage):
        schema = loaded.record.schema
    elif loaded is not None and (line := _SCHEMA_LINE.search(loaded.text)) is not None:
        schema = int(line[1])
    return schema is not None and schema > SCHEMA


def _is_hidden(files: GarageFiles, ref: Ref) -> bool:
    """Return whether a record in a shared garage may be read by fewer than the journal."""
    path = files.path_of(ref)
    try:
        return path is not None and not path.stat().st_mode & stat.S_IRGRP
    except OSError:
        return False
