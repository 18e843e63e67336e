"""The paper slip of the return, as the screen shows it."""

from paddock_tui.on_demand import load_later
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject

load_later("paddock_tui.pages.paper_slip")


def _page(about: SubjectContext) -> Page:
    from paddock_tui.pages.paper_slip import slip_page

    return slip_page(about.heading, about.units)


ROOM = Room(
    id="slip",
    page=of_subject(_page),
    about="session",
    action=Action(
        "slip",
        "",
        "debrief sheet",
        "the debrief on paper, to be typed in one pass",
        needs_session,
        do=to("slip"),
    ),
)
