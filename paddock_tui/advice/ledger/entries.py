"""Every change in a bike's history, what it did as far as can be told, and what else may be the cause."""

import itertools
from collections.abc import Iterator
from weakref import WeakKeyDictionary

import attrs

from paddock_tui.advice.ledger.changes import (
    because_of,
    bundles,
    key_of,
    reversed_key,
)
from paddock_tui.advice.ledger.conditions import ageing, feel_shift, unlike
from paddock_tui.advice.presets import moved_words
from paddock_tui.advice.session_laps import stint_of
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import History, PastSession
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference, changed_values, session_differences
from paddock_tui.records.paths import Path
from paddock_tui.records.session import is_ridden
from paddock_tui.records.session_parts import Because
from paddock_tui.trade.change_effect import Judgement, LoneChange, Ridden, judged
from paddock_tui.trade.permutation import Mixed, permutation
from paddock_tui.trade.session_comparison import FEWEST, Compared, compared

TO_COME = "to come"
"""Said in place of a verdict while the session is not ridden."""

Key = frozenset[tuple[Path, str, str]]
_Likeness = tuple[str | None, str | None, str | None, str | None]
"""What two sessions have in common where they are compared: rider, venue, tyre set, surface as judged."""


@attrs.frozen
class LedgerEntry:
    """One change: its session, the one it was copied from, what was changed, and what that did.

    `presets` say how far the set-up had moved from its preset before and after, empty where not known.
    `others` were changed in the same step, `differed` is what else may be the cause. `laps` compares the
    clean laps of the two sessions, `feel` the scores. `lost` says why the change is not known; then there is
    no source and no value.
    """

    bike: str
    session: PastSession
    source: PastSession | None = None
    changes: tuple[SetUpDifference, ...] = ()
    because: Because | None = None
    others: tuple[SetUpDifference, ...] = ()
    differed: tuple[str, ...] = ()
    laps: Compared | None = None
    feel: tuple[tuple[str, int, int], ...] = ()
    judgement: Judgement | None = None
    lost: str = ""
    presets: tuple[str, str] = ("", "")

    @property
    def path(self) -> Path:
        """Where the changed value stands in the session; empty where it is not known."""
        return self.changes[0].path if self.changes else ()

    @property
    def label(self) -> str:
        """What was changed, in words."""
        if not self.changes:
            return "change not known"
        first = self.changes[0].label
        return first if len(self.changes) == 1 else f"{first} and the other leg"

    @property
    def verdict(self) -> str:
        """The word for what it did; 'to come' while it is not ridden."""
        return self.judgement.verdict if self.judgement is not None else "" if self.lost else TO_COME

    @property
    def column(self) -> str:
        """The surface as it is judged: dry, damp, wet; empty where not known."""
        return COLUMN.get(self.session.session.surface or "", "")


def mixed_laps(entry: LedgerEntry) -> Mixed | None:
    """Compare the laps of the two sessions by mixing them: a matter of milliseconds; None: too few."""
    if entry.laps is None or entry.source is None:
        return None
    return permutation(stint_of(entry.session.session).times_s, stint_of(entry.source.session).times_s)


_KEPT: WeakKeyDictionary[History, tuple[str, Bike | None, tuple[LedgerEntry, ...]]] = WeakKeyDictionary()


def entries_of(history: History, name: str, bike: Bike | None) -> tuple[LedgerEntry, ...]:
    """List every change of a bike, newest first; the same history gives the same list again at once."""
    kept = _KEPT.get(history)
    if kept is not None and kept[0] == name and kept[1] is bike:
        return kept[2]
    found = tuple(_entries(history, name, bike))
    _KEPT[history] = (name, bike, found)
    return found


def _entries(history: History, name: str, bike: Bike | None) -> Iterator[LedgerEntry]:
    by_id = {one.id: one for one in history.past}
    ridden = _Ridden(history)
    for past in reversed(history.past):
        copied = past.session.copied_from
        if copied is None:
            continue
        source = by_id.get(copied)
        if source is None:
            said = f"copied from {copied}, which is retired or not here any more"
            yield LedgerEntry(name, past, lost=said)
            continue
        changes = session_differences(source.session, past.session, bike)
        both = (source.session.setup, past.session.setup)
        before, after = (moved_words(bike or Bike(), setup) for setup in both)
        for bundle in bundles(changes, bike):
            entry = _entry(history, name, source, past, bundle, changes, ridden)
            yield attrs.evolve(entry, presets=(before, after))


def _entry(
    history: History,
    name: str,
    source: PastSession,
    past: PastSession,
    bundle: tuple[SetUpDifference, ...],
    changes: tuple[SetUpDifference, ...],
    ridden: "_Ridden",
) -> LedgerEntry:
    others = tuple(one for one in changes if one not in bundle)
    differed = tuple(filter(None, (*unlike(source, past), ageing(history, source, past))))
    entry = LedgerEntry(
        name,
        past,
        source,
        bundle,
        because_of(past.session, bundle[0]),
        others,
        differed,
        feel=tuple(feel_shift(source.session, past.session)),
    )
    if not is_ridden(past.session):
        return entry
    laps = compared(ridden.laps(source).laps_s, ridden.laps(past).laps_s)
    return attrs.evolve(entry, laps=laps, judgement=_judgement(entry, ridden))


def _judgement(entry: LedgerEntry, ridden: "_Ridden") -> Judgement:
    if not all(one.known for one in entry.changes):
        return Judgement("cannot tell yet", "what it was before is not known")
    if entry.others:
        count = len(entry.others)
        others = f"{count} other thing{'s' if count > 1 else ''}"
        return Judgement("cannot tell yet", f"changed together with {others}", "one change at a time")
    against = tuple(unlike(entry.source, entry.session)) if entry.source is not None else ()
    steps = ridden.steps(key_of((one.path, one.old, one.new) for one in entry.changes), entry.session)
    if against and not steps:
        return Judgement("cannot tell yet", f"it was not alike: {'; '.join(against)}", "like conditions")
    if not steps:
        laps = [ridden.laps(one) for one in (entry.source, entry.session) if one is not None]
        if any(len(one.laps_s) < FEWEST for one in laps):
            needs = f"{FEWEST} clean laps before and after it"
            return Judgement("cannot tell yet", "there are too few clean laps", needs)
        return Judgement("cannot tell yet", "other sessions lie between the two", "both after each other")
    judged_keys = {one.key for step in steps for one in (step.before, step.after)}
    return judged(steps, ridden.repeats_s(entry.session, judged_keys))


class _Ridden:
    """The ridden sessions of a bike as neighbours in time: what is compared with what."""

    def __init__(self, history: History) -> None:
        self._laps: dict[str, Ridden] = {}
        self._first: set[str] = set()
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

    def repeats_s(self, about: PastSession, but: set[str]) -> list[float]:
        """List how far apart neighbouring sessions with the same set-up were, those to be judged left out."""
        found = []
        for before, after, key in self._alike(about):
            first, second = self.laps(before), self.laps(after)
            enough = min(len(first.laps_s), len(second.laps_s)) >= FEWEST
            if not key and enough and not {before.id, after.id} & but:
                found.append(second.usual_s - first.usual_s)
        return found

    def _alike(self, about: PastSession) -> list[tuple[PastSession, PastSession, Key]]:
        """List the pairs of this rider, here, on such a surface and tyre set."""
        return self._pairs.get(_likeness(about), [])


def _likeness(past: PastSession) -> _Likeness:
    session = past.session
    return session.rider, past.venue, session.tyres, COLUMN.get(session.surface or "")
