"""Earlier sessions whose files are not read: what is known without stands at once, all else is read then."""

import datetime as dt
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

import attrs

from paddock_tui.facts.past import PastSession

InShort = tuple[str, str | None, dt.date | None, str | None, str | None, bool]
"""What is known of a session whose file was not read: id, venue, date, rider, tyre set, whether ridden."""

_PUT = ("id", "venue", "date", "rider", "tyres", "ridden", "_read")
"""Put in place as nobody else may: thousands of sessions stand there at each start."""

_READ = tuple(one.name for one in attrs.fields(PastSession))


class UnreadSession(PastSession):
    """An earlier session that is read when something is asked of it that is not known without."""

    __slots__ = ("_read", "date", "ridden", "rider", "tyres")

    if TYPE_CHECKING:
        _read: Callable[[str], PastSession]

    @classmethod
    def several(cls, known: Iterable[InShort], read: Callable[[str], PastSession]) -> list["UnreadSession"]:
        """Return many sessions of which something is known; `read` gives one whole by its id."""
        found: list[UnreadSession] = []
        puts = [getattr(cls, name).__set__ for name in _PUT]
        put_id, put_venue, put_date, put_rider, put_tyres, put_ridden, put_read = puts
        for name, venue, date, rider, tyres, ridden in known:
            one = cls.__new__(cls)
            put_id(one, name)
            put_venue(one, venue)
            put_date(one, date)
            put_rider(one, rider)
            put_tyres(one, tyres)
            put_ridden(one, ridden)
            put_read(one, read)
            found.append(one)
        return found

    def fill(self, whole: PastSession) -> None:
        """Put in what was read."""
        for key in _READ:
            object.__setattr__(self, key, getattr(whole, key))

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> object:
            """Read the session for what is not there yet."""
            if name not in _READ:
                raise AttributeError(name)
            whole = self._read(self.id)
            self.fill(whole)
            return getattr(whole, name)
