"""After the day: steps home, counters, what is left to do; `v` saves a profile or notes a thing to do."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.after")

ROOM = Room(
    id="after",
    page=_DOES("make_page"),
    action=Action(
        "after_day",
        "",
        "after the day",
        "road home, counters, to-dos, what was learnt",
        do=to("after"),
    ),
    hears=_DOES("hear"),
    hint=_DOES("hinted"),
    own={"offer": _DOES("offered"), "new": _DOES("make_new")},
    escapes=True,
)
