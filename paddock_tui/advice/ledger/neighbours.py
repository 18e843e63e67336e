"""The ridden sessions of a bike as neighbours in time: what is compared with what."""

import itertools
from collections.abc import Iterator

from paddock_tui.advice.ledger.changes import key_of, reversed_key
from paddock_tui.advice.ledger.conditions import FEEL, unlike
from paddock_tui.advice.session_laps import stint_of
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import History, PastSession
from paddock_tui.records.differences import changed_values
from paddock_tui.records.paths import Path
from paddock_tui.records.session import is_ridden
from paddock_tui.trade.change_effect import LoneChange, Ridden
from paddock_tui.trade.feel_effect import moments_felt
from paddock_tui.trade.session_comparison import FEWEST

Key = frozenset[tuple[Path, str, str]]
_Likeness = tuple[str | None, str | None, str | None, str | None]
"""What two sessions have in common where they are compared: rider, venue, tyre set, surface as judged."""

MOST_RUNS = 40
"""So many runs of one set-up, the last ones, tell luck: more would cost time and tell no more."""


class Neighbours:
    """The ridden sessions of a bike as neighbours in time: what is compared with what."""

    def __init__(self, history: History) -> None:
        self._laps: dict[str, Ridden] = {}
        self._first: set[str] = set()
        self._runs: dict[tuple[str | None, str | None], list[list[PastSession]]] = {}
        self._pairs: dict[_Likeness, list[tuple[PastSession, PastSession, Key]]] = {}
        ridden = [one for one in history.past if is_ridden(one.session)]
        seen: set[tuple[object, object]] = set()
        for one in ridden:
            key = (one.session.date, one.session.rider)
            if key not in seen:
                seen.add(key)
                self._first.add(one.id)
        for before, after in itertools.pairwise(ridden):
            if next(unlike(before, after), None) is None:
                key_ = key_of(changed_values(before.session, after.session))
                self._pairs.setdefault(_likeness(after), []).append((before, after, key_))
                if not key_:
                    self._repeated(before, after)

    def _repeated(self, before: PastSession, after: PastSession) -> None:
        runs = self._runs.setdefault(_who_and_where(after), [])
        if runs and runs[-1][-1] is before:
            runs[-1].append(after)
        else:
            runs.append([before, after])

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

    def runs_s(self, about: PastSession, but: set[str]) -> list[list[float]]:
        """List the usual laps of sessions ridden one after the other on one set-up, a run for each.

        They are this rider's on this bike anywhere on such a surface, as a share of the lap here; without
        the first session of a day, in which one learns, and those to be judged.
        """
        here = self.laps(about)
        runs = self._runs.get(_who_and_where(about), [])[-MOST_RUNS:]
        return [
            [ridden.usual_s * _share(here, ridden) for ridden in map(self.laps, run) if _repeats(ridden, but)]
            for run in runs
        ]

    def _alike(self, about: PastSession) -> list[tuple[PastSession, PastSession, Key]]:
        """List the pairs of this rider, here, on such a surface and tyre set."""
        return self._pairs.get(_likeness(about), [])


def _likeness(past: PastSession) -> _Likeness:
    session = past.session
    return session.rider, past.venue, session.tyres, COLUMN.get(session.surface or "")


def _who_and_where(past: PastSession) -> tuple[str | None, str | None]:
    return past.session.rider, COLUMN.get(past.session.surface or "")


def _repeats(ridden: Ridden, but: set[str]) -> bool:
    return len(ridden.laps_s) >= FEWEST and not ridden.opens_day and ridden.key not in but


def _share(here: Ridden, there: Ridden) -> float:
    """Return the lap here over the lap there; 1 where there is none here to go by."""
    return here.usual_s / there.usual_s if here.laps_s else 1.0
