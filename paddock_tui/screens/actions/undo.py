"""Undo and redo."""

import attrs

from paddock_tui.pages.actions import OF_OTHERS, ActionContext
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.text import printable


def _undo(host: Host) -> None:
    """Take the last step back, of earlier runs too."""
    _moved(host, "undone", host.desk.undo())


def _redo(host: Host) -> None:
    """Do again what was last taken back."""
    _moved(host, "done again", host.desk.redo())


def _moved(host: Host, word: str, label: str | None) -> None:
    subject, record = host.place.subject, host.place.record
    if subject is not None and host.desk.files.path_of(subject) is None:
        host.place = attrs.evolve(host.place, room="garage", subject=None)
    if record is not None and host.desk.files.path_of(record) is None:
        host.place = attrs.evolve(host.place, room="garage", record=None)
    host.draw()
    host.board.say(printable(f"{word}: {label}") if label is not None else "nothing left", stays=True)


def _undo_off(context: ActionContext) -> str:
    if context.undo is not None:
        return ""
    nothing = "there is nothing to undo"
    return f"{nothing}; {OF_OTHERS}" if context.undo_of_others else nothing


def _redo_off(context: ActionContext) -> str:
    return "" if context.redo is not None else "nothing to do again: y follows u"


UNDO = Action(
    "undo",
    "u",
    "undo",
    "take the last change back, of earlier runs too",
    _undo_off,
    hint=19,
    do=_undo,
    unjudged=True,
)

REDO = Action("redo", "y", "redo", "do again what was taken back", _redo_off, hint=1, do=_redo, unjudged=True)
