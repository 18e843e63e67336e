"""The entry line on the screen: one typed line, its preview while it is typed, and the step it becomes."""

from paddock_tui.on_demand import Later
from paddock_tui.pages.actions import ActionContext
from paddock_tui.pages.rows import FOLD
from paddock_tui.screens.action import Action, needs_subject

_DOES = Later("paddock_tui.screens.at_work.entry_line")

enter = _DOES("enter")


def _off(context: ActionContext) -> str:
    """Say that there is nothing to enter into; on a day's page a timetable needs no session."""
    row = context.row
    # The heading of a folded section belongs to no record: what is shown then is found out by `enter`.
    on_day = row is not None and (row.kind == FOLD or (row.ref is not None and row.ref.kind == "day"))
    return "" if on_day and context.room == "record" else needs_subject(context)


ENTRY = Action(
    "entry",
    "e",
    "entry line",
    "many values in one typed line; tab completes",
    _off,
    hint=13,
    do=enter,
)
