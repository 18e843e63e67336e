"""What has to be shown of each rule: where it is raised, where silent, and what keeps it from judging."""

from typing import Any

import attrs

from tests.rules.situations import Change


@attrs.frozen
class Raises:
    """A situation in which the rule is raised, on this subject and this bad; `says` stands in the message."""

    subject: str
    severity: str
    changes: tuple[Change, ...]
    says: str = ""
    more: dict[str, Any] = attrs.field(factory=dict)


@attrs.frozen
class Silent:
    """A situation in which the rule has nothing to say."""

    changes: tuple[Change, ...]
    more: dict[str, Any] = attrs.field(factory=dict)


@attrs.frozen
class Lacks:
    """A situation in which the rule cannot judge, and the words for a fact that is missing."""

    label: str
    changes: tuple[Change, ...]
    more: dict[str, Any] = attrs.field(factory=dict)


@attrs.frozen
class Cases:
    """The cases of one rule. One that itself asks for what is missing never lacks a fact: `asks`."""

    raising: tuple[Raises, ...]
    silent: tuple[Silent, ...]
    missing: tuple[Lacks, ...] = ()
    asks: bool = False


def raises(subject: str, severity: str, *changes: Change, says: str = "", **more: Any) -> Raises:
    """Name a case in which the rule is raised; `more` is given to the situation."""
    return Raises(subject, severity, changes, says, more)


def silent(*changes: Change, **more: Any) -> Silent:
    """Name a case in which the rule is silent."""
    return Silent(changes, more)


def lacks(label: str, *changes: Change, **more: Any) -> Lacks:
    """Name a case in which the rule cannot judge; `more` is given to the situation."""
    return Lacks(label, changes, more)
