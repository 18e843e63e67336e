"""Every change in a bike's history, what it did as far as can be told, and what else may be the cause."""

from collections.abc import Callable, Iterable, Iterator
from weakref import WeakKeyDictionary

import attrs

from paddock_tui.advice.in_force import undone_by
from paddock_tui.advice.ledger.changes import because_of, bundles, key_of, reversed_key
from paddock_tui.advice.ledger.conditions import ageing, feel_shift, unlike
from paddock_tui.advice.ledger.neighbours import Key, Neighbours
from paddock_tui.advice.presets import moved_words
from paddock_tui.advice.session_laps import stint_of
from paddock_tui.calc.change_effect import Judgement, judged
from paddock_tui.calc.feel_effect import FeltEffect, felt_effect
from paddock_tui.calc.permutation import Mixed, permutation
from paddock_tui.calc.session_comparison import FEWEST, Compared, compared
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.limits.next_change import LIKE_TRACK
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference, session_differences
from paddock_tui.records.paths import Path
from paddock_tui.records.session import is_ridden
from paddock_tui.records.session_parts import DANGERS, Because
from paddock_tui.records.shown_words import shown

TO_COME = "to come"
"""Said in place of a verdict while the session is not ridden."""


@attrs.frozen
class LedgerEntry:
    """One change: its session, the one it was copied from, what was changed, and what that did.

    `presets` say how far the set-up had moved from its preset before and after, empty where not known.
    `others` were changed in the same step, `differed` is what else may be the cause. `laps` compares the
    clean laps of the two sessions, `feel` the scores, `felt` counts the pairs felt. `lost` says why the
    change is not known; then there is no source and no value. `danger_back` names what the bike did as it
    stood before, or when it was last put back so: nobody goes back into that to learn something.
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
    felt: FeltEffect | None = None
    lost: str = ""
    presets: tuple[str, str] = ("", "")
    danger_back: str = ""

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
    def may_tell(self) -> bool:
        """Whether it was changed alone: of what was changed together nothing is ever told."""
        return bool(self.changes) and not self.others

    @property
    def column(self) -> str:
        """The surface as it is judged: dry, damp, wet; empty where not known."""
        return COLUMN.get(self.session.session.surface or "", "")


def mixed_laps(entry: LedgerEntry) -> Mixed | None:
    """Compare the laps of the two sessions by mixing them: a matter of milliseconds; None: too few."""
    if entry.laps is None or entry.source is None:
        return None
    return permutation(stint_of(entry.session.session).times_s, stint_of(entry.source.session).times_s)


_KEPT: WeakKeyDictionary[History, tuple[tuple[str, float], Bike | None, tuple[LedgerEntry, ...]]] = (
    WeakKeyDictionary()
)


def entries_of(history: History, name: str, bike: Bike | None, limits: Limits) -> tuple[LedgerEntry, ...]:
    """List every change of a bike, newest first; the same history gives the same list again at once."""
    kept = _KEPT.get(history)
    if kept is not None and kept[0] == (name, limits[LIKE_TRACK]) and kept[1] is bike:
        return kept[2]
    all_of_it = reversed(history.whole())
    found = _with_dangers(tuple(judged_changes(history, all_of_it, name, bike, limits)))
    _KEPT[history] = ((name, limits[LIKE_TRACK]), bike, found)
    return found


_NEIGHBOURS: WeakKeyDictionary[History, tuple[float, Neighbours]] = WeakKeyDictionary()


def _neighbours(history: History, limits: Limits) -> Neighbours:
    """Return the neighbours in a history, the same ones for the same history again."""
    kept = _NEIGHBOURS.get(history)
    if kept is None or kept[0] != limits[LIKE_TRACK]:
        kept = _NEIGHBOURS[history] = limits[LIKE_TRACK], Neighbours(history, limits)
    return kept[1]


def unjudged(
    name: str, past: PastSession, source: PastSession | None, bike: Bike | None
) -> Iterator[LedgerEntry]:
    """Give the changes of one session from the one it was copied from, without what came of them."""
    if source is None:
        said = f"copied from {past.session.copied_from}, which is retired or not here any more"
        yield LedgerEntry(name, past, lost=said)
        return
    changes = session_differences(source.session, past.session, bike)
    both = (source.session.setup, past.session.setup)
    before, after = (moved_words(bike or Bike(), setup) for setup in both)
    for bundle in bundles(changes, bike):
        others = tuple(one for one in changes if one not in bundle)
        because = because_of(past.session, bundle[0])
        yield LedgerEntry(name, past, source, bundle, because, others, presets=(before, after))


def judged_changes(
    history: History,
    among: Iterable[PastSession],
    name: str,
    bike: Bike | None,
    limits: Limits,
    wanted: Callable[[LedgerEntry], bool] = lambda _: True,
) -> Iterator[LedgerEntry]:
    """Give the changes of some sessions of a history in their order, without the danger of a way back.

    Only those that are `wanted`, which is asked before it is known what a change did, are compared.
    """
    ridden = _neighbours(history, limits)
    for past in among:
        copied = past.session.copied_from
        if copied is None:
            continue
        for entry in filter(wanted, unjudged(name, past, history.of(copied), bike)):
            yield _judged(_compared(history, entry, ridden), ridden, bike)


def _compared(history: History, entry: LedgerEntry, ridden: Neighbours) -> LedgerEntry:
    """Say of a change what else differed, how it felt, and how the laps compare where it was ridden."""
    source, past = entry.source, entry.session
    if source is None:
        return entry
    differed = tuple(filter(None, (*unlike(source, past, ridden.limits), ageing(history, source, past))))
    feel = tuple(feel_shift(source.session, past.session))
    laps = compared(ridden.laps(source).laps_s, ridden.laps(past).laps_s) if is_ridden(past.session) else None
    return attrs.evolve(entry, differed=differed, feel=feel, laps=laps)


def _judged(entry: LedgerEntry, ridden: Neighbours, bike: Bike | None) -> LedgerEntry:
    """Judge a change that was ridden, by laps and by feel; a trial that a mode undid is none."""
    if not is_ridden(entry.session.session) or entry.lost:
        return entry
    no_trial = _no_trial(entry, bike)
    if no_trial is not None:
        return attrs.evolve(entry, judgement=no_trial)
    felt = None if entry.others else felt_effect(ridden.felt(_key(entry), entry.session))
    return attrs.evolve(entry, judgement=_with_feel(_judgement(entry, ridden), felt), felt=felt)


def _with_dangers(entries: tuple[LedgerEntry, ...]) -> tuple[LedgerEntry, ...]:
    """Return the changes, newest first, each with the danger that its way back is known for."""
    brought: dict[Key, str] = {}
    for entry in entries:
        if entry.source is not None and not _danger(entry.source) and (said := _danger(entry.session)):
            brought.setdefault(_key(entry), said)
    return tuple(
        attrs.evolve(one, danger_back=_danger(one.source) or brought.get(reversed_key(_key(one)), ""))
        if one.source is not None
        else one
        for one in entries
    )


def _danger(past: PastSession) -> str:
    """Say which danger a session noted; empty where it noted none, or names what else brought it."""
    told = (one for one in past.session.symptoms.values() if one.what in DANGERS and one.cause is None)
    felt = next((one.what for one in told), None)
    return f"{shown(felt)} in session {past.id}" if felt is not None else ""


def _key(entry: LedgerEntry) -> Key:
    return key_of((one.path, one.old, one.new) for one in entry.changes)


def _with_feel(judgement: Judgement, felt: FeltEffect | None) -> Judgement:
    """Let feel speak where the laps cannot tell: from five pairs on."""
    if felt is None or felt.verdict == "cannot tell yet" or judgement.verdict != "cannot tell yet":
        return judgement
    way, count = ("better", felt.better) if felt.verdict == "helped" else ("worse", felt.worse)
    why = f"felt {way} in {count} of {felt.pairs} pairs; the laps do not tell"
    return attrs.evolve(judgement, verdict=felt.verdict, why=why, needs="")


def _no_trial(entry: LedgerEntry, bike: Bike | None) -> Judgement | None:
    """Judge what a riding mode or damping mode kept from doing anything: it was no trial."""
    if entry.source is None:
        return None
    for change in entry.changes:
        both = [undone_by(change.path, one.session.setup, bike) for one in (entry.source, entry.session)]
        if all(why for why, _ in both):
            why, frees = both[1]
            return Judgement("cannot tell yet", f"no trial: {why}", frees)
    return None


def _judgement(entry: LedgerEntry, ridden: Neighbours) -> Judgement:
    if not all(one.known for one in entry.changes):
        return Judgement("cannot tell yet", "what it was before is not known")
    if entry.others:
        count = len(entry.others)
        others = f"{count} other thing{'s' if count > 1 else ''}"
        return Judgement("cannot tell yet", f"changed together with {others}", "one change at a time")
    against = tuple(unlike(entry.source, entry.session, ridden.limits)) if entry.source is not None else ()
    steps = ridden.steps(_key(entry), entry.session)
    if against and not steps:
        return Judgement("cannot tell yet", f"not comparable: {'; '.join(against)}", "similar conditions")
    if not steps:
        laps = [ridden.laps(one) for one in (entry.source, entry.session) if one is not None]
        if any(len(one.laps_s) < FEWEST for one in laps):
            needs = f"{FEWEST} clean laps before and after it"
            return Judgement("cannot tell yet", "there are too few clean laps", needs)
        return Judgement("cannot tell yet", "other sessions lie between the two", "both after each other")
    return judged(steps, ridden.record(entry.session))
