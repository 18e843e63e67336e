"""What lies in a garage's folders: the file of each record, and files that no record can come from."""

import itertools
import operator
import os
import time
from collections.abc import Collection, Container, Iterable, Iterator, KeysView, Mapping
from pathlib import Path
from typing import NamedTuple

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import are_ids, id_of, is_id
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.store.errors import LeadsOut, in_plain_words
from paddock_tui.store.tree import Tree

DEEPEST = 8
"""Folders inside each other that are looked into; what is deeper is said, and not read."""

SUFFIX = ".toml"
"""Ends the name of a record's file."""

ALLOWED_BY = "press enter on it in the screens to allow that place, or put a copy of the file in its place"


RESTS_NS = 2_000_000_000
"""A change so long before a look cannot be of the same tick of a file system's clock as one after it."""

Stamp = tuple[int, int, int, int]
"""What tells that a file changed: times of change of text and status in ns, size, inode."""

FolderStamp = tuple[int, int, int, int]
"""What tells that names in a folder changed: times of change of content and status in ns, device, inode."""


class FolderEntry(NamedTuple):
    """A name in a folder that is no plain file: whether it is a link, and whether it is itself a folder."""

    name: str
    is_link: bool
    is_folder: bool


def stamp_of(path: Path | str | None) -> Stamp | None:
    """Return what tells that a file changed; None where there is none."""
    if path is None:
        return None
    try:
        return stamp_in(os.stat(path))  # noqa: PTH116 - hundreds are looked at each second
    except OSError:
        return None


def stamp_in(found: os.stat_result) -> Stamp:
    """Return what of a file's status tells that it changed."""
    stamp: Stamp = _STAMP(found)
    return stamp


_STAMP = operator.attrgetter("st_mtime_ns", "st_ctime_ns", "st_size", "st_ino")


class RecordFiles(Mapping[str, Path]):
    """The file of each record of a kind by its id; paths are made when they are asked for.

    What is held for each is its folder's name, the same text for all in one: a file is called as its record.
    """

    def __init__(self) -> None:
        self._within: dict[str, str] = {}
        self._folders: dict[str, Path] = {}
        self._paths: dict[str, Path] = {}

    def put(self, name: str, folder: Path) -> None:
        """Say in which folder a record's file is."""
        self.put_all([name], folder)
        self._paths.pop(name, None)

    def put_all(self, names: Collection[str], folder: Path) -> None:
        """Say in which folder the files of records are that were in none."""
        within = str(folder)
        self._within.update(dict.fromkeys(names, within))
        self._folders.setdefault(within, folder)

    def __getitem__(self, name: str) -> Path:
        found = self._paths.get(name)
        if found is None:
            found = self._paths[name] = self._folders[self._within[name]] / f"{name}{SUFFIX}"
        return found

    def place_of(self, name: str) -> tuple[Path, str] | None:
        """Return the folder of a record's file, and the file's name in it; None where there is none."""
        within = self._within.get(name)
        return (self._folders[within], f"{name}{SUFFIX}") if within is not None else None

    def name_of(self, name: str) -> str | None:
        """Return the name of a record's file with its folder, for a system call; None where there is none."""
        within = self._within.get(name)
        return f"{within}{os.sep}{name}{SUFFIX}" if within is not None else None

    def stamps(self, names: Iterable[str]) -> list[Stamp]:
        """Return the stamps of many records' files. Raises KeyError or OSError where one is not there."""
        found: list[Stamp] = []
        look = os.stat
        for within, ids in itertools.groupby(names, self._within.__getitem__):
            folder = os.open(within, os.O_RDONLY | os.O_DIRECTORY)
            try:
                found += [_STAMP(look(name + SUFFIX, dir_fd=folder)) for name in ids]
            finally:
                os.close(folder)
        return found

    def within(self, folders: Container[str]) -> list[str]:
        """List the ids of those that are in some folders, which are named as for a system call."""
        return [name for name, within in self._within.items() if within in folders]

    def __iter__(self) -> Iterator[str]:
        return iter(self._within)

    def __len__(self) -> int:
        return len(self._within)

    def __contains__(self, name: object) -> bool:
        return name in self._within

    def __eq__(self, other: object) -> bool:
        return isinstance(other, RecordFiles) and self._within == other._within

    __hash__ = None  # type: ignore[assignment]

    def keys(self) -> KeysView[str]:
        """Return the ids."""
        return self._within.keys()


@attrs.frozen
class FolderSeen:
    """What a folder held, and its stamp by then; `rests` says that a later change shows in the stamp.

    Of a plain file nothing is held but its name, and of one that is no record's not even that.
    """

    stamp: FolderStamp | None
    rests: bool
    entries: tuple[str | FolderEntry, ...] = ()


@attrs.frozen
class Listing:
    """The file of each record by kind and id. `strays` are files that look like records and are not read.

    `folders` are those that were looked into; `links` says that a link was met, whose target may change.
    """

    files: dict[str, RecordFiles]
    strays: tuple[InputError, ...] = ()
    folders: Mapping[Path, FolderSeen] = attrs.field(factory=dict)
    links: bool = False

    def stands(self) -> bool:
        """Return whether every folder is as it was, as far as its stamp can tell; no folder is read."""
        return not self.links and all(
            seen.rests and _folder_stamp(path) == seen.stamp for path, seen in self.folders.items()
        )


NONE = RecordFiles()


def listed(tree: Tree, before: Listing | None = None) -> Listing:
    """Look through the folders of a garage; no file is opened, and no folder that is as it was `before`."""
    walk = _Walk(tree, before.folders if before is not None else {})
    files: dict[str, RecordFiles] = {}
    for kind, top in FOLDERS.items():
        here = files[kind] = RecordFiles()
        for folder, names in walk.records(tree.root / top):
            stems = [name[: -len(SUFFIX)] for name in names]
            if (not here or here.keys().isdisjoint(stems)) and are_ids(stems):
                here.put_all(stems, folder)
            else:
                walk.strays += _put_each(here, folder, stems, tree.root)
    return Listing(files, tuple(walk.strays), walk.folders, walk.links)


def _put_each(here: RecordFiles, folder: Path, stems: list[str], root: Path) -> Iterator[InputError]:
    """Put in a folder's files that are records, and give what is wrong with the others."""
    for stem in stems:
        path = folder / f"{stem}{SUFFIX}"
        if not is_id(stem):
            yield _no_id(path, os.path.relpath(path, root))
        elif stem not in here:
            here.put(stem, folder)
        else:
            first, second = sorted((here[stem], path), key=_away_from_home)
            here.put(stem, first.parent)
            yield _twice(os.path.relpath(second, root), os.path.relpath(first, root))


def moved(before: Listing, now: Listing) -> Iterator[Ref]:
    """List the records that came or went between two looks."""
    for kind in FOLDERS:
        old, new = before.files.get(kind, NONE), now.files.get(kind, NONE)
        yield from (Ref(kind, name) for name in sorted(old.keys() ^ new.keys()))


def beside_what_moved(before: Listing, now: Listing) -> Iterator[Ref]:
    """List the records in folders in which names changed between two looks: files may have been replaced."""
    changed = {
        str(path)
        for path, seen in now.folders.items()
        if (known := before.folders.get(path)) is None or known.stamp != seen.stamp
    }
    if changed:
        for kind, files in now.files.items():
            yield from (Ref(kind, name) for name in files.within(changed))


class _Walk:
    """One look through the folders: each is entered once, however many links lead to it."""

    def __init__(self, tree: Tree, known: Mapping[Path, FolderSeen]) -> None:
        self.tree = tree
        self.strays: list[InputError] = []
        self.folders: dict[Path, FolderSeen] = {}
        self.links = False
        self._known = known
        self._seen: set[tuple[int, int]] = set()

    def records(self, top: Path) -> Iterator[tuple[Path, list[str]]]:
        """Walk a folder by names; gives each folder and the names in it. Hidden files are not read."""
        if _is_link(top) and not self._may_follow(top):
            return
        stack = [(top, 0)]
        while stack:
            folder, depth = stack.pop()
            below: list[Path] = []
            names: list[str] = []
            for entry in self._entries(folder):
                if isinstance(entry, str):
                    names.append(entry)
                    continue
                name, is_link, is_folder = entry
                if is_link and not self._may_follow(folder / name):
                    continue
                named = name.endswith(SUFFIX)
                if not (_is_folder_behind(folder / name) if is_link else is_folder):
                    if named:
                        names.append(name)
                elif named:
                    self._stray(folder / name, "a folder that is named like a record", "a file", "rename it")
                else:
                    below.append(folder / name)
            yield folder, names
            if below and depth >= DEEPEST:
                self._stray(below[0], f"a folder that is more than {DEEPEST} folders deep", "flat folders")
                continue
            stack += [(path, depth + 1) for path in reversed(below)]

    def _may_follow(self, link: Path) -> bool:
        self.links = True
        return self._leads_inside(link)

    def _entries(self, folder: Path) -> tuple[str | FolderEntry, ...]:
        try:
            stamp = _stamp_of(folder)
            if stamp[2:] in self._seen:
                return ()
            self._seen.add(stamp[2:])
            known = self._known.get(folder)
            if known is None or not known.rests or known.stamp != stamp:
                rests = time.time_ns() - max(stamp[:2]) > RESTS_NS
                known = FolderSeen(stamp, rests, _read(folder))
        except (FileNotFoundError, NotADirectoryError):
            known = FolderSeen(None, rests=True)
        except OSError as error:
            self._stray(folder, f"a folder that cannot be read: {in_plain_words(error)}", "a folder")
            # Asked again each time: why it cannot be read shows in no stamp.
            known = FolderSeen(None, rests=False)
        self.folders[folder] = known
        return known.entries

    def _leads_inside(self, link: Path) -> bool:
        """Return whether a link leads to something in the garage, or to a place that was allowed."""
        try:
            target = self.tree.target(link)
        except LeadsOut as error:
            self._stray(link, str(error.strerror), "a file of the garage itself", ALLOWED_BY)
            return False
        except OSError as error:
            said = "nowhere" if isinstance(error, FileNotFoundError) else "in a circle"
            if link.suffix == ".toml":
                self._stray(link, f"a link that leads {said}", "a file", "remove the link, or put it right")
            return False
        if Path(os.path.realpath(link.parent)).is_relative_to(target):
            self._stray(link, "a link to a folder that it is in", "a file of the garage", "remove the link")
            return False
        if target.is_relative_to(self.tree.real / ".paddock"):
            self._stray(link, "a link into the tool's own folder", "a file of the garage", "remove the link")
            return False
        return True

    def _stray(self, path: Path, found: str, expected: str, mend: str = "") -> None:
        self.strays.append(InputError(found, expected, mend, file=os.path.relpath(path, self.tree.root)))


def _read(folder: Path) -> tuple[str | FolderEntry, ...]:
    """Return what is in a folder: the names of plain files that records may be in, and all that is none."""
    with os.scandir(folder) as entries:
        found = list(entries)
    names = [entry.name for entry in found if entry.is_file(follow_symlinks=False)]
    # Mostly all are such: of thousands that is asked at once.
    joined = f"/{'/'.join(names)}/"
    all_plain = joined.count(f"{SUFFIX}/") == len(names) and "/." not in joined
    plain = names if all_plain else [name for name in names if name.endswith(SUFFIX) and name[0] != "."]
    apart: list[FolderEntry] = []
    for entry in found if len(names) < len(found) else ():
        name = entry.name
        if name[0] == "." or entry.is_file(follow_symlinks=False):
            continue
        if (is_link := entry.is_symlink()) or entry.is_dir(follow_symlinks=False):
            apart.append(FolderEntry(name, is_link, not is_link))
        elif name.endswith(SUFFIX):
            plain.append(name)
    plain.sort()
    return tuple(sorted([*plain, *apart], key=_name)) if apart else tuple(plain)


def _name(entry: str | FolderEntry) -> str:
    return entry if isinstance(entry, str) else entry.name


def _stamp_of(folder: Path) -> FolderStamp:
    found = folder.stat()
    return found.st_mtime_ns, found.st_ctime_ns, found.st_dev, found.st_ino


def _folder_stamp(folder: Path) -> FolderStamp | None:
    try:
        return _stamp_of(folder)
    except OSError:
        return None


def _is_folder_behind(link: Path) -> bool:
    try:
        return link.is_dir()
    except OSError:
        return False


def _is_link(path: Path) -> bool:
    try:
        return path.is_symlink()
    except OSError:
        return False


def _away_from_home(path: Path) -> tuple[bool, Path]:
    """Order two files of one name: the one in the folder of its own year comes first."""
    return not path.stem.startswith(path.parent.name), path


def _no_id(path: Path, name: str) -> InputError:
    better = id_of(path.stem)
    mend = f"rename it, e.g. to {better}.toml" if is_id(better) else "give it such a name"
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
