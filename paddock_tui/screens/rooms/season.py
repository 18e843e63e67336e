"""The season on the screen: a year at a time."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.season")

ROOM = Room(
    id="season",
    page=_DOES("make_page"),
    action=Action(
        "season",
        "",
        "season",
        "a year: laps, hours, km, tyres, what it cost",
        do=to("season"),
    ),
    hears=_DOES("hear"),
    stands_alone=True,
)
