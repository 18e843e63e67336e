"""What the facts mean: the rules, their limits, and the engine that gives the review."""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
    from paddock_tui.rules.core import CAUTION, HOLD, NOTE, SERIOUS, Remedy, Rule, SetValue, Severity
    from paddock_tui.rules.engine import Finding, NotJudged, Pending, Review, Where
    from paddock_tui.rules.registered import RULES, review

__all__ = [
    "CAUTION",
    "HOLD",
    "NOTE",
    "RULES",
    "SERIOUS",
    "Finding",
    "NotJudged",
    "Pending",
    "Remedy",
    "Review",
    "Rule",
    "SetValue",
    "Severity",
    "Where",
    "review",
]

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "CAUTION": "core",
            "HOLD": "core",
            "NOTE": "core",
            "RULES": "registered",
            "SERIOUS": "core",
            "Finding": "engine",
            "NotJudged": "engine",
            "Pending": "engine",
            "Remedy": "core",
            "Review": "engine",
            "Rule": "core",
            "SetValue": "core",
            "Severity": "core",
            "Where": "engine",
            "review": "registered",
        },
    )
