"""What was tried here before and made it worse: that is not proposed again."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.ledger.entries import entries_of
from paddock_tui.advice.next_change.words import Move
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.fields import value_at
from paddock_tui.records.session import Session
from paddock_tui.trade.change_effect import Verdict

_WORSE: Verdict = "made it worse"


@attrs.frozen
class Tried:
    """A change that made it worse: what was changed, from what to what, when, and who says so."""

    about: tuple[str, str]
    old: object
    new: object
    when: str
    says: str = "called worse"


def made_worse(about: About) -> tuple[Tried, ...]:
    """List this rider's changes on this bike at this venue that the rider called worse, or the laps."""
    return (*_tried(about), *_by_laps(about))


def _by_laps(about: About) -> Iterator[Tried]:
    """Return what the ledger is sure of: went there and back, or three times, and slower beyond luck."""
    venue, bike = about.id_of("venue"), about.id_of("bike")
    if venue is None or bike is None:
        return
    for entry in entries_of(about.history, bike, about.situation.bike):
        if entry.verdict != _WORSE or entry.session.venue != venue:
            continue
        if entry.session.session.rider == about.session.rider:
            for change in entry.changes:
                yield Tried(change.about, change.old, change.new, entry.session.id, "the laps say worse")


def _tried(about: About) -> Iterator[Tried]:
    venue = about.id_of("venue")
    sessions = {one.id: one.session for one in about.history.past}
    here = [(one.id, one.session) for one in about.history.past if venue is not None and one.venue == venue]
    for name, session in (*here, ("this session", about.session)):
        source = sessions.get(session.copied_from or "")
        if source is None or session.rider != about.session.rider:
            continue
        yield from _worse(name, session, source)


def _worse(name: str, session: Session, source: Session) -> Iterator[Tried]:
    for kind, reasons in session.because.items():
        for key, because in reasons.items():
            if because.verdict != "worse":
                continue
            old, new = (_value(one, kind, key) for one in (source, session))
            if old is not None and new is not None:
                yield Tried((kind, key), old, new, name)


def _value(session: Session, kind: str, key: str) -> object:
    if kind == "setup":
        return value_at(session, ("setup", key))
    table = getattr(session.setup, kind, None)
    return table.get(key) if isinstance(table, Mapping) else None


def tried_already(move: Move, session: Session, worse: tuple[Tried, ...]) -> Tried | None:
    """Return the change that went the same way on the same thing and made it worse; None where none did."""
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
