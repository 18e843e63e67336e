"""The set-up of a session or a profile, with what advice says beside its rows."""

from paddock_tui.on_demand import Later
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.action import Action, needs_subject, to
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import of_subject

_DOES = Later("paddock_tui.screens.at_work.setup", soon=True)


def _shows(ref: Ref, path: Path) -> bool:
    return ref.kind == "session" and path[:1] == ("setup",)


def _opens(ref: Ref) -> bool:
    return ref.kind == "profile"


ROOM = Room(
    id="setup",
    page=of_subject(_DOES("make_page")),
    about="subject",
    action=Action(
        "setup",
        "p",
        "set-up",
        "the set-up of the session or profile shown",
        needs_subject,
        hint=10,
        do=to("setup"),
    ),
    opens=_opens,
    shows=_shows,
    findings=True,
    unjudged=True,
)
