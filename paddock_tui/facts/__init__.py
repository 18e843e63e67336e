"""What can be known of a situation: each fact is a function of other facts, known, not known or absent."""

from paddock_tui.facts import (  # noqa: F401 - registers their facts
    checklists,
    controls,
    day,
    known,
    outing,
    stages,
    suspension,
)
from paddock_tui.facts.core import ABSENT, FACTS, UNKNOWN, Absent, Facts, Missing, NotKnown
from paddock_tui.facts.situation import Situation

__all__ = ["ABSENT", "FACTS", "UNKNOWN", "Absent", "Facts", "Missing", "NotKnown", "Situation"]
