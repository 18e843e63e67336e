"""The guided start on the screen: each answer is saved at once, and the cursor goes on to what is open."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.guide")

ROOM = Room(
    id="guide",
    page=_DOES("make_page"),
    action=Action(
        "guide", "", "guided start", "rider, bike, tyres, day, session, line by line", do=_DOES("start_guide")
    ),
    hears=_DOES("hear"),
    escapes=True,
)

ADD_BIKE = Action("add_bike", "", "add a bike", "the guided start with a new bike", do=_DOES("add_bike"))

ADD_DAY = Action(
    "add_day", "", "add a day", "the guided start with a new day, last bike", do=_DOES("add_day")
)
