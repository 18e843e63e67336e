"""The set-up card as plain text, in 78 columns or in 38."""

from collections.abc import Iterator

from paddock_tui.pages.card.content import Card, CardLine, for_reading
from paddock_tui.pages.layout.lanes import marked
from paddock_tui.pages.pictures import Mark
from paddock_tui.pages.pictures.data import NOW
from paddock_tui.text import fold, width

NOTES = 4
"""Empty lines at the end, for notes by hand."""

_LABEL, _VALUE, _BAR = 26, 22, 20
_NARROW = 60
"""Below this many columns a bar has a line of its own."""


def card_lines(card: Card, columns: int = 78) -> Iterator[str]:
    """Print a card in at most `columns` cells (38 or more)."""
    card = for_reading(card)
    yield from fold(f"set-up card · {card.heading}", columns)
    yield from fold(f"{card.verdict} {card.as_of}".strip(), columns)
    for said in card.findings:
        yield from _hanging("  ", said, columns)
    if card.base:
        yield from fold(f"* differs from {card.base}", columns)
    for block in card.blocks:
        yield ""
        title = next(iter(fold(block.title, columns - 4)), "")
        yield f"-- {title} ".ljust(columns, "-")[:columns]
        ends: tuple[str, str] | None = None
        for line in block.lines:
            if line.bar is not None and line.bar.ends != ends and columns >= _NARROW:
                ends = line.bar.ends
                yield f"{'':{_LABEL + _VALUE}}{_ends(ends)}"
            yield from _line(line, columns)
        if block.legend:
            yield from _hanging("  ", f"| now, {block.legend}", columns)
        if block.unknown:
            yield from _hanging("  not known: ", " · ".join(block.unknown), columns)
    if card.laps_words:
        yield ""
        yield from fold(f"laps: {card.laps_words}", columns)
    yield ""
    yield "notes"
    for _ in range(NOTES):
        yield "_" * columns
    yield ""
    yield from fold(card.caution, columns)


def _line(line: CardLine, columns: int) -> Iterator[str]:
    mark = "*" if line.was else " "
    value = f"{line.value} {line.range}".strip()
    was = f"was {line.was}" if line.was else ""
    if columns < _NARROW:
        yield from _hanging(f"{mark} {line.label}  ", value, columns)
        if line.bar is not None:
            yield from _hanging("    ", f"{line.bar.ends[0]} {_scale(line, 10)} {line.bar.ends[1]}", columns)
        for said in filter(None, (was, line.aside)):
            yield from _hanging("    ", said, columns)
        return
    head = f"{mark} {line.label}"
    if width(head) >= _LABEL or width(value) >= _VALUE:
        yield from _hanging(f"{head}  ", value, columns)
        head, value = "", ""
    drawn = _scale(line, _BAR) if line.bar is not None else ""
    start = f"{head:{_LABEL}}{value:{_VALUE}}{drawn:{_BAR if drawn else 0}}"
    said = "; ".join(filter(None, (was, line.aside)))
    whole = f"{start} {said}".rstrip()
    if not whole:
        return
    if width(whole) <= columns:
        yield whole
        return
    yield start.rstrip()
    yield from _hanging(" " * _LABEL, said, columns)


def _scale(line: CardLine, cells: int) -> str:
    bar = line.bar
    if bar is None or not bar.is_drawn:
        return "." * cells
    drawn = ["."] * cells
    now = [Mark(NOW, bar.at)] if bar.at is not None else []
    for place, sign in marked([*([] if bar.fixed else bar.marks), *now], 0.0, 1.0, cells):
        drawn[place] = "|" if sign == NOW else sign
    return "".join(drawn)


def _ends(ends: tuple[str, str]) -> str:
    low, high = (word.split()[0] for word in ends)
    return f"{low}{high:>{max(1, _BAR - width(low))}}"


def _hanging(lead: str, text: str, columns: int) -> Iterator[str]:
    for place, part in enumerate(fold(text, max(10, columns - width(lead))) or [""]):
        yield f"{lead}{part}".rstrip() if place == 0 else f"{' ' * width(lead)}{part}"
