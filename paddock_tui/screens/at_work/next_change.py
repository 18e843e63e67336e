"""The next change on the screen: questions are answered, and `v` takes it into the next session."""

import attrs

from paddock_tui.advice.next_change import Advised, Kind, next_change
from paddock_tui.desk import Desk
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.edits.values import bike_of, setting_value
from paddock_tui.desk.lookup import of_bike
from paddock_tui.desk.sessions.ledger import bike_at
from paddock_tui.desk.sessions.next_change import next_of, ridden_one, taking_change
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.next_change import (
    ANSWER,
    OWN,
    Coming,
    answers_of,
    next_change_awaited,
    next_change_page,
    proposal_of,
)
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.subject import SubjectContext, gone
from paddock_tui.widgets import messages


def make_page(about: SubjectContext) -> Page:
    files = about.desk.files
    ridden = ridden_one(files, about.ref)
    loaded = files.read(ridden) if ridden is not None else None
    if ridden is None or loaded is None or loaded.record is None:
        return gone(ridden or about.ref)
    advised = _answer_about(about.desk, ridden)
    if isinstance(advised, Reading):
        return next_change_awaited(advised, heading_of(about.desk, ridden))
    coming = _coming(about.desk, ridden)
    return next_change_page(advised, loaded, coming, heading_of(about.desk, ridden), about.units)


def _answer_about(desk: Desk, ridden: Ref) -> Advised | Reading:
    """Return the next change after a ridden session, or how far the reading for it is.

    It is asked for anew each minute, since what is open and what is due go by the clock.
    """
    sessions = of_bike(desk.files, bike_at(desk, ridden))
    minute = desk.now().replace(second=0, microsecond=0)
    asked = ("next change", ridden)
    return desk.answers.of(asked, len(sessions), lambda looks: next_change(looks.about(ridden)), minute)


def _coming(desk: Desk, ridden: Ref) -> Coming | None:
    """Return the session made from a ridden one, with what its review says of several changes at once."""
    ref = next_of(desk.files, ridden)
    loaded = desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        return None
    method = [message_line(one) for one in desk.review(ref).findings if one.about == "method"]
    return Coming(loaded, method[0] if method else "", bike_of(desk.files, ref))


def go_there(host: Host) -> None:
    """Go to the next change after the session looked at, or after the one that it was made from."""
    ridden = ridden_one(host.desk.files, host.place.subject)
    if ridden is None:
        host.board.say("nothing was ridden yet that a next change could follow: i when back")
        return
    # The session looked at stays: its verdict is what counts, and its pages come next.
    host.go(attrs.evolve(host.place, room="next"))


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take enter and digits on the rows of this page; whether the message was for it."""
    row = message.row
    if isinstance(message, messages.Digit) and row.key.startswith(ANSWER):
        answer = answers_of(host.board.page.rows(), row).get(message.text)
        if answer is not None:
            _answer(host, answer)
        return True
    if isinstance(message, messages.Chosen):
        if row.key.startswith(ANSWER):
            _answer(host, row)
            return True
        if row.key == OWN:
            _own(host)
            return True
    return False


def take_it(host: Host) -> None:
    """Take the proposal under the cursor, else the one, into the next session."""
    found = _advised(host)
    if found is None:
        return
    ridden, advised = found
    if isinstance(advised, Reading):
        host.board.say(f"{advised.words()}: the next change is not known yet")
        return
    proposal = proposal_of(advised, host.board.cursor_row)
    if proposal.kind not in (Kind.CHANGE, Kind.SAME):
        host.board.say(f"{proposal.kind.value}: {proposal.text}"[:120])
        return
    _, step = taking_change(host.desk.files, ridden, proposal, host.desk.now())
    host.attempt(step.sentence() if isinstance(step, InputError) else step)


def _advised(host: Host) -> tuple[Ref, Advised | Reading] | None:
    ridden = ridden_one(host.desk.files, host.place.subject)
    return (ridden, _answer_about(host.desk, ridden)) if ridden is not None else None


def _answer(host: Host, row: Row) -> None:
    if row.ref is not None and row.path:
        word = row.key.removeprefix(ANSWER)
        host.attempt(setting_value(host.desk.files, row.ref, row.path, word))


def _own(host: Host) -> None:
    """Go to the set-up page of the next session, which is made where there is none yet."""
    ridden = ridden_one(host.desk.files, host.place.subject)
    if ridden is None:
        return
    coming = next_of(host.desk.files, ridden)
    if coming is None:
        coming, step = next_session(host.desk.files, ridden, host.desk.now())
        if isinstance(step, InputError):
            host.board.say(step.sentence())
            return
        host.do(step)
    host.go(attrs.evolve(host.place, room="setup", subject=coming))
    host.board.say("change it here; j goes back, where its reason is entered")
