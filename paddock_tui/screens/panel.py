"""The right of a wide screen: holds and serious findings, what the row does, else a picture of the page."""

from collections.abc import Sequence

import attrs

from paddock_tui.desk import Desk
from paddock_tui.on_demand import load_later
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.rules import HOLD, SERIOUS, Finding, Review
from paddock_tui.text import printable

load_later("paddock_tui.pages.explanation")

_LEFT_OUT = ("beside it",)
"""What of an explanation is left to `w`."""


class SidePanel:
    """Makes the panel; the same row of the same review is asked about once."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._made: tuple[Review, Row, tuple[Section, ...]] | None = None

    def beside(self, judged: Review, row: Row | None, page: Page) -> tuple[Section, ...]:
        """Return what stands beside a row of a page, or beside a page without one."""
        if row is None:
            return panel_of(self._desk, None, judged, page)
        if self._made is None or self._made[0] is not judged or self._made[1] is not row:
            self._made = judged, row, panel_of(self._desk, row, judged, page)
        return self._made[2]


def panel_of(desk: Desk, row: Row | None, judged: Review, page: Page) -> tuple[Section, ...]:
    """Return the panel beside a row: any hold, a serious finding about the row; else every other serious one
    in few words, and what the row does, or a picture of the page where nothing is to be said of the row.
    """
    standing = [one for one in judged.findings if one.severity == HOLD]
    serious = [one for one in judged.findings if one.severity == SERIOUS]
    if row is not None and not standing:
        standing = [one for one in serious if _is_about(one, row)]
    if standing:
        return tuple(_finding(one) for one in standing)
    return (*_in_short(serious), *(_explained(desk, row) or _pictured(page)))


def _in_short(found: Sequence[Finding]) -> tuple[Section, ...]:
    rows = tuple(
        Row(one.short, kind="text", key=f"panel {one.rule} {one.subject}") for one in found if one.to_answer
    )
    return (Section("serious, to answer", rows),) if rows else ()


def _pictured(page: Page) -> tuple[Section, ...]:
    """Return the first picture of a page; nothing where it has none."""
    row = next((one for one in page.rows() if one.picture is not None), None)
    return (Section(row.label, (attrs.evolve(row, apart=False),)),) if row is not None else ()


def _explained(desk: Desk, row: Row | None) -> tuple[Section, ...]:
    """Return what the row does, where it is a value of a set-up; else nothing."""
    if row is None or row.ref is None or row.kind != "field" or row.ref.kind not in ("session", "profile"):
        return ()
    from paddock_tui.pages.explanation import CANNOT, explained

    found = explained(row.path, desk.assembled(row.ref).situation, row.offer)
    # What it cannot do comes before the ways, which may be too long for the panel.
    first = [one for one in found[1:] if one.title == CANNOT]
    rest = [one for one in found[1:] if one.title not in (CANNOT, *_LEFT_OUT)]
    return (*found[:1], *first, *rest)


def _is_about(finding: Finding, row: Row) -> bool:
    return finding.where is not None and (finding.where.ref, finding.where.path) == (row.ref, row.path)


def _finding(one: Finding) -> Section:
    said = (("", one.message), ("why", one.why), ("do", one.remedy.text))
    rows = tuple(
        Row(label, printable(text), kind="text", key=f"panel {one.rule} {one.subject} {label}")
        for label, text in said
    )
    return Section(str(one.severity), rows)
