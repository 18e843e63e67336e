"""A garage on disk: what is listed, and each record read once until its file changes."""

import contextlib
import os
from collections.abc import Container, Iterable, Iterator, Mapping
from functools import cached_property
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.paths import FOLDERS, GARAGE, Ref, refs
from paddock_tui.store.allowed import Allowed
from paddock_tui.store.data import facts_between, same, without_empty
from paddock_tui.store.errors import LeadsOut
from paddock_tui.store.former_ids import NAMES_FORMER, FormerIds
from paddock_tui.store.garage_folder import GARAGE_FILE, no_garage
from paddock_tui.store.guarded import NotRead, read_file
from paddock_tui.store.index import OTHER, year_of
from paddock_tui.store.listing import NONE, Listing, RecordFiles, Stamp, listed, moved, stamp_of
from paddock_tui.store.loaded import MANY, FileText, Once, Released, record_of, text_of
from paddock_tui.store.loaded import Loaded as Loaded
from paddock_tui.store.reading import LARGEST, loads
from paddock_tui.store.session_rows import SessionRows
from paddock_tui.store.tree import Tree
from paddock_tui.store.turns import Turns

if TYPE_CHECKING:
    from paddock_tui.records.garage import Garage
    from paddock_tui.store.soundness import Soundness


class GarageFiles:
    """The files of one garage. Reads lazily and remembers; nothing is read that nobody asked for."""

    def __init__(self, root: FilePath) -> None:
        self.root = root
        self._own_file = root / GARAGE_FILE
        self._allowed = Allowed(root)
        self.tree = Tree(root, self._allowed)
        self.said_no_key = False
        """Whether it was said in this run that undo does not outlive it."""
        self.swept = False
        """Return whether what dead processes left half-written was removed in this run."""
        self._raw: dict[Ref, FileText] = {}
        self._loaded: dict[Ref, tuple[FileText, FileText | None, Loaded]] = {}
        self._listing: Listing | None = None
        self._last_listing: Listing | None = None
        self._refs: dict[str, tuple[Ref, ...]] = {}
        self._turns = Turns()
        self.once = Once()
        self._touched: list[Ref] = []
        self.former = FormerIds(lambda kind: self.there().get(kind, NONE), self._with_former)
        self.generation = 0
        """Grows with every change that is known of: what was worked out in an older one stands no more."""
        self.rows = SessionRows(
            self.tree, self.there, self.stamp, self._held, self._stamp_and_data, self.former.current
        )
        self.staged: dict[Ref, dict[str, Any]] = {}
        self._shown: dict[Ref, dict[str, Any]] = {}
        """What records read as when edits of theirs were saved, until that is compared with their files."""
        self.sessions_read: set[str] = set()
        """The sessions that were read as records in this run, in memory or not."""
        self._released = Released()
        self.came_in = 0
        """How many values the last look at changes of others found, in the records that were in memory."""

    def problem(self) -> InputError | None:
        """Return why this is no garage; None where it is one."""
        return no_garage(self.tree)

    def listing(self, kind: str) -> tuple[Ref, ...]:
        """List the records of a kind by their file names, in order; the files are not opened."""
        files = self.there()
        if kind not in self._refs:
            self._refs[kind] = refs(kind, sorted(files.get(kind, NONE)))
        return self._refs[kind]

    def sessions_since(self, year: int) -> tuple[Ref, ...]:
        """List the sessions named in a year and later, or in the latest one, and those named in no year."""
        names, key = self.there().get("session", NONE), f"session since {year}"
        if key not in self._refs:
            years = {begins: year_of(begins) for begins in {name[:4] for name in names}}
            first = min(f"{year:04}", max((one for one in years.values() if one != OTHER), default="9"))
            wanted = {begins for begins, name in years.items() if name == OTHER or name >= first}
            self._refs[key] = refs("session", sorted([name for name in names if name[:4] in wanted]))
        return self._refs[key]

    def all(self) -> Iterator[Ref]:
        """List every record, the garage itself first."""
        yield GARAGE
        for kind in FOLDERS:
            yield from self.listing(kind)

    @cached_property
    def soundness(self) -> "Soundness":
        """Which records can be read as a whole, as far as that was asked for."""
        from paddock_tui.store.soundness import Soundness

        return Soundness(self)

    def forget_listing(self) -> None:
        """Look at the folders again when the listing is next asked for."""
        self._listing = None
        self.once.forget()

    def strays(self) -> tuple[InputError, ...]:
        """List the files that look like records and are not read: their names are no ids, or stand twice."""
        return self._listed().strays

    def leads_out(self, name: str) -> FilePath | None:
        """Return the place outside the garage that a link leads to and nobody allowed; None for all else."""
        try:
            self.tree.target(self.root / name)
        except LeadsOut as error:
            return error.target
        except OSError:
            return None
        return None

    def allow(self, place: FilePath) -> None:
        """Let links of this garage lead to a place outside from now on. Raises NotWritten."""
        self._allowed.allow(place)
        self._listing = None

    def path_of(self, ref: Ref) -> FilePath | None:
        """Return the file of a record that is there; found in the listing, never built from the id."""
        if ref == GARAGE:
            return self._own_file
        return self.there().get(ref.kind, NONE).get(ref.id)

    def path_for(self, ref: Ref) -> FilePath:
        """Return the file that a new record is to have."""
        folder = self.root / FOLDERS[ref.kind]
        if ref.kind == "session":
            year = ref.id[:4]
            folder = folder / (year if year.isdigit() and ref.id[4:5] == "-" else "other")
        return folder / f"{ref.id}.toml"

    def name_of(self, ref: Ref) -> str:
        """Return the name of a record's file as messages say it, from the garage's folder on."""
        path = self.path_of(ref)
        return os.path.relpath(path, self.root) if path is not None else str(ref)

    def read(self, ref: Ref) -> Loaded | None:
        """Read a record, or give it as remembered; None where there is no such file."""
        raw = self.once.of(ref, self._read_raw)
        if raw is None:
            return None
        bike_raw = self._bike_raw(ref, raw)
        known = self._loaded.get(ref)
        if known is not None and known[0] is raw and known[1] is bike_raw:
            return known[2]
        loaded = self._structure(ref, raw)
        self._loaded[ref] = (raw, bike_raw, loaded)
        return loaded

    def let_go(self, ref: Ref) -> None:
        """Hold a record in memory no more that others made what they need of; it goes on being looked at."""
        raw = self._raw.get(ref)
        if raw is not None and raw.stamp is not None and self._released.took(ref, raw, self.there()):
            del self._raw[ref]
            self._loaded.pop(ref, None)
            self.once.leave(ref)
            self.rows.indexed[ref] = raw.stamp

    def place_of(self, ref: Ref) -> tuple[FilePath, str] | None:
        """Return the folder and the name of the file that `path_of` gives."""
        return self.there().get(ref.kind, NONE).place_of(ref.id)

    def is_in_memory(self, ref: Ref) -> bool:
        """Return whether a record was read, and is remembered."""
        return ref in self._raw or ref in self.staged

    def data(self, ref: Ref) -> Mapping[str, Any]:
        """Return the plain data of a record, staged edits included; empty where there is none."""
        raw = self.once.of(ref, self._read_raw)
        return raw.data if raw is not None else {}

    def written(self, ref: Ref) -> dict[str, Any]:
        """Return the plain data of a record as its file has it, what it refers to under former ids too."""
        raw = self.once.of(ref, self._read_raw)
        return raw.written if raw is not None else {}

    def garage(self) -> "Garage":
        """Return the garage's own record, as far as it can be read."""
        from paddock_tui.records.garage import Garage

        loaded = self.read(GARAGE)
        return loaded.record if loaded is not None and isinstance(loaded.record, Garage) else Garage()

    def stage(self, ref: Ref, data: dict[str, Any]) -> None:
        """Let a record read as it will stand once its edits are saved."""
        self.staged[ref] = data
        self._turns.edited.add(ref)
        self._change(ref)

    def unstage(self, ref: Ref, *, saved: bool = False) -> None:
        """Read a record from its file again; what was `saved` is compared with the file by `changed`."""
        shown = self.staged.pop(ref, None)
        if saved:
            # What an earlier step left to compare is no more where this one took the file away.
            self._shown.pop(ref, None)
            if shown is not None:
                self._shown[ref] = shown
        self._raw.pop(ref, None)
        self._change(ref)

    def touched_since(self, place: int) -> tuple[int, set[Ref]]:
        """List the records that may read otherwise than they did at a place of this run; give the place now.

        What others changed is known once `changed` came upon it, or the record was read again.
        """
        return len(self._touched), set(self._touched[place:])

    def _change(self, ref: Ref) -> None:
        """Note that a record reads otherwise than it did."""
        self.generation += 1
        self._touch(ref)

    def _touch(self, ref: Ref) -> None:
        self.once.forget()
        self._touched.append(ref)
        self.rows.forget(ref)
        if "soundness" in vars(self):
            self.soundness.forget(ref)

    def watch(self, refs: Iterable[Ref]) -> None:
        """Compare these records with their files at each look, however old they are."""
        self._turns.watched = frozenset(refs)

    def changed(self, busy: Container[Ref] = ()) -> tuple[Ref, ...]:
        """Look at the folders and files again; list the records that changed, came or went meanwhile.

        Of the files in memory, and of the folders looked at before; `busy` ones are being written here.
        """
        self.came_in = 0
        before = self._listing
        if before is not None and not before.stands():
            self.forget_listing()
        turn = self._turns.next(self._raw, self.rows.indexed, listing=self._listed())
        known = dict.fromkeys((*self._shown, *turn))
        found = [ref for ref in self._suspects(known, busy) if self._differs(ref)]
        if before is not None and self._listed() is not before:
            found += [ref for ref in moved(before, self._listed()) if ref not in found and ref not in busy]
        return tuple(found)

    def _suspects(self, refs: Iterable[Ref], busy: Container[Ref]) -> list[Ref]:
        """List those whose files are not as noted, or have to be compared all the same."""
        raw, indexed, apart = self._raw, self.rows.indexed, self._shown
        found = []
        for ref in refs:
            if ref in self.staged or ref in busy:
                continue
            old = raw.get(ref)
            noted = old.stamp if old is not None else indexed.get(ref)
            if ref in apart or self.stamp(ref) != noted:
                found.append(ref)
        return found

    def _differs(self, ref: Ref) -> bool:
        """Return whether a suspect reads otherwise than it did; a file that was only touched does not."""
        old, shown = self._raw.get(ref), self._shown.pop(ref, None)
        if ref in self._released and shown is None:
            return not self._is_as_released(ref, self.path_of(ref))
        if old is None and shown is None:
            row = self.rows.of(ref) if ref.kind == "session" else None
            self._change(ref)
            return ref.kind != "session" or self.rows.of(ref) != row
        new = self._read_raw(ref)
        if new is None:
            return True
        if shown is not None:
            self.came_in += facts_between(shown, new.data)
            return not same(without_empty(new.data), without_empty(shown))
        if old is not None:
            self.came_in += facts_between(old.data, new.data)
        return old is None or (new.text, new.trouble) != (old.text, old.trouble)

    def _is_as_released(self, ref: Ref, path: FilePath | None) -> bool:
        stamp = stamp_of(path)
        if path and stamp and self._released.is_same(ref, text_of(self.tree, path, stamp)):
            self.rows.indexed[ref] = stamp
            return True
        self._released.forget(ref, None)
        self._change(ref)
        return False

    def stamp(self, ref: Ref) -> Stamp | None:
        """Return what tells that a record's file changed; None where there is none."""
        here = self.there().get(ref.kind)
        return stamp_of(here.name_of(ref.id) if here is not None else self.path_of(ref))

    def stamp_as_read(self, ref: Ref) -> Stamp | None:
        """Return the stamp that a record's file had when it, or its row, was read; None for all else."""
        return self._raw[ref].stamp if ref in self._raw else self.rows.indexed.get(ref)

    def _listed(self) -> Listing:
        # Held in a name of its own: another thread may forget the listing meanwhile.
        listing, before = self._listing, self._last_listing
        if listing is None:
            listing = listed(self.tree, before)
            moved = before is None or listing.files != before.files
            self._refs = {} if moved else self._refs
            self.generation += moved
            self._listing = self._last_listing = listing
            if moved and before is not None:
                self._renamed()
        return listing

    def there(self) -> dict[str, RecordFiles]:
        """Return the files that are there, of each kind by the ids of their records."""
        return self._listed().files

    def _read_raw(self, ref: Ref) -> FileText | None:
        if ref in self.staged:
            known = self._raw.get(ref)
            if known is None or known.data is not self.staged[ref]:
                text = known.text if known is not None else ""
                self._raw[ref] = FileText(None, text, self.staged[ref], None, self.staged[ref])
                self._touch(ref)
            return self._raw[ref]
        path, known = self.path_of(ref), self._raw.get(ref)
        stamp = stamp_of(path)
        if known is not None and known.stamp == stamp and stamp is not None:
            return self._as_called(ref, known)
        if known is not None:
            self.generation += 1
        if not self._released.forget(ref, stamp) and (stamp is None or self.rows.indexed.get(ref) != stamp):
            self._touch(ref)
        if stamp is None or path is None:
            self._raw.pop(ref, None)
            return None
        self._raw[ref] = fresh = self._text_of(ref, path, stamp)
        if known is not None and former_ids(known.written) != former_ids(fresh.written):
            self._renamed()
        return self._as_called(ref, fresh)

    def _text_of(self, _ref: Ref, path: FilePath, stamp: Stamp) -> FileText:
        return text_of(self.tree, path, stamp)

    def _as_called(self, ref: Ref, raw: FileText) -> FileText:
        """Return what was read of a file with its references called as they are by now."""
        if raw.resolved is self.former.state:
            return raw
        data = self.former.resolved(ref.kind, raw.written)
        if raw.resolved is not None and not same(data, raw.data):
            self._touch(ref)
            self._raw[ref] = raw = attrs.evolve(raw)
        raw.data, raw.resolved = data, self.former.state
        return raw

    def _renamed(self) -> None:
        self.former.renew()
        for ref in self._released.naming_others(self.there()):
            self._touch(ref)
        self.rows.doubt_names(self.there())

    def _with_former(self, kind: str) -> Iterator[tuple[Ref, tuple[str, ...]]]:
        """List the records of a kind with the ids that they had; only a file that names some is parsed."""
        files = self.there().get(kind, NONE)
        for name in files:
            ref = Ref(kind, name)
            known = self.rows.former_ids(ref)
            if known is not None:
                yield ref, known
                continue
            with contextlib.suppress(NotRead, UnicodeDecodeError):
                content = read_file(self.tree, files[name], LARGEST)
                data = loads(content.decode("utf-8-sig")) if NAMES_FORMER.search(content) else None
                if isinstance(data, dict):
                    yield ref, former_ids(data)

    def _held(self, refs: Iterable[Ref]) -> dict[Ref, Mapping[str, Any]]:
        """Return the data of those of some records that are in memory; others would have to be read."""
        raw, staged = self._raw, self.staged
        there = [ref for ref in refs if ref in raw or ref in staged]
        return {ref: staged[ref] if ref in staged else self._as_called(ref, raw[ref]).data for ref in there}

    def _stamp_and_data(self, ref: Ref) -> tuple[Stamp | None, Mapping[str, Any]]:
        raw = self._read_raw(ref)
        if len(self._raw) > MANY:
            self.let_go(ref)
        return (raw.stamp, raw.written) if raw is not None and raw.trouble is None else (None, {})

    def _bike_raw(self, ref: Ref, raw: FileText) -> FileText | None:
        """Return the bike that a set-up is for, since its controls say how what is set is read."""
        named = raw.data.get("bike")
        if ref.kind not in ("session", "profile") or not isinstance(named, str):
            return None
        return self.once.of(Ref("bike", named), self._read_raw)

    def _structure(self, ref: Ref, raw: FileText) -> Loaded:
        if ref.kind == "session":
            self.sessions_read.add(ref.id)
        named = raw.data.get("bike")
        bike = self.read(Ref("bike", named)) if isinstance(named, str) and ref.kind != "bike" else None
        return record_of(self.tree, ref, self.path_of(ref) or self.path_for(ref), raw, bike)
