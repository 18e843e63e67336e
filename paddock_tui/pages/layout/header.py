"""The first line: heading left, verdict right; its word is never cut."""

import re

from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.rules.verdict import CARE_WORD, HOLD_WORD, NO_FINDINGS_WORD, NOT_YET_WORD
from paddock_tui.text import clip, width

_OWNER = 12
"""Cells at most of whose verdict it is."""

_LEAST_HEADING = 12
"""Cells that are left to the heading beside it."""

_STYLES = {
    HOLD_WORD: "verdict-hold",
    CARE_WORD: "verdict-care",
    NOT_YET_WORD: "verdict-not-yet",
    NO_FINDINGS_WORD: "verdict-no-findings",
}


def header(heading: str, verdict: str, pen: Pen, whose: str = "") -> Line:
    """Draw the heading and as much of the verdict as leaves it room, at most half the line.

    `whose` verdict it is stands before it, unless the heading says so and is not cut.
    """
    heading, forms = pen.say(heading), [pen.say(form) for form in verdict_forms(verdict)]
    limit = max(pen.width // 2, pen.width - width(heading) - 2)
    said = _fitting(forms, limit)
    owner = clip(pen.say(whose), _OWNER) if verdict else ""
    if owner and not _is_said(owner, clip(heading, pen.width - width(said) - 2)):
        said = _fitting(forms, limit - width(owner) - 1)
        owner = owner if width(owner) + width(said) + _LEAST_HEADING <= pen.width else ""
    else:
        owner = ""
    right = width(said) + (width(owner) + 1 if owner else 0)
    ink = Ink(pen)
    ink.put(heading, "heading", pen.width - right - 2 if said else pen.width)
    if said:
        ink.to(pen.width - right)
        ink.put(f"{owner} " if owner else "", "aside")
        ink.put(said, verdict_style(verdict))
    return ink.line()


def _fitting(forms: list[str], limit: int) -> str:
    return next((form for form in forms if width(form) <= limit), forms[-1])


def _is_said(whose: str, heading: str) -> bool:
    """Return whether what is drawn of the heading says whose verdict it is."""
    return set(whose.split()) <= set(heading.split())


def verdict_forms(verdict: str) -> list[str]:
    """Return the verdict whole and ever shorter, counts cut from the right, down to its word.

    How many essentials are missing is never cut.
    """
    forms = [verdict]
    for tail in (r" · [^·]*$", r" \([^()]*\)$", r": .*$", r" missing$", r"(?<!NOT YET) \d+$"):
        while (shorter := re.sub(tail, "", forms[-1])) != forms[-1] and shorter:
            forms.append(shorter)
    return forms


def verdict_style(verdict: str) -> str:
    """Return the style of a verdict's word; a session not judged is quiet."""
    return next((style for word, style in _STYLES.items() if verdict.startswith(word)), "unknown")
