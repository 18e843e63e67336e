"""What lies in a garage's folders: the file of each record, and files that no record can come from."""

import os
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS
from paddock_tui.records.shapes.references import id_of, is_id


@attrs.frozen
class Listing:
    """The file of each record by kind and id. `strays` are files that look like records and are not read."""

    files: dict[str, dict[str, Path]]
    strays: tuple[InputError, ...] = ()


def listed(root: Path) -> Listing:
    """Look through the folders of a garage; no file is opened."""
    files: dict[str, dict[str, Path]] = {}
    strays: list[InputError] = []
    for kind, folder in FOLDERS.items():
        files[kind] = {}
        for path in _toml_files(root / folder):
            name = os.path.relpath(path, root)
            other = files[kind].get(path.stem)
            if not is_id(path.stem):
                strays.append(_no_id(path, name))
            elif other is None:
                files[kind][path.stem] = path
            else:
                first, second = sorted((other, path), key=_away_from_home)
                files[kind][path.stem] = first
                strays.append(_twice(os.path.relpath(second, root), os.path.relpath(first, root)))
    return Listing(files, tuple(strays))


def _toml_files(folder: Path) -> Iterator[Path]:
    """Walk a folder, in the order of names. Templates and hidden files are not read."""
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError:
        return
    for entry in entries:
        if entry.name.startswith("."):
            continue
        if entry.is_dir():
            yield from _toml_files(Path(entry.path))
        elif entry.name.endswith(".toml"):
            yield Path(entry.path)


def _away_from_home(path: Path) -> tuple[bool, Path]:
    """Order two files of one name: the one in the folder of its own year comes first."""
    return not path.stem.startswith(path.parent.name), path


def _no_id(path: Path, name: str) -> InputError:
    better = id_of(path.stem)
    mend = f"rename it, such as to {better}.toml" if is_id(better) else "give it such a name"
    return InputError(
        "a file whose name is no id, so that it is not read",
        "lower-case letters, digits and hyphens before .toml",
        mend,
        file=name,
    )


def _twice(name: str, other: str) -> InputError:
    return InputError(
        f"a second file of this name; {other} is read, and this one is not",
        "a name of its own",
        "rename one of the two",
        file=name,
    )
