"""The garage: days, sessions and all records."""

import attrs

from paddock_tui.desk.answers import Reading
from paddock_tui.pages.garage import garage_page, problems_aside
from paddock_tui.pages.garage_list import EARLIER, lists_many
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, to
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.widgets import messages


def _page(asked: PageContext) -> Page:
    place = asked.place
    problems = Reading(0, 0) if asked.is_reading else problems_aside(asked.desk)
    return garage_page(
        asked.desk,
        retired=place.retired,
        now=asked.now,
        years=place.years,
        problems=problems,
        counts_open=not asked.is_reading,
    )


def _hears(host: Host, message: messages.RowMessage) -> bool:
    """List the sessions or days of an earlier year, or hide them again; whether the message was for it."""
    path = message.row.path
    if not isinstance(message, messages.Chosen) or path[:1] != (EARLIER,):
        return False
    host.place = attrs.evolve(host.place, years=host.place.years ^ {path[-1]})
    host.draw()
    return True


ROOM = Room(
    id="garage",
    page=_page,
    hears=_hears,
    action=Action("garage", "g", "garage", "days, sessions and all records", hint=2, do=to("garage")),
    unjudged=True,
    lists_many=lambda desk: lists_many(desk.files),
    answers_in_hand=True,
)
