"""The board of the day: everybody who is looked after, in the order of the clock."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.board")

ROOM = Room(
    id="board",
    page=_DOES("make_page"),
    action=Action(
        "board", "", "board of the day", "every rider and bike: next start, verdict, open", do=to("board")
    ),
    read_by_others=True,
)
"""About the garage: the verdict at the top right is that of the session in hand."""
