"""The ledger on the screen: what is shown is chosen, a change is opened, tried back, a set-up set back."""

from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.advice.ledger import LedgerEntry, LedgerFilter, choices, chosen, stepped
from paddock_tui.desk.sessions.ledger import bike_at, ledger
from paddock_tui.desk.sessions.restore import setting_back, trying_back
from paddock_tui.pages.ledger import FILTER, LEDGER, entry_of, ledger_page
from paddock_tui.pages.one_change import TRY_BACK, change_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.screens.main import MainScreen

ROOM, CHANGE = "ledger", "change"
ROOMS = (ROOM, CHANGE)


def page(desk: "Desk", subject: Ref | None, wanted: LedgerFilter | None, change: Row | None = None) -> Page:
    """Make the page of the ledger, of the bike looked at until something else is chosen; or of one change."""
    found = ledger(desk)
    entry = entry_of(found, change) if change is not None else None
    if entry is not None:
        return change_page(entry, found.histories[entry.bike])
    return ledger_page(found, wanted or LedgerFilter(bike=bike_at(desk, subject)))


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take the keys on rows of the ledger and of a change; whether the message was for them."""
    row = getattr(message, "row", None)
    if screen.place.room not in ROOMS or row is None:
        return False
    if row.path[:1] == (FILTER,):
        return _filter(screen, row, message)
    if isinstance(message, messages.Chosen) and row.path[:1] == (LEDGER,):
        if row.key == TRY_BACK:
            try_back(screen)
        elif row.kind == "link":
            screen.go(attrs.evolve(screen.place, room=CHANGE, row=row))
        return True
    return False


def try_back(screen: "MainScreen") -> None:
    """Make the next session the check of the change under the cursor, or of the one shown."""
    entry = _entry(screen)
    if entry is None:
        return
    _done(screen, *trying_back(screen.desk.files, entry, screen.desk.now()))


def set_back(screen: "MainScreen") -> None:
    """Return the session looked at, or its next one, the whole set-up of the session under the cursor."""
    wanted, target = session_at(screen.board.cursor_row), screen.place.subject
    if wanted is None or target is None or target.kind != "session":
        screen.board.say("put the cursor on the session to go back to: in the garage or the ledger")
        return
    _done(screen, *setting_back(screen.desk.files, target, wanted, screen.desk.now()))


def session_at(row: Row | None) -> Ref | None:
    """Return the session that a row names."""
    if row is None:
        return None
    if row.path[:1] == (LEDGER,):
        return Ref("session", row.path[1])
    ref = row.opens or row.ref
    return ref if ref is not None and ref.kind == "session" and row.kind == "link" else None


def _done(screen: "MainScreen", ref: Ref, step: Step | InputError) -> None:
    if isinstance(step, InputError):
        screen.board.say(step.sentence())
        return
    if not step.changes:
        screen.board.say(step.label)
        return
    screen.desk.do(step)
    if screen.desk.files.path_of(ref) is None:
        screen.draw()
        return
    screen.go(attrs.evolve(screen.place, room="setup", subject=ref))
    screen.board.say(f"{step.label}, u undoes")


def _entry(screen: "MainScreen") -> LedgerEntry | None:
    row = screen.board.cursor_row
    if screen.place.room == CHANGE and (row is None or row.path[:1] != (LEDGER,)):
        row = screen.place.row
    return entry_of(ledger(screen.desk), row) if row is not None else None


def _filter(screen: "MainScreen", row: Row, message: Any) -> bool:
    name = row.path[1]
    held = screen.place.wanted or LedgerFilter(bike=bike_at(screen.desk, screen.place.subject))
    among = choices(ledger(screen.desk).entries, name)
    found: LedgerFilter | str
    if isinstance(message, messages.Stepped):
        found = stepped(held, name, message.by, among)
    elif isinstance(message, messages.Accepted):
        found = chosen(held, name, message.text, among)
    elif isinstance(message, messages.Cleared):
        found = chosen(held, name, "", among)
    elif isinstance(message, messages.Digit):
        screen.board.edit(message.text)
        return True
    else:
        return isinstance(message, messages.Toggled)
    if isinstance(found, str):
        screen.board.refuse(found)
        return True
    screen.board.done()
    screen.place = attrs.evolve(screen.place, wanted=found)
    screen.draw()
    return True
