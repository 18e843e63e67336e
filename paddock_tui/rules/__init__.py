"""What the facts mean: the rules, their limits, and the engine that gives the review."""

from paddock_tui.rules import (  # noqa: F401 - registers their rules
    aids,
    checklists,
    modes,
    organiser,
    possible,
    readiness,
)
from paddock_tui.rules.core import CAUTION, HOLD, NOTE, RULES, SERIOUS, Put, Remedy, Rule, Severity
from paddock_tui.rules.engine import Finding, NotJudged, Pending, Review, Where, review
from paddock_tui.rules.limits import LIMITS, Limit, Limits

__all__ = [
    "CAUTION",
    "HOLD",
    "LIMITS",
    "NOTE",
    "RULES",
    "SERIOUS",
    "Finding",
    "Limit",
    "Limits",
    "NotJudged",
    "Pending",
    "Put",
    "Remedy",
    "Review",
    "Rule",
    "Severity",
    "Where",
    "review",
]
