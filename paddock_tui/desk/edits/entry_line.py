"""The entry line at the desk: what a line is read against, and the one step that a clear line becomes."""

from collections.abc import Iterator, Mapping, Sequence

from paddock_tui.desk.debrief.lap_timing import MEND, WHY, forbidden
from paddock_tui.desk.desk import Desk
from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.values import bike_of, field_of, moved, setting_value, shown
from paddock_tui.desk.lookup import glance, glances, order
from paddock_tui.desk.usual_lap import usual_lap_s
from paddock_tui.entry import LineContext, TypedLine
from paddock_tui.entry.builtin import LAPS
from paddock_tui.records.edits import MISSING, Change, Edit, Missing, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS, Path, Ref
from paddock_tui.store.data import blocked, lookup
from paddock_tui.store.garage import GarageFiles

_PRESSURES: tuple[Path, ...] = (
    ("pressures", "cold", "front"),
    ("pressures", "cold", "rear"),
    ("pressures", "cold", "set_to_front"),
    ("pressures", "cold", "set_to_rear"),
    ("pressures", "hot", "front"),
    ("pressures", "hot", "rear"),
    ("pressures", "hot", "set_to_front"),
    ("pressures", "hot", "set_to_rear"),
    ("setup", "front_start"),
    ("setup", "rear_start"),
)


def entry_context(desk: Desk, ref: Ref) -> LineContext | None:
    """Return what a line for this record is read against; None where the record cannot be read."""
    loaded = desk.files.read(ref)
    if loaded is None or loaded.record is None:
        return None
    rider = getattr(loaded.record, "rider", None)
    files = desk.files

    def ids(kind: str) -> tuple[str, ...] | None:
        return tuple(one.id for one in files.listing(kind)) if kind in FOLDERS else None

    return LineContext(
        kind=ref.kind,
        record=loaded.record,
        data=files.data(ref),
        now=desk.now(),
        bike=bike_of(files, ref),
        units=desk.units(rider if isinstance(rider, str) else None),
        last=last_pressures(files, ref) if ref.kind == "session" else {},
        ids=ids,
        usual_lap=lambda: usual_lap_s(desk, ref),
        no_laps=(WHY, MEND) if ref.kind == "session" and forbidden(files, files.data(ref)) else None,
    )


def last_pressures(files: GarageFiles, ref: Ref) -> Mapping[Path, Value]:
    """Return this bike's last pressure of each kind before a session, out of the sessions of its year."""
    data = files.data(ref)
    here, bike = glance(ref, data), data.get("bike")
    if here is None or not isinstance(bike, str):
        return {}
    before = sorted((one for one in glances(files, here.date.year) if order(one) < order(here)), key=order)
    rows = zip(before, files.rows.each([one.ref for one in before]), strict=True)
    own = [one.ref for one, row in rows if row is not None and row.bike == bike]
    return _LastPressures(files, own[::-1])


class _LastPressures(Mapping[Path, Value]):
    """The first pressure of each kind in some sessions: no more are read than it takes to find it."""

    def __init__(self, files: GarageFiles, latest_first: Sequence[Ref]) -> None:
        self._files, self._sessions = files, latest_first
        self._found: dict[Path, Value | Missing] = {}

    def __getitem__(self, path: Path) -> Value:
        if path not in _PRESSURES:
            raise KeyError(path)
        if path not in self._found:
            written = (lookup(self._files.data(one), path) for one in self._sessions)
            self._found[path] = next((value for value in written if value is not MISSING), MISSING)
        found = self._found[path]
        if isinstance(found, Missing):
            raise KeyError(path)
        return found

    def __iter__(self) -> Iterator[Path]:
        return (path for path in _PRESSURES if path in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


def entering(files: GarageFiles, ref: Ref, line: TypedLine) -> Step | list[InputError]:
    """Make the one step of a clear line; what the desk refuses otherwise is refused here too."""
    data = files.data(ref)
    edits: list[Edit] = []
    for path, value in line.edits.items():
        bar = blocked(data, path)
        if bar is not MISSING:
            found = f"{shown(bar)} stands where a table would have to be"
            return [InputError(found, "a table", "edit the file", path=path)]
        step = setting_value(files, ref, path, value)
        edits += [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    against = refusals(files, ref, edits)
    if against:
        return against
    label = _laps_words(edits) or "; ".join(entered(files, ref, line, edits)) or "nothing to change"
    return Step(label, (Change(ref, tuple(edits)),) if edits else ())


def _laps_words(edits: Sequence[Edit]) -> str:
    """Say a run of laps by its count; lap by lap it would tell nothing in one line."""
    laps = [edit for edit in edits if edit.path[0] == LAPS and edit.old is MISSING]
    return f"{len(laps)} laps added" if len(laps) > 2 and len(laps) == len(edits) else ""


def entered(files: GarageFiles, ref: Ref, line: TypedLine, edits: Sequence[Edit]) -> list[str]:
    """Say each edit of a line in words: its label, what stood there, and what stands there after it."""
    labels = {piece.path: piece.label for piece in line.pieces}
    words, bike = [], bike_of(files, ref)
    for edit in edits:
        field = field_of(files, ref, edit.path)
        words.append(f"{labels[edit.path]} {moved(edit, field, bike=bike)}")
    return words
