"""Pages as sentences, for a screen reader: no columns, bars or rules, one sentence a line."""

import re
from collections.abc import Iterator

from paddock_tui.pages.pictures import Picture
from paddock_tui.pages.rows import NOTHING, Bar, Page, Row, Section
from paddock_tui.text import as_read

_DRAWN = re.compile(r"[\u2500-\u25ff]")
_DENIES = ("missing", "not assessed")
"""Titles of sections that deny what their rows say: heard by itself, "the rider is fit" is a statement."""

_MARKS = {" -> ": " to ", " · ": ", ", "->": " to ", "·": "free", "..": " to ", "°": " degrees "}


def spoken(page: Page) -> Iterator[str]:
    """Say a page line by line, each a sentence by itself; what is not known comes last in its section."""
    for text in (page.heading, f"verdict {page.verdict}" if page.verdict else ""):
        yield from _sentence(text)
    for section in page.sections:
        rows = [row for row in section.rows if row.kind != "add"]
        if rows or section.note:
            yield ""
            # The legend of a drawing explains what nobody sees here.
            note = "" if _DRAWN.search(section.note) else section.note
            yield from _sentence(f"{section.title}, {note}" if note else section.title)
            yield from _rows(section, rows)
    if page.findings:
        yield ""
    for row in page.findings:
        yield from _row(row, ())
    if page.caution:
        yield ""
        yield from _sentence(page.caution)


def _rows(section: Section, rows: list[Row]) -> Iterator[str]:
    told = [row for row in rows if row.known or row.trouble or row.kind in ("finding", "text")]
    for row in told:
        said = _row(row, section.columns)
        yield from (_denied(section.title, one) for one in said) if section.title in _DENIES else said
    lost = [row for row in rows if row not in told]
    for lead, empty in (("not known", False), ("empty", True)):
        labels = [row.label for row in lost if (row.value == NOTHING) is empty]
        if labels:
            yield from _sentence(f"{lead}: {', '.join(labels)}")


def _denied(title: str, sentence: str) -> str:
    """Say in a sentence itself that what it says is missing."""
    first = sentence[:1].lower() if sentence[1:2].islower() else sentence[:1]
    return f"{title[:1].upper()}{title[1:]}: {first}{sentence[1:]}"


def _row(row: Row, columns: tuple[str, ...]) -> Iterator[str]:
    if row.kind == "finding":
        yield from _sentence(f"{row.severity}: {row.value}")
        yield from _sentence(row.aside)
        return
    if row.picture is not None:
        yield from _sentence(f"{row.label}: {row.picture.sentence}" if row.label else row.picture.sentence)
        yield from _figures(row.picture)
        return
    if row.cells:
        cells = zip(columns or ("",) * len(row.cells), row.cells, strict=False)
        said = "; ".join(f"{column} {cell}".strip() for column, cell in cells if cell)
        yield from _sentence(f"{row.label}: {said}")
        return
    value = " ".join(filter(None, (row.value, row.range)))
    parts = (row.trouble, row.shut, _bar(row.bar), _in_words(row))
    said = "; ".join(filter(None, (value, *parts)))
    yield from _sentence(f"{row.label}: {said}" if row.label and said else row.label or said)


def _figures(picture: Picture) -> Iterator[str]:
    """Say the figures of a picture, each line of its table as a sentence with the heads of its columns."""
    for first, *cells in picture.table:
        said = "; ".join(
            f"{head} {cell}".strip() for head, cell in zip(picture.heads[1:], cells, strict=False) if cell
        )
        yield from _sentence(f"{first}: {said}" if said else first)


def _in_words(row: Row) -> str:
    """Return what is said beside a row, the letters of its bar's marks as the words that they stand for."""
    first, semicolon, rest = row.aside.partition("; ")
    for mark in row.bar.marks if row.bar is not None else ():
        first = re.sub(rf"(?<!\S){re.escape(mark.sign)}(?!\S)", mark.word, first)
    return f"{first}{semicolon}{rest}"


def _bar(bar: Bar | None) -> str:
    """Say where the mark of a bar stands, from its first end to its second."""
    if bar is None or bar.at is None:
        return ""
    return f"{round(bar.at * 100)} percent from {bar.ends[0]} to {bar.ends[1]}"


def _sentence(text: str) -> Iterator[str]:
    """Say a text as one sentence that begins large and ends; nothing of an empty one."""
    said = as_read(" ".join(text.split()))
    for mark, word in _MARKS.items():
        said = said.replace(mark, word)
    said = re.sub(r"\s+", " ", said).strip()
    if said:
        yield f"{said[0].upper()}{said[1:]}{'' if said[-1] in '.!?:' else '.'}"
