"""Deciding a fact that two laptops changed differently: ours or theirs is taken, as one step."""

from paddock_tui.records.disputes import CONFLICT, SIDES, disputes, held_disputes
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import label_in
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import blocked, lookup, same
from paddock_tui.store.garage import GarageFiles


def deciding(files: GarageFiles, ref: Ref, key: str, side: str) -> Step | InputError:
    """Make the step that takes one side of a dispute: the fact is set, the dispute goes."""
    data = files.data(ref)
    found = next((one for one in disputes(data) if one.key == key), None)
    if found is None or side not in SIDES:
        return InputError(f'"{key}"', "a fact that two laptops disagree on", "see the record's page")
    wanted, now = found.side(side), lookup(data, found.path)
    if now is MISSING and wanted is not MISSING and blocked(data, found.path) is not MISSING:
        return InputError(f"{key}: a value stands above it", "a table", "edit the file")
    edits = [Edit((CONFLICT, key), held_disputes(data)[key], MISSING)]
    if now is not MISSING and (wanted is MISSING or not same(now, wanted)):
        edits.append(Edit(found.path, now, MISSING))
        now = MISSING
    if now is MISSING and wanted is not MISSING:
        edits.append(Edit(found.path, MISSING, wanted))
    return Step(f"{label_in(ref.kind, found.path)}: took {side}", (Change(ref, tuple(edits)),))
