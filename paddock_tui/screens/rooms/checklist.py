"""The checklist on the screen: where its cursor begins, and what the keys do on its rows."""

import re

import attrs

from paddock_tui.desk.day.checklist import ANSWERS, HOW, answering, answering_list
from paddock_tui.desk.day.packing import served
from paddock_tui.entry.key_repeat import Held
from paddock_tui.facts.checklists import OK, OPEN, Checked, ItemState
from paddock_tui.facts.service import worked_on
from paddock_tui.pages.checklist import KEYS, checked_of, checklist_page, first_open
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.edits import Step
from paddock_tui.records.packing import PACKING
from paddock_tui.records.paths import Path, Ref, parse
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import Room, everywhere
from paddock_tui.screens.subject import SubjectContext, of_subject
from paddock_tui.widgets import messages

INITIALS = re.compile(r"[^\W\d_]{1,4}")
"""How somebody signs an item."""


@attrs.define
class AnsweredByKey:
    """What this run knows of the keys on checklists: a digit that is held down answers one item only."""

    held: Held = attrs.field(factory=Held)


def _page(about: SubjectContext) -> Page:
    refs = (about.ref, about.assembled.situation.refs.get("day"))
    kept = (about.desk.files.read(ref) for ref in refs if ref is not None)
    situation = about.assembled.situation
    packs = any(one.stage == PACKING for one in situation.checklists.values())
    session = situation.session
    date = session.date if session is not None else None
    known = served(about.desk, date) if packs else {}
    return checklist_page(situation, about.heading, (one for one in kept if one is not None), known)


def _hint(row: Row) -> str:
    return "1 ok 2 to fix 3 n.a. 4 on paper" if row.kind == "check" else ""


def _go(host: Host) -> None:
    """Go to the checklist, on the first open item of the stage at hand."""
    subject = host.place.subject
    begin = first_open(host.desk.assembled(subject).situation) if subject is not None else None
    host.go(attrs.evolve(host.place, room=ROOM.id), begin)


def _hears(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on the items of a checklist; whether the message was for one of them."""
    row = message.row
    if row.kind != "check":
        return False
    if isinstance(message, messages.Digit):
        _answer(host, row, message.text)
    elif isinstance(message, messages.Cleared):
        _answer(host, row, "")
    elif isinstance(message, messages.Chosen):
        _open_answer(host, row)
    else:
        return False
    return True


def _answer(host: Host, row: Row, key: str) -> None:
    """Answer the item under the cursor with a digit; the empty key opens it again."""
    if key in HOW:
        _ask_for_list(host, row, HOW[key])
    elif host.place.subject is None or row.ref is None or (key and key not in ANSWERS):
        host.board.say(row.shut or KEYS)
    elif key and host.state.of(AnsweredByKey).held.again(key, host.board.pressed_at, 1):
        host.board.say(f"{key} again at once: is a key held down? press it again if it is meant")
    elif ANSWERS.get(key) == OK and _takes_initials(host, row):
        _ask_initials(host, row, key)
    else:
        _keep(host, row, key)


def _ask_initials(host: Host, row: Row, key: str) -> None:
    """Ask who looked at what holds the bike after a fall or work: that is not answered in passing."""

    def answered(text: str) -> str:
        if not INITIALS.fullmatch(text.strip()):
            return "one to four letters: the initials of whoever looked"
        _keep(host, row, key, text.strip().upper())
        return ""

    host.ask(Question("initials of who looked", answered, declined="not answered", said=(row.value,)))


def _ask_for_list(host: Host, row: Row, how: str) -> None:
    """Answer all that is open on the list of a row once somebody's initials stand for it."""
    subject, item = host.place.subject, _item(host, row)
    checked = checked_of(host.desk.assembled(subject).situation) if subject is not None else Checked()
    mine = next((one for one in checked.lists if item in one.items), None)
    if subject is None or item is None or mine is None:
        host.board.say(row.shut or KEYS)
        return
    about, still = subject, mine.open

    def answered(text: str) -> str:
        if not INITIALS.fullmatch(text.strip()):
            return "one to four letters: the initials of whoever went through it"
        by, now = text.strip().upper(), host.desk.now()
        host.attempt(answering_list(host.desk.files, about, still, how, by, now))
        return ""

    said = (f"{mine.name}: {len(still)} open, done {how}",)
    host.ask(Question("initials of who went through it", answered, declined="not answered", said=said))


def _takes_initials(host: Host, row: Row) -> bool:
    """Return whether an item holds the bike, and a fall that is not gone through or work has been at it."""
    item, subject = _item(host, row), host.place.subject
    if item is None or subject is None or item.to_fix != "hold":
        return False
    situation = host.desk.assembled(subject).situation
    fallen = [one for one in checked_of(situation).lists if one.stage == "after a fall"]
    if any(one.open or item.id in {held.id for held in one.items} for one in fallen):
        return True
    return situation.session is not None and worked_on(situation.session, situation.history)


def _keep(host: Host, row: Row, key: str, by: str = "") -> None:
    """Keep an answer, and go on to the next item that is open."""
    subject = host.place.subject
    if subject is None or row.ref is None:
        return
    step = answering(
        host.desk.files,
        subject,
        row.path[-2],
        ANSWERS.get(key),
        host.desk.now(),
        in_day=row.ref.kind == "day",
        text=row.value,
        by=by,
    )
    host.attempt(step)
    if key and isinstance(step, Step) and not host.board.is_typing:
        _go_on(host, row)


def _go_on(host: Host, row: Row) -> None:
    """Go to the next item that is open; the answered one stays under the cursor where none follows."""
    rows = host.board.page.rows()
    at = next((place for place, one in enumerate(rows) if one.identity == row.identity), len(rows))
    later = (one for one in rows[at + 1 :] if one.kind == "check" and one.label == OPEN and not one.shut)
    after = next(later, None)
    if after is not None:
        host.board.go(after.identity)
        host.say_done()


def _open_answer(host: Host, row: Row) -> None:
    """Go to the value that answers the item under the cursor; say the keys where none does."""
    subject = host.place.subject
    item = _item(host, row)
    path = parse(item.answered_by) if item is not None and not item.in_day else None
    if subject is None or not path:
        host.board.say(KEYS)
    else:
        host.jump(subject, path)


def _shows(ref: Ref, path: Path) -> bool:
    """Return whether a place is an answer of a checklist, so that its row is on the checklist page."""
    within = path[3:] if ref.kind == "day" and path[:1] == ("entries",) else path
    return ref.kind in ("day", "session") and len(within) == 3 and within[0] == "checks"


def _item(host: Host, row: Row) -> ItemState | None:
    subject = host.place.subject
    if subject is None:
        return None
    checked = checked_of(host.desk.assembled(subject).situation)
    items = [*(item for one in checked.lists for item in one.items), *checked.others]
    return next((item for item in items if item.path and (*item.path, "status") == row.path), None)


ROOM = Room(
    id="checklist",
    page=of_subject(_page),
    about="session",
    action=Action(
        "checklist",
        "c",
        "checklist",
        "what to look at now, and how each item stands",
        needs_session,
        hint=12,
        do=_go,
    ),
    hears=_hears,
    hint=_hint,
    shows=_shows,
    findings=True,
    waiting_first=everywhere,
)
