"""What a page answers right below its heading, where that is not what stands against going out.

No page ever answers that somebody may go.
"""

from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.rows import NOTHING as EMPTY
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.paths import Ref
from paddock_tui.rules import CAUTION, Finding, Review
from paddock_tui.text import printable

AnswerWords = tuple[str, str]
"""What a page answers, whole and in few words for a narrow screen."""


def ridden_answer(judged: Review) -> AnswerWords:
    """Answer for a session that was ridden: what is found in it now, and that this says no more."""
    found = _grave(judged)
    if not found:
        return (
            "Ridden, and nothing found in it: that says nothing of going out again.",
            "Ridden: no verdict on the next.",
        )
    return (f"Ridden; {len(found)} found, first: {message_line(found[0])}", f"Ridden: {_few(found)}")


def ridden_in_few(judged: Review) -> str:
    """Answer for a session that was ridden in fewer words."""
    found = _grave(judged)
    if not found:
        return "Ridden, nothing found: that says nothing of going out."
    return f"Ridden; {len(found)} found, first: {found[0].short}"


def profile_answer(judged: Review) -> AnswerWords:
    """Answer for a profile: only a set-up is judged."""
    found = _grave(judged)
    if not found:
        return (
            "Nothing found in this set-up by itself: only a session can be judged.",
            "By itself: no session to judge.",
        )
    return f"First of {len(found)} found in this set-up: {message_line(found[0])}", _few(found)


def record_answer(judged: Review, ref: Ref, page: Page, *, is_part: bool) -> AnswerWords:
    """Answer for a record: what is found about it, else what is missing of it, worst first.

    `is_part`: the record is one of those that were judged; of another nothing found means nothing.
    """
    found = [one for one in _grave(judged) if one.where is not None and one.where.ref == ref]
    if found:
        return f"First, {len(found)} found about it: {message_line(found[0])}", _few(found)
    wrong = [row for row in page.rows() if row.trouble or row.severity]
    if wrong:
        said = _named(wrong[0])
        return f"First, {len(wrong)} to see to: {said}", said
    missing = [printable(one.label) for one in judged.missing if one.ref == ref]
    missing += [
        f"{row.label} ({one.title})"
        for one in page.sections
        for row in one.rows
        if row.kind == "field" and _is_loud(row)
    ]
    if missing:
        return f"{len(missing)} not known, first: {missing[0]}", f"{len(missing)} not known: {missing[0]}"
    if not is_part:
        why = "it is no part of what is judged now" if judged.about_a_session else "no session is planned"
        return f"Not assessed: {why}.", "Not assessed now."
    return "Nothing found about it, and nothing missing that a check waits for.", "Nothing found about it."


def with_answer(page: Page, ref: Ref | None, judged: Review, *, is_part: bool) -> AnswerWords:
    """Return what a page answers by itself, else what its record does."""
    if page.answer or ref is None:
        return page.answer, page.answer_short
    return record_answer(judged, ref, page, is_part=is_part)


def _grave(judged: Review) -> list[Finding]:
    return [one for one in judged.findings if one.severity >= CAUTION and one.accepted is None]


def _few(found: list[Finding]) -> str:
    words = found[0].short
    return f"{words[:1].upper()}{words[1:]}" + (f" +{len(found) - 1}" if len(found) > 1 else "")


def _named(row: Row) -> str:
    return ": ".join(filter(None, (row.label, row.trouble or row.value)))


def _is_loud(row: Row) -> bool:
    return not row.known and row.value != EMPTY
