"""A whole set-up worked out: starting levels, and the wet package; previewed, then one step."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_subject

_DOES = Later("paddock_tui.screens.at_work.set_ups")

START = Action(
    "start",
    "",
    "starting levels",
    "every aid at its start for group, surface, tyre",
    needs_subject,
    do=_DOES("offer_start"),
)

WET = Action(
    "wet",
    "k",
    "wet package",
    "all for the wet, one step: mode, aids, damping",
    needs_subject,
    hint=18,
    hinted=lambda context: context.wet,
    do=_DOES("offer_wet"),
)
