"""The help: every key, and what it does."""

from paddock_tui.pages.actions import help_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.room import PageContext, Room


def _page(asked: PageContext) -> Page:
    return help_page(asked.rows)


ROOM = Room(
    id="help",
    page=_page,
    action=Action("help", "question_mark", "help", "keys and what they do", hint=20, do=to("help")),
    stands_alone=True,
)
