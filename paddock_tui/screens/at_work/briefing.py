"""The briefing: a set-up explained to whoever rides it next; enter on its last row shows the long form."""

import attrs

from paddock_tui.advice.briefing import briefing
from paddock_tui.desk.sessions.came_from import called, came_from, comes_from, usual
from paddock_tui.pages.briefing import BRIEF, FROM, MORE, NOTHING_BEFORE, briefing_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.host import Host
from paddock_tui.screens.subject import SubjectContext
from paddock_tui.widgets import messages


def make_page(about: SubjectContext) -> Page:
    desk, asked = about.desk, about.asked
    came = came_from(desk.files, about.ref, asked.place.came)
    found = briefing(desk.about(about.ref, about.assembled), asked.review, came)
    among = comes_from(desk.files, about.ref)
    chosen = asked.place.came or usual(desk.files, about.ref)
    named = None if not among else called(desk.files, chosen) if chosen is not None else NOTHING_BEFORE
    return briefing_page(found, about.heading, asked.place.long, named)


def hear(host: Host, message: messages.RowMessage) -> bool:
    if message.row.key == FROM:
        return _from(host, message)
    if message.row.key != MORE or not isinstance(message, messages.Chosen):
        return False
    host.place = attrs.evolve(host.place, long=True)
    host.draw()
    return True


def _from(host: Host, message: messages.RowMessage) -> bool:
    """Compare with the next thing that the rider may come from; whether the message was for that."""
    subject = host.place.subject
    if subject is None or not isinstance(message, messages.Stepped | messages.Chosen | messages.Toggled):
        host.board.say("- and + step through what you may come from")
        return True
    among = comes_from(host.desk.files, subject)
    if among:
        held = host.place.came or usual(host.desk.files, subject)
        at = among.index(held) if held in among else -1
        by = message.by if isinstance(message, messages.Stepped) else 1
        host.place = attrs.evolve(host.place, came=among[(at + by) % len(among)])
        host.draw()
    return True


def go_there(host: Host) -> None:
    host.go(attrs.evolve(host.place, room=BRIEF, long=False, came=None))
