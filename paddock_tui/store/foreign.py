"""Files of others that are only read: text from outside the garage."""

from pathlib import Path

from paddock_tui.records.errors import InputError

MOST_BYTES = 1_000_000


def foreign_text(name: str, beside: Path, what: str = "a file of lap times") -> str | InputError:
    """Read a text file by its path, one that is not absolute beside a folder; what it is not is said."""
    try:
        path = beside / Path(name.strip()).expanduser()
        if not path.is_file():
            return InputError(f"there is no file {path}", "the path of a file", "type it again")
        if path.stat().st_size > MOST_BYTES:
            return InputError(f"{path.name} is larger than a megabyte", what, "choose another file")
        return path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        return InputError(f"{name} is not UTF-8 text", "a text file", "save it as UTF-8")
    except (OSError, ValueError, RuntimeError) as error:
        return InputError(
            f"{name!r} cannot be read: {error}", "a file that can be read", "choose another file"
        )
