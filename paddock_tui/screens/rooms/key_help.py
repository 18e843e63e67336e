"""The help: of the page one came from, of a topic or a word; every key, and what it does."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.key_help", soon=True)

ROOM = Room(
    id="help",
    page=_DOES("make_page"),
    action=Action(
        "help", "question_mark", "help", "this page, all keys, topics, words", hint=20, do=_DOES("open_help")
    ),
    hears=_DOES("hear"),
    own={"help": _DOES("ask_word")},
    stands_alone=True,
    unjudged=True,
)
