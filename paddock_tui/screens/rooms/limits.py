"""The limits: every threshold of the rules, with the owner's own values."""

from paddock_tui.limits import Limits
from paddock_tui.pages.limits import limits_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import GARAGE
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import PageContext, Room


def _page(asked: PageContext) -> Page:
    files = asked.desk.files
    return limits_page(Limits(files.garage().limits), files.read(GARAGE))


ROOM = Room(
    id="limits",
    page=_page,
    action=Action(
        "limits",
        "",
        "thresholds",
        "every threshold of the rules, and your own",
        do=to("limits"),
    ),
    unjudged=True,
)
