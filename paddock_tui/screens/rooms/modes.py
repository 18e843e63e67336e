"""Riding modes at a glance: left and right look at another one, enter takes it as one previewed step."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.modes")


ROOM = Room(
    id="modes",
    page=_DOES("make_page"),
    about="whatever",
    action=Action(
        "modes",
        "",
        "riding modes",
        "the bike's modes and presets beside each other",
        do=_DOES("show_modes"),
    ),
    hears=_DOES("hear"),
    hint=_DOES("hinted"),
    stands_alone=True,
)
