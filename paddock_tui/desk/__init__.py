"""One garage in hand: what commands and screens talk to."""

from paddock_tui.desk.desk import Desk, DeskChange
from paddock_tui.desk.edits.values import accepting, clearing, setting, setting_value, withdrawing
from paddock_tui.desk.lookup import NoSuchRecord, find

__all__ = [
    "Desk",
    "DeskChange",
    "NoSuchRecord",
    "accepting",
    "clearing",
    "find",
    "setting",
    "setting_value",
    "withdrawing",
]
