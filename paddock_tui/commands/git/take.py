"""`git take`: one side of a fact that two laptops changed differently, as one step."""

from paddock_tui.commands.common import NOT_DONE, CommandStopped, find_ref, open_desk, sentences
from paddock_tui.commands.keeping import keep_and_say
from paddock_tui.desk.edits.disputes import deciding
from paddock_tui.records.edits import Step


def take(garage: str, record: str, path: str, side: str) -> int:
    """Set the fact to what one side says, and drop the dispute."""
    desk = open_desk(garage)
    step = deciding(desk.files, find_ref(desk, record), path, side)
    if not isinstance(step, Step):
        raise CommandStopped(NOT_DONE, *sentences(step))
    return keep_and_say(desk, step)
