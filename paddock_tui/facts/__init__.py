"""What can be known of a situation: each fact is a function of other facts, known, not known or absent."""

from paddock_tui.facts import controls, day, known, outing, suspension  # noqa: F401 - registers their facts
from paddock_tui.facts.core import ABSENT, FACTS, UNKNOWN, Absent, Facts, Missing, NotKnown
from paddock_tui.facts.situation import Situation

__all__ = ["ABSENT", "FACTS", "UNKNOWN", "Absent", "Facts", "Missing", "NotKnown", "Situation"]
