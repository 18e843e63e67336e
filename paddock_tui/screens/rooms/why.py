"""Why: what a row is, how it was worked out, which rules use it."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.values import field_of
from paddock_tui.pages.actions import ActionContext
from paddock_tui.pages.advised import working_section
from paddock_tui.pages.explanation import explained, explained_of_bike
from paddock_tui.pages.pictured import picture_page
from paddock_tui.pages.record import title_of
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.why import why_page
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.screens.rooms.modes import show_modes
from paddock_tui.widgets import messages

_MODES = (("setup", "mode"), ("setup", "preset"))
_TO_MODES = "to modes"


def _page(asked: PageContext) -> Page | None:
    row = asked.place.row
    if row is not None and row.picture is not None:
        return picture_page(row)
    return _of_row(asked.desk, row, row.ref) if row is not None else None


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


def _hears(host: Host, message: messages.RowMessage) -> bool:
    if message.row.key == _TO_MODES and isinstance(message, messages.Chosen):
        show_modes(host)
        return True
    return False


def _go(host: Host) -> None:
    row = host.board.cursor_row
    if row is None or (row.ref is None and not row.working and row.picture is None):
        host.board.say("nothing more is known about this row")
        return
    host.go(attrs.evolve(host.place, room=ROOM.id, row=row))


def _off(context: ActionContext) -> str:
    return "" if context.row is not None else "there is no row under the cursor"


ROOM = Room(
    id="why",
    page=_page,
    action=Action(
        "why", "w", "why", "what the row is, how it was worked out, which rules use it", _off, hint=15, do=_go
    ),
    hears=_hears,
    stands_alone=True,
)
