"""What the keyboard refuses beyond what cannot be read: a reference to nothing, a record at odds with itself.

In a file the same things are kept, and the review says so; at the keyboard they are slips of the moment.
"""

from collections.abc import Sequence

from paddock_tui.records.coherence import contradictions
from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.fields import ANY
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.reading import read_record
from paddock_tui.records.trouble import Trouble
from paddock_tui.store.data import after, blocked
from paddock_tui.store.garage import GarageFiles, reference_fields


def refusals(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[Trouble]:
    """List what speaks against edits that can be read; what was wrong before them does not."""
    return [*_dangling(files, ref, edits), *_at_odds(files, ref, edits)]


def _dangling(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[Trouble]:
    found: list[Trouble] = []
    for edit in edits:
        kind = _refers_to(ref.kind, edit.path)
        if kind is None or not isinstance(edit.new, str) or files.path_of(Ref(kind, edit.new)) is not None:
            continue
        there = [one.id for one in files.listing(kind)]
        known = ", ".join(there[:8]) + (" ..." if len(there) > 8 else "")
        found.append(
            Trouble(f'there is no {kind} "{edit.new}"', f"one of: {known or 'none yet'}", path=edit.path)
        )
    return found


def _at_odds(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[Trouble]:
    data = dict(files.data(ref))
    before = {(one.path, one.message) for one in contradictions(read_record(ref.kind, data).record)}
    for edit in edits:
        if blocked(data, edit.path) is not MISSING:
            return []
        data = after(data, edit, lambda _: True)
    then = contradictions(read_record(ref.kind, data).record)
    return [
        Trouble(one.message, one.mend, path=one.path) for one in then if (one.path, one.message) not in before
    ]


def _refers_to(kind: str, path: Path) -> str | None:
    for pattern, wanted in reference_fields(kind):
        if len(pattern) == len(path) and all(
            key in (ANY, real) for key, real in zip(pattern, path, strict=True)
        ):
            return wanted
    return None
