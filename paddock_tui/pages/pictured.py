"""Rows that hold a picture, and where they stand on their pages."""

import attrs

from paddock_tui.pages.pictures import Picture
from paddock_tui.pages.rows import Page, Row, Section


def picture_row(label: str, picture: Picture, *, apart: bool = False) -> Row:
    """Make the row of a picture; its sentence is said where nothing is drawn."""
    return Row(label, picture.sentence, kind="picture", key=f"picture {label}", picture=picture, apart=apart)


def with_picture(page: Page, title: str, row: Row | None, note: str = "") -> Page:
    """Put a picture on top of the section of this title, with its legend; the page as it is without one."""
    if row is None:
        return page
    sections = tuple(
        on_top(one, row, note) if one.title == title or one.title.startswith(f"{title},") else one
        for one in page.sections
    )
    return attrs.evolve(page, sections=sections)


def on_top(section: Section, row: Row, note: str = "") -> Section:
    """Put a picture on top of a section, with its legend."""
    return attrs.evolve(
        section, rows=(row, *section.rows), note="; ".join(filter(None, (note, section.note)))
    )


def picture_page(row: Row) -> Page:
    """Make the page behind a picture: the picture, the same in words, and its figures as a table."""
    picture = row.picture
    if picture is None:
        raise LookupError("the row has no picture")
    sections = [
        Section("in words", (Row("", picture.sentence, kind="text", key="in words"),)),
        Section("picture", (attrs.evolve(row, apart=False),)),
    ]
    if picture.table:
        rows = tuple(
            Row(first, kind="cells", cells=rest, key=f"figure {place}")
            for place, (first, *others) in enumerate(picture.table)
            for rest in (tuple(others),)
        )
        sections.append(Section("figures", rows, columns=picture.heads[1:]))
    return Page(f"picture · {row.label}", tuple(sections), judged=False)
