"""The emergency page on the screen: typed like any other row, but written to the rider's own file alone."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.emergency")

ROOM = Room(
    id="emergency",
    page=_DOES("make_page"),
    action=Action(
        "emergency",
        "z",
        "rider down",
        "who to call and what to know, for whoever helps",
        do=_DOES("go"),
    ),
    hears=_DOES("hears"),
    own={"undo": _DOES("undo"), "redo": _DOES("redo")},
    stands_alone=True,
    folds=False,
    for_anybody=True,
    unjudged=True,
)
