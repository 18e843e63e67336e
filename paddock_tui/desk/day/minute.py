"""Whether what was made of a garage stands: for its minute, and until a record reads otherwise."""

import datetime as dt

import attrs

from paddock_tui.desk.desk import Desk


@attrs.define
class Minute:
    """The minute in which something was made, and how far the records were touched by then."""

    _place: int = 0
    _minute: dt.datetime | None = None

    def is_over(self, desk: Desk) -> bool:
        """Return whether another minute began, or a record was touched, since the last time; asked once."""
        minute = desk.now().replace(second=0, microsecond=0)
        self._place, touched = desk.files.touched_since(self._place)
        over = bool(touched) or minute != self._minute
        self._minute = minute
        return over

    def read(self, desk: Desk) -> None:
        """Take what was read meanwhile for known: reading touches what it reads for the first time."""
        self._place, _ = desk.files.touched_since(self._place)
