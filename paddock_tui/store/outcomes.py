"""What becomes of a step: saved, clashed, or not saved for a reason."""

import attrs

from paddock_tui.records.edits import Edit, Missing, Step, Value
from paddock_tui.records.paths import Ref


@attrs.frozen
class Saved:
    """The step is on disk; `undo` takes it back byte for byte.

    `id` names it in the journal; `unnoted` says why it is not there, so that only this run can undo it.
    """

    undo: Step
    id: str = ""
    unnoted: str = ""


@attrs.frozen
class Clash:
    """Another program changed the same value meanwhile: what stands there now, and what was expected."""

    ref: Ref
    edit: Edit
    found: Value | Missing


@attrs.frozen
class NotSaved:
    """Nothing was written, for this reason. `again` says that the same step may be saved later."""

    reason: str
    mend: str = ""
    again: bool = attrs.field(default=True, eq=False)


Outcome = Saved | Clash | NotSaved


def may_be_later(outcome: Outcome) -> bool:
    """Return whether an undo or a redo stands, or may be tried again."""
    return isinstance(outcome, Saved) or (isinstance(outcome, NotSaved) and outcome.again)
