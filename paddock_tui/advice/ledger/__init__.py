"""The ledger: every change of a bike, and what it did as far as can be told."""

from paddock_tui.advice.ledger.best import Best, bests
from paddock_tui.advice.ledger.changes import because_of
from paddock_tui.advice.ledger.conditions import ConditionPair, side_by_side
from paddock_tui.advice.ledger.entries import (
    TO_COME,
    LedgerEntry,
    entries_of,
    judged_changes,
    mixed_laps,
    unjudged,
)
from paddock_tui.advice.ledger.filters import ANY, NAMES, LedgerFilter, choices, chosen, stepped
from paddock_tui.advice.ledger.settling import KEEP, outings_left_of, to_settle

__all__ = [
    "ANY",
    "KEEP",
    "NAMES",
    "TO_COME",
    "Best",
    "ConditionPair",
    "LedgerEntry",
    "LedgerFilter",
    "because_of",
    "bests",
    "choices",
    "chosen",
    "entries_of",
    "judged_changes",
    "mixed_laps",
    "outings_left_of",
    "side_by_side",
    "stepped",
    "to_settle",
    "unjudged",
]
