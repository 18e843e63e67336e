"""What went before a session or a profile: the earlier sessions of its bike, collected from the store."""

import datetime as dt
from collections.abc import Iterator
from typing import Any

import attrs

from paddock_tui.desk.lookup import glance, order, order_of
from paddock_tui.facts import Situation
from paddock_tui.facts.past import ENDS, FORBIDDEN, History, PastSession, tyre_of
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles, Loaded


@attrs.define
class _Kept:
    """A history, what it was made for, and the records that it was made from."""

    about: tuple[object, ...]
    made_from: frozenset[Ref]
    history: History
    place: int


class Histories:
    """Collects the history of a subject, and gives the same one again while no record of it was touched.

    What others change meanwhile is known once the files were looked at for it (`GarageFiles.changed`).
    """

    def __init__(self) -> None:
        self._kept: dict[Ref, _Kept] = {}

    def of(self, files: GarageFiles, subject: Ref, situation: Situation) -> History:
        """Return the history of a subject: this bike's sessions before it, all of them for a profile."""
        bike = situation.refs.get("bike")
        if bike is None:
            return History()
        own = files.read(subject)
        before = _order(own) if subject.kind == "session" and own is not None else None
        tyres = situation.refs["tyres"].id if "tyres" in situation.refs else None
        about = (files.listing("session"), bike.id, before, tyres)
        kept = self._kept.get(subject)
        if kept is not None and kept.about == about and self._stands(files, kept, subject, bike.id):
            return kept.history
        place, _ = files.touched_since(0)
        past = list(_before(files, subject, bike.id, before))
        named = tuple(_named(files, past, tyres))
        made_from = frozenset(one.ref for one in (*past, *named))
        found = _history(past, named)
        self._kept[subject] = _Kept(about, made_from, found, place)
        return found

    def _stands(self, files: GarageFiles, kept: _Kept, subject: Ref, bike: str) -> bool:
        """Return whether no record that a history was made from was touched, and none came to it."""
        place, touched = files.touched_since(kept.place)
        for ref in touched:
            row = files.rows.of(ref) if ref.kind == "session" and ref != subject else None
            if ref in kept.made_from or (row is not None and row.bike == bike):
                return False
        kept.place = place
        return True

    def elsewhere(self, files: GarageFiles, subject: Ref, situation: Situation) -> tuple[PastSession, ...]:
        """Return the rider's earlier sessions on other bikes in which something happened, oldest first."""
        session, rider = situation.session, situation.refs.get("rider")
        own = files.read(subject)
        before = _order(own) if own is not None else None
        if session is None or rider is None or before is None:
            return ()
        found = []
        for ref in files.listing("session"):
            row = files.rows.of(ref)
            if row is None or row.rider != rider.id or row.bike == session.bike or row.date == session.date:
                continue
            at = order_of(ref, row)
            if at >= before or "incidents" not in files.data(ref):
                continue
            one = files.read(ref)
            if one is not None and isinstance(one.record, Session):
                found.append((at, PastSession(ref.id, one.record)))
        return tuple(one for _, one in sorted(found, key=lambda pair: pair[0]))


def _before(files: GarageFiles, subject: Ref, bike: str, before: "_Order | None") -> Iterator[Loaded]:
    """Read the sessions of a bike before one, in their order; all of them where it is None."""
    placed = []
    for ref in files.listing("session"):
        row = files.rows.of(ref)
        if row is not None and row.bike == bike and ref != subject:
            at = order_of(ref, row)
            if before is None or at < before:
                placed.append((at, ref))
    files.rows.write()
    for _, ref in sorted(placed):
        one = files.read(ref)
        if one is not None and isinstance(one.record, Session) and one.record.bike == bike:
            yield one


_Order = tuple[dt.date, int, dt.time, str]


def _order(loaded: Loaded) -> _Order | None:
    """Order a session as the garage does, a retired one too."""
    seen = glance(loaded.ref, {key: value for key, value in loaded.data.items() if key != "retired"})
    return order(seen) if seen is not None else None


def _named(files: GarageFiles, past: list[Loaded], tyres: str | None) -> Iterator[Loaded]:
    """Read what the sessions name: tyre sets with those they go on from, riders, days and venues."""
    records = [one.record for one in past if isinstance(one.record, Session)]
    wanted = [tyres, *(one.tyres for one in records)]
    seen: set[str] = set()
    while wanted:
        name = wanted.pop(0)
        if name is None or name in seen:
            continue
        seen.add(name)
        found = files.read(Ref("tyres", name))
        if found is not None:
            yield found
            if isinstance(found.record, TyreSet):
                wanted += [tyre_of(found.record, end).continues for end in ENDS]
    for kind, names in (("rider", (one.rider for one in records)), ("day", (one.day for one in records))):
        for name in dict.fromkeys(name for name in names if name is not None):
            found = files.read(Ref(kind, name))
            if found is None:
                continue
            yield found
            venue = found.record.venue if isinstance(found.record, RidingDay) else None
            place = files.read(Ref("venue", venue)) if venue is not None else None
            if place is not None:
                yield place


def _history(past: list[Loaded], named: tuple[Loaded, ...]) -> History:
    by_ref: dict[Ref, Any] = {one.ref: one.record for one in named}
    tyre_sets = {ref.id: one for ref, one in by_ref.items() if isinstance(one, TyreSet)}
    people = {ref.id: one for ref, one in by_ref.items() if isinstance(one, Rider)}
    return History(tuple(_past(one, by_ref) for one in past), tyre_sets, people)


def _past(loaded: Loaded, by_ref: dict[Ref, Any]) -> PastSession:
    session = loaded.record
    if not isinstance(session, Session):
        raise TypeError(loaded.name)
    day = by_ref.get(Ref("day", session.day or ""))
    name = day.venue if isinstance(day, RidingDay) else None
    venue = by_ref.get(Ref("venue", name or ""))
    length, height = (venue.length, venue.altitude) if isinstance(venue, Venue) else (None, None)
    may_time = not (isinstance(day, RidingDay) and day.timing == FORBIDDEN)
    lap_km = length.to("km") if length is not None else None
    altitude_m = height.to("m") if height is not None else None
    held = day if isinstance(day, RidingDay) else None
    return PastSession(loaded.ref.id, session, name, lap_km, may_time, _entry(day, session), altitude_m, held)


def _entry(day: Any, session: Session) -> DayEntry:
    """Return what its day holds of the rider on the bike."""
    entries = day.entries if isinstance(day, RidingDay) else {}
    return entries.get(session.rider or "", {}).get(session.bike or "", DayEntry())
