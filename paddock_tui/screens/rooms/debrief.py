"""Back from the track on the screen: parked is stamped, and rows fill and go on by themselves."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import of_subject

_DOES = Later("paddock_tui.screens.at_work.debrief")

ROOM = Room(
    id="return",
    page=of_subject(_DOES("make_page")),
    about="session",
    action=Action(
        "in",
        "i",
        "back in",
        "stamps parked, then asks what is soon lost",
        hint=9,
        do=_DOES("go_there"),
    ),
    hears=_DOES("hear"),
    letters=_DOES("letter"),
)
