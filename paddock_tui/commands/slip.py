"""`slip`: the paper slip of a session's return, one page of plain text."""

import datetime as dt

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, find_ref, open_to_read, say
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.paper_slip import slip_lines


def slip(folder: str, session: str | None, at: dt.datetime | None) -> int:
    """Print the slip of the session in hand, or of the one named."""
    desk = open_to_read(folder, at)
    ref = find_ref(desk, session, ("session",)) if session is not None else desk.session_in_hand()
    if ref is None:
        raise CommandStopped(NOT_DONE, "there is no session to print a slip for", "  name one with --session")
    rider = desk.files.data(ref).get("rider")
    say(slip_lines(heading_of(desk, ref), desk.units(rider if isinstance(rider, str) else None)))
    return OK
