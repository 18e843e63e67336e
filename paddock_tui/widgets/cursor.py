"""Where a key takes the cursor, and where it stays while the page around it changes: pure."""

import bisect

import attrs

from paddock_tui.pages.rows import Page, Row, Section

Identity = tuple[str, ...]

_INCIDENT, _ALSO_CALLED = "incident", "fall fell crash crashed drop dropped"
"""What is looked for by these words stands under incidents."""


_LAST: list[tuple[Page, list[int]]] = []
"""The stops of the page that was asked last: each arrow asks for them again."""


def stops(page: Page) -> list[int]:
    """List the rows that the cursor stops at; a heading is passed over."""
    if not (_LAST and _LAST[0][0] is page):
        _LAST[:] = [(page, [at for at, row in enumerate(page.rows()) if row.kind != "heading"])]
    return _LAST[0][1]


def found(page: Page, identity: Identity | None, near: int | None) -> int | None:
    """Find a row by its identity, the nearest of its doubles; else the nearest stop; None without one."""
    rows, able = page.rows(), stops(page)
    near = near or 0
    same = [at for at in able if identity is not None and rows[at].identity == identity]
    return min(same or able, key=lambda at: abs(at - near), default=None)


def moved(page: Page, at: int, key: str, lines: int) -> int | None:
    """Return the row that a key leads to from row `at`; None where the key moves nothing.

    `lines` is how many lines of rows the screen shows.
    """
    able = stops(page)
    here = bisect.bisect_left(able, at)
    page_by = max(lines - 2, 1)
    steps = {
        "up": here - 1,
        "down": here + 1,
        "pageup": here - page_by,
        "pagedown": here + page_by,
        "home": 0,
        "end": len(able) - 1,
    }
    if key in steps:
        return able[min(max(steps[key], 0), len(able) - 1)]
    if key in ("tab", "shift+tab"):
        return _section(page, at, 1 if key == "tab" else -1)
    return None


def next_open(page: Page, at: int) -> int | None:
    """Return the next row below that has no value and takes one; None where all have theirs."""
    rows = page.rows()
    later = (place for place in range(at + 1, len(rows)) if rows[place].kind == "field")
    return next((place for place in later if not rows[place].known and not rows[place].shut), None)


def _section(page: Page, at: int, by: int) -> int:
    """Return the first stop of the next or previous section that has one, around the ends."""
    firsts: list[int] = []
    able, first, mine = stops(page), 0, 0
    for section in page.sections:
        inside = [row for row in able if first <= row < first + len(section.rows)]
        if at in inside:
            mine = len(firsts)
        firsts += inside[:1]
        first += len(section.rows)
    return firsts[(mine + by) % len(firsts)]


def filtered(page: Page, words: str) -> Page:
    """Keep the rows that hold every word in label, value, aside or section title; all without words."""
    wanted = words.casefold().split()
    if not wanted:
        return page
    sections = []
    for section in page.sections:
        rows = tuple(row for row in section.rows if _holds(row, section.title, wanted))
        if rows:
            sections.append(type(section)(section.title, rows, section.note))
    return attrs.evolve(page, sections=tuple(sections))


def told(page: Page, words: str) -> Page:
    """Put in front of a filtered page that it is one, and how all rows are shown again."""
    note = "/, enter: all rows" if page.sections else "no row has them; /, enter: all rows"
    return attrs.evolve(page, sections=(Section(f"rows with {words.strip()}", (), note), *page.sections))


def named(page: Page, words: str) -> int | None:
    """Return the row that words most likely name: label or value begins with them, or holds them; or None."""
    phrase, rows = " ".join(words.casefold().split()), page.rows()
    names = [(at, name.casefold()) for at in stops(page) for name in (rows[at].label, rows[at].value)]
    first = [at for at, name in names if name.startswith(phrase)]
    held = [at for at, name in names if phrase in name]
    return next(iter((*first, *held)), None)


def _holds(row: Row, title: str, wanted: list[str]) -> bool:
    text = " ".join((title, row.label, row.value, row.aside, row.shut, row.trouble)).casefold()
    if _INCIDENT in text:
        text = f"{text} {_ALSO_CALLED}"
    return all(word in text for word in wanted)
