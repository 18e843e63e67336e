"""The season on the screen: a year at a time."""

import attrs

from paddock_tui.desk.answers import Reading
from paddock_tui.desk.season import answer
from paddock_tui.pages.rows import Page
from paddock_tui.pages.season import YEAR, season_awaited, season_page
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.widgets import messages


@attrs.define
class ShownYear:
    """The year looked at in this run; None is this one."""

    year: int | None = None


def make_page(asked: PageContext) -> Page:
    shown = asked.state.of(ShownYear).year
    found = answer(asked.desk, shown)
    if isinstance(found, Reading):
        return season_awaited(shown or asked.desk.now().year, found)
    return season_page(found)


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on the year; whether the message was for it."""
    if message.row.path != YEAR:
        return False
    found = answer(host.desk, host.state.of(ShownYear).year)
    if isinstance(found, Reading):
        host.board.say(f"{found.words()}: another year is shown once all of this one is read")
        return True
    if isinstance(message, messages.Stepped):
        at = found.years.index(found.year) + message.by
        _show(host, found.years[max(0, min(len(found.years) - 1, at))])
    elif isinstance(message, messages.Accepted):
        text = message.text.strip()
        if text.isdecimal() and int(text) in found.years:
            _show(host, int(text))
        else:
            host.board.refuse(f"a year in which something stands: {', '.join(map(str, found.years))}")
    elif isinstance(message, messages.Cleared):
        _show(host, None)
    elif isinstance(message, messages.Digit):
        host.board.edit(message.text)
    return True


def _show(host: Host, year: int | None) -> None:
    host.state.of(ShownYear).year = year
    host.board.done()
    host.draw()
