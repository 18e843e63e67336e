"""The clock of the place where the bike is: this computer's, told in the time zone of the venue."""

import contextlib
import datetime as dt
import threading
from collections.abc import Callable

from paddock_tui.desk.lookup import session_in_hand
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles

NEAR = dt.timedelta(days=1)
"""So far from today a day may be for its venue's time to count."""


class VenueClock:
    """Gives the time of now at the venue of the day in hand; without a time zone of it this computer's.

    Files are read in the thread that owns the clock, at first the one that made it; others get the zone
    that was found last.
    """

    def __init__(self, files: GarageFiles, local: Callable[[], dt.datetime] = dt.datetime.now) -> None:
        self._files, self._local = files, local
        self.owner = threading.get_ident()
        self._place = 0
        self._date: dt.date | None = None
        self._zone: dt.tzinfo | None = None
        self.name = ""
        """The name of the time zone that counts; empty while it is this computer's."""

    def __call__(self) -> dt.datetime:
        """Return the time by the clock of the place, without a zone."""
        local = self._local()
        if threading.get_ident() == self.owner:
            self._look(local)
        return local if self._zone is None else local.astimezone(self._zone).replace(tzinfo=None)

    def _look(self, local: dt.datetime) -> None:
        place, touched = self._files.touched_since(self._place)
        if self._date == local.date() and not touched:
            return
        self.name, self._zone = "", None
        with contextlib.suppress(OSError):
            self.name = self._named(local)
        if self.name:
            from zoneinfo import ZoneInfo

            self._zone = ZoneInfo(self.name)
        self._date = local.date()
        self._place, _ = self._files.touched_since(place)

    def _named(self, local: dt.datetime) -> str:
        """Return the time zone of the venue of the session in hand; empty without one, or on other days."""
        hand = session_in_hand(self._files, local)
        data = self._files.data(hand) if hand is not None else {}
        date = data.get("date")
        if not isinstance(date, dt.date) or abs(date - local.date()) > NEAR:
            return ""
        day = self._files.data(Ref("day", str(data.get("day"))))
        venue = self._files.read(Ref("venue", str(day.get("venue"))))
        return str(getattr(venue.record, "time_zone", None) or "") if venue is not None else ""


def read_here(now: Callable[[], dt.datetime]) -> None:
    """Let a clock read files in this thread from now on: what was loaded in another is handed over."""
    if isinstance(now, VenueClock):
        now.owner = threading.get_ident()


def venue_zone(now: Callable[[], dt.datetime]) -> str:
    """Return the place by whose clock times are told, where that is not this computer's; else nothing."""
    if not isinstance(now, VenueClock) or not now.name:
        return ""
    place = now.name.rpartition("/")[2].replace("_", " ")
    return place if abs(now() - dt.datetime.now()) > dt.timedelta(minutes=1) else ""
