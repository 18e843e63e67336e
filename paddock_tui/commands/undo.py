"""`undo` and `redo`: move over the steps that the journal tells of, one at a time."""

from paddock_tui.commands.common import NOT_DONE, complain, open_desk
from paddock_tui.commands.keeping import settle_and_say


def undo(folder: str) -> int:
    """Take the last step back, whichever run made it; only where its values still stand."""
    desk = open_desk(folder)
    label = desk.undo()
    if label is None:
        from paddock_tui.pages.actions import OF_OTHERS

        complain(("there is nothing to undo", *((f"  {OF_OTHERS}",) if desk.has_history_of_others() else ())))
        return NOT_DONE
    return settle_and_say(desk, (f"undone: {label}",))


def redo(folder: str) -> int:
    """Do the step again that was last taken back."""
    desk = open_desk(folder)
    label = desk.redo()
    if label is None:
        complain(("there is nothing to do again",))
        return NOT_DONE
    return settle_and_say(desk, (f"done again: {label}",))
