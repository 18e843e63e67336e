"""Going out on the screen: the page of what is open, and the row that stamps the time."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.entry.values import to_the_minute
from paddock_tui.pages.going_out import NOW, first_row, holds_of, judged_going_out, out_page
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.rows import Row
from paddock_tui.screens.question import Question

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

ROOM = "out"


def go(screen: "MainScreen") -> None:
    """Go to what is open before this session; there already, to the row that stamps going out."""
    subject = screen.place.subject
    if subject is None:
        return
    situation = screen.desk.assembled(subject).situation
    page = out_page(situation, judged_going_out(situation), "")
    here = screen.place.room == ROOM
    rows = page.rows()
    screen.go(attrs.evolve(screen.place, room=ROOM), rows[-1].identity if here else first_row(page))


def is_now(row: Row) -> bool:
    """Return whether a row stamps going out."""
    return row.kind == "link" and row.key == NOW


def stamp(screen: "MainScreen") -> None:
    """Stamp going out now; where a hold stands, say so and ask once more. It never locks anybody out."""
    subject = screen.place.subject
    if subject is None:
        return

    def stamped(_: str) -> str:
        now = to_the_minute(screen.desk.now())
        step = setting_value(screen.desk.files, subject, ("went_out",), now)
        screen.attempt(step if step.changes else f"went out {now:%H:%M} already")
        return ""

    holds = holds_of(judged_going_out(screen.desk.assembled(subject).situation))
    if not holds:
        stamped("")
        return
    said = tuple(f"{one.severity}: {message_line(one)}" for one in holds[:3])
    words = "a hold stands: enter goes out all the same, escape stays"
    screen.ask(Question(words, stamped, declined="not gone out", said=said, confirms=True))
