"""The checklist on the screen: where its cursor begins, and what the keys do on its rows."""

from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.desk.day.checklist import ANSWERS, answering
from paddock_tui.facts.checklists import ItemState
from paddock_tui.pages.checklist import KEYS, checked_of, first_open
from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Path, Ref, parse
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


def go(screen: "MainScreen") -> None:
    """Go to the checklist, on the first open item of the stage at hand."""
    subject = screen.place.subject
    begin = first_open(screen.desk.assembled(subject).situation) if subject is not None else None
    screen.go(attrs.evolve(screen.place, room="checklist"), begin)


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take the keys on the items of a checklist; whether the message was for one of them."""
    row = getattr(message, "row", None)
    if row is None or row.kind != "check":
        return False
    if isinstance(message, messages.Digit):
        answer(screen, row, message.text)
    elif isinstance(message, messages.Cleared):
        answer(screen, row, "")
    elif isinstance(message, messages.Chosen):
        open_answer(screen, row)
    else:
        return False
    return True


def answer(screen: "MainScreen", row: Row, key: str) -> None:
    """Answer the item under the cursor with a digit; the empty key opens it again."""
    subject = screen.place.subject
    if subject is None or row.ref is None or (key and key not in ANSWERS):
        screen.board.say(row.shut or KEYS)
        return
    step = answering(
        screen.desk.files,
        subject,
        row.path[-2],
        ANSWERS.get(key),
        screen.desk.now(),
        in_day=row.ref.kind == "day",
        text=row.value,
    )
    screen.attempt(step)


def open_answer(screen: "MainScreen", row: Row) -> None:
    """Go to the value that answers the item under the cursor; say the keys where none does."""
    subject = screen.place.subject
    item = _item(screen, row)
    path = parse(item.answered_by) if item is not None and not item.in_day else None
    if subject is None or not path:
        screen.board.say(KEYS)
    else:
        screen.jump(subject, path)


def is_check(ref: Ref, path: Path) -> bool:
    """Return whether a place is an answer of a checklist, so that its row is on the checklist page."""
    within = path[3:] if ref.kind == "day" and path[:1] == ("entries",) else path
    return ref.kind in ("day", "session") and len(within) == 3 and within[0] == "checks"


def _item(screen: "MainScreen", row: Row) -> ItemState | None:
    subject = screen.place.subject
    if subject is None:
        return None
    checked = checked_of(screen.desk.assembled(subject).situation)
    items = [*(item for one in checked.lists for item in one.items), *checked.others]
    return next((item for item in items if item.path and (*item.path, "status") == row.path), None)
