"""What was tried before: what failed is not proposed again, and what helped is not taken back."""

import math
from collections.abc import Iterator, Mapping
from typing import NamedTuple

import attrs

from paddock_tui.advice.about import ENDS, About, PastSession, tyre_of
from paddock_tui.advice.ledger.entries import judged_changes
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


def failed(about: About) -> tuple[Tried, ...]:
    """List this rider's changes on this bike that are not offered again.

    Those that made it worse here, by the rider or by the laps; and those that failed often, worse or felt
    the same, anywhere on this kind of tyre, these springs and this surface.
    """
    here = [one for one, venue in _tried(about, _WORSE) if venue]
    like = [one for one, _ in _tried(about, (*_WORSE, "same"))]
    most = about.situation.limits[FAILED_TWICE]
    often = [one for one in like if sum(_same(one, other) for other in like) >= most]
    return (*here, *(attrs.evolve(one, says=f"failed {math.ceil(most)} times") for one in often))


def helped(about: About) -> tuple[Tried, ...]:
    """List this rider's changes on this bike here that helped, by the rider or by the laps."""
    return tuple(one for one, venue in _tried(about, _BETTER) if venue)


def _tried(about: About, verdicts: tuple[str, ...]) -> Iterator[tuple[Tried, bool]]:
    """List what was changed with one of these verdicts, and whether that was at this venue."""
    found: list[_Judged] | None = about.worked_out.get(_tried)
    if found is None:
        found = about.worked_out[_tried] = [*_all_called(about), *_all_told(about)]
    return ((one.tried, one.here) for one in found if one.verdict in verdicts)


class _Judged(NamedTuple):
    """What was tried, the verdict of it, and whether that was at this venue."""

    tried: Tried
    verdict: str
    here: bool


def _all_called(about: About) -> Iterator[_Judged]:
    """List what the rider called better, worse or the same, here or where it was like here."""
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


def _all_told(about: About) -> Iterator[_Judged]:
    """List what the laps say helped or made it worse, here or where it was like here."""
    situation, bike = about.situation, about.id_of("bike")
    if bike is None:
        return
    mine = (one for one in reversed(about.history.whole()) if one.rider == about.session.rider)
    like = [one for one in mine if _is_here(about, one) or _like(about, one)]
    for entry in judged_changes(
        about.history, like, bike, situation.bike, situation.limits, lambda one: one.may_tell
    ):
        if entry.verdict in _TOLD:
            says = f"the laps say {'better' if entry.verdict == 'helped' else 'worse'}"
            for change in entry.changes:
                tried = Tried(change.about, change.old, change.new, entry.session.id, says)
                yield _Judged(tried, entry.verdict, _is_here(about, entry.session))


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
    return one.about == other.about and _same_way(one.old, one.new, other)


def _value(session: Session, kind: str, key: str) -> object:
    if kind == "setup":
        return value_at(session, ("setup", key))
    table = getattr(session.setup, kind, None)
    return table.get(key) if isinstance(table, Mapping) else None


def taken_back(move: Move, session: Session, helps: tuple[Tried, ...]) -> Tried | None:
    """Return the change that helped here and that a move would take back; None where none is."""
    for put, named in zip(move.puts, move.about, strict=True):
        old = value_at(session, put.path)
        for one in helps:
            back = attrs.evolve(one, old=one.new, new=one.old)
            if one.about == named and _same_way(old, put.value, back):
                return one
    return None


def tried_already(move: Move, session: Session, worse: tuple[Tried, ...]) -> Tried | None:
    """Return the change that went the same way on the same thing and failed; None where none did."""
    for put, named in zip(move.puts, move.about, strict=True):
        old = value_at(session, put.path)
        for one in worse:
            if one.about == named and _same_way(old, put.value, one):
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
