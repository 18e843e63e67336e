"""What a finding tells of a person: one answer for the board, for what is printed and for exports."""

from collections.abc import Collection
from typing import Literal

from paddock_tui.matters import Matter
from paddock_tui.matters.severity import Severity
from paddock_tui.records.paths import Path
from paddock_tui.rules.core import HEAD, RIDER
from paddock_tui.rules.engine import Finding
from paddock_tui.rules.registered import RULES

PersonalMatter = Literal["health", "incidents", ""]

_OF_INCIDENTS = frozenset(
    {
        "airbag-fired",
        "aid-lamp-lit",
        "clutch-or-gearbox",
        "engine-lamp-not-mended",
        "fall-at-standstill",
        "fall-not-inspected",
        "lamp-not-explained",
        "leak-not-mended",
        "mend-by-a-date",
        "off-or-contact-not-looked-over",
        "off-to-be-inspected",
        "quick-downshift-with-false-neutrals",
        "run-offs-in-a-day",
        "stopped-by-officials",
        "two-falls-in-a-day",
    }
)
"""Rules about what happened, whichever record their answer stands in."""

OF_HEALTH = frozenset({"eaten-and-drunk", "fit-to-ride", "medical-card", "rider-fit", "slept"})
"""Items of checklists whose "to fix" tells how somebody is."""


def personal_matter(finding: Finding) -> PersonalMatter:
    """Return what a finding tells of the rider: of health, of an incident, or nothing."""
    path = finding.where.path if finding.where is not None else ()
    return _told(finding.rule, finding.subject, path, finding.quoted)


def _told(rule: str, subject: str, path: Path, quoted: Collection[str]) -> PersonalMatter:
    registered = RULES.get(rule)
    item = path[path.index("checks") + 1] if "checks" in path[:-1] else subject
    if (registered is not None and registered.rank in (HEAD, RIDER)) or item in OF_HEALTH:
        return "health"
    told = rule in _OF_INCIDENTS or path[:1] == ("incidents",) or "a fall" in quoted
    return "incidents" if told else ""


def impersonal_words(finding: Finding) -> str:
    """Return what may be said of a personal matter where others read: whom it is about and how severe.

    Empty where the finding tells nothing of a person.
    """
    return _impersonal(personal_matter(finding), finding.severity)


def impersonal_matter_words(matter: Matter) -> str:
    """Return the same of an open matter, which its rule of the same name speaks of."""
    return _impersonal(_told(matter.kind, matter.subject, matter.path, matter.quoted), matter.severity)


def impersonal_finding(rule: str, subject: str, path: Path, severity: str) -> str:
    """Return the same of a finding that is known by its rule, its subject, and where it points."""
    about = {"health": "rider", "incidents": "bike"}.get(_told(rule, subject, path, ()), "")
    return f"{about}: {severity}" if about else ""


def _impersonal(told: PersonalMatter, severity: Severity) -> str:
    about = {"health": "rider", "incidents": "bike"}.get(told, "")
    return f"{about}: {severity}" if about else ""
