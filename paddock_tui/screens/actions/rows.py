"""The rows of a page: the value that one offers is taken over, and only some are shown."""

from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.pages.actions import ActionContext
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question


def _offer(host: Host) -> None:
    row, subject = host.board.cursor_row, host.place.subject
    if row is not None and subject is not None:
        host.attempt(offering(host.desk.files, subject, row.offer))


def _offer_off(context: ActionContext) -> str:
    if not (context.session or context.profile):
        return "there is no session and no profile to use it in: g, then n"
    return (
        ""
        if context.row is not None and context.row.offer
        else "this row offers no value to use: type one, or w says why"
    )


def _filter(host: Host) -> None:
    def answered(text: str) -> str:
        host.board.filter(text)
        return ""

    host.ask(Question("show rows with", answered, host.board.filter, offered=False))


OFFER = Action(
    "offer",
    "v",
    "use value",
    "set the value worked out beside this row",
    _offer_off,
    hint=18,
    do=_offer,
)

FILTER = Action("filter", "slash", "filter", "show only rows with these words", do=_filter, unjudged=True)
