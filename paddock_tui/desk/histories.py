"""What went before a session or a profile: the earlier sessions of its bike, collected from the store."""

import datetime as dt
from collections.abc import Iterator
from typing import Any

from paddock_tui.desk.lookup import glance, order
from paddock_tui.facts import Situation
from paddock_tui.facts.past import ENDS, FORBIDDEN, History, PastSession, tyre_of
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles, Loaded


class Histories:
    """Collects the history of a subject, and gives the same one again while no file of it changed.

    Which sessions name a bike is looked for in the bytes of their files, once for each listing; a
    session that another program moves to another bike meanwhile is found when the listing changes.
    """

    def __init__(self) -> None:
        self._naming: dict[str, tuple[tuple[Ref, ...], tuple[Ref, ...]]] = {}
        self._kept: dict[Ref, tuple[tuple[Loaded, ...], str | None, History]] = {}

    def of(self, files: GarageFiles, subject: Ref, situation: Situation) -> History:
        """Return the history of a subject: this bike's sessions before it, all of them for a profile."""
        bike = situation.refs.get("bike")
        if bike is None:
            return History()
        own = files.read(subject)
        before = _order(own) if subject.kind == "session" and own is not None else None
        read = [one for ref in self._sessions(files, bike.id) if (one := files.read(ref)) is not None]
        past = [one for one in read if one.ref != subject and _is_before(one, before, bike.id)]
        past.sort(key=lambda one: _order(one) or _FIRST)
        tyres = situation.refs["tyres"].id if "tyres" in situation.refs else None
        named = tuple(_named(files, past, tyres))
        key = (*past, *named)
        kept = self._kept.get(subject)
        if kept is not None and kept[1] == tyres and _identical(kept[0], key):
            return kept[2]
        found = _history(past, named)
        self._kept[subject] = (key, tyres, found)
        return found

    def elsewhere(self, files: GarageFiles, subject: Ref, situation: Situation) -> tuple[PastSession, ...]:
        """Return the rider's earlier sessions on other bikes in which something happened, oldest first."""
        session, rider = situation.session, situation.refs.get("rider")
        own = files.read(subject)
        before = _order(own) if own is not None else None
        if session is None or rider is None or before is None:
            return ()
        happened = set(self._sessions(files, _INCIDENTS))
        found = []
        for ref in self._sessions(files, rider.id):
            one = files.read(ref) if ref in happened else None
            at = _order(one) if one is not None and "retired" not in one.data else None
            record = one.record if one is not None else None
            if at is None or at >= before or not isinstance(record, Session):
                continue
            if record.rider == rider.id and record.bike != session.bike and record.date != session.date:
                found.append((at, PastSession(ref.id, record)))
        return tuple(one for _, one in sorted(found, key=lambda pair: pair[0]))

    def _sessions(self, files: GarageFiles, name: str) -> tuple[Ref, ...]:
        """List the sessions whose text holds a name."""
        listing = files.listing("session")
        known = self._naming.get(name)
        if known is None or known[0] != listing:
            hits = tuple(ref for ref in files.mentioning(name) if ref.kind == "session")
            known = self._naming[name] = (listing, hits)
        return known[1]


_INCIDENTS = "incidents."
"""What stands in the text of a session in which something happened."""

_Order = tuple[dt.date, int, dt.time, str]
_FIRST: _Order = (dt.date.min, 0, dt.time.min, "")


def _order(loaded: Loaded) -> _Order | None:
    """Order a session as the garage does, a retired one too."""
    seen = glance(loaded.ref, {key: value for key, value in loaded.data.items() if key != "retired"})
    return order(seen) if seen is not None else None


def _is_before(one: Loaded, before: _Order | None, bike: str) -> bool:
    at = _order(one)
    record = one.record
    if at is None or "retired" in one.data or not isinstance(record, Session) or record.bike != bike:
        return False
    return before is None or at < before


def _identical(old: tuple[Loaded, ...], new: tuple[Loaded, ...]) -> bool:
    return len(old) == len(new) and all(one is other for one, other in zip(old, new, strict=True))


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
    return PastSession(loaded.ref.id, session, name, lap_km, may_time, _entry(day, session), altitude_m)


def _entry(day: Any, session: Session) -> DayEntry:
    """Return what its day holds of the rider on the bike."""
    entries = day.entries if isinstance(day, RidingDay) else {}
    return entries.get(session.rider or "", {}).get(session.bike or "", DayEntry())
