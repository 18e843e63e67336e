"""Taking over what was worked out: one step that sets every value of an answer."""

from collections.abc import Iterable

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.rules.core import SetValue
from paddock_tui.store.data import blocked
from paddock_tui.store.garage import GarageFiles


def offering(files: GarageFiles, subject: Ref, puts: Iterable[SetValue]) -> Step | str:
    """Make the one step that sets these values of a session or profile; the reason where it cannot be."""
    edits: list[Edit] = []
    labels: list[str] = []
    for put in puts:
        if subject.kind == "profile" and put.role == "session":
            return "a profile has no place for this: open a session"
        if blocked(files.data(subject), put.path) is not MISSING:
            return f"{files.name_of(subject)} has a value where a table would have to be: edit the file"
        step = setting_value(files, subject, put.path, put.value)
        for change in step.changes:
            if isinstance(change, Change):
                edits += change.edits
                labels.append(step.label)
    if not edits:
        return "it stands so already"
    return Step("; ".join(labels), (Change(subject, tuple(edits)),))
