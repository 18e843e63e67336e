"""One look at a limit: the situation, and how bad the rule then finds it."""

from typing import Any

import attrs

from tests.rules.situations import Change


@attrs.frozen
class LimitRow:
    """A situation at, below or above a limit; `severity` is what the rule raises there, empty for nothing."""

    rule: str
    limit: str
    severity: str
    changes: tuple[Change, ...]
    more: dict[str, Any] = attrs.field(factory=dict)


def row(rule: str, limit: str, severity: str, *changes: Change, **more: Any) -> LimitRow:
    """Name a situation; `more` is given to it as it is."""
    return LimitRow(rule, limit, severity, changes, more)
