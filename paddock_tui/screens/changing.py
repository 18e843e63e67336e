"""The next change on the screen: questions are answered, and `v` takes it into the next session."""

from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.advice.next_change import Advised, Kind, next_change
from paddock_tui.desk.edits.values import setting_value
from paddock_tui.desk.sessions.next_change import next_of, ridden_one, taking_change
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.pages.next_change import ANSWER, OWN, answers_of, proposal_of
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

ROOM = "next"


def go(screen: "MainScreen") -> None:
    """Go to the next change after the session looked at, or after the one that it was made from."""
    ridden = ridden_one(screen.desk.files, screen.place.subject)
    if ridden is None:
        screen.board.say("nothing was ridden yet that a next change could follow")
        return
    # The session looked at stays: its verdict is what counts, and its pages come next.
    screen.go(attrs.evolve(screen.place, room=ROOM))


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take enter and digits on the rows of this page; whether the message was for it."""
    if screen.place.room != ROOM:
        return False
    row = getattr(message, "row", None)
    if row is None:
        return False
    if isinstance(message, messages.Digit) and row.key.startswith(ANSWER):
        word = answers_of(screen.board.page.rows(), row).get(message.text)
        if word is not None:
            _answer(screen, row.ref, row.path, word)
        return True
    if isinstance(message, messages.Chosen):
        if row.key.startswith(ANSWER):
            _answer(screen, row.ref, row.path, row.key.removeprefix(ANSWER))
            return True
        if row.key == OWN:
            _own(screen)
            return True
    return False


def take(screen: "MainScreen") -> None:
    """Take the proposal under the cursor, else the one, into the next session."""
    found = _advised(screen)
    if found is None:
        return
    ridden, advised = found
    proposal = proposal_of(advised, screen.board.cursor_row)
    if proposal.kind not in (Kind.CHANGE, Kind.SAME):
        screen.board.say(f"{proposal.kind.value}: {proposal.text}"[:120])
        return
    _, step = taking_change(screen.desk.files, ridden, proposal, screen.desk.now())
    screen.attempt(step.sentence() if isinstance(step, InputError) else step)


def offers(screen: "MainScreen") -> bool:
    """Return whether `v` stands for the next change here."""
    return screen.place.room == ROOM


def _advised(screen: "MainScreen") -> tuple[Ref, Advised] | None:
    ridden = ridden_one(screen.desk.files, screen.place.subject)
    return (ridden, next_change(screen.desk.about(ridden))) if ridden is not None else None


def _answer(screen: "MainScreen", ref: Ref | None, path: tuple[str, ...], word: str) -> None:
    if ref is not None and path:
        screen.attempt(setting_value(screen.desk.files, ref, path, word))


def _own(screen: "MainScreen") -> None:
    """Go to the set-up page of the next session, which is made where there is none yet."""
    ridden = ridden_one(screen.desk.files, screen.place.subject)
    if ridden is None:
        return
    coming = next_of(screen.desk.files, ridden)
    if coming is None:
        coming, step = next_session(screen.desk.files, ridden, screen.desk.now())
        if isinstance(step, InputError):
            screen.board.say(step.sentence())
            return
        screen.do(step)
    screen.go(attrs.evolve(screen.place, room="setup", subject=coming))
    screen.board.say("change it here; j goes back, where its reason is entered")
