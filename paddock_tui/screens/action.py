"""An action: its key, its words, why it may be off, and what it does, declared together."""

from collections.abc import Callable

import attrs

from paddock_tui.pages.actions import ActionContext, ActionRow
from paddock_tui.screens.host import Host

Doing = Callable[[Host], None]


@attrs.frozen
class Action(ActionRow):
    """One action, with what it does; one that is `unjudged` waits for no verdict."""

    do: Doing = attrs.field(kw_only=True)
    unjudged: bool = attrs.field(default=False, kw_only=True)


def to(room: str) -> Doing:
    """Return what goes to a room, about what is looked at; to the row of the next thing, if that is said."""

    def go(host: Host) -> None:
        action, row = host.board.page.leads or ("", ())
        said = action == room and row[0] == str(host.place.subject)
        host.go(attrs.evolve(host.place, room=room), row if said else None)

    return go


def needs_subject(context: ActionContext) -> str:
    """Say that there is nothing yet which the action could be about."""
    return "" if context.session or context.profile else "there is no session and no profile yet: g, then n"


def needs_session(context: ActionContext) -> str:
    """Say that no session is looked at."""
    return "" if context.session else "there is no session here: g, then enter on one, or n"
