"""The garage: days, sessions and all records."""

from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import PageContext, Room


def _page(asked: PageContext) -> Page:
    return garage_page(asked.desk, retired=asked.place.retired, now=asked.now)


ROOM = Room(
    id="garage",
    page=_page,
    action=Action("garage", "g", "garage", "days, sessions and all records", hint=2, do=to("garage")),
)
