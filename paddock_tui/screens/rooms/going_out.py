"""Going out on the screen: the page of what is open, and the row that stamps the time."""

import datetime as dt

import attrs

from paddock_tui.desk.day.out_now import going_next
from paddock_tui.desk.day.went_out import going_out
from paddock_tui.pages.going_out import NOW, first_row, holds_of, out_page, to_mend
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.rows import MISSING, Page
from paddock_tui.records.paths import Ref
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.host import Host
from paddock_tui.screens.moment import at_moment
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.screens.rooms.review import answers_missing, hint
from paddock_tui.screens.subject import session_named
from paddock_tui.screens.which import ask_which
from paddock_tui.widgets.messages import Chosen, RowMessage

ABOUT_NONE = ("garage", "record", "ledger", "limits", "today")
"""The pages whose heading names no session."""


def _page(asked: PageContext) -> Page | None:
    if asked.subject is None or asked.assembled is None:
        return None
    return out_page(asked.assembled.situation, asked.review, heading_of(asked.desk, asked.subject))


def _go(host: Host) -> None:
    """Go to what is open before this session; there already, to the row that stamps going out.

    From a page that is about no session it is asked which, where two bikes go out next.
    """
    due = going_next(host.desk.files, host.desk.now())
    if len(due) > 1 and host.place.room in ABOUT_NONE and session_named(host.board.cursor_row) is None:
        ask_which(host, "which goes out", due, lambda ref: _open(host, ref))
    elif host.place.subject is not None:
        _open(host, host.place.subject)


def _open(host: Host, subject: Ref) -> None:
    situation = host.desk.assembled(subject).situation
    page = out_page(situation, host.desk.review(subject, going_out=True), "")
    here = host.place.room == ROOM.id
    rows = page.rows()
    host.go(
        attrs.evolve(host.place, room=ROOM.id, subject=subject),
        rows[-1].identity if here else first_row(page),
    )


def _hears(host: Host, message: RowMessage) -> bool:
    """Stamp going out where the row that does so is chosen, answer what is missing; whether it was either."""
    row, subject = message.row, host.place.subject
    if subject is not None and row.key.startswith(MISSING):
        return answers_missing(host, message, host.desk.review(subject, going_out=True))
    if not isinstance(message, Chosen) or row.kind != "link" or row.key != NOW:
        return False
    _stamp(host)
    return True


def _stamp(host: Host) -> None:
    """Stamp going out now; where a hold stands, say so and ask once more. It never locks anybody out."""
    subject = host.place.subject
    if subject is None:
        return

    judged = host.desk.review(subject, going_out=True)

    def stamp(when: dt.datetime) -> None:
        from paddock_tui.entry.values import to_the_minute

        now = to_the_minute(when)
        step = going_out(host.desk.files, subject, now, judged)
        host.attempt(step if step.changes else f"went out {now:%H:%M} already")

    def stamped(_: str) -> str:
        at_moment(host, subject, "went out", stamp)
        return ""

    holds = holds_of(judged)
    # What is not done yet and serious is as much without an answer: due or not, there is no later than now.
    rest = dict.fromkeys((*to_mend(judged), *(one for one in judged.findings if one.to_answer)))
    standing = [*holds, *(one for one in rest if one not in holds)]
    if not standing:
        stamped("")
        return
    said = tuple(f"{one.severity}: {message_line(one)}" for one in standing[:3])
    what = "a hold stands: enter goes out all the same" if holds else "serious, no answer: enter goes out"
    words = f"{what}, escape stays"
    host.ask(Question(words, stamped, declined="not gone out", said=said, confirms=True))


ROOM = Room(
    id="out",
    page=_page,
    about="session",
    action=Action(
        "out",
        "o",
        "going out",
        "what is open, by the clock; then stamp it",
        needs_session,
        hint=8,
        do=_go,
    ),
    hears=_hears,
    hint=hint,
    going_out=True,
)
