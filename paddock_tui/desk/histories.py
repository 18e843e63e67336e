"""What went before a session or a profile: the earlier sessions of its bike, collected from the store."""

import bisect
import copy
import datetime as dt
import functools
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from paddock_tui.desk.lookup import Order, glance, of_bike, of_rider, order
from paddock_tui.facts import Situation
from paddock_tui.facts.past import ENDS, NOTHING, History, Lineage, PastSession, tyre_of
from paddock_tui.records.day import FORBIDDEN, DayEntry, RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles, Loaded

HELD = 64
"""So many last sessions of a bike stay in memory as files too: they are compared, copied, looked back at."""

_MOST = 6
"""Histories of one bike that are given again as they are."""


_Read = Callable[[Ref], Record | None]
"""What reads a record, without the figures that cannot be."""

_LAST = 100
"""More than any session of a day is numbered."""


class Histories:
    """Collects the history of a subject, and gives the same one again while no record of it was touched.

    What others change meanwhile is known once the files were looked at for it (`GarageFiles.changed`).
    """

    def __init__(self) -> None:
        self._bikes: dict[str, _BikePast] = {}
        self._riders: dict[tuple[str, str | None], _RiderPast] = {}

    def aside(self) -> "Histories":
        """Return histories for files set aside: they begin with what is known, and change nothing here."""
        other = Histories()
        other._bikes = {bike: one.aside() for bike, one in self._bikes.items()}
        other._riders = {rider: one.aside() for rider, one in self._riders.items()}
        return other

    def take(self, other: "Histories", files: GarageFiles) -> None:
        """Take over what another read further of the same files, which none of them changed since."""
        place, _ = files.touched_since(0)
        for bike, one in other._bikes.items():
            known = self._bikes.get(bike)
            if known is None or known.reaches < one.reaches:
                one.goes_on_from(place)
                self._bikes[bike] = one
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
        before = _order(own) if subject.kind == "session" and own is not None else None
        placed = of_bike(files, bike)
        end = len(placed) if before is None else bisect.bisect_left(placed, before, key=_place_of)
        one = self._bikes.get(bike)
        read = one.reaches if one is not None and one.may_stand(files) else 0
        return max(end - read, 0)

    def of(self, files: GarageFiles, subject: Ref, situation: Situation) -> History:
        """Return the history of a subject: this bike's sessions before it, all of them for a profile."""
        bike = situation.refs.get("bike")
        if bike is None:
            return NOTHING
        own = files.read(subject)
        before = _order(own) if subject.kind == "session" and own is not None else None
        placed = of_bike(files, bike.id)
        if before is not None and own is not None and own.data.get("number") is None:
            # Without a number it comes after all others of its day.
            placed = [one for one in placed if one[1] != subject]
            before = (before[0], _LAST, dt.time.max, subject.id)
        end = len(placed) if before is None else bisect.bisect_left(placed, before, key=_place_of)
        one = self._bikes.get(bike.id)
        if one is None or not one.may_stand(files):
            one = self._bikes[bike.id] = _BikePast(files, bike)
        tyres = situation.refs["tyres"].id if "tyres" in situation.refs else None
        return one.history(files, placed, end, tyres)

    def elsewhere(self, files: GarageFiles, subject: Ref, situation: Situation) -> tuple[PastSession, ...]:
        """Return the rider's earlier sessions on other bikes in which something happened, oldest first."""
        session, rider = situation.session, situation.refs.get("rider")
        own = files.read(subject)
        before = _order(own) if own is not None else None
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
            self._cut(_common(self._refs, placed))
            self._placed = placed
        end = bisect.bisect_left(placed, before, key=_place_of)
        for _, ref in placed[len(self._refs) : end]:
            row = files.rows.of(ref)
            if row is not None and row.bike != self._bike:
                self._read(files, ref, row.date)
            self._places[ref.id] = len(self._refs)
            self._refs.append(ref)
        return tuple(one.past for one in self._found if one.at < end and one.date != session.date)

    def _read(self, files: GarageFiles, ref: Ref, date: dt.date) -> None:
        """Read a session, and hold it where something happened in it."""
        loaded = files.read(ref) if "incidents" in files.data(ref) else None
        if loaded is not None and isinstance(loaded.possible, Session):
            self._found.append(_Incident(len(self._refs), date, PastSession(ref.id, loaded.possible)))
        files.let_go(ref)

    def _forget_touched(self, files: GarageFiles) -> None:
        self._place, touched = files.touched_since(self._place)
        if touched:
            self._cut(_first_of(touched, self._places, len(self._refs)))

    def _cut(self, at: int) -> None:
        _forget(self._refs[at:], self._places)
        del self._refs[at:]
        self._found = [one for one in self._found if one.at < at]


class _BikePast:
    """One bike's sessions in their order, as far as they were asked for, with what they name.

    Every session's history is the beginning of this: an edit of one has it and those after it read again.
    `tyre_sets` and `people` hold what all of them name.
    """

    def __init__(self, files: GarageFiles, bike: Ref) -> None:
        self._place, _ = files.touched_since(0)
        self._named: dict[Ref, Any] = {bike: None}
        self._refs: list[Ref] = []
        self._places: dict[str, int] = {}
        self._past: list[PastSession] = []
        self._counts: list[int] = []
        """How many of the sessions up to each can be read."""
        self._placed: Sequence[tuple[Order, Ref]] = ()
        self._line = Lineage()
        self._made: dict[int, History] = {}
        self.tyre_sets: dict[str, TyreSet] = {}
        self.people: dict[str, Rider] = {}

    @property
    def reaches(self) -> int:
        """How many sessions were read."""
        return len(self._refs)

    def goes_on_from(self, place: int) -> None:
        """Count what is touched from a place of a run on."""
        self._place = place

    def aside(self) -> "_BikePast":
        """Return one that goes on from here by itself."""
        other = copy.copy(self)
        other._named, other._refs, other._past = dict(self._named), list(self._refs), list(self._past)
        other._places = dict(self._places)
        other._counts, other._line, other._made = list(self._counts), self._line.branch(), {}
        other.tyre_sets, other.people = dict(self.tyre_sets), dict(self.people)
        return other

    def may_stand(self, files: GarageFiles) -> bool:
        """Return whether nothing that the sessions name was touched; forget sessions that were."""
        place, touched = files.touched_since(self._place)
        if any(ref in self._named for ref in touched):
            return False
        if touched:
            self._cut(_first_of(touched, self._places, len(self._refs)))
        self._place = place
        return True

    def history(
        self, files: GarageFiles, placed: Sequence[tuple[Order, Ref]], end: int, tyres: str | None
    ) -> History:
        """Return what went before a place among the bike's sessions; `tyres` is a set beside them."""
        self._read_up_to(files, placed, end)
        self._name_tyres(tyres, functools.partial(_possible, files))
        self._place, _ = files.touched_since(self._place)
        count = self._counts[end - 1] if end else 0
        found = self._made.pop(count, None)
        if found is None:
            found = History(tuple(self._past[:count]), self.tyre_sets, self.people).on_line(self._line)
        self._made[count] = found
        if len(self._made) > _MOST:
            del self._made[next(iter(self._made))]
        return found

    def _read_up_to(self, files: GarageFiles, placed: Sequence[tuple[Order, Ref]], end: int) -> None:
        if placed is not self._placed:
            self._cut(_common(self._refs, placed))
            self._placed = placed
        if (bygone := end - 1 - HELD) > len(self._refs):
            # What reads many quickly is loaded where there are many.
            from paddock_tui.store.bygone import Bygone

            reader = Bygone(files)
            with reader:
                self._add(placed[len(self._refs) : bygone], reader.possible)
        self._add(placed[len(self._refs) : end], functools.partial(_possible, files))

    def _add(self, placed: Sequence[tuple[Order, Ref]], read: _Read) -> None:
        for _, ref in placed:
            session = read(ref)
            self._places[ref.id] = len(self._refs)
            self._refs.append(ref)
            if isinstance(session, Session):
                self._name(session, read)
                self._past.append(_past(ref.id, session, self._named))
            self._counts.append(len(self._past))

    def _cut(self, at: int) -> None:
        """Forget the sessions from a place on, and what was learnt with them."""
        if at == len(self._refs):
            return
        count = self._counts[at - 1] if at else 0
        _forget(self._refs[at:], self._places)
        del self._refs[at:], self._counts[at:], self._past[count:]
        self._line = self._line.branch(count)
        self._made = {
            length: one.on_line(self._line) for length, one in self._made.items() if length <= count
        }

    def _name(self, session: Session, read: _Read) -> None:
        """Read what a session names: its tyre set, rider and day, and the day's venue."""
        self._name_tyres(session.tyres, read)
        rider = self._named_by("rider", session.rider, read)
        if isinstance(rider, Rider):
            self.people[session.rider or ""] = rider
        day = self._named_by("day", session.day, read)
        if isinstance(day, RidingDay):
            self._named_by("venue", day.venue, read)

    def _name_tyres(self, tyres: str | None, read: _Read) -> None:
        """Read a tyre set, and those that it goes on from."""
        wanted = [tyres]
        while wanted:
            name = wanted.pop()
            if name is not None and name not in self.tyre_sets:
                found = self._named_by("tyres", name, read)
                if isinstance(found, TyreSet):
                    self.tyre_sets[name] = found
                    wanted += [tyre_of(found, end).continues for end in ENDS]

    def _named_by(self, kind: str, name: str | None, read: _Read) -> Any:
        if name is None:
            return None
        ref = Ref(kind, name)
        if ref not in self._named:
            self._named[ref] = read(ref)
        return self._named[ref]


def _possible(files: GarageFiles, ref: Ref) -> Record | None:
    loaded = files.read(ref)
    return loaded.possible if loaded is not None else None


def past_sessions(files: GarageFiles, bike: Ref, refs: list[Ref]) -> tuple[PastSession, ...]:
    """Return these sessions of a bike as they go into its history, those that can be read and are its own."""
    own = [ref for ref in refs if files.data(ref).get("bike") == bike.id and "retired" not in files.data(ref)]
    placed = [((dt.date.min, 0, dt.time.min, one.id), one) for one in own]
    return _BikePast(files, bike).history(files, placed, len(placed), None).past


def _first_of(touched: set[Ref], places: dict[str, int], end: int) -> int:
    """Return where the first of these sessions stands; the end where none of them does."""
    return min((places.get(ref.id, end) for ref in touched if ref.kind == "session"), default=end)


def _forget(refs: list[Ref], places: dict[str, int]) -> None:
    for ref in refs:
        places.pop(ref.id, None)


def _common(refs: list[Ref], placed: Sequence[tuple[Order, Ref]]) -> int:
    """Return how many sessions stand where they stood."""
    pairs = enumerate(zip(refs, placed, strict=False))
    differs = (at for at, (ref, (_, other)) in pairs if ref is not other and ref != other)
    return next(differs, min(len(refs), len(placed)))


def _place_of(placed: tuple[Order, Ref]) -> Order:
    return placed[0]


def _order(loaded: Loaded) -> Order | None:
    """Order a session as the garage does, a retired one too."""
    seen = glance(loaded.ref, loaded.data, retired=True)
    return order(seen) if seen is not None else None


def _past(name: str, session: Session, by_ref: dict[Ref, Any]) -> PastSession:
    day = by_ref.get(Ref("day", session.day or ""))
    there = day.venue if isinstance(day, RidingDay) else None
    venue = by_ref.get(Ref("venue", there or ""))
    length, height = (venue.length, venue.altitude) if isinstance(venue, Venue) else (None, None)
    may_time = not (isinstance(day, RidingDay) and day.timing == FORBIDDEN)
    lap_km = length.to("km") if length is not None else None
    altitude_m = height.to("m") if height is not None else None
    held = day if isinstance(day, RidingDay) else None
    return PastSession(name, session, there, lap_km, may_time, _entry(day, session), altitude_m, held)


def _entry(day: Any, session: Session) -> DayEntry:
    """Return what its day holds of the rider on the bike."""
    entries = day.entries if isinstance(day, RidingDay) else {}
    return entries.get(session.rider or "", {}).get(session.bike or "", DayEntry())
