"""The files of a garage as they read now, to try on what would be."""

from pathlib import Path as FilePath

from paddock_tui.records.edits import Create, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.reading import loads


class AsideFiles(GarageFiles):
    """Files beside those of a garage: what is staged or made here changes nothing there."""

    def path_of(self, ref: Ref) -> FilePath | None:
        """Return the file of a record, that of a record made here being the one that it would have."""
        return super().path_of(ref) or (self.path_for(ref) if ref in self._staged else None)

    def make(self, step: Step) -> None:
        """Let the records read that a step creates."""
        for change in step.changes:
            if isinstance(change, Create):
                data = loads(change.text, change.ref.id)
                if not isinstance(data, InputError):
                    self.stage(change.ref, dict(data))


def aside(files: GarageFiles) -> AsideFiles:
    """Return the files as they read now, staged edits included."""
    other = AsideFiles(files.root)
    other._raw, other._loaded, other._staged = dict(files._raw), dict(files._loaded), dict(files._staged)
    other._listing, other._last_listing = files._listing, files._last_listing
    # What was touched is counted on from here, so that what knows the files knows these too.
    other._touched = list(files._touched)
    other.rows.take(files.rows)
    return other
