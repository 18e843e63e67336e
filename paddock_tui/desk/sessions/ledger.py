"""The ledger of one bike or of all: collected from the garage in hand."""

import attrs

from paddock_tui.advice.ledger import Best, LedgerEntry, bests, entries_of, unjudged
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.desk import Desk
from paddock_tui.desk.histories import past_sessions
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Path, Ref


@attrs.frozen
class Ledger:
    """Every change, newest first, the best session of each place, and the history of each bike."""

    entries: tuple[LedgerEntry, ...]
    bests: tuple[Best, ...]
    histories: dict[str, History]

    def at(self, session: str, path: Path) -> LedgerEntry | None:
        """Return one change by its session and the place of its first value."""
        return next((one for one in self.entries if (one.session.id, one.path) == (session, path)), None)

    def others(self, entry: LedgerEntry) -> tuple[LedgerEntry, ...]:
        """List the other changes of the same step."""
        return tuple(one for one in self.entries if one.session.id == entry.session.id and one != entry)


NEWEST = 10
"""So many of the newest sessions are looked at for changes before all are read: more than a screen holds."""


def bike_at(desk: LooksAt, subject: Ref | None) -> str:
    """Return the bike of what is looked at; empty where there is none."""
    named = desk.files.data(subject).get("bike") if subject is not None else None
    return named if isinstance(named, str) else ""


def answer(desk: Desk) -> Ledger | Reading:
    """Return the ledger of every bike, or how far the reading for it is."""
    return desk.answers.of("ledger", len(desk.files.listing("session")), ledger)


def newest_changes(desk: LooksAt, bike: str) -> tuple[LedgerEntry, ...]:
    """List the changes of the newest sessions of a bike, or of all, without what came of them."""
    bikes = [Ref("bike", bike)] if bike else list(desk.files.listing("bike"))
    found: list[LedgerEntry] = []
    for ref in bikes:
        loaded = desk.files.read(ref)
        known = loaded.record if loaded is not None and isinstance(loaded.record, Bike) else None
        newest = [one for _, one in of_bike(desk.files, ref.id)[-NEWEST:]]
        for past in past_sessions(desk.files, ref, newest):
            copied = past.session.copied_from
            if copied is not None:
                sources = past_sessions(desk.files, ref, [Ref("session", copied)])
                found += unjudged(ref.id, past, next(iter(sources), None), known)
    return tuple(sorted(found, key=lambda one: _when(one.session), reverse=True))


def ledger(desk: LooksAt) -> Ledger:
    """Make the ledger of every bike of a garage, the newest session first."""
    entries: list[LedgerEntry] = []
    found: list[Best] = []
    histories: dict[str, History] = {}
    limits = Limits(desk.files.garage().limits)
    for ref in desk.files.listing("bike"):
        loaded = desk.files.read(ref)
        bike = loaded.record if loaded is not None and isinstance(loaded.record, Bike) else None
        history = histories[ref.id] = desk.history_of(ref)
        entries += entries_of(history, ref.id, bike, limits)
        found += bests(history.past, ref.id, bike)
    entries.sort(key=lambda one: _when(one.session), reverse=True)
    return Ledger(tuple(entries), tuple(found), histories)


def _when(past: PastSession) -> tuple[str, int]:
    return str(past.session.date or ""), past.session.number or 0
