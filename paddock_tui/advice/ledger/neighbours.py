"""The ridden sessions of a bike as neighbours in time: what is compared with what."""

import itertools
from collections.abc import Iterator

from paddock_tui.advice.ledger.changes import key_of, reversed_key
from paddock_tui.advice.ledger.conditions import FEEL, unlike
from paddock_tui.advice.session_laps import stint_of
from paddock_tui.calc.change_effect import LoneChange
from paddock_tui.calc.descriptive import median
from paddock_tui.calc.feel_effect import moments_felt
from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.calc.session_luck import LapRecord, Ridden, record_of
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.differences import changed_values
from paddock_tui.records.paths import Path

Key = frozenset[tuple[Path, str, str]]
_Who = tuple[str | None, str | None]
"""Rider and surface as judged: of whom a record tells."""

_AtOnce = tuple[str | None, str | None, str | None]
"""Rider, venue and tyre set: what is known of a session at once."""

_Likeness = tuple[str | None, str | None, str | None, str | None]
"""What two sessions have in common where they are compared: rider, venue, tyre set, surface as judged."""

MOST_SESSIONS = 160
"""So many sessions, the last ones, tell scatter and luck: more would cost time and tell no more."""


class Neighbours:
    """The ridden sessions of a bike as neighbours in time: what is compared with what.

    Of each only what is known at once is looked at, until a change is compared with those that are like it.
    """

    def __init__(self, history: History, limits: Limits) -> None:
        self.limits = limits
        self._laps: dict[str, Ridden] = {}
        self._first: set[str] = set()
        self._records: dict[tuple[_Who, str | None], LapRecord | None] = {}
        self._sessions = history.ridden
        self._places: dict[str, int] = {}
        self._of_rider: dict[str | None, list[PastSession]] = {}
        self._there: dict[_AtOnce, list[int]] = {}
        self._changed: dict[int, Key | None] = {}
        self._pairs: dict[_Likeness, list[tuple[PastSession, PastSession, Key]]] = {}
        seen: set[tuple[object, object]] = set()
        for place, one in enumerate(self._sessions):
            key = (one.date, one.rider)
            if key not in seen:
                seen.add(key)
                self._first.add(one.id)
            self._places[one.id] = place
            self._of_rider.setdefault(one.rider, []).append(one)
            if place:
                self._there.setdefault((one.rider, one.venue, one.tyres), []).append(place)

    def _changed_at(self, place: int) -> Key | None:
        """Return what was changed for the session at a place since the one before; None: they are unlike."""
        if place not in self._changed:
            before, after = self._sessions[place - 1], self._sessions[place]
            alike = next(unlike(before, after, self.limits), None) is None
            key = key_of(changed_values(before.session, after.session)) if alike else None
            self._changed[place] = key
        return self._changed[place]

    def laps(self, past: PastSession) -> Ridden:
        """Return the clean laps of a session; none where its day forbids timing."""
        if past.id not in self._laps:
            times = tuple(stint_of(past.session).times_s) if past.may_time else ()
            self._laps[past.id] = Ridden(past.id, times, past.id in self._first)
        return self._laps[past.id]

    def steps(self, key: Key, about: PastSession) -> list[LoneChange]:
        """List the steps at which just this was changed, or taken back, as this session has it."""
        back = reversed_key(key)
        return [
            LoneChange(self.laps(before), self.laps(after), back=found == back)
            for before, after, found in self._alike(about)
            if found in (key, back)
        ]

    def felt(self, key: Key, about: PastSession) -> Iterator[int]:
        """Give how each pair was felt with the change against without it, each session in one pair alone."""
        back, used = reversed_key(key), set[str]()
        for before, after, found in self._alike(about):
            if found not in (key, back) or {before.id, after.id} & used:
                continue
            scores = [[getattr(one.session.feel, name) for name, _ in FEEL] for one in (before, after)]
            sign = moments_felt(*scores)
            if sign is not None:
                used |= {before.id, after.id}
                yield -sign if found == back else sign

    def record(self, about: PastSession) -> LapRecord | None:
        """Return what this rider's sessions on this bike and such a surface tell of scatter and luck.

        Of all venues, each as a share of the usual lap there; None without a session that has three clean
        laps. Runs are sessions one after the other that are alike, without the first of a day.
        """
        key = _who(about), about.venue
        if key not in self._records:
            self._records[key] = self._recorded(*key)
        return self._records[key]

    def _recorded(self, who: _Who, venue: str | None) -> LapRecord | None:
        rider, column = who
        those = (one for one in reversed(self._of_rider.get(rider, ())) if _column(one) == column)
        past = list(itertools.islice(those, MOST_SESSIONS))[::-1]
        timed = [one for one in past if len(self.laps(one).laps_s) >= FEWEST]
        if not timed:
            return None
        usual: dict[str | None, list[float]] = {}
        for one in timed:
            usual.setdefault(one.venue, []).append(median(self.laps(one).laps_s))
        here = median(usual.get(venue) or [each for found in usual.values() for each in found])
        there = {name: here if name == venue else median(found) for name, found in usual.items()}
        sessions = [_as_here(self.laps(one), here, there[one.venue]) for one in timed]
        runs: list[list[Ridden]] = [[]]
        for one, ridden in zip(timed, sessions, strict=True):
            if ridden.opens_day:
                continue
            if not runs[-1] or not self._follows(runs[-1][-1].key, one.id):
                runs.append([])
            runs[-1].append(ridden)
        return record_of(sessions, runs)

    def _follows(self, before: str, after: str) -> bool:
        """Return whether a session came just after another one, and is alike."""
        place = self._places[after]
        return self._places[before] == place - 1 and self._changed_at(place) is not None

    def _alike(self, about: PastSession) -> list[tuple[PastSession, PastSession, Key]]:
        """List the pairs of this rider, here, on such a surface and tyre set."""
        likeness = about.rider, about.venue, about.tyres, _column(about)
        if likeness not in self._pairs:
            self._pairs[likeness] = list(self._alike_to(likeness))
        return self._pairs[likeness]

    def _alike_to(self, likeness: _Likeness) -> Iterator[tuple[PastSession, PastSession, Key]]:
        rider, venue, tyres, column = likeness
        for place in self._there.get((rider, venue, tyres), ()):
            key, after = self._changed_at(place), self._sessions[place]
            if key is not None and _column(after) == column:
                yield self._sessions[place - 1], after, key


def _who(past: PastSession) -> _Who:
    return past.rider, _column(past)


def _column(past: PastSession) -> str | None:
    return COLUMN.get(past.session.surface or "")


def _as_here(ridden: Ridden, here_s: float, there_s: float) -> Ridden:
    """Return a session of another venue as if its usual lap were the one here."""
    if here_s == there_s:
        return ridden
    return Ridden(ridden.key, tuple(lap * here_s / there_s for lap in ridden.laps_s), ridden.opens_day)
