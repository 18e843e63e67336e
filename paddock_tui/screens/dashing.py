"""The dash card on the screen: enter finds a row as planned, typing says what the dash shows instead."""

from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.desk.day.dash import HAPPENINGS, READ, as_planned, noting, reading, showing, unread
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.pages.dash import KEYS, rows_to_read
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.shapes import LevelSetting
from paddock_tui.records.shapes_of_bike import setting_shape
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

ROOM = "dash"
AS_PLANNED = "1"
"""On a row of words: as planned, as on a checklist. Where the bike counts it is a number like the others."""


def go(screen: "MainScreen") -> None:
    """Go to the dash card, on the row that answers it whole."""
    subject = screen.place.subject
    screen.go(
        attrs.evolve(screen.place, room=ROOM), (str(subject), *READ, "") if subject is not None else None
    )


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take what the board says of a row of the card; whether it was taken."""
    row = getattr(message, "row", None)
    if screen.place.room != ROOM or not isinstance(row, Row) or row.kind != "ask":
        return False
    if isinstance(message, messages.Chosen):
        _agree(screen, row)
    elif isinstance(message, messages.Digit):
        _digit(screen, row, message.text)
    elif isinstance(message, messages.Accepted):
        _shows(screen, row, message.text)
    elif isinstance(message, messages.Cleared):
        _clear(screen, row)
    elif isinstance(message, messages.Toggled | messages.Stepped):
        screen.board.say(KEYS)
    else:
        return isinstance(message, messages.Editing)
    return True


def _agree(screen: "MainScreen", row: Row) -> None:
    """Find a row as planned; the last one that was open makes the reading whole."""
    ref = row.ref or screen.place.subject
    if ref is None:
        return
    if row.path == READ:
        _read(screen, ref)
    elif row.key == "note":
        _forget(screen, ref)
        screen.attempt(noting(screen.desk.files, ref, row.path[-1], screen.desk.now()))
    elif not row.known:
        screen.board.say(f"what {row.label} is planned at is not known: type what the dash shows")
    else:
        _keep(screen, row, as_planned(screen.desk.files, ref, row.path))


def _digit(screen: "MainScreen", row: Row, text: str) -> None:
    """Take a digit: as planned on a row of words, else the level that the dash shows, or its beginning."""
    levels = _levels(screen, row)
    if row.path == READ or row.path[-1] in HAPPENINGS or (levels is None and text == AS_PLANNED):
        if text == AS_PLANNED:
            _agree(screen, row)
        else:
            screen.board.say(KEYS)
    elif levels is not None and levels.low >= 0 and levels.high <= 9:
        _shows(screen, row, text)
    else:
        screen.board.edit(text)


def _shows(screen: "MainScreen", row: Row, text: str) -> None:
    """Keep what the dash shows on a row; nothing typed means as planned."""
    if row.ref is None or row.path == READ or row.key == "note" or not text.strip():
        screen.board.done()
        _agree(screen, row)
        return
    step = showing(screen.desk.files, row.ref, row.path, text)
    if isinstance(step, InputError):
        refuse = screen.board.refuse if screen.board.is_typing else screen.board.say
        refuse(step.sentence())
        return
    screen.board.done()
    _keep(screen, row, step)


def _keep(screen: "MainScreen", row: Row, step: Step) -> None:
    """Do the step of one row, and go on to the next one that nobody has looked at."""
    assert row.ref is not None
    place = screen.place
    screen.place = attrs.evolve(place, seen=place.seen | {(str(row.ref), *row.path)})
    seen = {path[1:] for path in screen.place.seen if path[0] == str(row.ref)}
    if step.changes:
        screen.attempt(step)
    else:
        screen.draw()
        screen.board.say(step.label)
    rest = [one for one in rows_to_read(screen.board.page) if one.path not in seen]
    after = [one for one in rest if _place(screen, one.path) > _place(screen, row.path)]
    if rest:
        screen.board.go((after or rest)[0].identity)
    else:
        _read(screen, row.ref)


def _read(screen: "MainScreen", ref: Ref) -> None:
    step = reading(screen.desk.files, ref, screen.desk.now())
    if isinstance(step, Step):
        _forget(screen, ref)
    screen.attempt(step)
    screen.board.go((str(ref), *READ, ""))


def _clear(screen: "MainScreen", row: Row) -> None:
    """Open the whole reading again, or take back what one row was said to show."""
    if row.ref is None or row.key == "note":
        screen.board.say("what was noted is dropped on the session page")
        return
    files = screen.desk.files
    place = screen.place
    screen.place = attrs.evolve(place, seen=place.seen - {(str(row.ref), *row.path)})
    step = unread(files, row.ref) if row.path == READ else as_planned(files, row.ref, row.path)
    if step.changes:
        screen.attempt(step)
    else:
        screen.draw()


def _forget(screen: "MainScreen", ref: Ref) -> None:
    """Let every row of a session wait again."""
    mine = frozenset(path for path in screen.place.seen if path[0] == str(ref))
    screen.place = attrs.evolve(screen.place, seen=screen.place.seen - mine)


def _levels(screen: "MainScreen", row: Row) -> LevelSetting | None:
    """Return the counted levels of a row's control; None for words, speeds and the riding mode."""
    bike = bike_of(screen.desk.files, row.ref) if row.ref is not None else None
    control = bike.controls.get(row.path[-1]) if bike is not None and row.path[1:2] == ("values",) else None
    shape = setting_shape(control) if control is not None else None
    return shape if isinstance(shape, LevelSetting) else None


def _place(screen: "MainScreen", path: Path) -> int:
    paths = [one.path for one in rows_to_read(screen.board.page)]
    return paths.index(path) if path in paths else -1
