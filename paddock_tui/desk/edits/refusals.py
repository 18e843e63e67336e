"""What the keyboard refuses beyond what cannot be read: a reference to nothing, a record at odds with itself.

In a file the same things are kept, and the review says so; at the keyboard they are slips of the moment.
"""

from collections.abc import Iterator, Sequence

from paddock_tui.desk.debrief.lap_timing import MEND, WHY, forbidden, is_lap
from paddock_tui.desk.edits.thresholds import ill_fitting
from paddock_tui.records.contradictions import contradictions
from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import ANY
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.reading import read_record
from paddock_tui.store.data import after, blocked, lookup
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.references import reference_fields

_WORDS = {"tyres": "tyre set"}
"""What a kind of record is called where its name is not a word for one of them."""


def refusals(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[InputError]:
    """List what speaks against edits that can be read; what was wrong before them does not."""
    return [
        *_untimed(files, ref, edits),
        *ill_fitting(ref, edits),
        *_dangling(files, ref, edits),
        *_at_odds(files, ref, edits),
    ]


def _untimed(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[InputError]:
    """Refuse the lap times of a session whose day forbids timing; they may still be cleared."""
    laps = [edit for edit in edits if is_lap(edit.path) and edit.new is not MISSING]
    if ref.kind != "session" or not laps or not forbidden(files, files.data(ref)):
        return []
    return [InputError(WHY, "no lap times", MEND, path=edit.path) for edit in laps[:1]]


def _dangling(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[InputError]:
    return [
        trouble
        for edit in edits
        for kind, name in _named(files, ref, edit)
        if (trouble := _no_such(files, kind, name, edit.path)) is not None
    ]


def _named(files: GarageFiles, ref: Ref, edit: Edit) -> Iterator[tuple[str, str]]:
    """List the records that an edit would name: by a reference, or as rider and bike of a day's new entry."""
    kind = _refers_to(ref.kind, edit.path)
    if kind is not None and isinstance(edit.new, str):
        yield kind, edit.new
    entered = ref.kind == "day" and edit.path[0] == "entries" and edit.new is not MISSING
    if entered and lookup(files.data(ref), edit.path[:3]) is MISSING:
        yield from zip(("rider", "bike"), edit.path[1:3], strict=False)


def _no_such(files: GarageFiles, kind: str, name: str, path: Path) -> InputError | None:
    if files.path_of(files.former.current(Ref(kind, name))) is not None:
        return None
    there = [one.id for one in files.listing(kind)]
    known = ", ".join(there[:8]) + (" ..." if len(there) > 8 else "")
    what = _WORDS.get(kind, kind)
    mend = "" if there else "g, then n makes one"
    return InputError(f'there is no {what} "{name}"', f"one of: {known or 'none yet'}", mend, path=path)


def _at_odds(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[InputError]:
    data = dict(files.data(ref))
    before = {(one.path, one.message) for one in contradictions(read_record(ref.kind, data).record)}
    for edit in edits:
        if blocked(data, edit.path) is not MISSING:
            return []
        data = after(data, edit, lambda _: True)
    then = contradictions(read_record(ref.kind, data).record)
    return [
        InputError(one.message, one.mend, path=one.path)
        for one in then
        if (one.path, one.message) not in before
    ]


def _refers_to(kind: str, path: Path) -> str | None:
    for pattern, wanted in reference_fields(kind):
        if len(pattern) == len(path) and all(
            key in (ANY, real) for key, real in zip(pattern, path, strict=True)
        ):
            return wanted
    return None
