"""Earlier sessions whose files are not read: what is known without stands at once, all else is read then."""

import datetime as dt
from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

import attrs

from paddock_tui.facts.past import PastSession


class InShort(NamedTuple):
    """What is known of a session whose file was not read."""

    date: dt.date | None
    rider: str | None
    tyres: str | None
    ridden: bool


_READ = tuple(one.name for one in attrs.fields(PastSession))


class UnreadSession(PastSession):
    """An earlier session that is read when something is asked of it that is not known without."""

    __slots__ = ("_read", "_short")

    _short: InShort
    _read: Callable[[str], PastSession]

    @classmethod
    def later(
        cls, name: str, venue: str | None, short: InShort, read: Callable[[str], PastSession]
    ) -> "UnreadSession":
        """Return one session; `read` gives it whole by its id."""
        one = cls.__new__(cls)
        for key, value in (("id", name), ("venue", venue), ("_short", short), ("_read", read)):
            object.__setattr__(one, key, value)
        return one

    def fill(self, whole: PastSession) -> None:
        """Put in what was read."""
        for key in _READ:
            object.__setattr__(self, key, getattr(whole, key))

    @property
    def date(self) -> dt.date | None:
        """The day of the session."""
        return self._short.date

    @property
    def rider(self) -> str | None:
        """The id of its rider."""
        return self._short.rider

    @property
    def tyres(self) -> str | None:
        """The id of its tyre set."""
        return self._short.tyres

    @property
    def ridden(self) -> bool:
        """Whether it was ridden."""
        return self._short.ridden

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> object:
            """Read the session for what is not there yet."""
            if name not in _READ:
                raise AttributeError(name)
            whole = self._read(self.id)
            self.fill(whole)
            return getattr(whole, name)
