"""The board of the day: everybody who is looked after, in the order of the clock."""

from paddock_tui.desk.day.board import BoardMemory
from paddock_tui.pages.board import board_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.room import PageContext


def make_page(asked: PageContext) -> Page:
    record = asked.place.record
    day = record if record is not None and record.kind == "day" else None
    return board_page(asked.desk, asked.state.of(BoardMemory), day)
