"""The one next change, or none: from what was felt and seen to one step in the bike's own clicks."""

from paddock_tui.advice.next_change.choice import Advised, next_change
from paddock_tui.advice.next_change.words import Kind, Move, Proposal, Question

__all__ = ["Advised", "Kind", "Move", "Proposal", "Question", "next_change"]
