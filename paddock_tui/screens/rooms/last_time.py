"""Last time here: this bike's set-up here before, beside this one."""

import attrs

from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.desk.sessions.last_time import last_time
from paddock_tui.pages.last_time import last_time_page, puts_of
from paddock_tui.pages.rows import Page
from paddock_tui.records.edits import Step
from paddock_tui.screens.action import Action, needs_session, to
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject


def _page(about: SubjectContext) -> Page:
    found = last_time(about.assembled.situation)
    bike = bike_of(about.desk.files, about.ref)
    return last_time_page(about.loaded, found, bike, about.heading, about.units)


def _take(host: Host) -> None:
    if host.place.room != ROOM.id:
        to(ROOM.id)(host)
    subject, puts = host.place.subject, puts_of(host.board.page)
    if subject is None or not puts:
        host.board.say("nothing of the set-up of last time differs: p goes to the set-up")
        return
    step = offering(host.desk.files, subject, puts)
    said = f"set-up of last time here: {len(puts)} values"
    host.attempt(attrs.evolve(step, label=said) if isinstance(step, Step) else step)


ROOM = Room(
    id="last",
    page=of_subject(_page),
    about="session",
    action=Action(
        "last",
        "h",
        "last time here",
        "this bike's set-up here before, beside this one",
        needs_session,
        hint=5,
        do=to("last"),
    ),
)

TAKE = Action(
    "take_last", "", "use last time", "use the whole set-up of last time here", needs_session, do=_take
)
