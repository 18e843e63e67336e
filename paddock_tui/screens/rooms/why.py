"""Why: what a row is, how it was worked out, which rules use it."""

from paddock_tui.on_demand import Later
from paddock_tui.pages.actions import ActionContext
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.why", soon=True)


def _off(context: ActionContext) -> str:
    return "" if context.row is not None else "there is no row under the cursor: up or down, then w"


ROOM = Room(
    id="why",
    page=_DOES("make_page"),
    action=Action(
        "why",
        "w",
        "why",
        "what it is, how worked out, which rules use it",
        _off,
        hint=15,
        do=_DOES("go_there"),
    ),
    hears=_DOES("hear"),
    stands_alone=True,
)
