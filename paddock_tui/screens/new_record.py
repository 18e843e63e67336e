"""A record that was just made: done, opened and said."""

from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host


def made(host: Host, ref: Ref, step: Step | InputError) -> str:
    """Do a step that makes a record and open it; gives what is wrong, or nothing."""
    if isinstance(step, InputError):
        return step.sentence()
    host.desk.do(step)
    if host.desk.files.path_of(ref) is None:
        host.draw()
        return ""
    host.open(ref)
    host.board.say(f"{step.label}, u undoes")
    return ""
