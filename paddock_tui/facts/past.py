"""What went before: a bike's earlier sessions as plain records, and what they refer to."""

import bisect
import datetime as dt
import functools
import heapq
import itertools
import operator
from collections import ChainMap
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any, Generic, Literal, TypeVar, cast

import attrs

from paddock_tui.records.day import FORBIDDEN, NO_ENTRY, DayEntry, RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import Tyre, TyreSet

if TYPE_CHECKING:
    from paddock_tui.facts.begun import Begun, KeptAt

End = Literal["front", "rear"]
ENDS: tuple[End, End] = ("front", "rear")


@attrs.frozen
class PastSession:
    """One earlier session: its id, what it holds, and its venue, with lap and altitude, where known.

    `may_time` is whether its day allowed lap timing: laps kept all the same are in no trend. `entry`
    is what its day holds of that rider on that bike, `day` the whole of it. `seal` tells its file from any
    other, where that is known.
    """

    id: str
    session: Session
    venue: str | None = None
    lap_km: float | None = None
    may_time: bool = True
    entry: DayEntry = NO_ENTRY
    altitude_m: float | None = None
    day: RidingDay | None = None
    seal: str = ""

    @classmethod
    def of(cls, name: str, session: Session, named: Callable[[Ref], object]) -> "PastSession":
        """Return a session with what its day and that day's venue say of it; `named` gives records."""
        day = named(Ref("day", session.day or ""))
        held = day if isinstance(day, RidingDay) else None
        there = held.venue if held is not None else None
        venue = named(Ref("venue", there or ""))
        length, height = (venue.length, venue.altitude) if isinstance(venue, Venue) else (None, None)
        return PastSession(
            name,
            session,
            there,
            length.to("km") if length is not None else None,
            held is None or held.timing != FORBIDDEN,
            held.entry_of(session.rider, session.bike) if held is not None else NO_ENTRY,
            height.to("m") if height is not None else None,
            held,
        )

    @property
    def date(self) -> dt.date | None:
        """Its day, where it is known."""
        return self.session.date

    @property
    def rider(self) -> str | None:
        """Who rode, by the rider's id."""
        return self.session.rider

    @property
    def tyres(self) -> str | None:
        """The tyre set it was on, by its id."""
        return self.session.tyres

    @property
    def ridden(self) -> bool:
        """Whether it was ridden."""
        return is_ridden(self.session)

    @property
    def km(self) -> float | None:
        """Kilometres ridden: as entered, else laps times the length of one."""
        if self.session.distance is not None:
            return self.session.distance.to("km")
        laps = self.session.lap_count
        return laps * self.lap_km if laps and self.lap_km is not None else None


class Lineage:
    """One line of sessions that only grows at its end, and what was learnt along it.

    What stands in it is put there by `Along` and by `facts.outings`.
    """

    def __init__(self) -> None:
        self.reached: dict[Any, Any] = {}
        self.outings: dict[Any, Any] = {}
        self.places: dict[str, int] = {}
        self.ridden: list[PastSession] = []
        self.ridden_on: dict[str | None, list[int]] = {}
        """Where in `ridden` the sessions on each tyre set stand."""
        self.ridden_up_to: list[int] = []
        self.begun: Begun | None = None
        """Where walks go on from earlier ones."""
        self.stop: KeptAt | None = None
        """Where the states of walks are to be kept."""

    def begun_by(self, count: int) -> "Begun | None":
        """Return where walks along so many sessions go on from earlier ones; None where they begin."""
        return self.begun.by(count) if self.begun is not None else None

    def branch(self, at: int | None = None) -> "Lineage":
        """Return one that goes on by itself from what this one knows, from so many sessions on."""
        other = Lineage()
        other.begun = self.begun if at is None else self.begun_by(at)
        if self.stop is not None and (at is None or self.stop.count <= at):
            other.stop = self.stop
        other.ridden_up_to = self.ridden_up_to[:at]
        count = other.ridden_up_to[-1] if other.ridden_up_to else 0
        other.ridden = self.ridden[:count]
        other.ridden_on = {
            tyres: places[: bisect.bisect_left(places, count)] for tyres, places in self.ridden_on.items()
        }
        other.outings = {whose: one.branch(at) for whose, one in self.outings.items()}
        for along, ends in self.reached.items():
            other.reached[along] = ends if at is None else tuple(one for one in ends if one[0] <= at)
        return other


@attrs.frozen(eq=False)
class History:
    """The earlier sessions of one bike, oldest first, with the tyre sets and riders that they name.

    Compared by identity: whoever gives the same one again gets what was learnt from it again at once.
    """

    past: tuple[PastSession, ...] = ()
    tyre_sets: Mapping[str, TyreSet] = attrs.field(factory=dict)
    riders: Mapping[str, Rider] = attrs.field(factory=dict)
    line: Lineage = attrs.field(init=False, factory=Lineage, repr=False)

    def of(self, name: str | None) -> PastSession | None:
        """Return a session by its id; None where it is not among them."""
        return self.before(name, len(self.past))

    def before(self, name: str | None, end: int) -> PastSession | None:
        """Return a session by its id; None where it is not among so many first ones."""
        places = self.line.places
        if more := self.past[len(places) :]:
            places.update(zip(map(_ID, more), itertools.count(len(places))))
        at = places.get(name or "", end)
        return self.past[at] if at < end else None

    def on_line(self, line: Lineage) -> "History":
        """Say that this is the beginning of a line, and return it; whoever changes it is on none."""
        object.__setattr__(self, "line", line)
        return self

    def whole(self) -> tuple[PastSession, ...]:
        """Return the sessions, all of them read: in their order, as many are read at once that way."""
        for one in self.past:
            _ = one.session
        return self.past

    def and_then(self, one: PastSession) -> "History":
        """Return it with one more session: it goes on by itself from what is known of those before."""
        line = self.line.branch(len(self.past))
        return attrs.evolve(self, past=(*self.past, one)).on_line(line)

    def with_sets(self, sets: Mapping[str, TyreSet]) -> "History":
        """Return it with these tyre sets as they are looked at: what was learnt of sessions rests on none."""
        known = ChainMap(dict(sets), cast("dict[str, TyreSet]", self.tyre_sets))
        return attrs.evolve(self, tyre_sets=known).on_line(self.line.branch(len(self.past)))

    @functools.cached_property
    def ridden(self) -> tuple[PastSession, ...]:
        """Those that were ridden, oldest first."""
        line, more = self.line, self.past[len(self.line.ridden_up_to) :]
        ridden, up_to = line.ridden, line.ridden_up_to
        flags = [one.ridden for one in more]
        new = list(itertools.compress(more, flags))
        for tyres, first, end in _runs(new):
            line.ridden_on.setdefault(tyres, []).extend(range(len(ridden) + first, len(ridden) + end))
        up_to.extend(itertools.islice(itertools.accumulate(flags, initial=len(ridden)), 1, None))
        ridden.extend(new)
        count = up_to[len(self.past) - 1] if self.past else 0
        return tuple(ridden if count == len(ridden) else ridden[:count])

    @functools.cached_property
    def sets_used(self) -> Mapping[str, tuple[int, int]]:
        """In which session each tyre set was named first, and in which last, by their places."""
        found: dict[str, tuple[int, int]] = {}
        for tyres, first, end in _runs(self.past):
            if tyres is not None:
                found[tyres] = found.get(tyres, (first,))[0], end - 1
        return found

    def sets_ridden(self) -> Iterator[TyreSet]:
        """Give each tyre set that the bike was ridden on, the last one first, those that are known."""
        for name in dict.fromkeys(one.tyres for one in reversed(self.ridden)):
            found = self.tyre_sets.get(name or "")
            if found is not None:
                yield found

    def ridden_on(self, tyres: Iterable[str]) -> tuple[PastSession, ...]:
        """Return those that were ridden on any of some tyre sets, oldest first."""
        count = len(self.ridden)
        places = heapq.merge(*(self.line.ridden_on.get(name, ()) for name in set(tyres)))
        return tuple(self.ridden[at] for at in places if at < count)


def _runs(sessions: Sequence[PastSession]) -> Iterator[tuple[str | None, int, int]]:
    """Give each run of sessions on one tyre set: the set, and from which place to before which it goes."""
    first = 0
    for tyres, group in itertools.groupby(map(_TYRES, sessions)):
        end = first + sum(1 for _ in group)
        yield tyres, first, end
        first = end


_ID, _TYRES = operator.attrgetter("id"), operator.attrgetter("tyres")

NOTHING = History()

Reached = TypeVar("Reached")

_MOST_ENDS = 3
"""Ends that are remembered of one line: the session in hand, the one looked at, and one beside them."""


class Along(Generic[Reached]):
    """Gives where a walk along a history leads: the same whether it was walked at once or in pieces.

    `step` is pure, or changes a state of its own, which `own` makes of one that stands. Histories on one line
    are beginnings of one another (`History.on_line`), so that the walk goes on from the longest that is not
    longer. `steps` counts the sessions gone through. Each has a name of its own (`walk_named`).
    """

    def __init__(
        self,
        name: str,
        start: Reached,
        step: Callable[[Reached, PastSession], Reached],
        own: Callable[[Reached], Reached] | None = None,
    ) -> None:
        if name in WALKS:
            raise ValueError(f"two walks along a history are called {name}")
        self.name, self._start, self._step, self._own = name, start, step, own
        self.steps = 0
        WALKS[name] = self

    def of(self, history: History) -> Reached:
        """Return the state behind the last session."""
        past, reached = history.past, history.line.reached
        ends: tuple[tuple[int, Reached], ...] = reached.get(self, ())
        known = (one for one in ends if one[0] <= len(past))
        at, state = max(known, default=(0, self._start), key=_length)
        line = history.line
        begun = line.begun_by(len(past))
        if begun is not None and at < begun.count:
            held = begun.state(self.name)
            at, state = (begun.count, held[0]) if held is not None else (at, state)
        if at < len(past):
            if line.stop is not None and at < line.stop.count < len(past):
                state = line.stop.states[self.name] = self._walked(past, at, line.stop.count, state)
                at = line.stop.count
            state = self._walked(past, at, len(past), state)
            reached[self] = ((len(past), state), *ends)[:_MOST_ENDS]
        return state

    def _walked(self, past: tuple[PastSession, ...], at: int, end: int, state: Reached) -> Reached:
        """Go on from a state, which stays as it is."""
        state = state if self._own is None else self._own(state)
        for one in past[at:end]:
            state = self._step(state, one)
        self.steps += end - at
        return state


def _length(end: tuple[int, object]) -> int:
    return end[0]


WALKS: dict[str, Along[Any]] = {}
"""Every walk along a history that was made, by its name."""

_FAMILIES: dict[str, "Alongs[Any]"] = {}


class Alongs(Generic[Reached]):
    """Walks that differ by one word, such as a date: each is made when first asked for, of its word."""

    def __init__(
        self,
        name: str,
        start: Reached,
        step: Callable[[str], Callable[[Reached, PastSession], Reached]],
    ) -> None:
        if name in _FAMILIES:
            raise ValueError(f"two families of walks along a history are called {name}")
        self.name, self._start, self._step = name, start, step
        _FAMILIES[name] = self

    def of(self, word: str) -> Along[Reached]:
        """Return the walk of a word."""
        name = f"{self.name} {word}"
        return WALKS[name] if name in WALKS else Along(name, self._start, self._step(word))


def walk_named(name: str) -> Along[Any] | None:
    """Return a walk by its name, one of a family as well; None where no module that is loaded has such."""
    family, _, word = name.partition(" ")
    if name not in WALKS and family in _FAMILIES:
        return _FAMILIES[family].of(word)
    return WALKS.get(name)


def tyre_of(tyres: TyreSet | None, end: End) -> Tyre:
    """Return one tyre of a set; an empty one where the set is not known."""
    if tyres is None:
        return Tyre()
    return tyres.front if end == "front" else tyres.rear


def first_set(history: History, tyres: str, end: End) -> str:
    """Name one tyre of a set by the set it was in first: a set may go on with a tyre of another."""
    *_, last = seen = _sets_back(history, tyres, end)
    return last if tyre_of(history.tyre_sets.get(last), end).continues is None else min(seen)


def _sets_back(history: History, tyres: str, end: End) -> list[str]:
    """List a set and those that one of its tyres was in before, back to the first, or once round a circle."""
    seen: list[str] = []
    here: str | None = tyres
    while here is not None and here not in seen:
        seen.append(here)
        here = tyre_of(history.tyre_sets.get(here), end).continues
    return seen


@functools.lru_cache(maxsize=64)
def sets_with(history: History, tyres: str, end: End) -> tuple[str, ...]:
    """Name the sets that one tyre of a set was in: those that it came by, and others that go on with it.

    Others are looked for among the sets of the sessions since the first of those that it came by; where none
    of these was on the bike, among all. A set that was never on the bike and goes on from none has no others.
    """
    back, first = _sets_back(history, tyres, end), first_set(history, tyres, end)
    used = history.sets_used
    if back == [tyres] and tyres not in used:
        return (tyres,)
    since = min((used[name][0] for name in back if name in used), default=0)
    others = (name for name, (_, last) in used.items() if last >= since)
    return tuple(name for name in dict.fromkeys((*back, *others)) if first_set(history, name, end) == first)


def _named_gauge(so_far: PastSession | None, one: PastSession) -> PastSession | None:
    return one if _gauge(one.session) else so_far


_GAUGE: Along[PastSession | None] = Along("gauge", None, _named_gauge)


def gauge_in_use(history: History) -> tuple[str, PastSession] | None:
    """Return the gauge that a cold reading named last, and the session in which; None where none did."""
    one = _GAUGE.of(history)
    return None if one is None else (_gauge(one.session), one)


def _gauge(session: Session) -> str:
    cold = session.pressures.get("cold")
    return (cold.gauge or "").strip() if cold is not None else ""


_Reasons = dict[tuple[str, str], PastSession]
"""The last session that was ridden with a reason for a finding, by its rule and subject."""


def _with_reason(so_far: _Reasons, one: PastSession) -> _Reasons:
    for rule, subjects in one.session.accepted.items():
        so_far |= {(rule, subject): one for subject, held in subjects.items() if held.reason}
    return so_far


_REASONS: Along[_Reasons] = Along("reasons", {}, _with_reason, dict)


def reason_before(history: History, rule: str, subject: str) -> tuple[str, str] | None:
    """Return the reason for which a finding was last ridden with, and by whom and when; None: never."""
    one = _REASONS.of(history).get((rule, subject))
    if one is None:
        return None
    held = one.session.accepted[rule][subject]
    return held.reason or "", f"{held.by or 'the rider'}, {one.date or f'session {one.id}'}"
