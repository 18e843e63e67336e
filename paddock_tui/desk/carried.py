"""What was learnt along a bike's bygone sessions, carried from one run to the next.

Behind a day that is long over, the states of all walks along the bike's sessions are written to the user's
cache, with the stamps of all that they rest on. A later run that finds every one of these files as it was
goes on from there, and reads an earlier session only where something of it is asked for. Whatever is not as
it was makes all be read.
"""

import contextlib
import datetime as dt
import functools
import itertools
import operator
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.desk.past_later import PastLater
from paddock_tui.facts.begun import (
    FAR,
    NEAR,
    Begun,
    Distance,
    FoldToKeep,
    KeptAt,
    KeptFold,
    NotCarried,
    RestsOn,
)
from paddock_tui.facts.carried_states import StateReader, StateWriter, mentioned
from paddock_tui.facts.past import ENDS, WALKS, History, Lineage, PastSession, tyre_of
from paddock_tui.facts.unread_past import InShort
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.carried_files import read_carried, write_carried
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.later import LaterFiles
from paddock_tui.store.listing import Stamp
from paddock_tui.store.seals import seal, seal_of

Placed = Sequence[tuple[tuple[dt.date, int, dt.time, str], Ref]]


class TakenUp:
    """The first sessions of a bike as an earlier run left them: unread, and what was learnt along them.

    `named` is what the sessions name, by the stamps of their files, None where there is none; `not_before`
    are sessions that some were copied from and that are not before these. `far` tells what is kept far back.
    """

    def __init__(
        self, distance: Distance, body: dict[str, Any], far: tuple[int, str], later: PastLater, real: Path
    ) -> None:
        self.name, self.later, self.far, self._real = distance.name, later, far, real
        self.tyre_sets, self.people = tuple(body["tyre_sets"]), tuple(body["people"])
        self.named = _named(body)
        self.not_before = frozenset(body["not_before"])
        self.folds: dict[str, Any] = body["folds"]
        """The folds as they are written."""
        self.begun = _begun(body, later, lambda: one.begun if (one := self.earlier) is not None else None)

    @functools.cached_property
    def earlier(self) -> "TakenUp | None":
        """What is kept far back, where this is not that: it stands wherever this does."""
        if self.name == FAR.name:
            return None
        held = read_carried(self._real, FAR.of(self.later.bike))
        if held is None or (held.body["count"], held.digest) != self.far:
            return None
        return TakenUp(FAR, held.body, self.far, self.later, self._real)

    def by(self, count: int) -> "TakenUp | None":
        """Return this, or what is kept far back, that is behind no more than so many sessions."""
        return (
            self
            if self.begun.count <= count
            else self.earlier.by(count)
            if self.earlier is not None
            else None
        )


def take_up(files: GarageFiles, bike: Ref, placed: Placed, end: int) -> TakenUp | None:
    """Take up what an earlier run left of the sessions before a place; None where all is to be read.

    What is kept far back is taken where the rest does not stand, and where it is to be kept anew.
    """
    held = files.read(bike)
    if held is None or not isinstance(held.record, Bike) or held.troubles or held.unknown:
        return None
    own, far = (bike.id, held.record), FAR.place(lambda at: placed[at][0][0], end)
    for distance in (NEAR, FAR):
        found = _taken_up(files, own, placed[:end], distance)
        if found is not None and (distance is FAR or far - found.far[0] < FAR.worth):
            return found
    return None


def _taken_up(
    files: GarageFiles, bike: tuple[str, Bike], placed: Placed, distance: Distance
) -> TakenUp | None:
    real = files.tree.real
    held = read_carried(real, distance.of(bike[0]))
    if held is None:
        return None
    try:
        known = _known(files, held.body, placed)
        if known is None:
            return None
        later = PastLater(LaterFiles(files, bike), bike[0], known)
        far = (
            (len(known), held.digest) if distance is FAR else (int(held.body["far"][0]), held.body["far"][1])
        )
        return TakenUp(distance, held.body, far, later, real)
    except (KeyError, TypeError, ValueError, IndexError, AttributeError, NotCarried):
        return None


def _known(
    files: GarageFiles, body: dict[str, Any], placed: Placed
) -> list[tuple[Ref, str | None, InShort]] | None:
    """Return what is known of the sessions without reading them; None where one thing is not as it was."""
    count, up_to = int(body["count"]), dt.date.fromisoformat(body["up_to"])
    if not 0 < count <= len(placed) or placed[count - 1][0][0] != up_to:
        return None
    if count < len(placed) and placed[count][0][0] <= up_to:
        return None
    refs, named = [ref for _, ref in placed[:count]], _named(body)
    if body["seal"] != seal_of(files, refs) or not _are_as_named(files, named):
        return None
    not_before = frozenset(body["not_before"])
    others = [Ref("session", name) for name in not_before]
    if any(files.former.current(ref) != ref for ref in (*named, *others)):
        return None
    if any(ref.id in not_before for _, ref in placed[count:]):
        return None
    venues, of_venue, ridden = body["venues"], body["of_venue"], body["ridden"]
    rows = [row for row in files.rows.each(refs) if row is not None]
    return [
        (
            ref,
            venues[at] if at >= 0 else None,
            InShort(row.date, row.rider or None, row.tyres or None, was_ridden == "1"),
        )
        for ref, row, at, was_ridden in zip(refs, rows, of_venue, ridden, strict=True)
    ]


def _named(body: dict[str, Any]) -> dict[Ref, Stamp | None]:
    return {Ref(kind, name): tuple(stamp) if stamp else None for kind, name, stamp in body["named"]}


def _begun(body: dict[str, Any], later: PastLater, earlier: Callable[[], Begun | None]) -> Begun:
    taker = StateReader(body["words"], later.record, later.past)
    states: dict[str, Callable[[], Any]] = {
        name: functools.partial(taker.take, value) for name, value in body["walks"].items()
    }
    folds = {}
    for rider, kept in body["folds"].items():
        elsewhere = tuple((name, seal) for name, seal in kept["elsewhere"])
        limits = tuple((name, value) for name, value in kept["limits"])
        rests_on = RestsOn(elsewhere, frozenset(kept["fall_items"]), limits)
        reader = StateReader(kept["words"], later.record, later.past)
        take = functools.partial(reader.take, kept["state"])
        folds[rider] = KeptFold(int(kept["count"]), dt.date.fromisoformat(kept["up_to"]), rests_on, take)
    return Begun(int(body["count"]), dt.date.fromisoformat(body["up_to"]), states, folds, earlier)


def _are_as_named(files: GarageFiles, named: Mapping[Ref, Stamp | None]) -> bool:
    """Return whether these records' files are as they were, and those that were not there are not."""
    if not files.staged.keys().isdisjoint(named):
        return False
    for kind, group in itertools.groupby(sorted(named), operator.itemgetter(0)):
        here, refs = files.there()[kind], list(group)
        known = [ref for ref in refs if named[ref] is not None]
        if any(named[ref] is None and ref.id in here for ref in refs):
            return False
        try:
            if here.stamps(ref.id for ref in known) != [named[ref] for ref in known]:
                return False
        except (KeyError, OSError):
            return False
    return True


class Behind(NamedTuple):
    """A bike's sessions up to where states are kept, with what they name as far as it was read."""

    bike: Ref
    past: tuple[PastSession, ...]
    line: Lineage
    read: Mapping[Ref, object]
    tyre_sets: Mapping[str, TyreSet]
    people: Mapping[str, Rider]


class ToKeep(NamedTuple):
    """All that is written of a bike: put together at once, so that another thread may write it.

    `seal` tells the files of the sessions, `named` are the others that all of this rests on; `not_before`
    is what some sessions were copied from that is nowhere among them. `before` is what an earlier run left.
    """

    behind: Behind
    before: TakenUp | None
    record: Bike
    kept_at: KeptAt
    seal: str
    named: dict[Ref, Stamp | None]
    not_before: frozenset[str]
    folds: dict[str, FoldToKeep]


def put_together(files: GarageFiles, behind: Behind, before: TakenUp | None) -> ToKeep | None:
    """Put together what is to be written; None where not all of it is known to be as it is on disk."""
    stop, past = behind.line.stop, behind.past
    held = files.read(behind.bike)
    refs = [Ref("session", one.id) for one in past]
    sealed = seal_of(files, refs)
    names = _named_by(behind, before)
    not_before = _not_before(past, before)
    if stop is None or held is None or not isinstance(held.record, Bike) or not sealed:
        return None
    if names is None or not_before is None:
        return None
    folds = {rider: one for rider, one in stop.folds.items() if all(other.seal for other in one.elsewhere)}
    bikes = {one.session.bike for kept in folds.values() for one in kept.elsewhere}
    names |= {Ref("bike", bike) for bike in bikes if bike is not None}
    stamps = _stamps(files, names, behind, before)
    if stamps is None:
        return None
    return ToKeep(behind, before, held.record, stop, sealed, stamps, not_before, folds)


def _named_by(behind: Behind, before: TakenUp | None) -> set[Ref] | None:
    """Return what the sessions name, and what that names; None where a tyre set is not known: it is any."""
    found = {behind.bike, *(before.named if before is not None else ())}
    wanted: list[str] = []
    for one in behind.past[before.begun.count if before is not None else 0 :]:
        session = one.session
        named = (
            ("tyres", session.tyres),
            ("rider", session.rider),
            ("day", session.day),
            ("venue", one.venue),
        )
        found |= {Ref(kind, name) for kind, name in named if name is not None}
        if session.tyres is not None:
            wanted.append(session.tyres)
    if not all(name in behind.tyre_sets for name in wanted):
        return None
    followed = set(wanted)
    while wanted:
        here = behind.tyre_sets.get(wanted.pop())
        for end in ENDS:
            name = tyre_of(here, end).continues
            if name is not None and name not in followed:
                followed.add(name)
                wanted.append(name)
    return found | {Ref("tyres", name) for name in followed}


def _not_before(past: tuple[PastSession, ...], before: TakenUp | None) -> frozenset[str] | None:
    """Return what sessions were copied from that is nowhere among them; None where one is later."""
    places = {one.id: place for place, one in enumerate(past)}
    first = before.begun.count if before is not None else 0
    found = set(before.not_before if before is not None else ())
    for place, one in enumerate(past[first:], first):
        copied = one.session.copied_from
        if copied is None:
            continue
        if places.get(copied, -1) >= place:
            return None
        if copied not in places:
            found.add(copied)
    return frozenset(found)


def _stamps(
    files: GarageFiles, names: Iterable[Ref], behind: Behind, before: TakenUp | None
) -> dict[Ref, Stamp | None] | None:
    """Return the stamps of files as they were read; None where one is not as it is on disk."""
    found: dict[Ref, Stamp | None] = {}
    for ref in sorted(names, key=str):
        known = before.named if before is not None else {}
        if ref in files.staged:
            return None
        if ref in known and ref not in behind.read:
            found[ref] = known[ref]
        elif behind.read.get(ref) is None and files.path_of(ref) is None:
            found[ref] = None
        elif not seal(files, ref):
            return None
        else:
            found[ref] = files.stamp_as_read(ref)
    return found


def keep(real: Path, held: ToKeep) -> None:
    """Write what was learnt up to where states are kept."""
    write_carried(real, f"{held.kept_at.name}-{held.behind.bike.id}", _body(held))


_MOST_RIDERS = 4
"""So many riders of a bike have their fold kept: those who rode it last."""


def _body(held: ToKeep) -> dict[str, Any]:
    """Return what is written of a bike."""
    behind, before = held.behind, held.before
    past = behind.past
    history = History(past, behind.tyre_sets, behind.people).on_line(behind.line)
    kept = held.kept_at.states
    states = {name: kept[name] if name in kept else walk.of(history) for name, walk in list(WALKS.items())}
    own = {rider: _fold(held, one) for rider, one in held.folds.items()}
    others = before.folds if before is not None else {}
    folds = {rider: one for rider, one in {**others, **own}.items() if one is not None}
    latest = sorted(folds, key=lambda rider: int(folds[rider]["count"]))
    writer = StateWriter(_texts_of(held, states))
    venues = sorted({one.venue for one in past if one.venue is not None})
    places = {name: place for place, name in enumerate(venues)}
    return {
        "count": len(past),
        "up_to": held.kept_at.up_to.isoformat(),
        "seal": held.seal,
        "named": [[ref.kind, ref.id, stamp] for ref, stamp in held.named.items()],
        "tyre_sets": [ref.id for ref in held.named if ref.kind == "tyres" and ref.id in behind.tyre_sets],
        "people": [ref.id for ref in held.named if ref.kind == "rider" and ref.id in behind.people],
        "venues": venues,
        "of_venue": [places.get(one.venue or "", -1) for one in past],
        "ridden": "".join("1" if one.ridden else "0" for one in past),
        "not_before": sorted(held.not_before),
        "walks": _written(writer, states),
        "folds": {rider: folds[rider] for rider in latest[-_MOST_RIDERS:]},
        "far": before.far if before is not None and held.kept_at.name == NEAR.name else None,
        "words": writer.words,
    }


def _fold(held: ToKeep, fold: FoldToKeep) -> dict[str, Any] | None:
    """Return what is written of one rider's fold; None where that cannot be written without words."""
    writer = StateWriter(_texts_of(held, fold.state))
    try:
        state = writer.write(fold.state)
    except NotCarried:
        return None
    return {
        "count": held.kept_at.count,
        "up_to": held.kept_at.up_to.isoformat(),
        "elsewhere": fold.rests_on.elsewhere,
        "fall_items": sorted(fold.rests_on.fall_items),
        "limits": fold.rests_on.limits,
        "state": state,
        "words": writer.words,
    }


def _written(writer: StateWriter, states: Mapping[str, object]) -> dict[str, Any]:
    """Write states; one that cannot be written without words is left out, and walked from the beginning."""
    found = {}
    for name, state in states.items():
        with contextlib.suppress(NotCarried):
            found[name] = writer.write(state)
    return found


def _texts_of(held: ToKeep, states: object) -> Iterator[tuple[Ref, Record]]:
    """List the records in which the words of some states stand: all that these mention, and what it names."""
    behind = held.behind
    yield behind.bike, held.record
    yield from ((Ref("rider", name), one) for name, one in behind.people.items())
    elsewhere = (one for kept in held.folds.values() for one in kept.elsewhere)
    by_id = {one.id: one for one in (*elsewhere, *behind.past)}
    names = set(mentioned(states))
    for name in sorted(names & by_id.keys(), reverse=True):
        one = by_id[name]
        yield Ref("session", name), one.session
        if one.day is not None:
            yield Ref("day", one.session.day or ""), one.day
    for name in sorted(names & behind.tyre_sets.keys()):
        yield Ref("tyres", name), behind.tyre_sets[name]
