"""Edits that are not on disk: how they show, and the text that a record would have with them."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from paddock_tui.desk.undo import Done
from paddock_tui.records.edits import MISSING, Change, Create, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref, spell
from paddock_tui.store.data import after, blocked, lookup, same
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.outcomes import NotSaved
from paddock_tui.store.patch import Patched, patch
from paddock_tui.store.reading import read_text
from paddock_tui.store.render import RenderError, render_inline

NOT_YET = "not yet saved"

Marks = Mapping[tuple[Ref, Path], str]
"""What to say beside values that show and are not on disk."""


AsTheyRead = dict[Ref, Mapping[str, Any]]
"""The plain data of some records."""


def as_they_read(files: GarageFiles, step: Step) -> AsTheyRead:
    """Return the records that a step changes as they read now."""
    return {change.ref: files.data(change.ref) for change in step.changes if isinstance(change, Change)}


def stage(files: GarageFiles, step: Step, before: AsTheyRead | None = None) -> None:
    """Let the records read as they will stand, made of what they were `before` (not given: as they read now).

    What a clash will refuse is left as it is.
    """
    plain = as_they_read(files, step) if before is None else before
    for change in step.changes:
        if isinstance(change, Change):
            data = dict(plain[change.ref])
            for edit in change.edits:
                if _stands(data, edit):
                    data = after(data, edit, lambda _: True)
            plain[change.ref] = data
            files.stage(change.ref, data)


def marks(steps: Iterable[Done]) -> Marks:
    """Say of each value that waits to be kept, or could not be, how it stands."""
    found: dict[tuple[Ref, Path], str] = {}
    for done in steps:
        words = NOT_YET if done.outcome is None else _said(done)
        for change in done.step.changes:
            if words and isinstance(change, Change):
                found.update({(change.ref, edit.path): words for edit in change.edits})
    return found


def whole_text(files: GarageFiles, ref: Ref, steps: Iterable[Done]) -> str:
    """Write a record with the steps that could not be kept in it.

    Where its file cannot be patched the values follow as comments, so that none is lost.
    """
    text = _text_now(files, ref)
    lost: list[str] = []
    for change in (one for done in steps for one in done.step.changes if one.ref == ref):
        if isinstance(change, Create):
            text = change.text
        elif isinstance(change, Change):
            made = patch(text, change.edits)
            text = made.text if isinstance(made, Patched) else text
            lost += [] if isinstance(made, Patched) else _as_comments(change.edits)
    if not lost:
        return text
    return "\n".join([text.rstrip("\n"), "", "# not saved:", *lost]) + "\n"


def _text_now(files: GarageFiles, ref: Ref) -> str:
    path = files.path_of(ref)
    text = read_text(files.tree, path) if path is not None else ""
    if isinstance(text, InputError):  # the disk gives it no more: as it was read last
        loaded = files.read(ref)
        return loaded.text if loaded is not None else ""
    return text


def _as_comments(edits: Iterable[Edit]) -> Iterator[str]:
    for edit in edits:
        try:
            value = "not known" if edit.new is MISSING else render_inline(edit.new)
        except RenderError:
            value = repr(edit.new)
        yield f"# {spell(edit.path)} = {value}"


def _stands(data: Mapping[str, object], edit: Edit) -> bool:
    return blocked(data, edit.path) is MISSING and same(lookup(data, edit.path), edit.old)


def _said(done: Done) -> str:
    if not done.unkept or not isinstance(done.outcome, NotSaved):
        return ""
    where = f"; written to {done.elsewhere}" if done.elsewhere else ""
    reason = done.outcome.reason
    # The row is of the file that the reason names, and has room for few words.
    short = reason.partition(".toml: ")[2] or reason
    return f"not saved: {short}{where}"
