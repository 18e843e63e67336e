"""A page of the screens made for printing: the same rows, verdict and findings, about what is named."""

from paddock_tui.desk import Desk
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import Ref
from paddock_tui.screens.judged_page import context_of, judged_page
from paddock_tui.screens.place import Place


def printed_page(desk: Desk, room: str, subject: Ref | None, other: str = "") -> Page:
    """Return the page of a room about a session or profile, or about the session in hand.

    `other` is what it is compared with.
    """
    place = Place(room=room, subject=subject or desk.session_in_hand(), other=other)
    return judged_page(desk, place, context_of(desk, place, None, None)).page
