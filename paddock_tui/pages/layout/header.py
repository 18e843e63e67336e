"""The first line: heading left, verdict right; its word is never cut but for that it was ridden."""

import re

from paddock_tui.pages.layout.cells import sign
from paddock_tui.pages.layout.columns import MARK
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.rows import FOLD, Page
from paddock_tui.records.verdict_words import (
    CARE_WORD,
    HOLD_WORD,
    NO_FINDINGS_WORD,
    NOT_YET_WORD,
    RIDDEN_TAIL,
)
from paddock_tui.text import clip, width

_GAP = 2
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

_LEAST_BAR = 26
"""On a narrower screen the word of the verdict has all the room."""

_WIDE = 56
_COUNT = 8
"""Cells of a hold's word with its count."""

STAY_IN = ("DO NOT GO OUT", "STAY IN")
"""What a hold says beside its word, whole and short."""


def header(page: Page, pen: Pen) -> Line:
    """Draw the heading and as much of the verdict as leaves it room, at most half the line.

    Whose verdict it is stands before it, unless the heading says so and is not cut. While a hold stands it
    is one bar across the screen, with a block at both ends.
    """
    verdict = _COUNTS.sub("", page.verdict) if _has_rule(page) else page.verdict
    heading, forms = pen.say(page.heading), [pen.say(form) for form in verdict_forms(verdict)]
    if page.held and pen.width > _LEAST_BAR:
        return _held(heading, forms, pen)
    limit = max(pen.width // 2, pen.width - width(heading) - 2)
    said = _fitting(forms, limit)
    owner = pen.cut(pen.say(page.whose), _OWNER) if page.verdict else ""
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
        ink.put(said, verdict_style(page.verdict))
    return ink.line()


def _fitting(forms: list[str], limit: int) -> str:
    return next((form for form in forms if width(form) <= limit), forms[-1])


def _is_said(whose: str, heading: str) -> bool:
    """Return whether what is drawn of the heading says whose verdict it is."""
    return set(whose.split()) <= set(heading.split())


def answer_line(page: Page, pen: Pen) -> Line:
    """Draw the answer to the page's one question, in fewer words where the whole has no room; when the bike
    goes out closes the line.
    """
    answer, when = _answer_and_when(page, pen)
    ink = Ink(pen)
    ink.to(MARK)
    ink.put(answer, "answer", ink.room - (width(when) + _GAP if when else 0))
    if when:
        ink.to(pen.width - width(when))
        ink.put(when, "note")
    return ink.line()


def _answer_and_when(page: Page, pen: Pen) -> tuple[str, str]:
    """Choose the words of the answer and of when: the most of when that lets the answer stand whole."""
    answers = [pen.say(one) for one in (page.answer, page.answer_mid, page.answer_short) if one]
    when = [pen.say(one) for one in page.when]
    room = pen.width - MARK
    for times in (when[:-1], when[-1:]):
        for answer in answers:
            for time in times:
                if width(answer) + _GAP + width(time) <= room:
                    return answer, time
    whole = next((one for one in answers if width(one) <= room), "")
    # What is cut in any case is cut for the time too.
    return (whole, "") if whole else (answers[-1], when[-1] if when else "")


def first_rule_end(page: Page, pen: Pen, title: str, note: str) -> str:
    """Return what closes the first rule of a page: what the verdict counts that is no finding.

    When the bike goes out stands there too where the answer leaves no room for it, or no line above answers.
    What has no room beside title and note is left out, but for the last time.
    """
    if not _has_rule(page):
        return ""
    counts = [pen.say(one) for one in _COUNTS.findall(page.verdict)]
    is_said = bool(page.answer and _answer_and_when(page, pen)[1])
    times = [] if is_said else [pen.say(one) for one in page.when]
    forms = [pen.say(" · ".join((*one, *counts))) for one in [[time] for time in times] or [[]]]
    forms += times or counts[:1]
    taken = width(pen.say(f"{title}  {note}")) + _RULE
    return next((one for one in forms if width(one) + taken <= pen.width), times[-1] if times else "")


_COUNTS = re.compile(r" · (\d+ (?:not assessed|to do))\b")
_RULE = 16
"""Cells of the strokes of a rule that has a note and an end, and of the spaces around them."""


def _has_rule(page: Page) -> bool:
    """Return whether a page begins with a plain rule: not with the heading of a folded section."""
    rows = page.sections[0].rows if page.sections else ()
    return bool(page.sections) and not (rows and rows[0].kind == FOLD)


def _held(heading: str, forms: list[str], pen: Pen) -> Line:
    block, room = sign("█", pen.plain), pen.width - 4
    count = next((form for form in forms if width(form) <= _COUNT), forms[-1])
    said = f"{count} · {STAY_IN[0]}" if room >= _WIDE else f"{count} · {STAY_IN[1]}"
    said = pen.say(said)
    left = pen.cut(heading, room - width(said) - 1)
    gap = " " * (room - width(left) - width(said))
    return ((block, "rail-hold"), (f" {left}{gap}{said} ", "verdict-hold"), (block, "rail-hold"))


def verdict_forms(verdict: str) -> list[str]:
    """Return the verdict whole and ever shorter, counts cut from the right, down to its word.

    How many essentials are missing is never cut. That a session was ridden is the last to go: its word by
    itself would read as if it stood for going out again.
    """
    before, ridden, more = verdict.partition(RIDDEN_TAIL)
    if ridden:
        short = [f"{form}{RIDDEN_TAIL}" for form in verdict_forms(before)]
        return [*([verdict] if more else []), *short, RIDDEN_TAIL.removeprefix(" · ")]
    forms = [verdict]
    for tail in (r" · [^·]*$", r" \([^()]*\)$", r": .*$", r" missing$", r"(?<!NOT YET) \d+$"):
        while (shorter := re.sub(tail, "", forms[-1])) != forms[-1] and shorter:
            forms.append(shorter)
    return forms


def verdict_style(verdict: str) -> str:
    """Return the style of a verdict's word; a session not judged is quiet."""
    return next((style for word, style in _STYLES.items() if verdict.startswith(word)), "unknown")
