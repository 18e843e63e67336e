"""The briefing: a set-up explained to whoever rides it next; enter on its last row shows the long form."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_subject
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import of_subject

_DOES = Later("paddock_tui.screens.at_work.briefing")

ROOM = Room(
    id="brief",
    page=of_subject(_DOES("make_page")),
    about="subject",
    action=Action(
        "brief",
        "",
        "briefing",
        "the set-up in sentences, for whoever rides next",
        needs_subject,
        do=_DOES("go_there"),
    ),
    hears=_DOES("hear"),
    stands_alone=True,
)
