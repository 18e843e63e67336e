"""The ledger on the screen: what is shown is chosen, a change is opened, tried back, a set-up set back."""

from paddock_tui.on_demand import Later
from paddock_tui.pages.actions import ActionContext
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.ledger")


def _change_off(context: ActionContext) -> str:
    row = context.row
    if context.room == ROOM.id and row is not None:
        from paddock_tui.pages.ledger import LEDGER

        if row.path[:1] == (LEDGER,):
            return ""
    return "put the cursor on a change of the log: l"


ROOM = Room(
    id="ledger",
    page=_DOES("make_page"),
    action=Action(
        "ledger",
        "l",
        "change log",
        "every change of a bike, and what it did",
        hint=4,
        do=to("ledger"),
    ),
    hears=_DOES("hear"),
)

CHANGE = Room(
    id="change",
    page=_DOES("make_change_page"),
    hears=_DOES("hear"),
    own={"try_back": _DOES("try_it_back")},
    stands_alone=True,
)

TRY_BACK_ACTION = Action(
    "try_back",
    "",
    "re-test",
    "one step back in the next session, as a check",
    _change_off,
    do=_DOES("try_it_back"),
)

SET_BACK = Action(
    "set_back",
    "",
    "restore set-up",
    "this session's whole set-up into the next one",
    needs_session,
    do=_DOES("set_it_back"),
)
