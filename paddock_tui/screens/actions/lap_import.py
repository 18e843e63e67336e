"""Laps from a file: its path is asked for, then the column, with a preview; all of it is one step."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_session

_DOES = Later("paddock_tui.screens.at_work.lap_import")

LAPS_OF_A_FILE = Action(
    "laps",
    "",
    "import laps",
    "lap times from a column of a file, with preview",
    needs_session,
    do=_DOES("ask_for_file"),
)
