"""The briefing: a set-up explained to whoever rides it next, as sentences in the order of riding."""

from paddock_tui.advice.briefing.came_from import CameFrom
from paddock_tui.advice.briefing.parts import Briefing, BriefingPart
from paddock_tui.advice.briefing.whole import briefing

__all__ = ["Briefing", "BriefingPart", "CameFrom", "briefing"]
