"""What went before a session or a profile: the earlier sessions of its bike, collected from the store."""

import bisect
import copy
import datetime as dt
import itertools
from collections.abc import Callable, Sequence
from typing import NamedTuple

from paddock_tui.desk.bike_past import BikePast, common, first_of, forget
from paddock_tui.desk.lookup import Order, at_place, glance, of_bike, of_rider, order
from paddock_tui.facts import Situation
from paddock_tui.facts.past import NOTHING, History, PastSession
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.store.garage import GarageFiles, Loaded

_LAST = 100
"""More than any session of a day is numbered."""


class Histories:
    """Collects the history of a subject, and gives the same one again while no record of it was touched.

    What others change meanwhile is known once the files were looked at for it (`GarageFiles.changed`).
    """

    def __init__(self) -> None:
        self._bikes: dict[str, BikePast] = {}
        self._riders: dict[tuple[str, str | None], _RiderPast] = {}
        self._years: dict[tuple[str, int], BikePast] = {}

    def aside(self) -> "Histories":
        """Return histories for files set aside: they begin with what is known, and change nothing here."""
        other = Histories()
        other._bikes = {bike: one.aside() for bike, one in self._bikes.items()}
        other._riders = {rider: one.aside() for rider, one in self._riders.items()}
        other._years = {year: one.aside() for year, one in self._years.items()}
        return other

    def take(self, other: "Histories", files: GarageFiles) -> None:
        """Take over what another read further of the same files, which none of them changed since."""
        place, _ = files.touched_since(0)
        for bike, one in other._bikes.items():
            known = self._bikes.get(bike)
            if known is None or known.reaches < one.reaches:
                one.goes_on_from(place, files)
                self._bikes[bike] = one
        for year, one in other._years.items():
            known = self._years.get(year)
            if known is None or known.reaches < one.reaches:
                one.goes_on_from(place, files)
                self._years[year] = one
        for rider, elsewhere in other._riders.items():
            before = self._riders.get(rider)
            if before is None or before.reaches < elsewhere.reaches:
                elsewhere.goes_on_from(place)
                self._riders[rider] = elsewhere

    def unread(self, files: GarageFiles, subject: Ref) -> int:
        """Count the sessions that have to be read before a subject's history is known."""
        bike = files.data(subject).get("bike")
        if not isinstance(bike, str):
            return 0
        own = files.read(subject)
        before = _order(files, own) if subject.kind == "session" and own is not None else None
        placed = of_bike(files, bike)
        end = len(placed) if before is None else bisect.bisect_left(placed, before, key=_place_of)
        one = self._of_bike(files, Ref("bike", bike))
        one.begin(files, placed, end)
        return max(end - one.reaches, 0)

    def _of_bike(self, files: GarageFiles, bike: Ref) -> "BikePast":
        one = self._bikes.get(bike.id)
        if one is None or not one.may_stand(files):
            one = self._bikes[bike.id] = BikePast(files, bike)
        return one

    def to_keep(self, files: GarageFiles) -> list[Callable[[], None]]:
        """Put together what a later run may go on from: of bikes of which much was read that was not kept.

        Each writes one bike's, in whatever thread.
        """
        found = (one.to_keep(files) for one in self._bikes.values())
        return [one for one in found if one is not None]

    @property
    def read_later(self) -> int:
        """How many sessions were read that earlier runs had left unread."""
        return sum(one.read_later for one in self._bikes.values())

    def of(self, files: GarageFiles, subject: Ref, situation: Situation) -> History:
        """Return the history of a subject: this bike's sessions before it, all of them for a profile."""
        bike = situation.refs.get("bike")
        if bike is None:
            return NOTHING
        own = files.read(subject)
        before = _order(files, own) if subject.kind == "session" and own is not None else None
        placed = of_bike(files, bike.id)
        if before is not None and own is not None and own.data.get("number") is None:
            # Without a number it comes after all others of its day.
            placed = [one for one in placed if one[1] != subject]
            before = (before[0], _LAST, dt.time.max, subject.id)
        end = len(placed) if before is None else bisect.bisect_left(placed, before, key=_place_of)
        one = self._of_bike(files, bike)
        tyres = situation.refs["tyres"].id if "tyres" in situation.refs else None
        return one.history(files, placed, end, tyres)

    def of_year(self, files: GarageFiles, bike: Ref, year: int) -> tuple[PastSession, ...]:
        """Return a bike's sessions of a year, oldest first: for them none of another year is read."""
        placed = of_bike(files, bike.id)
        first, end = (find(placed, year, key=_year_of) for find in (bisect.bisect_left, bisect.bisect_right))
        one = self._years.get((bike.id, year))
        if one is None or not one.may_stand(files):
            one = self._years[bike.id, year] = BikePast(files, bike, carries=False)
        return one.history(files, placed[first:end], end - first, None).past

    def elsewhere(self, files: GarageFiles, subject: Ref, situation: Situation) -> tuple[PastSession, ...]:
        """Return the rider's earlier sessions on other bikes in which something happened, oldest first."""
        session, rider = situation.session, situation.refs.get("rider")
        own = files.read(subject)
        before = _order(files, own) if own is not None else None
        if session is None or rider is None or before is None:
            return ()
        placed = of_rider(files, rider.id)
        one = self._riders.get((rider.id, session.bike))
        if one is None:
            one = self._riders[rider.id, session.bike] = _RiderPast(files, session.bike)
        return one.elsewhere(files, placed, before, session)


class Untold(Histories):
    """Stands for histories while these are still read: nothing went before, as far as is known."""

    def of(self, _files: GarageFiles, _subject: Ref, _situation: Situation) -> History:
        """Return an empty history."""
        return History()

    def elsewhere(self, _files: GarageFiles, _subject: Ref, _situation: Situation) -> tuple[PastSession, ...]:
        """Return nothing."""
        return ()


class _Incident(NamedTuple):
    """A session in which something happened: where it stands, its day, and what it holds."""

    at: int
    date: dt.date
    past: PastSession


class _RiderPast:
    """One rider's sessions on other bikes than one, in which something happened, as far as asked for."""

    def __init__(self, files: GarageFiles, bike: str | None) -> None:
        self._bike = bike
        self._place, _ = files.touched_since(0)
        self._refs: list[Ref] = []
        self._places: dict[str, int] = {}
        self._found: list[_Incident] = []
        self._placed: Sequence[tuple[Order, Ref]] = ()

    @property
    def reaches(self) -> int:
        """How many sessions were looked at."""
        return len(self._refs)

    def goes_on_from(self, place: int) -> None:
        """Count what is touched from a place of a run on."""
        self._place = place

    def aside(self) -> "_RiderPast":
        """Return one that goes on from here by itself."""
        other = copy.copy(self)
        other._refs, other._found = list(self._refs), list(self._found)
        other._places = dict(self._places)
        return other

    def elsewhere(
        self, files: GarageFiles, placed: Sequence[tuple[Order, Ref]], before: Order, session: Session
    ) -> tuple[PastSession, ...]:
        """Return those before a place that were on other bikes and days than a session."""
        self._forget_touched(files)
        if placed is not self._placed:
            self._cut(common(self._refs, placed))
            self._placed = placed
        end = bisect.bisect_left(placed, before, key=_place_of)
        more = [ref for _, ref in placed[len(self._refs) : end]]
        first = len(self._refs)
        for at, row in enumerate(files.rows.each(more), first):
            if row is not None and row.happened and row.bike != self._bike:
                self._read(files, more[at - first], at, row.date)
        self._places.update(zip([ref.id for ref in more], itertools.count(first)))
        self._refs += more
        return tuple(one.past for one in self._found if one.at < end and one.date != session.date)

    def _read(self, files: GarageFiles, ref: Ref, at: int, date: dt.date) -> None:
        """Read a session, and hold it with its place where something happened in it."""
        loaded = files.read(ref)
        if loaded is not None and isinstance(loaded.possible, Session):
            from paddock_tui.store.seals import seal

            past = PastSession(ref.id, loaded.possible, seal=seal(files, ref))
            self._found.append(_Incident(at, date, past))
        files.let_go(ref)

    def _forget_touched(self, files: GarageFiles) -> None:
        self._place, touched = files.touched_since(self._place)
        if touched:
            self._cut(first_of(touched, self._places, len(self._refs)))

    def _cut(self, at: int) -> None:
        forget(self._refs[at:], self._places)
        del self._refs[at:]
        self._found = [one for one in self._found if one.at < at]


def past_sessions(files: GarageFiles, bike: Ref, refs: list[Ref]) -> tuple[PastSession, ...]:
    """Return these sessions of a bike as they go into its history, those that can be read and are its own."""
    own = [ref for ref in refs if files.data(ref).get("bike") == bike.id and "retired" not in files.data(ref)]
    placed = [((dt.date.min, 0, dt.time.min, one.id), one) for one in own]
    return BikePast(files, bike).history(files, placed, len(placed), None).past


def _place_of(placed: tuple[Order, Ref]) -> Order:
    return placed[0]


def _year_of(placed: tuple[Order, Ref]) -> int:
    return placed[0][0].year


def _order(files: GarageFiles, loaded: Loaded) -> Order | None:
    """Order a session as the garage does, a retired one too."""
    seen = at_place(files, loaded.ref) or glance(loaded.ref, loaded.data, retired=True)
    return order(seen) if seen is not None else None
