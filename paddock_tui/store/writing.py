"""One change of a step: checked against the files as they are, performed, taken back where others fail."""

from collections.abc import Iterable, Mapping
from pathlib import Path as FilePath

import attrs

from paddock_tui.records.edits import AnyChange, Change, Create, Rekey, Remove, Rename
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import remove_durably, rename_durably, replace_durably, writable
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.outcomes import Clash, NotSaved
from paddock_tui.store.patch import FileData, Patched, patch
from paddock_tui.store.reading import loads, read_text
from paddock_tui.store.rekey import rekey
from paddock_tui.store.tree import Tree


@attrs.frozen
class Write:
    """One prepared change: what to do, its text before and after, and the change that is its undo."""

    change: AnyChange
    path: FilePath
    text: str
    before: str
    undo: AnyChange


def prepared(files: GarageFiles, changes: Iterable[AnyChange]) -> list[Write] | Clash | NotSaved:
    """Check changes, each against what the ones before it make of the files; nothing is written."""
    writes: list[Write] = []
    texts: dict[FilePath, str] = {}
    moved: dict[Ref, FilePath] = {}
    for change in changes:
        one = _prepared(files, change, texts, moved)
        if not isinstance(one, Write):
            return one
        texts[one.path] = one.text
        if isinstance(change, Rename):
            moved[Ref(change.ref.kind, change.to)] = to = one.path.with_name(f"{change.to}.toml")
            texts[to] = one.text
        writes.append(one)
    return writes


def _prepared(
    files: GarageFiles, change: AnyChange, texts: Mapping[FilePath, str], moved: Mapping[Ref, FilePath]
) -> Write | Clash | NotSaved:
    """Check one change; `texts` and `moved` are what the ones before it in the step make of the files."""
    wanted = Ref(change.ref.kind, change.to) if isinstance(change, Rename) else change.ref
    if isinstance(change, Create | Rename) and files.path_of(wanted) is not None:
        return NotSaved(f"there is a {wanted.kind} {wanted.id} already", "choose another name", again=False)
    if isinstance(change, Create):
        return Write(change, files.path_for(change.ref), change.text, "", Remove(change.ref, change.text))
    known = moved.get(change.ref) or files.path_of(files.former.current(change.ref))
    if known is None:
        return NotSaved(f"{change.ref} is not in the garage any more", again=False)
    try:
        text = texts[known] if known in texts else read_text(files.tree, known, look=writable)
    except NotWritten as error:
        return NotSaved(f"{files.name_of(change.ref)}: {error.reason}", error.mend)
    if isinstance(text, InputError):
        return NotSaved(f"{files.name_of(change.ref)}: {text.found}", text.mend)
    return _with_text(files, change, known, text)


def _with_text(
    files: GarageFiles, change: Change | Rename | Remove | Rekey, path: FilePath, text: str
) -> Write | Clash | NotSaved:
    data: FileData | None = None
    if isinstance(change, Change | Rekey):
        found = loads(text, shared=True)
        if isinstance(found, dict):
            data, change = found, files.former.as_written(change, found)
    match change:
        case Rename():
            return Write(change, path, text, text, Rename(Ref(change.ref.kind, change.to), change.ref.id))
        case Remove():
            if text != change.text:
                name = files.name_of(change.ref)
                return NotSaved(f"{name} was changed meanwhile, so it is not removed", again=False)
            return Write(change, path, "", text, Create(change.ref, text))
        case Rekey():
            return _rekeyed(files, change, path, text)
        case Change():
            return _patched(files, change, path, text, data)


def _patched(
    files: GarageFiles, change: Change, path: FilePath, text: str, data: FileData | None
) -> Write | Clash | NotSaved:
    patched = patch(text, change.edits, data)
    if isinstance(patched, Patched):
        return Write(change, path, patched.text, text, Change(change.ref, patched.undo))
    if patched.why == "clash":
        return Clash(change.ref, patched.edit, patched.found)
    name = files.name_of(change.ref)
    wrong = loads(text) if patched.why == "unreadable" else None
    if isinstance(wrong, InputError):
        return NotSaved(f"{name}: {wrong.found}", wrong.mend or "change it in an editor")
    return NotSaved(f"{name}: {patched.reason}", "change it in an editor")


def _rekeyed(files: GarageFiles, change: Rekey, path: FilePath, text: str) -> Write | NotSaved:
    found = rekey(text, change.path, change.to)
    if found is None:
        reason = f"{files.name_of(change.ref)}: {change.path[-1]} cannot become {change.to} there"
        return NotSaved(reason, "change it in an editor")
    back: AnyChange = Rekey(change.ref, (*change.path[:-1], change.to), change.path[-1])
    if found.undo:
        back = Change(change.ref, found.undo)
    return Write(change, path, found.text, text, back)


def perform(tree: Tree, write: Write) -> None:
    """Do a prepared change. Raises NotWritten; Replaced where the file holds another text by now."""
    change = write.change
    if isinstance(change, Create):
        replace_durably(tree, write.path, write.text, create=True)
    elif isinstance(change, Remove):
        remove_durably(tree, write.path)
    elif isinstance(change, Rename):
        rename_durably(tree, write.path, write.path.with_name(f"{change.to}.toml"))
    else:
        replace_durably(tree, write.path, write.text, before=write.before)


def revert(tree: Tree, write: Write) -> None:
    """Take a change back that was done a moment ago. Raises NotWritten."""
    change = write.change
    if isinstance(change, Create):
        remove_durably(tree, write.path)
    elif isinstance(change, Remove):
        replace_durably(tree, write.path, write.before, create=True)
    elif isinstance(change, Rename):
        rename_durably(tree, write.path.with_name(f"{change.to}.toml"), write.path)
    else:
        replace_durably(tree, write.path, write.before, before=write.text)
