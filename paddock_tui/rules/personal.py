"""What a finding tells of a person: one answer for the board, for what is printed and for exports."""

from typing import Literal

from paddock_tui.rules.core import HEAD, RIDER, RULES
from paddock_tui.rules.engine import Finding

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
    registered = RULES.get(finding.rule)
    path = finding.where.path if finding.where is not None else ()
    item = path[path.index("checks") + 1] if "checks" in path[:-1] else finding.subject
    if (registered is not None and registered.rank in (HEAD, RIDER)) or item in OF_HEALTH:
        return "health"
    told = finding.rule in _OF_INCIDENTS or path[:1] == ("incidents",) or "a fall" in finding.quoted
    return "incidents" if told else ""


def impersonal_words(finding: Finding) -> str:
    """Return what may be said of a personal matter where others read: whom it is about and how severe.

    Empty where the finding tells nothing of a person.
    """
    about = {"health": "rider", "incidents": "bike"}.get(personal_matter(finding), "")
    return f"{about}: {finding.severity}" if about else ""
