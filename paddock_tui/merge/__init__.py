"""Two sides of one record merged by fact: what one side changed is taken, what both changed stays open."""

from paddock_tui.merge.conflicts import CONFLICT, Conflict
from paddock_tui.merge.record import Merged, MergeError, are_different, merged

__all__ = ["CONFLICT", "Conflict", "MergeError", "Merged", "are_different", "merged"]
