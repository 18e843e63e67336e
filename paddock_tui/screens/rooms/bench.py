"""The bench on the screen: what is typed into calculators is held here, and nowhere else."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.bench", soon=True)

ROOM = Room(
    id="bench",
    page=_DOES("make_page"),
    about="whatever",
    action=Action(
        "bench",
        "b",
        "calculators",
        "work it out, filled from the current session",
        hint=3,
        do=to("bench"),
    ),
    hears=_DOES("hear"),
    ahead=_DOES("ahead"),
)
