"""A whole situation: its name, its changes, and exactly what is found."""

from typing import Any

import attrs

from tests.rules.situations import Change


@attrs.frozen
class Whole:
    """A situation with all that is found at caution and above: rule, subject, severity.

    `to_do` are the rules whose to-dos are open; None where they are not looked at.
    """

    name: str
    expected: set[tuple[str, str, str]]
    changes: tuple[Change, ...]
    to_do: set[str] | None = None
    more: dict[str, Any] = attrs.field(factory=dict)


def whole(
    name: str,
    expected: set[tuple[str, str, str]],
    *changes: Change,
    to_do: set[str] | None = None,
    **more: Any,
) -> Whole:
    """Name a whole situation; `more` is given to it as it is."""
    return Whole(name, expected, changes, to_do, more)
