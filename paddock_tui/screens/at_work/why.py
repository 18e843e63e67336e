"""Why: what a row is, how it was worked out, which rules use it."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.values import field_of
from paddock_tui.entry.pieces import lookup
from paddock_tui.pages.advised import working_section
from paddock_tui.pages.explanation import explained, explained_of_bike
from paddock_tui.pages.pictured import picture_page
from paddock_tui.pages.record import title_of
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.why import why_page
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.at_work.modes import show_modes
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.store.git_consent import allowed
from paddock_tui.store.last_commit import last_commit
from paddock_tui.text import printable
from paddock_tui.widgets import messages

_MODES = (("setup", "mode"), ("setup", "preset"))
_TO_MODES = "to modes"


class _Commits:
    """What git says of values that were asked about in this run, by record, path and value."""

    def __init__(self) -> None:
        self.known: dict[tuple[Ref, Path, str], str] = {}


def make_page(asked: PageContext) -> Page | None:
    row = asked.place.row
    if row is not None and row.picture is not None:
        return picture_page(row)
    if row is None:
        return None
    page = _of_row(asked.desk, row, row.ref)
    known = asked.state.of(_Commits).known
    said = known.get(_asked(asked.desk, row.ref, row.path)) if row.ref is not None else None
    if said is None:
        return page
    line = Row("last commit", printable(said), kind="text", key="last commit")
    return attrs.evolve(page, sections=(*page.sections, Section("git", (line,))))


def _asked(desk: Desk, ref: Ref, path: Path) -> tuple[Ref, Path, str]:
    return ref, path, repr(lookup(desk.files.data(ref), path))


def _ask_git(host: Host, row: Row) -> None:
    """Ask git beside the drawing which commit last changed the value, where this user set git up here."""
    desk, ref = host.desk, row.ref
    file = desk.files.path_of(ref) if ref is not None and row.path else None
    if file is None or ref is None or not allowed(desk.root):
        return
    asked, written = _asked(desk, ref, row.path), desk.files.written(ref)
    path = desk.files.former.written_path(ref.kind, written, row.path)
    value = lookup(written, path)
    known = host.state.of(_Commits).known
    known.setdefault(asked, "asking git")

    def work() -> None:
        found = last_commit(desk.root, file, path, value)
        known[asked] = "git has no answer" if found is None else str(found)

    host.aside(work, host.draw)


def _of_row(desk: Desk, row: Row, ref: Ref | None) -> Page:
    if ref is None:
        return Page(f"why · {row.label.removeprefix('= ')}", (working_section(row.working),), judged=False)
    loaded = desk.files.read(ref)
    field = field_of(desk.files, ref, row.path)
    if loaded is None or field is None:
        lines = tuple(Row("", text, kind="text", key=text) for text in (row.value, row.aside) if text)
        return Page(f"why · {row.label}", (Section(title_of(loaded) if loaded else str(ref), lines),))
    holds_set_up = ref.kind in ("session", "profile")
    what = explained(field.path, desk.assembled(ref).situation, row.offer) if holds_set_up else ()
    if isinstance(loaded.record, Bike):
        what = explained_of_bike(field.path, loaded.record)
    page = why_page(loaded, field, row.working, what)
    if field.path not in _MODES or not holds_set_up:
        return page
    link = Row("riding modes and presets", "beside each other", kind="link", key=_TO_MODES)
    first, *rest = page.sections
    return attrs.evolve(page, sections=(first, Section("from here", (link,)), *rest))


def hear(host: Host, message: messages.RowMessage) -> bool:
    if message.row.key == _TO_MODES and isinstance(message, messages.Chosen):
        show_modes(host)
        return True
    return False


def go_there(host: Host) -> None:
    row = host.board.cursor_row
    if row is None or (row.ref is None and not row.working and row.picture is None):
        host.board.say("nothing more is known about this row: ? explains the page")
        return
    _ask_git(host, row)
    host.go(attrs.evolve(host.place, room="why", row=row))
