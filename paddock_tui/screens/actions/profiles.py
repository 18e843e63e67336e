"""Profiles: taken into a session, saved from one, and made for another rider or another bike."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_session, needs_subject

_DOES = Later("paddock_tui.screens.at_work.profiles")

TAKE = Action(
    "take",
    "",
    "load profile",
    "load a profile's set-up into the session",
    needs_session,
    do=_DOES("take_it"),
)

SAVE = Action(
    "save", "", "save profile", "save the session's set-up as a profile", needs_session, do=_DOES("save_it")
)

FOR_ANOTHER = Action(
    "profile_for",
    "",
    "profile from this",
    "a profile for another rider or another bike",
    needs_subject,
    do=_DOES("make_for_another"),
)
