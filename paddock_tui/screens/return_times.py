"""The times of a return: parked and read at, stamped on the day, typed on a later one."""

from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.desk.debrief.steps import HOT_AT, PARKED
from paddock_tui.desk.edits.values import clearing
from paddock_tui.entry.typing_kinds import is_whole
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Path
from paddock_tui.screens.host import Host
from paddock_tui.store.data import lookup
from paddock_tui.widgets import messages

TIMES: tuple[Path, ...] = (PARKED, HOT_AT)
"""The rows of the return that hold a time."""


def hears(host: Host, message: messages.RowMessage) -> Row | None:
    """Take what the board says of a row of a time; gives the row where the return goes on from it."""
    row = message.row
    if isinstance(message, messages.Digit):
        host.board.edit(message.text)
    elif isinstance(message, messages.Editing):
        return _kept(host, row, message.text) if is_whole(row.typing, message.text) else None
    elif isinstance(message, messages.Accepted):
        if not message.text.strip() or message.text == row.edit:
            host.board.done()
            return row
        return _kept(host, row, message.text)
    elif isinstance(message, messages.Chosen):
        return row
    elif isinstance(message, messages.Cleared) and row.ref is not None:
        step = clearing(host.desk.files, row.ref, row.path)
        host.attempt(step if step.changes else f"{row.label} is not known already")
    return None


def reads_at_next(host: Host, row: Row) -> bool:
    """Return whether the time of the reading is asked for behind parked: no clock stamps it any more."""
    if row.path != PARKED or row.ref is None:
        return False
    files = host.desk.files
    past = day_before(files, row.ref, host.desk.now()) is not None
    if not past or lookup(files.data(row.ref), HOT_AT) is not MISSING:
        return False
    return host.board.go((str(row.ref), *HOT_AT, ""))


def _kept(host: Host, row: Row, text: str) -> Row | None:
    """Keep a time; gives its row, or None where it cannot be, which is said."""
    if row.ref is None:
        return None
    wrong = host.set_text(row.ref, row.path, text)
    if wrong:
        host.board.refuse(wrong)
    return None if wrong or host.board.is_typing else row
