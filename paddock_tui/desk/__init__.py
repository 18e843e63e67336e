"""One garage in hand: what commands and screens talk to."""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
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

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "Desk": "desk",
            "DeskChange": "desk",
            "NoSuchRecord": "lookup",
            "accepting": "edits.values",
            "clearing": "edits.values",
            "find": "lookup",
            "setting": "edits.values",
            "setting_value": "edits.values",
            "withdrawing": "edits.values",
        },
    )
