"""Back from the track on the screen: parked is stamped, and rows fill and go on by themselves."""

from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.desk.debrief.rows import first_open, following, open_groups
from paddock_tui.desk.debrief.steps import (
    PARKED,
    STAMPS,
    answering,
    back_in,
    doubts,
    parked_earlier,
    stamping,
    why_not_stamped,
)
from paddock_tui.desk.edits.entry_line import entering, entry_context, last_pressures
from paddock_tui.desk.edits.values import clearing
from paddock_tui.entry import read_line, read_typed
from paddock_tui.entry.builtin import LAPS
from paddock_tui.entry.key_repeat import Held
from paddock_tui.entry.return_rows import SKIP, ReturnRow, is_no_answer, is_skipped, read_group, rule_of
from paddock_tui.entry.symptoms import candidates, numbered
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import MISSING, Change, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Path, Ref
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

ROOM = "return"
_LAPS_KEY = "return laps"


@attrs.define
class Returning:
    """What this run knows of returns: what was typed in them, what was passed over, keys held down.

    What was typed here in this run may be mended here without being asked; `tail` are the letters of a
    word that picked a symptom before it was typed to its end; `sure` is what enter has to confirm.
    """

    typed: set[tuple[Ref, Path]] = attrs.field(factory=set)
    passed: dict[Ref, set[str]] = attrs.field(factory=dict)
    held: Held = attrs.field(factory=Held)
    tail: str = ""
    sure: tuple[str, str] = ("", "")
    warned: Ref | None = None


def go(screen: "MainScreen") -> None:
    """Stamp parked where that is due, and go to the first row of the return that is open."""
    desk, state = screen.desk, screen.returning
    now = desk.now()
    session = back_in(desk.files, screen.place.subject, desk.session_in_hand(), now)
    if session is None or session.kind != "session":
        screen.board.say("there is no session to come back from: g, then n")
        return
    said = why_not_stamped(desk.files, session, now)
    looked_at = screen.place.subject
    if said and state.warned == session and STAMPS in said:
        said = ""
    state.warned = session if said else None
    screen.go(attrs.evolve(screen.place, room=ROOM, subject=session))
    if not said and "parked" not in desk.files.data(session):
        _do(screen, stamping(desk.files, session, now))
    group = first_open(desk.files, session, frozenset(state.passed.get(session, ())))
    _to(screen, group or first_open(desk.files, session))
    if said:
        screen.board.go((str(session), *PARKED, ""))
        screen.board.say(said)
    elif looked_at is not None and looked_at != session and looked_at.kind == "session":
        screen.board.say(f"back to {session.id}: {looked_at.id} is another one")


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take what the board says of a row of the return; whether it was taken."""
    if screen.place.room != ROOM or getattr(getattr(message, "row", None), "kind", "") != "ask":
        return False
    row: Row = message.row
    if row.shut:
        screen.board.say(row.shut)
    elif isinstance(message, messages.Digit):
        _digit(screen, row, message.text)
    elif isinstance(message, messages.Editing):
        _editing(screen, row, message.text)
    elif isinstance(message, messages.Accepted):
        _accepted(screen, row, message.text)
    elif isinstance(message, messages.Chosen):
        _chosen(screen, row)
    elif isinstance(message, messages.Stepped):
        _stepped(screen, message.by)
    elif isinstance(message, messages.Cleared):
        _cleared(screen, row)
    elif isinstance(message, messages.Toggled):
        swallows(screen, " ")
    else:
        return False
    return True


def swallows(screen: "MainScreen", key: str) -> bool:
    """Return whether a letter only goes on with the word that has picked a symptom already."""
    state = screen.returning
    mine = screen.place.room == ROOM and state.tail.startswith(key) and len(key) == 1
    state.tail = state.tail[1:] if mine else ""
    return mine


def may_mend(screen: "MainScreen", change: Change) -> bool:
    """Return whether a change of a ridden session only mends what its return stamped or took in this run."""
    return all(
        edit.old is MISSING or (change.ref, edit.path) in screen.returning.typed for edit in change.edits
    )


def _digit(screen: "MainScreen", row: Row, text: str) -> None:
    """Take a digit on a row that is not open: the whole answer, or the beginning of one."""
    group = _group(screen, row)
    if group is None or group.reads in ("pressure", "volume", "corner"):
        # A corner may begin with its nought, so that nought alone does not pass it over.
        screen.board.edit(text)
        return
    if _is_held(screen, text):
        return
    if text == SKIP and group.reads == "change":
        _keep(screen, group, "none, same again", text)
    elif text == SKIP:
        _pass(screen, row)
    else:
        _try(screen, group, text)


def _editing(screen: "MainScreen", row: Row, text: str) -> None:
    """Follow what is typed on an open row: keep it once it is whole, and go on."""
    group = _group(screen, row)
    if group is None:
        return
    if group.reads in ("symptom", "corner") and text[-1:].isdecimal() and _is_held(screen, text[-1]):
        return
    if is_skipped(group, text) and (group.letters or group.reads == "corner"):
        screen.board.done()
        _pass(screen, row)
    elif is_no_answer(group, text):
        screen.board.edit()
        screen.board.refuse(f"{text.strip()} is no answer here: {rule_of(group, _units(screen))}, 0 skips")
    elif text and not _try(screen, group, text) and group.reads == "symptom":
        found = candidates(text)
        screen.board.say(numbered(found) if found else "no symptom begins so: backspace")


def _is_held(screen: "MainScreen", digit: str) -> bool:
    """Return whether a digit comes from a key that is held down; it is said then, and not taken."""
    if not screen.returning.held.again(digit, screen.board.pressed_at):
        return False
    _refuse(screen, f"{digit} again at once: is a key held down? press it again if it is meant")
    return True


def _try(screen: "MainScreen", group: ReturnRow, text: str) -> bool:
    """Keep what was typed where it is whole; whether something was said or kept."""
    value = read_group(group, text, _units(screen))
    if value is None:
        return False
    if isinstance(value, InputError):
        _refuse(screen, value.sentence())
        return True
    if group.reads == "symptom" and text.isalpha():
        screen.returning.tail = str(value)[len(text) :]
    return _keep(screen, group, value, text)


def _accepted(screen: "MainScreen", row: Row, text: str) -> None:
    """Take enter on an open row: nothing typed passes it over, else what was typed is read whole."""
    group = _group(screen, row)
    if not text.strip("0 " if group is not None and group.reads == "corner" else None):
        screen.board.done()
        _pass(screen, row)
    elif group is None:
        _laps(screen, text)
    elif group.reads == "change":
        _keep(screen, group, text.strip(), text)
    elif group.boxes == 3 and text.strip().isdecimal() and len(text.strip()) < 3:
        _refuse(screen, "three digits, or write it out with its unit")
    elif group.letters:
        found = candidates(text) if group.reads == "symptom" else ()
        _refuse(screen, f"pick one: {numbered(found)}" if found else "no such answer here: backspace")
    else:
        field = field_at("session", group.path)
        whole = read_group(group, text, _units(screen))
        value = whole or (read_typed(field, text, _units(screen)) if field is not None else None)
        if value is None or isinstance(value, InputError):
            _refuse(screen, value.sentence() if value is not None else "it cannot be read")
        else:
            _keep(screen, group, value, text)


def _chosen(screen: "MainScreen", row: Row) -> None:
    """Take enter on a row that is not open: words are opened, the others passed over."""
    group = _group(screen, row)
    if group is None or (group.letters and not row.known):
        screen.board.edit()
    else:
        _pass(screen, row)


def _stepped(screen: "MainScreen", by: int) -> None:
    """Move parked by a minute: minus is earlier."""
    session = screen.place.subject
    if session is None:
        return
    step = parked_earlier(screen.desk.files, session, -by, screen.desk.now())
    if isinstance(step, str):
        screen.board.say(step)
    else:
        _do(screen, step)


def _cleared(screen: "MainScreen", row: Row) -> None:
    if row.ref is None or row.key == _LAPS_KEY:
        screen.board.say("single laps are cleared on the session page")
        return
    step = clearing(screen.desk.files, row.ref, row.path)
    screen.attempt(step if step.changes else f"{row.label} is not known already")


def _laps(screen: "MainScreen", text: str) -> None:
    """Keep a run of laps, typed or pasted, whole or not at all."""
    session = screen.place.subject
    context = entry_context(screen.desk, session) if session is not None else None
    if session is None or context is None:
        return
    line = read_line(f"{LAPS} {text}", context)
    for error in line.errors:
        _refuse(screen, f'"{line.text[error.start : error.end]}": {error.message}; {error.mend}')
        return
    step = entering(screen.desk.files, session, line) if line.clear else []
    if not isinstance(step, Step):
        _refuse(screen, step[0].sentence() if step else "write the laps alone")
        return
    screen.board.done()
    _do(screen, step)


def _keep(screen: "MainScreen", group: ReturnRow, value: Value, text: str) -> bool:
    """Keep a value, asking where it is doubtful, and go on to the next row."""
    session, state = screen.place.subject, screen.returning
    if session is None:
        return False
    files = screen.desk.files
    last = last_pressures(files, session) if group.reads == "pressure" else {}
    doubt = doubts(files, session, group, value, last, text.strip())
    if doubt and state.sure != (group.key, text):
        state.sure = (group.key, text)
        if not screen.board.is_typing:
            screen.board.edit(text)
        _refuse(screen, doubt)
        return True
    state.sure = ("", "")
    step = answering(files, session, group, value, screen.desk.now())
    if isinstance(step, InputError):
        _refuse(screen, step.sentence())
        return True
    screen.board.done()
    after = following(files, session, group)
    _do(screen, step)
    if screen.board.is_typing:
        return True
    _to(screen, following(files, session, group) or after)
    return True


def _do(screen: "MainScreen", step: Step) -> None:
    """Do a step of the return; what it puts may be mended here without a question."""
    changes = [change for change in step.changes if isinstance(change, Change)]
    screen.attempt(step)
    for change in changes:
        screen.returning.typed |= {(change.ref, edit.path) for edit in change.edits if edit.old is MISSING}


def _pass(screen: "MainScreen", row: Row) -> None:
    """Go on to the next open row, and remember that this one was passed over."""
    session = screen.place.subject
    group = _group(screen, row)
    if session is None:
        return
    if group is None:
        screen.board.say("the return is done; i comes back to what is open")
        return
    screen.returning.passed.setdefault(session, set()).add(group.key)
    _to(screen, following(screen.desk.files, session, group))


def _to(screen: "MainScreen", group: ReturnRow | None) -> None:
    """Put the cursor on a group, open for typing where letters answer it; on the laps behind the last."""
    key = f"return {group.key}" if group is not None else _LAPS_KEY
    row = next((one for one in screen.board.page.rows() if one.key == key), None)
    if row is None:
        return
    screen.board.go(row.identity)
    if group is not None and group.letters and not row.known:
        screen.board.edit()


def _group(screen: "MainScreen", row: Row) -> ReturnRow | None:
    """Return the group of a row; None for the row of the laps."""
    session = screen.place.subject
    found = open_groups(screen.desk.files, session) if session is not None else ()
    return next((one for one in found if f"return {one.key}" == row.key), None)


def _units(screen: "MainScreen") -> Any:
    subject = screen.place.subject
    return screen.units(subject) if subject is not None else screen.desk.units()


def _refuse(screen: "MainScreen", why: str) -> None:
    if screen.board.is_typing:
        screen.board.refuse(why)
    else:
        screen.board.say(why)
