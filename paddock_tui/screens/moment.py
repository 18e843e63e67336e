"""The time of what is done: now on the session's own day, asked for on a later one."""

import datetime as dt
from collections.abc import Callable

from paddock_tui.desk.day.afterwards import day_before
from paddock_tui.records.common import CLOCK
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question


def at_moment(host: Host, session: Ref, what: str, do: Callable[[dt.datetime], None]) -> None:
    """Do something with the time that it is; of a session of an earlier day the time is asked for."""
    date = day_before(host.desk.files, session, host.desk.now())
    if date is None:
        do(host.desk.now())
        return
    day = date

    def answered(text: str) -> str:
        time = CLOCK.read(text)
        if isinstance(time, InputError):
            return time.sentence()
        do(dt.datetime.combine(day, time))
        return ""

    said = (f"of {day:%d %b}, typed afterwards: a time of that day, e.g. 1320",)
    host.ask(Question(f"{what} at", answered, declined="nothing was noted", said=said))
