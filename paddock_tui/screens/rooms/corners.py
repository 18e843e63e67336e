"""The corners of the venue on the screen."""

from paddock_tui.pages.corners import corners_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject


def _page(about: SubjectContext) -> Page:
    return corners_page(about.loaded, about.assembled.situation, about.heading, about.units)


def _shows(ref: Ref, path: Path) -> bool:
    return ref.kind == "session" and path[:1] == ("corner_words",)


ROOM = Room(
    id="corners",
    page=of_subject(_page),
    about="session",
    action=Action(
        "corners",
        "",
        "corners",
        "the corners, with what was said the last time",
        needs_session,
        do=to("corners"),
    ),
    shows=_shows,
)
