"""The ledger of one bike or of all: collected from the garage in hand."""

import attrs

from paddock_tui.advice.ledger import Best, LedgerEntry, bests, entries_of
from paddock_tui.desk.desk import Desk
from paddock_tui.facts.past import History, PastSession
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


def bike_at(desk: Desk, subject: Ref | None) -> str:
    """Return the bike of what is looked at; empty where there is none."""
    named = desk.files.data(subject).get("bike") if subject is not None else None
    return named if isinstance(named, str) else ""


def ledger(desk: Desk) -> Ledger:
    """Make the ledger of every bike of a garage, the newest session first."""
    entries: list[LedgerEntry] = []
    found: list[Best] = []
    histories: dict[str, History] = {}
    for ref in desk.files.listing("bike"):
        loaded = desk.files.read(ref)
        bike = loaded.record if loaded is not None and isinstance(loaded.record, Bike) else None
        history = histories[ref.id] = desk.history_of(ref)
        entries += entries_of(history, ref.id, bike)
        found += bests(history.past, ref.id, bike)
    entries.sort(key=lambda one: _when(one.session), reverse=True)
    return Ledger(tuple(entries), tuple(found), histories)


def _when(past: PastSession) -> tuple[str, int]:
    return str(past.session.date or ""), past.session.number or 0
