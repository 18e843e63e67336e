"""The briefing as a page, and as lines that are read in a minute."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.briefing import Briefing, BriefingPart
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.text import fold, printable, width

BRIEF = "brief"
FROM = "coming from"
"""The row that says what the rider comes from, and its path."""

NOTHING_BEFORE = "nothing of yours is here yet"

MORE = "more of the briefing"
"""The key of the row that leads to the long form."""

READ_AT = 78
"""The width at which lines are counted: what is left out never depends on the terminal."""

SHORT, LONG = 25, 60
"""Lines that the two forms may take at that width."""

_LEAD = 11
_NARROW = 60


def briefing_page(found: Briefing, heading: str, long: bool = False, came: str | None = None) -> Page:
    """Make the page of a briefing: the same sentences as on paper, under the same words.

    `came` names what the rider comes from, where something else may be chosen; None where nothing may.
    """
    parts, left = kept(found, long)
    sections = [
        Section(
            part.title,
            tuple(
                Row("", printable(said), kind="text", key=f"{part.title} {at}")
                for at, said in enumerate(part.sentences)
            ),
        )
        for part in parts
    ]
    if left:
        row = Row("", f"{_sentences(left)} in the long form: enter shows it", kind="text", key=MORE)
        sections.append(Section("more", (row,)))
    if came is not None:
        row = Row(FROM, printable(came), kind="link", path=(BRIEF, FROM), key=FROM)
        sections.append(Section("compared with", (row,), "- and + step through bikes and profiles"))
    return Page(f"briefing · {heading}", tuple(sections), judged=False)


def briefing_lines(found: Briefing, columns: int = READ_AT, long: bool = False) -> Iterator[str]:
    """Write a briefing: at 78 columns at most 25 lines, the long form 60."""
    parts, left = kept(found, long)
    for part in parts:
        yield from _part(part, columns)
    if left:
        yield from _hanging("", _more(left), columns)


def kept(found: Briefing, long: bool = False) -> tuple[tuple[BriefingPart, ...], int]:
    """Return the parts with the sentences that there is room for, and how many were left out.

    Each part first takes the lines that are its own; what is over goes to parts that have nothing yet, then
    to all in their order.
    """
    limit = LONG if long else SHORT
    taken = [_fitting(part, part.long if long else part.short) for part in found.parts]
    room = limit - 1 - sum(_lines(part, count) for part, count in zip(found.parts, taken, strict=True))
    order = sorted(range(len(taken)), key=lambda at: taken[at] > 0)
    for at in order:
        part = found.parts[at]
        while taken[at] < len(part.sentences):
            more = len(_folded(part.sentences[taken[at]], READ_AT))
            if more > room:
                break
            room -= more
            taken[at] += 1
    parts = tuple(
        attrs.evolve(part, sentences=part.sentences[:count])
        for part, count in zip(found.parts, taken, strict=True)
        if count
    )
    return parts, sum(len(part.sentences) for part in found.parts) - sum(taken)


def _fitting(part: BriefingPart, room: int) -> int:
    """Count the sentences of a part that fit in so many lines."""
    count = 0
    while count < len(part.sentences) and _lines(part, count + 1) <= room:
        count += 1
    return count


def _lines(part: BriefingPart, count: int) -> int:
    return sum(len(_folded(said, READ_AT)) for said in part.sentences[:count])


def _more(left: int) -> str:
    return f"{_sentences(left)} in the long form (--long)."


def _sentences(left: int) -> str:
    return f"{left} more sentence{'s' if left > 1 else ''}"


def _part(part: BriefingPart, columns: int) -> Iterator[str]:
    if columns < _NARROW:
        yield f"{part.title}:"
    for at, said in enumerate(part.sentences):
        lead = part.title if at == 0 and columns >= _NARROW else ""
        yield from _hanging(lead, said, columns)


def _hanging(lead: str, said: str, columns: int) -> Iterator[str]:
    indent = _indent(columns)
    for at, line in enumerate(_folded(said, columns)):
        start = lead if at == 0 else ""
        yield f"{start}{' ' * (indent - width(start))}{line}"


def _folded(said: str, columns: int) -> list[str]:
    return fold(printable(said), columns - _indent(columns))


def _indent(columns: int) -> int:
    return _LEAD if columns >= _NARROW else 2
