"""The files of a garage as they read now, to try on what would be, or to be read by another thread."""

from pathlib import Path as FilePath

import attrs

from paddock_tui.records.edits import Create, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.loaded import FileText
from paddock_tui.store.reading import loads


class AsideFiles(GarageFiles):
    """Files beside those of a garage: what is staged or made here changes nothing there."""

    def path_of(self, ref: Ref) -> FilePath | None:
        """Return the file of a record, that of a record made here being the one that it would have."""
        return super().path_of(ref) or (self.path_for(ref) if ref in self.staged else None)

    def make(self, step: Step) -> None:
        """Let the records read that a step creates."""
        for change in step.changes:
            if isinstance(change, Create):
                data = loads(change.text, change.ref.id)
                if not isinstance(data, InputError):
                    self.stage(change.ref, dict(data))


class Dropped(Exception):
    """What was read for is not wanted any more."""


class Snapshot(AsideFiles):
    """Files as they read at one moment, for another thread; what was not read by then it reads itself.

    `of_generation` is the garage's by then: whatever changes later makes that one grow, and what was found
    here stands no more. `dropped` has the next read end the work.
    """

    def __init__(self, root: FilePath) -> None:
        super().__init__(root)
        self.dropped = False
        self.of_generation = 0

    def path_of(self, ref: Ref) -> FilePath | None:
        """Return the file of a record. Raises Dropped where the work is not wanted any more."""
        if self.dropped:
            raise Dropped
        return super().path_of(ref)

    def place_of(self, ref: Ref) -> tuple[FilePath, str] | None:
        """Return where the file of a record is. Raises Dropped where the work is not wanted any more."""
        if self.dropped:
            raise Dropped
        return super().place_of(ref)

    def _as_called(self, ref: Ref, raw: FileText) -> FileText:
        """Return what was read with its references as they are called now, and leave the garage its own."""
        if raw.resolved is not None and raw.resolved is not self.former.state:
            self._raw[ref] = raw = attrs.evolve(raw)
        return super()._as_called(ref, raw)

    def read_of(self, kind: str) -> int:
        """Count the records of a kind that were read."""
        return (
            len(self.sessions_read)
            if kind == "session"
            else sum(1 for ref in list(self._loaded) if ref.kind == kind)
        )

    def agrees_with(self, files: GarageFiles) -> bool:
        """Return whether nothing changed there since, and what both have read since then reads alike."""
        known = ((raw, files._raw.get(ref)) for ref, raw in self._raw.items())
        same = all(other is None or other is raw or other.stamp == raw.stamp for raw, other in known)
        noted = ((stamp, files.rows.indexed.get(ref)) for ref, stamp in self._released.stamps())
        same = same and all(other is None or other == stamp for stamp, other in noted)
        return same and self.of_generation == files.generation

    def give_to(self, files: GarageFiles) -> None:
        """Give a garage that this agrees with what was read here and not there."""
        for ref, raw in self._raw.items():
            if ref not in files._raw:
                files._raw[ref] = raw
        for ref, loaded in self._loaded.items():
            if ref not in files._loaded and files._raw.get(ref) is loaded[0]:
                files._loaded[ref] = loaded
        files._released.take(self._released, but=files._raw)
        files.rows.indexed.update(
            {ref: stamp for ref, stamp in self._released.stamps() if ref not in files._raw}
        )
        files.sessions_read |= self.sessions_read
        if "soundness" in vars(self):
            files.soundness.learn(self.soundness)


def aside(files: GarageFiles) -> AsideFiles:
    """Return the files as they read now, staged edits included."""
    other = AsideFiles(files.root)
    _take(other, files)
    return other


def snapshot(files: GarageFiles) -> Snapshot:
    """Return the files as they read now, for another thread."""
    other = Snapshot(files.root)
    _take(other, files)
    other.of_generation = files.generation
    other.rows.part()
    return other


def _take(other: AsideFiles, files: GarageFiles) -> None:
    other._raw, other._loaded, other.staged = dict(files._raw), dict(files._loaded), dict(files.staged)
    other._listing, other._last_listing = files._listing, files._last_listing
    other._refs = dict(files._refs)
    other.former.take(files.former)
    # What was touched is counted on from here, so that what knows the files knows these too.
    other._touched = list(files._touched)
    other._released.take(files._released)
    other.sessions_read = set(files.sessions_read)
    other.rows.take(files.rows)
    if "soundness" in vars(files):
        other.soundness.take(files.soundness)
