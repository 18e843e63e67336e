"""Files of others that are only read: text from outside the garage."""

from pathlib import Path

from paddock_tui.records.errors import InputError
from paddock_tui.store.guarded import NotRead, read_file
from paddock_tui.store.tree import Tree

MOST_BYTES = 1_000_000


def foreign_text(name: str, beside: Path, what: str = "a file of lap times") -> str | InputError:
    """Read a text file by its path, one that is not absolute beside a folder; what it is not is said."""
    try:
        path = (beside / Path(name.strip()).expanduser()).resolve(strict=True)
        return read_file(Tree(path.parent), path, MOST_BYTES).decode("utf-8-sig")
    except FileNotFoundError:
        return InputError(f"there is no file {name}", "the path of a file", "type it again")
    except NotRead as error:
        return InputError(f"{name}: {error.found}", what, "choose another file")
    except UnicodeDecodeError:
        return InputError(f"{name} is not UTF-8 text", "a text file", "save it as UTF-8")
    except (OSError, ValueError, RuntimeError) as error:
        return InputError(
            f"{name!r} cannot be read: {error}", "a file that can be read", "choose another file"
        )
