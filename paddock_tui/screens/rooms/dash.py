"""The dash card on the screen: enter finds a row as planned, typing says what the dash shows instead."""

import datetime as dt

import attrs

from paddock_tui.desk.day.dash import HAPPENINGS, READ, as_planned, noting, reading, showing, unread
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.pages.dash import KEYS, dash_page, last_ridden, rows_to_read
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.shapes import LevelSetting
from paddock_tui.records.shapes_of_bike import setting_shape
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.digits import begun, followed
from paddock_tui.screens.host import Host
from paddock_tui.screens.moment import at_moment
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.screens.subject import gone
from paddock_tui.widgets import messages

AS_PLANNED = "1"
"""On a row of words: as planned, as on a checklist. Where the bike counts it is a number like the others."""


def _page(asked: PageContext) -> Page | None:
    subject, files = asked.subject, asked.desk.files
    if subject is None or asked.assembled is None:
        return None
    loaded = files.read(subject)
    if loaded is None:
        return gone(subject)
    here = (str(subject),)
    mine = frozenset(path[1:] for path in asked.place.seen if path[:1] == here)
    situation = asked.assembled.situation
    before = last_ridden(situation.history)
    heading = heading_of(asked.desk, subject)
    return dash_page(loaded, bike_of(files, subject), heading, situation.day, mine, before)


def _has_row(ref: Ref, path: Path) -> bool:
    return ref.kind == "session" and path[:1] == ("dash",)


def _go(host: Host) -> None:
    """Go to the dash card, on the row that answers it whole."""
    subject = host.place.subject
    host.go(
        attrs.evolve(host.place, room=ROOM.id), (str(subject), *READ, "") if subject is not None else None
    )


def _hears(host: Host, message: messages.RowMessage) -> bool:
    """Take what the board says of a row of the card; whether it was taken."""
    row = message.row
    if row.kind != "ask":
        return False
    if isinstance(message, messages.Chosen):
        _agree(host, row)
    elif isinstance(message, messages.Digit):
        _digit(host, row, message.text)
    elif isinstance(message, messages.Accepted):
        _shows(host, row, message.text)
    elif isinstance(message, messages.Cleared):
        _clear(host, row)
    elif isinstance(message, messages.Toggled | messages.Stepped):
        host.board.say(KEYS)
    elif isinstance(message, messages.Editing):
        followed(host, row, message.text, lambda row, text: _shows(host, row, text))
    else:
        return False
    return True


def _agree(host: Host, row: Row) -> None:
    """Find a row as planned; the last one that was open makes the reading whole."""
    ref = row.ref or host.place.subject
    if ref is None:
        return
    if row.path == READ:
        _read(host, ref)
    elif row.key == "note":
        _forget(host, ref)
        what = row.path[-1]
        at_moment(host, ref, what, lambda now: host.attempt(noting(host.desk.files, ref, what, now)))
    elif not row.known:
        host.board.say(f"what {row.label} is planned at is not known: type what the dash shows")
    else:
        _keep(host, row, as_planned(host.desk.files, ref, row.path))


def _digit(host: Host, row: Row, text: str) -> None:
    """Take a digit: as planned on a row of words, else the level that the dash shows, or its beginning."""
    levels = _levels(host, row)
    if row.path == READ or row.path[-1] in HAPPENINGS or (levels is None and text == AS_PLANNED):
        if text == AS_PLANNED:
            _agree(host, row)
        else:
            host.board.say(KEYS)
    else:
        begun(host, row, levels, text, lambda row, text: _shows(host, row, text))


def _shows(host: Host, row: Row, text: str) -> None:
    """Keep what the dash shows on a row; nothing typed means as planned."""
    if row.ref is None or row.path == READ or row.key == "note" or not text.strip():
        host.board.done()
        _agree(host, row)
        return
    step = showing(host.desk.files, row.ref, row.path, text)
    if isinstance(step, InputError):
        refuse = host.board.refuse if host.board.is_typing else host.board.say
        refuse(step.sentence())
        return
    host.board.done()
    _keep(host, row, step)


def _keep(host: Host, row: Row, step: Step) -> None:
    """Do the step of one row, and go on to the next one that nobody has looked at."""
    assert row.ref is not None
    place = host.place
    host.place = attrs.evolve(place, seen=place.seen | {(str(row.ref), *row.path)})
    seen = {path[1:] for path in host.place.seen if path[0] == str(row.ref)}
    if step.changes:
        host.attempt(step)
    else:
        host.draw()
        host.board.say(step.label)
    rest = [one for one in rows_to_read(host.board.page) if one.path not in seen]
    after = [one for one in rest if _place(host, one.path) > _place(host, row.path)]
    if rest:
        host.board.go((after or rest)[0].identity)
    else:
        _read(host, row.ref)


def _read(host: Host, ref: Ref) -> None:
    def read(now: dt.datetime) -> None:
        step = reading(host.desk.files, ref, now)
        if isinstance(step, Step):
            _forget(host, ref)
        host.attempt(step)
        host.board.go((str(ref), *READ, ""))

    at_moment(host, ref, "dash read", read)


def _clear(host: Host, row: Row) -> None:
    """Open the whole reading again, or take back what one row was said to show."""
    if row.ref is None or row.key == "note":
        host.board.say("what was noted is dropped on the session page: s, then x")
        return
    files = host.desk.files
    place = host.place
    host.place = attrs.evolve(place, seen=place.seen - {(str(row.ref), *row.path)})
    step = unread(files, row.ref) if row.path == READ else as_planned(files, row.ref, row.path)
    if step.changes:
        host.attempt(step)
    else:
        host.draw()


def _forget(host: Host, ref: Ref) -> None:
    """Let every row of a session wait again."""
    mine = frozenset(path for path in host.place.seen if path[0] == str(ref))
    host.place = attrs.evolve(host.place, seen=host.place.seen - mine)


def _levels(host: Host, row: Row) -> LevelSetting | None:
    """Return the counted levels of a row's control; None for words, speeds and the riding mode."""
    bike = bike_of(host.desk.files, row.ref) if row.ref is not None else None
    control = bike.controls.get(row.path[-1]) if bike is not None and row.path[1:2] == ("values",) else None
    shape = setting_shape(control) if control is not None else None
    return shape if isinstance(shape, LevelSetting) else None


def _place(host: Host, path: Path) -> int:
    paths = [one.path for one in rows_to_read(host.board.page)]
    return paths.index(path) if path in paths else -1


ROOM = Room(
    id="dash",
    page=_page,
    about="session",
    action=Action(
        "dash",
        "d",
        "dash card",
        "what to read after the last ignition-on",
        needs_session,
        hint=6,
        do=_go,
    ),
    hears=_hears,
    shows=_has_row,
    findings=True,
)
