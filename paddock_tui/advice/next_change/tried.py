"""What was tried before: what failed is not proposed again, and what helped is not taken back."""

import math
from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import NamedTuple

import attrs

from paddock_tui.advice.about import ENDS, About, PastSession, tyre_of
from paddock_tui.advice.ledger.entries import LedgerEntry, judged_changes
from paddock_tui.advice.next_change.words import Move
from paddock_tui.facts.outing import COLUMN
from paddock_tui.limits.next_change import FAILED_TWICE
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.differences import same_value
from paddock_tui.records.fields import value_at
from paddock_tui.records.session import Session

_WORSE = ("made it worse", "worse")


@attrs.frozen
class Tried:
    """A change that was judged: what was changed, from what to what, when, and who says so."""

    about: tuple[str, str]
    old: object
    new: object
    when: str
    says: str = "called worse"


_BETTER = ("helped", "better")
_CALLED = ("worse", "same", "better")
"""What the rider calls a change."""
_TOLD = ("helped", "made it worse")
"""What the laps say of one."""


class TriedBefore:
    """What this rider changed on this bike before: of each setting what is asked about, and once.

    To judge all that was ever changed takes most of a second after many seasons.
    """

    def __init__(self, about: About) -> None:
        self._about = about
        self._judged: dict[tuple[str, str], list[_Judged]] = {}

    def failed(self, named: tuple[str, str]) -> tuple[Tried, ...]:
        """List the changes of one setting that are not offered again.

        Those that made it worse here, by the rider or by the laps; and those that failed often, worse or felt
        the same, anywhere on this kind of tyre, these springs and this surface.
        """
        here = [one.tried for one in self._of(named, _WORSE) if one.here]
        like = [one.tried for one in self._of(named, (*_WORSE, "same"))]
        most = self._about.situation.limits[FAILED_TWICE]
        often = [one for one in like if sum(_same(one, other) for other in like) >= most]
        return (*here, *(attrs.evolve(one, says=f"failed {math.ceil(most)} times") for one in often))

    def helped(self, named: tuple[str, str]) -> tuple[Tried, ...]:
        """List the changes of one setting that helped here, by the rider or by the laps."""
        return tuple(one.tried for one in self._of(named, _BETTER) if one.here)

    def _of(self, named: tuple[str, str], verdicts: tuple[str, ...]) -> Iterator["_Judged"]:
        if named not in self._judged:
            called = [one for one in self._called if one.tried.about == named]
            self._judged[named] = [*called, *self._told(named)]
        return (one for one in self._judged[named] if one.verdict in verdicts)

    @cached_property
    def _called(self) -> list["_Judged"]:
        """What the rider called better, worse or the same, here or where it was like here."""
        return list(_all_called(self._about))

    @cached_property
    def _like(self) -> list[PastSession]:
        """This rider's sessions here, and those that were like this one, the newest first."""
        about = self._about
        mine = (one for one in reversed(about.history.whole()) if one.rider == about.session.rider)
        return [one for one in mine if _is_here(about, one) or _like(about, one)]

    def _told(self, named: tuple[str, str]) -> Iterator["_Judged"]:
        """Give the changes of a setting of which the laps say that they helped or made it worse."""
        situation, bike, history = self._about.situation, self._about.id_of("bike"), self._about.history
        if bike is None:
            return

        def is_wanted(entry: LedgerEntry) -> bool:
            return entry.may_tell and any(one.about == named for one in entry.changes)

        for entry in judged_changes(history, self._like, bike, situation.bike, situation.limits, is_wanted):
            if entry.verdict in _TOLD:
                says = f"the laps say {'better' if entry.verdict == 'helped' else 'worse'}"
                here = _is_here(self._about, entry.session)
                for change in entry.changes:
                    if change.about == named:
                        tried = Tried(change.about, change.old, change.new, entry.session.id, says)
                        yield _Judged(tried, entry.verdict, here)


class _Judged(NamedTuple):
    """What was tried, the verdict of it, and whether that was at this venue."""

    tried: Tried
    verdict: str
    here: bool


def _all_called(about: About) -> Iterator[_Judged]:
    before = about.history.whole()
    own = PastSession("this session", about.session, about.id_of("venue"))
    for past in before if about.history.of(about.id_of("session")) is not None else (*before, own):
        because = [one for named in past.session.because.values() for one in named.values()]
        if past.rider != about.session.rider or not any(one.verdict in _CALLED for one in because):
            continue
        source = about.history.of(past.session.copied_from)
        here = _is_here(about, past)
        if source is not None and (here or _like(about, past)):
            for tried, verdict in _called(past, source.session):
                yield _Judged(tried, verdict, here)


def _is_here(about: About, past: PastSession) -> bool:
    venue = about.id_of("venue")
    return venue is not None and past.venue == venue


def _like(about: About, past: PastSession) -> bool:
    """Return whether a session was on such tyres, springs and surface."""
    one, other = past.session, about.session
    columns = [COLUMN.get(each.surface or "") for each in (one, other)]
    springs = all(
        same_value(getattr(one.setup, key), getattr(other.setup, key))
        for key in ("front_spring", "rear_spring")
    )
    kinds = [
        tyre_of(about.history.tyre_sets.get(one.tyres or ""), end).kind == about.tyre(end).kind
        for end in ENDS
    ]
    same_tyres = one.tyres == other.tyres or all(kinds)
    return columns[0] is not None and columns[0] == columns[1] and springs and same_tyres


def _called(past: PastSession, source: Session) -> Iterator[tuple[Tried, str]]:
    for kind, reasons in past.session.because.items():
        for key, because in reasons.items():
            if because.verdict is None or because.verdict not in _CALLED:
                continue
            old, new = (_value(one, kind, key) for one in (source, past.session))
            if old is not None and new is not None:
                yield Tried((kind, key), old, new, past.id, f"called {because.verdict}"), because.verdict


def _same(one: Tried, other: Tried) -> bool:
    return _same_way(one.old, one.new, other)


def _value(session: Session, kind: str, key: str) -> object:
    if kind == "setup":
        return value_at(session, ("setup", key))
    table = getattr(session.setup, kind, None)
    return table.get(key) if isinstance(table, Mapping) else None


def taken_back(move: Move, session: Session, before: TriedBefore) -> Tried | None:
    """Return the change that helped here and that a move would take back; None where none is."""
    for put, named in zip(move.puts, move.about, strict=True):
        old = value_at(session, put.path)
        for one in before.helped(named):
            if _same_way(old, put.value, attrs.evolve(one, old=one.new, new=one.old)):
                return one
    return None


def tried_already(move: Move, session: Session, before: TriedBefore) -> Tried | None:
    """Return the change that went the same way on the same thing and failed; None where none did."""
    for put, named in zip(move.puts, move.about, strict=True):
        old = value_at(session, put.path)
        for one in before.failed(named):
            if _same_way(old, put.value, one):
                return one
    return None


def _same_way(old: object, new: object, tried: Tried) -> bool:
    numbers = [_number(one) for one in (old, new, tried.old, tried.new)]
    if any(one is None for one in numbers):
        return new == tried.new
    before, after, was, became = (one for one in numbers if one is not None)
    return (after - before) * (became - was) > 0


def _number(value: object) -> float | None:
    if isinstance(value, str):
        found = parse(value)
        value = found if isinstance(found, Quantity) else None
    if isinstance(value, Quantity):
        return float(value.number)
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None
