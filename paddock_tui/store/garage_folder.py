"""Whether a folder is a garage, and what is wrong where it is none."""

import stat

from paddock_tui.records.errors import InputError
from paddock_tui.store import system_calls
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.tree import Tree

GARAGE_FILE = "garage.toml"
ANOTHER = "name the right folder, or make a garage with: paddock-tui new FOLDER"


def no_garage(tree: Tree) -> InputError | None:
    """Return why a folder is no garage; None where it is one."""
    try:
        found = tree.root.stat()
    except FileNotFoundError:
        return _wrong(tree, "no such folder", "make one with: paddock-tui new FOLDER")
    except OSError as error:
        return _wrong(tree, in_plain_words(error), "look at the folder's owner and mode")
    if not stat.S_ISDIR(found.st_mode):
        return _wrong(tree, "not a folder", "make one with: paddock-tui new FOLDER")
    try:
        with tree.place(tree.root / GARAGE_FILE) as place:
            found = system_calls.status(place.folder, place.name)
    except FileNotFoundError:
        return _wrong(tree, f"there is no {GARAGE_FILE} in it", ANOTHER)
    except OSError as error:
        return _wrong(tree, f"{GARAGE_FILE}: {in_plain_words(error)}", ANOTHER)
    if not stat.S_ISREG(found.st_mode):
        return _wrong(tree, f"{GARAGE_FILE} is not a plain file", ANOTHER)
    return None


def _wrong(tree: Tree, found: str, mend: str) -> InputError:
    return InputError(f"{tree.root}: {found}", "a garage folder", mend)
