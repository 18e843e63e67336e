"""The session: its facts, in the order they become known."""

from paddock_tui.on_demand import Later
from paddock_tui.records.paths import Ref
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.room import Room, everywhere
from paddock_tui.screens.subject import of_subject

_DOES = Later("paddock_tui.screens.at_work.session", soon=True)


def _opens(ref: Ref) -> bool:
    return ref.kind == "session"


ROOM = Room(
    id="session",
    page=of_subject(_DOES("make_page")),
    about="session",
    action=Action(
        "session",
        "s",
        "session",
        "its facts, in the order they become known",
        needs_session,
        hint=7,
        do=to("session"),
    ),
    opens=_opens,
    findings=True,
    unjudged=True,
    waiting_first=everywhere,
)
