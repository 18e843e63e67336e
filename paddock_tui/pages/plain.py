"""Pages as plain text: what the commands print, and what a terminal that can do nothing is given."""

from collections.abc import Iterator

from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.records.paths import spell
from paddock_tui.text import fold, width

_LABEL = 24
_BAR = 22


def plain_page(page: Page, columns: int = 80, *, unknown: bool = True, paths: bool = False) -> Iterator[str]:
    """Print a page line by line.

    Values that are not known stand together in one line of their section (left out without `unknown`).
    With `paths` each value has the path under which `set` takes it.
    """
    if page.heading:
        yield from fold(page.heading, columns)
    if page.verdict:
        yield from fold(page.verdict, columns)
    for section in page.sections:
        yield ""
        yield from _section(section, columns, unknown, paths)
    if page.findings:
        yield ""
        for row in page.findings:
            yield from row_lines(row, columns)
    if page.caution:
        yield ""
        yield from fold(page.caution, columns)


def _section(section: Section, columns: int, unknown: bool, paths: bool) -> Iterator[str]:
    title = f"-- {section.title} " if section.title else "-"
    note = f" {section.note}" if section.note else ""
    yield f"{title}{'-' * max(2, columns - width(title) - width(note))}{note}"
    known = [row for row in section.rows if row.known or row.trouble or paths]
    bars = [row.bar for row in known if row.bar is not None]
    if bars:
        yield f"{'':{_LABEL + 18}}{_ends(bars[0])}"
    last = bars[0].ends if bars else None
    for row in known:
        if row.bar is not None and row.bar.ends != last:
            yield f"{'':{_LABEL + 18}}{_ends(row.bar)}"
            last = row.bar.ends
        yield from row_lines(row, columns, paths)
    lost = [row.label for row in section.rows if row not in known]
    if lost and unknown:
        yield from _hanging("  not known: ", ", ".join(lost), columns)


def row_lines(row: Row, columns: int = 80, paths: bool = False) -> Iterator[str]:
    """Print one row: label, value, bar, and what is said beside it on lines of its own where it is long."""
    if row.kind == "finding":
        yield from _hanging(f"  {row.severity:<8} ", row.value, columns)
        yield from _hanging(" " * 11, row.aside, columns)
        return
    shown = f"{row.value} {row.range}".rstrip()
    said = "; ".join(part for part in (row.trouble, row.shut or "", row.aside) if part)
    if row.shut and row.aside.startswith("fixed by"):
        said = row.aside
    if row.bar is not None:
        head = f"  {row.label:<{_LABEL - 2}}{shown:<18}"
        if width(head) <= _LABEL + 18 and columns >= _LABEL + 18 + _BAR:
            shown = f"{shown:<18}{_drawn(row.bar)}"
    label = f"  {row.label:<{_LABEL - 2}}" if width(row.label) <= _LABEL - 3 else f"  {row.label}  "
    beside = f"{label}{shown}  {said}"
    if said and width(beside) <= columns:
        yield beside
    else:
        yield from _hanging(label, shown, columns)
        if said:
            yield from _hanging(" " * min(_LABEL, columns // 2), said, columns)
    if paths and row.path:
        yield from _hanging(" " * min(_LABEL, columns // 2), spell(row.path), columns)


def _ends(bar: Bar) -> str:
    low, high = bar.ends
    return f"{low} {'.' * max(1, _BAR - width(low) - width(high) - 2)} {high}"


def _drawn(bar: Bar) -> str:
    if bar.at is None:
        return "." * _BAR
    place = round(bar.at * (_BAR - 1))
    return "." * place + "|" + "." * (_BAR - 1 - place)


def _hanging(lead: str, text: str, columns: int) -> Iterator[str]:
    room = max(8, columns - width(lead))
    for place, line in enumerate(fold(text, room) or [""]):
        yield f"{lead}{line}".rstrip() if place == 0 else f"{' ' * width(lead)}{line}"
