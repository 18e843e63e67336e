"""The next change on the screen: questions are answered, and `v` takes it into the next session."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import of_subject

_DOES = Later("paddock_tui.screens.at_work.next_change")

ROOM = Room(
    id="next",
    page=of_subject(_DOES("make_page")),
    about="session",
    action=Action(
        "next",
        "j",
        "next change",
        "the one next change, or none; v takes it",
        needs_session,
        do=_DOES("go_there"),
    ),
    hears=_DOES("hear"),
    own={"offer": _DOES("take_it")},
)
