"""The crew's page on the screen: enter on a job asks who did it, then who looked at it."""

from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.day.jobs import signing_job
from paddock_tui.pages.crew import JOB, crew_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.errors import InputError
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import Room
from paddock_tui.screens.rooms.checklist import INITIALS
from paddock_tui.screens.subject import SubjectContext, of_subject
from paddock_tui.widgets.messages import Chosen, RowMessage


def _page(about: SubjectContext) -> Page:
    clock = clock_of(about.desk.files, about.ref, about.desk.now())
    return crew_page(about.assembled.situation, clock, about.heading)


def _hears(host: Host, message: RowMessage) -> bool:
    """Ask for the initials of who did a job, or of who looked at it; whether the row is one of a job."""
    row, session = message.row, host.place.subject
    if not isinstance(message, Chosen) or not row.key.startswith(JOB) or session is None:
        return False
    name = row.key.removeprefix(JOB)

    def answered(text: str) -> str:
        if not INITIALS.fullmatch(text.strip()):
            return "one to four letters: initials"
        step = signing_job(host.desk.files, session, name, text.strip().upper(), host.desk.now())
        if isinstance(step, InputError):
            return step.sentence()
        host.attempt(step)
        return ""

    done = "done by" in row.aside
    words = "initials of who looked at it" if done else "initials of who did it"
    host.ask(Question(words, answered, declined="not signed", said=(f"{row.label} {row.aside}",)))
    return True


ROOM = Room(
    id="crew",
    page=of_subject(_page),
    about="session",
    action=Action(
        "crew",
        "",
        "crew",
        "jobs before the start: whose; class, moves",
        needs_session,
        do=to("crew"),
    ),
    hears=_hears,
    read_by_others=True,
)
