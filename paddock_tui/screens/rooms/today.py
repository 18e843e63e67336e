"""What was kept and taken back today."""

from paddock_tui.pages.rows import Page
from paddock_tui.pages.today import today_page
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import PageContext, Room


def _page(asked: PageContext) -> Page:
    return today_page(asked.desk)


ROOM = Room(
    id="today",
    page=_page,
    action=Action("today", "", "changed today", "saved and taken back today, newest first", do=to("today")),
    stands_alone=True,
)
