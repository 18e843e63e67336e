"""The palette: every action, to choose from."""

from paddock_tui.pages.actions import actions_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.widgets.messages import Chosen, RowMessage


def _page(asked: PageContext) -> Page:
    return actions_page(asked.rows, asked.context)


def _hears(host: Host, message: RowMessage) -> bool:
    """Do the action that is chosen where the palette was opened."""
    if not isinstance(message, Chosen):
        return False
    host.back()
    host.act(message.row.key)
    return True


ROOM = Room(
    id="actions",
    page=_page,
    action=Action(
        "actions", "m", "all actions", "every action with its key, to choose from", do=to("actions")
    ),
    hears=_hears,
    stands_alone=True,
    unjudged=True,
)
