"""Before the day: what it needs, for each rider and bike; `v` makes the first session."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import Room, everywhere

_DOES = Later("paddock_tui.screens.at_work.before")

ROOM = Room(
    id="before",
    page=_DOES("make_page"),
    action=Action(
        "before_day",
        "",
        "before the day",
        "what a day needs: bike, papers, fuel, tyres",
        do=to("before"),
    ),
    own={"offer": _DOES("make_day")},
    escapes=True,
    waiting_first=everywhere,
)
