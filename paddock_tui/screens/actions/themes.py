"""The theme of the screens, kept with the user's own settings."""

from paddock_tui.screens.action import Action, Doing
from paddock_tui.screens.host import Host
from paddock_tui.store.settings import keep_theme


def _wearing(name: str) -> Doing:
    def do(host: Host) -> None:
        host.wear(name)
        host.board.say(keep_theme(name) or f"theme {name}, saved in your own settings")

    return do


TERMINAL = Action(
    "theme_terminal",
    "",
    "theme: terminal",
    "the terminal's own colours",
    do=_wearing("terminal"),
    unjudged=True,
)
DAY = Action("theme_day", "", "theme: day", "black on white, for the sun", do=_wearing("day"), unjudged=True)
NIGHT = Action(
    "theme_night", "", "theme: night", "dim on black, red left to holds", do=_wearing("night"), unjudged=True
)
