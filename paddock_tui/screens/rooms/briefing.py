"""The briefing: a set-up explained to whoever rides it next; enter on its last row shows the long form."""

import attrs

from paddock_tui.advice.briefing import briefing
from paddock_tui.desk.sessions.came_from import came_from
from paddock_tui.pages.briefing import BRIEF, MORE, briefing_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, needs_subject
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject
from paddock_tui.widgets import messages


def _page(about: SubjectContext) -> Page:
    desk, asked = about.desk, about.asked
    came = came_from(desk.files, about.ref)
    found = briefing(desk.about(about.ref, about.assembled), asked.review, came)
    return briefing_page(found, about.heading, asked.place.long)


def _hears(host: Host, message: messages.RowMessage) -> bool:
    if message.row.key != MORE or not isinstance(message, messages.Chosen):
        return False
    host.place = attrs.evolve(host.place, long=True)
    host.draw()
    return True


def _go(host: Host) -> None:
    host.go(attrs.evolve(host.place, room=ROOM.id, long=False))


ROOM = Room(
    id=BRIEF,
    page=of_subject(_page),
    about="subject",
    action=Action(
        BRIEF,
        "",
        "briefing",
        "the set-up in plain sentences, for whoever rides it next",
        needs_subject,
        do=_go,
    ),
    hears=_hears,
    stands_alone=True,
)
