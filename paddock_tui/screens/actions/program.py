"""Leaving the program."""

from paddock_tui.desk.undo import Done
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.store.outcomes import NotSaved
from paddock_tui.text import printable

LEFT_UNKEPT = 3
"""The exit status where changes were left that are not in the garage."""


def _leave(host: Host) -> None:
    """Leave; asks first where something is neither kept nor written elsewhere."""
    host.desk.settled()
    lost = [done for done in host.desk.unkept() if not done.elsewhere]
    if not lost:
        host.leave(0)
        return

    def answered(_: str) -> str:
        host.leave(LEFT_UNKEPT)
        return ""

    host.draw()
    words = f"{len(lost)} not saved: enter leaves all the same, escape stays"
    said = tuple(_said(done) for done in lost[-3:])
    host.ask(Question(words, answered, declined="stayed", said=said, confirms=True))


def _row(host: Host) -> None:
    """Copy the row under the cursor."""
    host.copy(whole=False)


def _all(host: Host) -> None:
    """Copy what is on the screen."""
    host.copy(whole=True)


def _said(done: Done) -> str:
    reason = done.outcome.reason if isinstance(done.outcome, NotSaved) else ""
    return printable(f"{done.step.label}: {reason}")


COPY = Action(
    "copy", "", "copy row", "give the terminal this row, where copying is on", do=_row, unjudged=True
)

COPY_PAGE = Action(
    "copy_page", "", "copy page", "give the terminal the whole page as shown", do=_all, unjudged=True
)

QUIT = Action("quit", "q", "quit", "leave; everything is saved already", do=_leave, unjudged=True)
