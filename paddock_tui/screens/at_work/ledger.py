"""The ledger on the screen: what is shown is chosen, a change is opened, tried back, a set-up set back."""

import attrs

from paddock_tui.advice.ledger import LedgerEntry, LedgerFilter, choices, chosen, stepped
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.sessions.ledger import answer, bike_at, newest_changes
from paddock_tui.desk.sessions.restore import setting_back, trying_back
from paddock_tui.limits import Limits
from paddock_tui.pages.ledger import FILTER, LEDGER, entry_of, ledger_awaited, ledger_page
from paddock_tui.pages.one_change import TRY_BACK, change_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.widgets import messages


def make_page(asked: PageContext) -> Page:
    """Make the page of the changes, of the bike looked at until something else is chosen."""
    wanted = asked.place.wanted or LedgerFilter(bike=bike_at(asked.desk, asked.subject))
    found = answer(asked.desk)
    if isinstance(found, Reading):
        return ledger_awaited(newest_changes(asked.desk, wanted.bike), wanted, found)
    return ledger_page(found, wanted)


def make_change_page(asked: PageContext) -> Page:
    """Make the page of one change; where it is not to be found any more, of all."""
    found, row = answer(asked.desk), asked.place.row
    if isinstance(found, Reading):
        return make_page(asked)
    entry = entry_of(found, row) if row is not None else None
    if entry is None:
        return make_page(asked)
    limits = Limits(asked.desk.files.garage().limits)
    return change_page(entry, found.histories[entry.bike], asked.desk.now(), limits)


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on rows of the ledger and of a change; whether the message was for them."""
    row = message.row
    if row.path[:1] == (FILTER,):
        return _filter(host, row, message)
    if isinstance(message, messages.Chosen) and row.path[:1] == (LEDGER,):
        if row.key == TRY_BACK:
            try_it_back(host)
        elif row.kind == "link":
            host.go(attrs.evolve(host.place, room="change", row=row))
        return True
    return False


def try_it_back(host: Host) -> None:
    """Make the next session the check of the change under the cursor, or of the one shown."""
    entry = _entry(host)
    if entry is None:
        return
    _done(host, *trying_back(host.desk.files, entry, host.desk.now()))


def set_it_back(host: Host) -> None:
    """Return the session looked at, or its next one, the whole set-up of the session under the cursor."""
    wanted, target = _session_at(host.board.cursor_row), host.place.subject
    if wanted is None or target is None or target.kind != "session":
        host.board.say("put the cursor on the session to go back to: in the garage or the change log")
        return
    _done(host, *setting_back(host.desk.files, target, wanted, host.desk.now()))


def _session_at(row: Row | None) -> Ref | None:
    """Return the session that a row names."""
    if row is None:
        return None
    if row.path[:1] == (LEDGER,):
        return Ref("session", row.path[1])
    ref = row.opens or row.ref
    return ref if ref is not None and ref.kind == "session" and row.kind == "link" else None


def _done(host: Host, ref: Ref, step: Step | InputError) -> None:
    if isinstance(step, InputError):
        host.board.say(step.sentence())
        return
    if not step.changes:
        host.board.say(step.label)
        return
    host.desk.do(step)
    if host.desk.files.path_of(ref) is None:
        host.draw()
        return
    host.go(attrs.evolve(host.place, room="setup", subject=ref))
    host.board.say(f"{step.label}, u undoes")


def _entry(host: Host) -> LedgerEntry | None:
    row = host.board.cursor_row
    if host.place.room == "change" and (row is None or row.path[:1] != (LEDGER,)):
        row = host.place.row
    found = answer(host.desk)
    if isinstance(found, Reading):
        host.board.say(f"{found.words()}: it opens once all is read")
        return None
    return entry_of(found, row) if row is not None else None


def _filter(host: Host, row: Row, message: messages.RowMessage) -> bool:
    name = row.path[1]
    held = host.place.wanted or LedgerFilter(bike=bike_at(host.desk, host.place.subject))
    whole = answer(host.desk)
    if isinstance(whole, Reading):
        host.board.say(f"{whole.words()}: what can be chosen is known once all is read")
        return True
    among = choices(whole.entries, name)
    found: LedgerFilter | str
    if isinstance(message, messages.Stepped):
        found = stepped(held, name, message.by, among)
    elif isinstance(message, messages.Accepted):
        found = chosen(held, name, message.text, among)
    elif isinstance(message, messages.Cleared):
        found = chosen(held, name, "", among)
    elif isinstance(message, messages.Digit):
        host.board.edit(message.text)
        return True
    else:
        return isinstance(message, messages.Toggled)
    if isinstance(found, str):
        host.board.refuse(found)
        return True
    host.board.done()
    host.place = attrs.evolve(host.place, wanted=found)
    host.draw()
    return True
