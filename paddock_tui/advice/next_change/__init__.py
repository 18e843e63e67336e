"""The one next change, or none: from what was felt and seen to one step in the bike's own clicks."""

from paddock_tui.advice.next_change.causes import CAUSES
from paddock_tui.advice.next_change.choice import Advised, next_change
from paddock_tui.advice.next_change.words import CauseQuestion, Kind, Move, Proposal

__all__ = ["CAUSES", "Advised", "CauseQuestion", "Kind", "Move", "Proposal", "next_change"]
