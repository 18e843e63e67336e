"""What is open from before is answered together, but for what holds: up to which day, and by whom."""

import datetime as dt

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import GARAGE, Path
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

BEFORE: Path = ("before",)


def going_through(files: GarageFiles, up_to: dt.date, initials: str) -> Step:
    """Make the one step that answers what was written down up to a day, but for what holds."""
    data = files.data(GARAGE)
    label = f"gone through what was open up to {up_to}"
    if lookup(data, BEFORE) is MISSING:
        return Step(label, (Change(GARAGE, (Edit(BEFORE, MISSING, {"on": up_to, "by": initials}),)),))
    wanted = (((*BEFORE, "on"), up_to), ((*BEFORE, "by"), initials))
    edits = [Edit(path, lookup(data, path), value) for path, value in wanted if lookup(data, path) != value]
    return Step(label, (Change(GARAGE, tuple(edits)),) if edits else ())
