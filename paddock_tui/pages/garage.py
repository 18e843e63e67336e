"""The garage page: its days and sessions, newest first, everything else, and problems of what was read."""

from collections.abc import Container, Iterable, Iterator
from functools import partial
from typing import TYPE_CHECKING

from paddock_tui.desk.answers import Reading
from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.garage_list import (
    EARLIER_SESSIONS,
    MANY,
    TITLES,
    garage_name,
    new_row,
    of_latest_day,
    record_rows,
    session_rows,
)
from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.rows import Page, Section
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.presence import others
from paddock_tui.text import printable

if TYPE_CHECKING:
    from paddock_tui.desk import Desk


LOOKING = " · looking for problems"
"""Stands in the heading until it is known which there are."""


def garage_page(
    desk: LooksAt,
    *,
    retired: bool = False,
    now: str = "",
    years: Container[str] | None = None,
    problems: Iterable[InputError] | Reading | None = None,
    counts_open: bool = True,
) -> Page:
    """List what is in a garage. Retired records are left out unless asked for; `now` is said at the top.

    Of very many sessions and days the earlier `years` that are open are listed; None lists all. `problems`
    are looked for where nobody says which there are; `counts_open`: what earlier
    sessions left open is counted.
    """
    still_open = partial(_still_open, desk) if counts_open else _nothing_open
    sessions = tuple(
        session_rows(desk.files, desk.now(), retired=retired, still_open=still_open, years=years)
    )
    note = now or ("" if sessions else "none yet")
    latest = of_latest_day(desk.files, sessions, desk.now())
    sections = [Section("sessions", (*sessions[:latest], new_row("session", "session")), note)]
    for kind, title in TITLES.items():
        rows = tuple(record_rows(desk.files, kind, retired=retired, years=years))
        sections.append(Section(title, (*rows, new_row(kind, title)), "" if rows else "none yet"))
    if sessions[latest:]:
        sections.append(Section(EARLIER_SESSIONS, sessions[latest:]))
    heading = garage_heading(desk)
    present = others(desk.root, desk.now())
    if present:
        heading = f"{heading} · open too: {printable(', '.join(map(str, present)))}"
    if isinstance(problems, Reading):
        return Page(f"{heading}{LOOKING}", tuple(sections), judged=False)
    found = tuple(problem_rows(problems if problems is not None else problems_read(desk)))
    if found:
        count = "1 problem" if len(found) == 1 else f"{len(found)} problems"
        heading = f"{heading} · {count}, see below"
        sections.append(Section("problems", found, "enter corrects"))
    return Page(heading, tuple(sections), judged=False)


def garage_heading(desk: LooksAt) -> str:
    """Name the garage by its own name, else by its folder's."""
    return garage_name(desk.files)


def problems_read(desk: LooksAt) -> Iterator[InputError]:
    """List what could not be read in everything that the page opens."""
    yield from desk.files.soundness.troubles()
    yield from desk.files.strays()
    yield from desk.files.former.troubles(desk.files.name_of)


def looks_aside(desk: LooksAt) -> bool:
    """Return whether so many files have to be read for problems that it is done in a thread of its own."""
    return desk.files.soundness.unknown() > MANY


def problems_aside(desk: "Desk") -> tuple[InputError, ...] | Reading:
    """List what could not be read; where very much has to be read for that, it is read meanwhile."""
    if not looks_aside(desk):
        return tuple(problems_read(desk))
    return desk.answers.of("problems", 0, lambda looks: tuple(problems_read(looks)))


def _nothing_open(_: Ref) -> str:
    return ""


def _still_open(desk: LooksAt, session: Ref) -> str:
    """Count what earlier sessions left open for the session in hand, with the day of the first."""
    found = desk.facts_of(desk.assembled(session).situation).get("open_matters")
    before = [one for one in found if one.ref is not None] if isinstance(found, tuple) else []
    if not before:
        return ""
    since = min((one.since for one in before if one.since is not None), default=None)
    return f" · {len(before)} still open" + (f" since {since:%a}" if since is not None else "")
