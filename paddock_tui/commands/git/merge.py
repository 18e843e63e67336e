"""`git merge`: the merge driver that git calls with three files; the result replaces the second one."""

import tomllib
from collections.abc import Sequence
from pathlib import Path, PurePosixPath

from paddock_tui.commands.common import OK, complain, counted
from paddock_tui.merge import MergeError, are_different, merged
from paddock_tui.records.garage import SCHEMA
from paddock_tui.records.paths import FOLDERS
from paddock_tui.store.errors import in_plain_words
from paddock_tui.text import printable

LEFT_OPEN = 1
"""The status that makes git stop: something is left to decide, or nothing was merged."""

_MOST_BYTES = 4_000_000


def merge(base: str, ours: str, theirs: str, path: str | None) -> int:
    """Merge theirs into ours by fact; 0 where nothing is disputed, else 1.

    Where nothing can be merged every file stays untouched, and git's own conflict is left.
    """
    name = printable(path or ours)
    try:
        _check_folder(path)
        texts = [_text(one) for one in (base, ours, theirs)]
        _check_kind(path, texts)
        found = merged(*texts)
        if found.text != texts[1]:
            # A temporary file of git's own, made for this: it only has to hold the result when we are done.
            Path(ours).write_bytes(found.text.encode("utf-8"))
    except MergeError as error:
        complain((f"{name}: not merged: {printable(str(error))}",))
        return LEFT_OPEN
    except OSError as error:
        complain((f"{name}: not merged: {in_plain_words(error)}",))
        return LEFT_OPEN
    if found.open:
        facts = counted(found.open, "fact")
        complain((f"{name}: {facts} changed on both sides: decide in the review, then commit",))
        return LEFT_OPEN
    return OK


def _text(name: str) -> str:
    path = Path(name)
    if path.stat().st_size > _MOST_BYTES:
        raise MergeError("a file of more than four megabytes is no record")
    try:
        return path.read_bytes().decode("utf-8")
    except UnicodeDecodeError:
        raise MergeError("a file is not UTF-8 text") from None


def _check_folder(path: str | None) -> None:
    """Refuse what is no record before it is opened: riders keep there what is for nobody else."""
    is_garage = path is None or PurePosixPath(path).name == "garage.toml"
    if path is not None and not is_garage and not set(FOLDERS.values()) & set(PurePosixPath(path).parts[:-1]):
        raise MergeError("it is in no folder of a garage")


def _check_kind(path: str | None, texts: Sequence[str]) -> None:
    """Refuse what a newer program wrote, two new sessions of one name, and what is no state of the base."""
    folder = PurePosixPath(path).parts[:-1] if path is not None else ()
    base, ours, theirs = texts
    if not base.strip() and FOLDERS["session"] in folder:
        raise MergeError("two new sessions of one name are two outings: run paddock-tui git split GARAGE")
    if any(are_different(base, text) for text in (ours, theirs)):
        raise MergeError("it holds nothing of the record that both sides began with: two different records")
    for text in (ours, theirs):
        schema = _schema(text)
        if schema is not None and schema > SCHEMA:
            raise MergeError(f"a newer program wrote format {schema}, this one knows {SCHEMA}")


def _schema(text: str) -> int | None:
    try:
        found = tomllib.loads(text.removeprefix("\ufeff")).get("schema")
    except (ValueError, RecursionError):
        return None
    return found if isinstance(found, int) and not isinstance(found, bool) else None
