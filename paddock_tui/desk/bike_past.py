"""One bike's sessions in their order, as far as they were asked for, with what they name."""

import copy
import datetime as dt
import functools
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from paddock_tui.desk.lookup import Order
from paddock_tui.facts.begun import FAR, NEAR, KeptAt
from paddock_tui.facts.past import ENDS, History, Lineage, PastSession, tyre_of
from paddock_tui.facts.records_later import RecordsLater
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles

if TYPE_CHECKING:
    from paddock_tui.desk.carried import TakenUp

HELD = 24
"""So many last sessions of a bike stay in memory as files too: they are compared, copied, looked back at."""

_MOST = 6
"""Histories of one bike that are given again as they are."""

_Read = Callable[[Ref], Record | None]
"""What reads a record, without the figures that cannot be."""

_LATER: Any = object()
"""Stands for a record that is named, and was not read."""


class BikePast:
    """One bike's sessions in their order, as far as they were asked for, with what they name.

    Every session's history is the beginning of this: an edit of one has it and those after it read again.
    `tyre_sets` and `people` hold what all of them name. It `carries` on from an earlier run, unless it holds
    a part of them only.
    """

    def __init__(self, files: GarageFiles, bike: Ref, *, carries: bool = True) -> None:
        self._place, _ = files.touched_since(0)
        self._bike = bike
        self._named: dict[Ref, Any] = {bike: None}
        self._refs: list[Ref] = []
        self._places: dict[str, int] = {}
        self._past: list[PastSession] = []
        self._counts: list[int] = []
        """How many of the sessions up to each can be read."""
        self._placed: Sequence[tuple[Order, Ref]] = ()
        self._line = Lineage()
        self._made: dict[int, History] = {}
        self._before: TakenUp | None = None
        """What an earlier run left of the first of them."""
        self._kept: KeptAt | None = None
        """What was kept last for a later run, or could not be."""
        self._carries = carries
        """Whether it was not tried yet to go on from an earlier run."""
        self.tyre_sets = RecordsLater()
        self.people: dict[str, Rider] = {}

    @property
    def reaches(self) -> int:
        """How many sessions were read."""
        return len(self._refs)

    @property
    def read_later(self) -> int:
        """How many sessions were read that an earlier run had left unread."""
        return self._before.later.read if self._before is not None else 0

    def goes_on_from(self, place: int, files: GarageFiles) -> None:
        """Count what is touched from a place of a run on, and look for changes of what was not read."""
        self._place = place
        self._watch(files)

    def aside(self) -> "BikePast":
        """Return one that goes on from here by itself."""
        other = copy.copy(self)
        other._named, other._refs, other._past = dict(self._named), list(self._refs), list(self._past)
        other._places = dict(self._places)
        other._counts, other._line, other._made = list(self._counts), self._line.branch(), {}
        other.tyre_sets, other.people = self.tyre_sets.copy(), dict(self.people)
        return other

    def may_stand(self, files: GarageFiles) -> bool:
        """Return whether nothing that the sessions name was touched; forget sessions that were."""
        place, touched = files.touched_since(self._place)
        if any(ref in self._named for ref in touched):
            return False
        if touched:
            self._cut(first_of(touched, self._places, len(self._refs)))
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
            past = tuple(self._past if count == len(self._past) else self._past[:count])
            found = History(past, self.tyre_sets, self.people).on_line(self._line)
        self._made[count] = found
        if len(self._made) > _MOST:
            del self._made[next(iter(self._made))]
        return found

    def begin(self, files: GarageFiles, placed: Sequence[tuple[Order, Ref]], end: int) -> None:
        """Go on from an earlier run where there are many sessions, and nothing was read of them."""
        if self._refs or not self._carries or FAR.place(_dates(placed), end) < FAR.worth:
            return
        self._carries = False
        from paddock_tui.desk.carried import take_up

        found = take_up(files, self._bike, placed, end)
        if found is None:
            return
        self._before = found
        read = functools.partial(_possible, files)
        self._named |= {ref: None if stamp is None else _LATER for ref, stamp in found.named.items()}
        for name in found.people:
            rider = self._named_by("rider", name, read)
            if isinstance(rider, Rider):
                self.people[name] = rider
        for name in found.tyre_sets:
            self.tyre_sets.put_later(name, functools.partial(found.later.tyre_set, name))
        self._past += found.later.sessions
        self._counts += range(1, len(self._past) + 1)
        self._refs += [ref for _, ref in placed[: len(self._past)]]
        self._places.update(found.later.places)
        self._line.begun = found.begun
        self._watch(files)

    def _watch(self, files: GarageFiles) -> None:
        """Have what was not read looked at for changes."""
        for ref, stamp in self._before.named.items() if self._before is not None else ():
            if stamp is not None and not files.is_in_memory(ref):
                files.rows.indexed.setdefault(ref, stamp)

    def _stop(self, placed: Sequence[tuple[Order, Ref]], end: int) -> None:
        """Say where states are to be kept: behind a day, with enough before that was not kept yet.

        Where that is not, it is where an earlier run kept them, for riders of whom it did not.
        """
        line, before = self._line, self._before
        first = before.begun.count if before is not None else 0
        if line.stop is not None and line.stop.count > first:
            return
        distance, at = FAR, FAR.place(_dates(placed), end)
        if before is not None and at - before.far[0] < FAR.worth:
            distance, at = NEAR, NEAR.place(_dates(placed), end)
        if at - first >= distance.worth:
            line.stop = KeptAt(at, placed[at - 1][0][0], distance.name)
        elif before is not None and line.stop is None:
            line.stop = KeptAt(first, before.begun.up_to, before.name, before.begun.has)

    def to_keep(self, files: GarageFiles) -> Callable[[], None] | None:
        """Put together what a later run may go on from; None where nothing is new, or not all is on disk."""
        stop = self._line.stop
        if stop is None or stop is self._kept or not stop.is_new:
            return None
        if self._counts[stop.count - 1 : stop.count] != [stop.count]:
            return None
        self._kept = stop
        from paddock_tui.desk.to_carry import Behind, keep, put_together

        read = {ref: one for ref, one in self._named.items() if one is not _LATER}
        past, own = tuple(self._past[: stop.count]), self._line.branch()
        behind = Behind(self._bike, past, own, read, self.tyre_sets.copy(), dict(self.people))
        held = put_together(files, behind, self._before)
        return functools.partial(keep, files.tree.real, held) if held is not None else None

    def _read_up_to(self, files: GarageFiles, placed: Sequence[tuple[Order, Ref]], end: int) -> None:
        if placed is not self._placed:
            self._cut(common(self._refs, placed))
            self._placed = placed
        self.begin(files, placed, end)
        self._stop(placed, end)
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
                self._past.append(PastSession.of(ref.id, session, self._named.get))
            self._counts.append(len(self._past))

    def _cut(self, at: int) -> None:
        """Forget the sessions from a place on, and what was learnt with them."""
        if at == len(self._refs):
            return
        count = self._counts[at - 1] if at else 0
        forget(self._refs[at:], self._places)
        del self._refs[at:], self._counts[at:], self._past[count:]
        self._line = self._line.branch(count)
        self._before = self._before.by(count) if self._before is not None else None
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
                    self.tyre_sets.put(name, found)
                    wanted += [tyre_of(found, end).continues for end in ENDS]

    def _named_by(self, kind: str, name: str | None, read: _Read) -> Any:
        if name is None:
            return None
        ref = Ref(kind, name)
        if self._named.get(ref, _LATER) is _LATER:
            self._named[ref] = read(ref)
        return self._named[ref]


def _dates(placed: Sequence[tuple[Order, Ref]]) -> Callable[[int], dt.date]:
    return lambda at: placed[at][0][0]


def _possible(files: GarageFiles, ref: Ref) -> Record | None:
    loaded = files.read(ref)
    return loaded.possible if loaded is not None else None


def first_of(touched: set[Ref], places: dict[str, int], end: int) -> int:
    """Return where the first of these sessions stands; the end where none of them does."""
    return min((places.get(ref.id, end) for ref in touched if ref.kind == "session"), default=end)


def forget(refs: list[Ref], places: dict[str, int]) -> None:
    """Forget where sessions stand."""
    for ref in refs:
        places.pop(ref.id, None)


def common(refs: list[Ref], placed: Sequence[tuple[Order, Ref]]) -> int:
    """Return how many sessions stand where they stood."""
    pairs = enumerate(zip(refs, placed, strict=False))
    differs = (at for at, (ref, (_, other)) in pairs if ref is not other and ref != other)
    return next(differs, min(len(refs), len(placed)))
