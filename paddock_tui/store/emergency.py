"""The file of a rider's emergency page: this user's alone, in a folder that git leaves out.

Nothing else opens it. No step of it is in the journal, and nothing of it is kept half typed.
"""

import contextlib
from pathlib import Path
from typing import Any

from paddock_tui.records.edits import MISSING, Edit, Value
from paddock_tui.records.ids import is_id
from paddock_tui.store.data import lookup
from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.lock import Locked, hold
from paddock_tui.store.patch import RefusedPatch, patch
from paddock_tui.store.private import own_folder
from paddock_tui.store.reading import loads
from paddock_tui.store.tree import sync_names

FOLDER = "private"
"""Where the files stand, one for each rider, below the garage's folder."""

_MOST = 20_000
"""Bytes: what a stranger can read is far shorter."""

HEAD = "# Read by whoever finds the rider. Only on this laptop: git leaves this folder out.\n"


class NotThisFile(Exception):
    """The file cannot be used; with the sentence for it, in which nothing of it is quoted."""


def read_text(root: Path, rider: str) -> str | None:
    """Return the text of a rider's file; None where there is none on this laptop. Raises NotThisFile."""
    try:
        with own_folder(root, FOLDER) as folder:
            return folder.read(_name(rider), _MOST).decode("utf-8")
    except FileNotFoundError:
        return None
    except UnicodeDecodeError:
        raise NotThisFile(f"{FOLDER}/{rider}.toml is not UTF-8 text") from None
    except NotRead as error:
        raise NotThisFile(f"{FOLDER}/{rider}.toml: {error.found}") from None
    except OSError as error:
        raise NotThisFile(f"{FOLDER}/{rider}.toml: {in_plain_words(error)}") from None


def parsed(text: str, rider: str) -> dict[str, Any]:
    """Return the data of a file's text. Raises NotThisFile."""
    found = loads(text)
    if not isinstance(found, dict):
        line = f", line {found.line}" if found.line else ""
        raise NotThisFile(f"{FOLDER}/{rider}.toml{line}: this is not TOML; correct it in an editor")
    return found


def changed(text: str | None, key: str, new: Value | None) -> str | None:
    """Return the text with a value set or, with None, taken out; None where that cannot be done."""
    body = HEAD if text is None else text
    old = lookup(loads_or_nothing(body), (key,))
    found = patch(body, [Edit((key,), old, MISSING if new is None else new)])
    return None if isinstance(found, RefusedPatch) else found.text


def loads_or_nothing(text: str) -> dict[str, Any]:
    """Return the data of a text, empty where it is not TOML."""
    found = loads(text)
    return found if isinstance(found, dict) else {}


def write_text(root: Path, rider: str, before: str | None, text: str | None) -> None:
    """Put a text in place of the one that was read `before`; None is no file. Raises NotThisFile."""
    try:
        with hold(root):
            if read_text(root, rider) != before:
                raise NotThisFile("another program changed it meanwhile: look again")
            with own_folder(root, FOLDER, make=True) as folder:
                if text is not None:
                    folder.put_durably(_name(rider), text.encode("utf-8"))
                elif before is not None:
                    folder.remove(_name(rider))
                    sync_names(folder.folder)
    except (Locked, NotWritten) as error:
        raise NotThisFile(str(error)) from None
    except OSError as error:
        raise NotThisFile(f"not saved: {in_plain_words(error)}") from None


def riders_of_files(root: Path) -> tuple[str, ...]:
    """List the riders that have a file here, by the names alone; empty where the folder cannot be used."""
    with contextlib.suppress(OSError), own_folder(root, FOLDER) as folder:
        stems = (name.removesuffix(".toml") for name in folder.names() if name.endswith(".toml"))
        return tuple(stem for stem in stems if is_id(stem))
    return ()


def _name(rider: str) -> str:
    if not is_id(rider):
        raise NotThisFile("no rider has such a name")
    return f"{rider}.toml"
