"""Back from the track on the screen: parked is stamped, and rows fill and go on by themselves."""

import attrs

from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.desk.day.out_now import out_now
from paddock_tui.desk.debrief.lap_timing import WHY, forbidden
from paddock_tui.desk.debrief.rows import first_open, following, open_groups
from paddock_tui.desk.debrief.steps import (
    PARKED,
    STAMPS,
    answering,
    back_in,
    doubts,
    out_since,
    parked_earlier,
    stamping,
    why_not_stamped,
)
from paddock_tui.desk.edits.entry_line import last_pressures
from paddock_tui.desk.edits.values import clearing
from paddock_tui.entry import read_typed
from paddock_tui.entry.return_rows import SKIP, ReturnRow, is_no_answer, is_skipped, read_group, rule_of
from paddock_tui.entry.symptoms import begun, candidates, numbered
from paddock_tui.pages.debrief import return_page, still_open
from paddock_tui.pages.pictured import with_picture
from paddock_tui.pages.rows import Page, Row
from paddock_tui.pages.session_pictures import laps_row
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.screens.host import Host, refuse
from paddock_tui.screens.lap_question import take_laps
from paddock_tui.screens.return_aim import AIM_MET, answering_aim, asks_aim
from paddock_tui.screens.return_state import ReturnState, is_held, swallows
from paddock_tui.screens.return_times import TIMES, reads_at_next
from paddock_tui.screens.return_times import hears as hears_time
from paddock_tui.screens.subject import SubjectContext, session_named
from paddock_tui.screens.which import ask_which
from paddock_tui.widgets import messages

_LAPS_KEY = "return laps"


def make_page(about: SubjectContext) -> Page:
    files = about.desk.files
    no_laps = WHY if forbidden(files, about.loaded.data) else ""
    groups = open_groups(files, about.ref)
    now = about.desk.now()
    still = still_open(about.asked.review, about.ref)
    page = return_page(files, about.loaded, groups, about.heading, about.units, now, no_laps, still)
    record = about.loaded.record
    row = laps_row(record) if isinstance(record, Session) and not no_laps else None
    return with_picture(page, "later", row)


def go_there(host: Host) -> None:
    """Stamp parked where that is due, and go to the first row of the return that is open."""
    desk = host.desk
    named = session_named(host.board.cursor_row) if host.place.room == "garage" else None
    out = out_now(desk.files, desk.now())
    earlier, looked_at = _earlier(host)
    session = named or back_in(desk.files, looked_at, desk.session_in_hand(), desk.now())
    if named is None and len(out) > 1 and (host.place.room != "return" or session not in out):
        ask_which(host, "which is back", out, lambda ref: _back(host, ref))
    elif session is not None and named is None and earlier is not None and session != earlier:
        ask_which(host, "which is back", (earlier, session), lambda ref: _back(host, ref))
    elif session is None or session.kind != "session":
        host.board.say("there is no session to come back from: g, then n")
    else:
        _back(host, session)


def _earlier(host: Host) -> tuple[Ref | None, Ref | None]:
    """Return the session of an earlier day whose page is shown, and what is looked at.

    The garage is about today: there an earlier session is looked at only on its row.
    """
    ref = host.place.subject
    if ref is None or day_before(host.desk.files, ref, host.desk.now()) is None:
        return None, ref
    shown = ref if host.place.room != "garage" else None
    return shown, shown


def _back(host: Host, session: Ref) -> None:
    """Stamp parked of a session where that is due, and go to the first row of its return that is open."""
    desk, state, now = host.desk, host.state.of(ReturnState), host.desk.now()
    state.tail = ""
    said = why_not_stamped(desk.files, session, now)
    looked_at = host.place.subject
    if said and state.warned == session and STAMPS in said:
        said = ""
    state.warned = session if said else None
    host.go(attrs.evolve(host.place, room="return", subject=session))
    since = ""
    if not said and "parked" not in desk.files.data(session):
        since = out_since(desk.files, session, now.time())
        _do(host, stamping(desk.files, session, now))
    group = first_open(desk.files, session, frozenset(state.passed.get(session, ())))
    _to(host, group or first_open(desk.files, session))
    if group == open_groups(desk.files, session)[0] and asks_aim(desk.files, session):
        host.board.done()
        host.board.go((str(session), *AIM_MET, ""))
    if said:
        host.board.go((str(session), *PARKED, ""))
        host.board.say(said)
    elif since:
        host.board.say(f"parked {now:%H:%M}, {since}; u undoes")
    elif looked_at is not None and looked_at != session and looked_at.kind == "session":
        host.board.say(f"back to {session.id}: {looked_at.id} is another one")


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take what the board says of a row of the return; whether it was taken."""
    row = message.row
    if row.kind != "ask":
        return False
    if row.shut:
        host.board.say(row.shut)
    elif row.path == AIM_MET and isinstance(message, messages.Digit | messages.Chosen):
        _past_the_aim(host, message)
    elif row.path in TIMES and not isinstance(message, messages.Stepped):
        _time(host, message)
    elif isinstance(message, messages.Digit):
        _digit(host, row, message.text)
    elif isinstance(message, messages.Editing):
        _editing(host, row, message.text)
    elif isinstance(message, messages.Accepted):
        _accepted(host, row, message.text)
    elif isinstance(message, messages.Chosen):
        _chosen(host, row)
    else:
        return _heard_else(host, row, message)
    return True


def _heard_else(host: Host, row: Row, message: messages.RowMessage) -> bool:
    if isinstance(message, messages.Stepped):
        _stepped(host, message.by)
    elif isinstance(message, messages.Cleared):
        _cleared(host, row)
    elif isinstance(message, messages.Toggled):
        swallows(host, " ")
    else:
        return False
    return True


def _past_the_aim(host: Host, message: messages.Digit | messages.Chosen) -> None:
    """Go on to the first open row: what is soon lost may be typed before the aim is answered."""
    session = host.place.subject
    if session is None:
        return
    passed = frozenset(host.state.of(ReturnState).passed.get(session, ()))
    _to(host, first_open(host.desk.files, session, passed))
    row = host.board.cursor_row
    if isinstance(message, messages.Digit) and row is not None and row.path != AIM_MET:
        _digit(host, row, message.text)


def letter(host: Host, key: str) -> bool:
    """Take the letter that answers the aim under the cursor, else one that ends the word of a symptom."""
    row, session = host.board.cursor_row, host.place.subject
    if row is None or row.path != AIM_MET or session is None:
        return swallows(host, key)
    step = answering_aim(host.desk.files, session, key)
    if step is None:
        return False
    _do(host, step)
    passed = frozenset(host.state.of(ReturnState).passed.get(session, ()))
    _to(host, first_open(host.desk.files, session, passed))
    return True


def _time(host: Host, message: messages.RowMessage) -> None:
    """Take a time, and go on: behind parked to when it was read, else to the first row that is open."""
    session, after = host.place.subject, hears_time(host, message)
    if session is None or after is None or reads_at_next(host, after):
        return
    passed = frozenset(host.state.of(ReturnState).passed.get(session, ()))
    _to(host, first_open(host.desk.files, session, passed))


def _digit(host: Host, row: Row, text: str) -> None:
    """Take a digit on a row that is not open: the whole answer, or the beginning of one."""
    group = _group(host, row)
    if group is None or group.reads in ("pressure", "volume", "corner"):
        # A corner may begin with its nought, so that nought alone does not pass it over.
        host.board.edit(text)
        return
    if is_held(host, text):
        return
    if text == SKIP and group.reads == "change":
        _keep(host, group, "none, same again", text)
    elif text == SKIP:
        _pass(host, row)
    else:
        _try(host, group, text)


def _editing(host: Host, row: Row, text: str) -> None:
    """Follow what is typed on an open row: keep it once it is whole, and go on."""
    group = _group(host, row)
    if group is None:
        return
    if group.reads == "corner" and swallows(host, text):
        host.board.done()
        return
    if group.reads in ("symptom", "corner") and text[-1:].isdecimal() and is_held(host, text[-1]):
        return
    if is_skipped(group, text) and (group.letters or group.reads == "corner"):
        host.board.done()
        _pass(host, row)
    elif is_no_answer(group, text):
        host.board.edit()
        host.board.refuse(f"{text.strip()} is no answer here: {rule_of(group, _units(host))}, 0 skips")
    elif text and not _try(host, group, text) and group.reads == "symptom":
        found = candidates(text)
        host.board.say(numbered(found) if found else "no symptom begins so: backspace")


def _try(host: Host, group: ReturnRow, text: str) -> bool:
    """Keep what was typed where it is whole; whether something was said or kept."""
    value = read_group(group, text, _units(host))
    if value is None:
        return False
    if isinstance(value, InputError):
        refuse(host, value.sentence())
        return True
    if group.reads == "symptom" and text.isalpha():
        host.state.of(ReturnState).tail = begun(str(value), text.casefold())[len(text) :].casefold()
    return _keep(host, group, value, text)


def _accepted(host: Host, row: Row, text: str) -> None:
    """Take enter on an open row: nothing typed passes it over, else what was typed is read whole."""
    group = _group(host, row)
    if not text.strip("0 " if group is not None and group.reads == "corner" else None):
        host.board.done()
        _pass(host, row)
    elif group is None:
        take_laps(host, text, lambda step: _do(host, step))
    elif group.reads == "change":
        _keep(host, group, text.strip(), text)
    elif group.boxes == 3 and text.strip().isdecimal() and len(text.strip()) < 3:
        refuse(host, "three digits, or write it out with its unit")
    elif group.letters:
        found = candidates(text) if group.reads == "symptom" else ()
        refuse(host, f"pick one: {numbered(found)}" if found else "no such answer here: backspace")
    else:
        field = field_at("session", group.path)
        whole = read_group(group, text, _units(host))
        value = whole or (read_typed(field, text, _units(host)) if field is not None else None)
        if value is None or isinstance(value, InputError):
            refuse(host, value.sentence() if value is not None else "it cannot be read")
        else:
            _keep(host, group, value, text)


def _chosen(host: Host, row: Row) -> None:
    """Take enter on a row that is not open: words are opened, the others passed over."""
    group = _group(host, row)
    if group is None or (group.letters and not row.known):
        host.board.edit()
    else:
        _pass(host, row)


def _stepped(host: Host, by: int) -> None:
    """Move parked by a minute: minus is earlier."""
    session = host.place.subject
    if session is None:
        return
    step = parked_earlier(host.desk.files, session, -by, host.desk.now())
    if isinstance(step, str):
        host.board.say(step)
    else:
        _do(host, step)


def _cleared(host: Host, row: Row) -> None:
    if row.ref is None or row.key == _LAPS_KEY:
        host.board.say("single laps are cleared on the session page: s, then backspace")
        return
    step = clearing(host.desk.files, row.ref, row.path)
    host.attempt(step if step.changes else f"{row.label} is not known already")


def _keep(host: Host, group: ReturnRow, value: Value, text: str) -> bool:
    """Keep a value, asking where it is doubtful, and go on to the next row."""
    session, state = host.place.subject, host.state.of(ReturnState)
    if session is None:
        return False
    files = host.desk.files
    last = last_pressures(files, session) if group.reads == "pressure" else {}
    doubt = doubts(files, session, group, value, last, text.strip())
    if doubt and state.sure != (group.key, text):
        state.sure = (group.key, text)
        if not host.board.is_typing:
            host.board.edit(text)
        refuse(host, doubt)
        return True
    state.sure = ("", "")
    step = answering(files, session, group, value, host.desk.now())
    if isinstance(step, InputError):
        refuse(host, step.sentence())
        return True
    host.board.done()
    after = following(files, session, group)
    _do(host, step)
    if host.board.is_typing:
        return True
    _to(host, following(files, session, group) or after)
    return True


def _do(host: Host, step: Step) -> None:
    """Do a step of the return; what it puts may be mended here without a question."""
    changes = [change for change in step.changes if isinstance(change, Change)]
    host.attempt(step)
    typed = host.state.of(ReturnState).typed
    for change in changes:
        typed |= {(change.ref, edit.path) for edit in change.edits if edit.old is MISSING}


def _pass(host: Host, row: Row) -> None:
    """Go on to the next open row, and remember that this one was passed over."""
    session = host.place.subject
    group = _group(host, row)
    if session is None:
        return
    if group is None:
        host.board.say("the debrief is done; i comes back to what is open")
        return
    host.state.of(ReturnState).passed.setdefault(session, set()).add(group.key)
    _to(host, following(host.desk.files, session, group))


def _to(host: Host, group: ReturnRow | None) -> None:
    """Put the cursor on a group, open for typing where letters answer it; on the laps behind the last."""
    key = f"return {group.key}" if group is not None else _LAPS_KEY
    row = next((one for one in host.board.page.rows() if one.key == key), None)
    if row is None:
        return
    host.board.go(row.identity)
    if group is not None and group.letters and not row.known:
        host.board.edit()


def _group(host: Host, row: Row) -> ReturnRow | None:
    """Return the group of a row; None for the row of the laps."""
    session = host.place.subject
    found = open_groups(host.desk.files, session) if session is not None else ()
    return next((one for one in found if f"return {one.key}" == row.key), None)


def _units(host: Host) -> Units:
    return host.units(host.place.subject)
