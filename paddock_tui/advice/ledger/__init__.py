"""The ledger: every change of a bike, and what it did as far as can be told."""

from paddock_tui.advice.ledger.best import Best, bests
from paddock_tui.advice.ledger.changes import SetUpChange, because_of, changes_between
from paddock_tui.advice.ledger.conditions import Beside, side_by_side
from paddock_tui.advice.ledger.entries import TO_COME, Entry, entries_of, mixed_laps
from paddock_tui.advice.ledger.filters import ANY, NAMES, Wanted, choices, chosen, stepped

__all__ = [
    "ANY",
    "NAMES",
    "TO_COME",
    "Beside",
    "Best",
    "Entry",
    "SetUpChange",
    "Wanted",
    "because_of",
    "bests",
    "changes_between",
    "choices",
    "chosen",
    "entries_of",
    "mixed_laps",
    "side_by_side",
    "stepped",
]
