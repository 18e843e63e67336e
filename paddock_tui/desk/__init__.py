"""One garage in hand: what commands and screens talk to."""

from paddock_tui.desk.desk import Desk, Told
from paddock_tui.desk.finding import NoSuchRecord, find
from paddock_tui.desk.typing import accepting, clearing, setting, setting_value, withdrawing

__all__ = [
    "Desk",
    "NoSuchRecord",
    "Told",
    "accepting",
    "clearing",
    "find",
    "setting",
    "setting_value",
    "withdrawing",
]
