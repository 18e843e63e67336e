"""What was learnt along a bike's bygone sessions, carried from one run to the next.

Behind a day that is long over, the states of all walks along the bike's sessions are written to the user's
cache, with the stamps of all that they rest on. A later run that finds every one of these files as it was
goes on from there, and reads an earlier session only where something of it is asked for. Whatever is not as
it was makes all be read.
"""

import datetime as dt
import functools
import itertools
import operator
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.desk.past_later import PastLater
from paddock_tui.facts.begun import (
    FAR,
    NEAR,
    Begun,
    Distance,
    KeptFold,
    NotCarried,
    RestsOn,
)
from paddock_tui.facts.carried_states import StateReader
from paddock_tui.facts.unread_past import InShort
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref
from paddock_tui.store.carried_files import Carried, part_of, read_carried
from paddock_tui.store.columns import each_of, numbers, word
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.later import LaterFiles
from paddock_tui.store.listing import Stamp
from paddock_tui.store.seals import seal_of

Placed = Sequence[tuple[tuple[dt.date, int, dt.time, str], Ref]]


class Fold(NamedTuple):
    """One rider's fold as it is written: what it rests on with where it is, and its state."""

    kept: dict[str, Any]
    state: bytes


class TakenUp:
    """The first sessions of a bike as an earlier run left them: unread, and what was learnt along them.

    `named` is what the sessions name, by the stamps of their files, None where there is none; `not_before`
    are sessions that some were copied from and that are not before these. `far` tells what is kept far back.
    """

    def __init__(
        self,
        distance: Distance,
        held: Carried,
        named: dict[Ref, Stamp | None],
        far: tuple[int, str],
        later: PastLater,
        real: Path,
    ) -> None:
        body = held.body
        self.name, self.later, self.far, self._real = distance.name, later, far, real
        self.tyre_sets, self.people = tuple(body["tyre_sets"]), tuple(body["people"])
        self.named = named
        self.not_before = frozenset(body["not_before"])
        self.folds = {rider: Fold(kept, held.parts[kept["state"]]) for rider, kept in body["folds"].items()}
        """The folds as they are written."""
        self.begun = _begun(held, self.folds, later, self._begun_earlier)

    def _begun_earlier(self) -> Begun | None:
        return self.earlier.begun if self.earlier is not None else None

    @functools.cached_property
    def earlier(self) -> "TakenUp | None":
        """What is kept far back, where this is not that: it stands wherever this does."""
        if self.name == FAR.name:
            return None
        held = read_carried(self._real, FAR.of(self.later.bike))
        if held is None or (held.body["count"], held.digest) != self.far:
            return None
        return TakenUp(FAR, held, _named(held.body), self.far, self.later, self._real)

    def by(self, count: int) -> "TakenUp | None":
        """Return this, or what is kept far back, that is behind no more than so many sessions."""
        if self.begun.count <= count:
            return self
        return self.earlier.by(count) if self.earlier is not None else None


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
        named = _named(held.body)
        known = _known(files, held.body, named, placed)
        if known is None:
            return None
        later = PastLater(LaterFiles(files, bike), bike[0], known)
        far = (
            (len(known), held.digest) if distance is FAR else (int(held.body["far"][0]), held.body["far"][1])
        )
        return TakenUp(distance, held, named, far, later, real)
    except (KeyError, TypeError, ValueError, IndexError, AttributeError, NotCarried):
        return None


def _known(
    files: GarageFiles, body: dict[str, Any], named: Mapping[Ref, Stamp | None], placed: Placed
) -> list[InShort] | None:
    """Return what is known of the sessions without reading them; None where one thing is not as it was."""
    count, up_to = int(body["count"]), dt.date.fromisoformat(body["up_to"])
    if not 0 < count <= len(placed) or placed[count - 1][0][0] != up_to:
        return None
    if count < len(placed) and placed[count][0][0] <= up_to:
        return None
    refs = [ref for _, ref in placed[:count]]
    if body["seal"] != seal_of(files, refs) or not _are_as_named(files, named):
        return None
    not_before = frozenset(body["not_before"])
    others = [Ref("session", name) for name in not_before]
    if any(files.former.current(ref) != ref for ref in (*named, *others)):
        return None
    if any(ref.id in not_before for _, ref in placed[count:]):
        return None
    venues = [*map(word, body["venues"]), None]
    rows = [row for row in files.rows.each(refs) if row is not None]
    short = zip(
        [ref.id for ref in refs],
        map(venues.__getitem__, numbers(body["of_venue"])),
        map(_DATE, rows),
        [rider or None for rider in map(_RIDER, rows)],
        [tyres or None for tyres in map(_TYRES, rows)],
        map(bool, numbers(body["ridden"])),
        strict=True,
    )
    return list(short)


_DATE, _RIDER, _TYRES = map(operator.attrgetter, ("date", "rider", "tyres"))


def _named(body: dict[str, Any]) -> dict[Ref, Stamp | None]:
    held = body["named"]
    columns = [numbers(held[name]) for name in STAMP]
    rows = zip(each_of(held["kind"], word), map(word, held["id"]), zip(*columns, strict=True), strict=True)
    there = numbers(held["there"])
    return {
        Ref(kind, name): stamp if is_there else None
        for (kind, name, stamp), is_there in zip(rows, there, strict=True)
    }


STAMP = ("changed", "status", "size", "inode")
"""The columns in which stamps stand."""


def _begun(
    held: Carried, folds: Mapping[str, Fold], later: PastLater, earlier: Callable[[], Begun | None]
) -> Begun:
    body = held.body
    taker = StateReader(body["words"], later.record, later.past)
    states: dict[str, Callable[[], Any]] = {
        name: functools.partial(_taken, taker, held.parts[at]) for name, at in body["walks"].items()
    }
    found = {}
    for rider, (kept, state) in folds.items():
        elsewhere = tuple((name, seal) for name, seal in kept["elsewhere"])
        limits = tuple((name, value) for name, value in kept["limits"])
        rests_on = RestsOn(elsewhere, frozenset(kept["fall_items"]), limits)
        reader = StateReader(kept["words"], later.record, later.past)
        take = functools.partial(_taken, reader, state)
        found[rider] = KeptFold(int(kept["count"]), dt.date.fromisoformat(kept["up_to"]), rests_on, take)
    return Begun(int(body["count"]), dt.date.fromisoformat(body["up_to"]), states, found, earlier)


def _taken(reader: StateReader, text: bytes) -> Any:
    """Return a state out of its part. Raises NotCarried."""
    return reader.take(part_of(text))


def _are_as_named(files: GarageFiles, named: Mapping[Ref, Stamp | None]) -> bool:
    """Return whether these records' files are as they were, and those that were not there are not."""
    if not files.staged.keys().isdisjoint(named):
        return False
    for kind, group in itertools.groupby(named, operator.itemgetter(0)):
        here, refs = files.there()[kind], list(group)
        known = [ref for ref in refs if named[ref] is not None]
        if any(named[ref] is None and ref.id in here for ref in refs):
            return False
        try:
            if here.stamps([ref.id for ref in known]) != [named[ref] for ref in known]:
                return False
        except (KeyError, OSError):
            return False
    return True
