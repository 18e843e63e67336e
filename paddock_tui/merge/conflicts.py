"""A conflict of one fact: what the base, ours and theirs say, kept in the record until somebody decides."""

from typing import Any

import attrs

from paddock_tui.records.disputes import CONFLICT, SIDES
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import Path, spell

__all__ = ["CONFLICT", "Conflict"]


@attrs.frozen
class Conflict:
    """One fact that both sides changed, each in its own way. `stands` is what counts meanwhile.

    MISSING for a side: nothing stands there. MISSING for `stands`: the fact is not known until decided.
    """

    path: Path
    base: Value | Missing
    ours: Value | Missing
    theirs: Value | Missing
    stands: Value | Missing = MISSING

    def as_table(self) -> dict[str, Any]:
        """Return what the record holds of it."""
        held = ((side, getattr(self, side)) for side in SIDES)
        return {side: value for side, value in held if value is not MISSING}

    @property
    def key(self) -> str:
        """Return the key under which the record holds it."""
        return spell(self.path)
