"""The paper slip: boxes in exactly the order of the return, to be typed in one pass at lunch."""

from collections.abc import Iterator
from itertools import groupby

from paddock_tui.entry.return_rows import LATER, NOTES, ReturnRow, groups, rule_of
from paddock_tui.entry.symptoms import SHORT, numbered
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.common import Units
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.session_parts import SYMPTOMS
from paddock_tui.records.shown_words import shown
from paddock_tui.text import as_read, fold, printable

WIDTH, LINES = 80, 60
"""One page."""

BOX = "[ ]"
_LABEL = 22
_RULE_AT = 48


def slip_lines(heading: str, units: Units) -> tuple[str, ...]:
    """Write the slip of one session, at most 60 lines of 80 cells; `heading` names the session."""
    lines = [
        f"debrief sheet · {printable(heading)}"[:WIDTH],
        "",
        f"  {'parked':{_LABEL}}[  :  ]",
        f"  {'read at':{_LABEL}}[  :  ]",
    ]
    section = ""
    for group in groups():
        if group.section != section:
            section = group.section
            lines += ["", f"{section}: {NOTES[section]}"]
        lines.append(_line(group, units))
    long = _dashes(_LABEL + 2)
    lines += ["", "later", f"  {'laps':{_LABEL}}{long}", f"  {'':{_LABEL}}{long}"]
    for title, paths in LATER:
        for path in paths:
            field = field_at("session", path)
            lead = f"{path[1]} " if path[0] == "look" else ""
            label = f"{lead}{field.label}" if field is not None else title
            lines.append(f"  {label:{_LABEL}}{_dashes(_RULE_AT)}")
    lines += ["", *_symptoms()]
    lines += ["", "Type it in this order: i, then the boxes. What is empty is passed by enter."]
    return tuple(lines[:LINES])


def slip_page(heading: str, units: Units) -> Page:
    """Make the page that shows the slip, a section for each block of it; the command prints it."""
    first, *lines = slip_lines(heading, units)
    blocks = (list(block) for blank, block in groupby(lines, lambda line: not line) if not blank)
    return Page(first, tuple(_section(block, place) for place, block in enumerate(blocks)), judged=False)


def _section(block: list[str], place: int) -> Section:
    """Make a section of a block: its first line is the heading, where boxes are indented below it."""
    title, note = ("paddock-tui slip GARAGE prints it", "") if place == 0 else ("", "")
    if place and len(block) > 1 and block[1].startswith(" "):
        title, _, note = block.pop(0).partition(": ")
    rows = (Row("", line.strip(), kind="text", key=f"slip {place} {at}") for at, line in enumerate(block))
    return Section(title or ("symptoms" if len(block) > 1 else "typing it in"), tuple(rows), note)


def _line(group: ReturnRow, units: Units) -> str:
    space = BOX * group.boxes if group.boxes else _dashes(_RULE_AT)
    lead = f"  {group.label:{_LABEL}}{space}"
    return f"{lead:{_RULE_AT}} {as_read(rule_of(group, units))}"


def _dashes(until: int) -> str:
    return "_" * ((WIDTH - 2 - until) if until < _RULE_AT else (_RULE_AT - _LABEL - 4))


def _symptoms() -> Iterator[str]:
    yield from fold(f"symptoms by digit: {numbered(SHORT)}", WIDTH)
    rest = ", ".join(shown(one) for one in SYMPTOMS if one not in SHORT)
    yield from fold(f"by first letters: {rest}", WIDTH)
