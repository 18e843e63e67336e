"""Which changes are wanted: by bike, venue, surface, tyre set, rider, and what was changed."""

from collections.abc import Iterable

import attrs

from paddock_tui.advice.ledger.best import Best
from paddock_tui.advice.ledger.entries import LedgerEntry

ANY = "any"


@attrs.frozen
class LedgerFilter:
    """What is wanted of each; empty: any."""

    bike: str = ""
    venue: str = ""
    surface: str = ""
    tyres: str = ""
    rider: str = ""
    control: str = ""

    def takes(self, entry: LedgerEntry) -> bool:
        """Return whether a change is wanted."""
        return all(getattr(self, name) in ("", value) for name, value in _values(entry).items())

    def takes_best(self, best: Best) -> bool:
        """Return whether a best session is wanted; tyre set and control do not part those."""
        venue, rider, surface = best.place
        pairs = ((self.bike, best.bike), (self.venue, venue), (self.rider, rider), (self.surface, surface))
        return all(wanted in ("", value) for wanted, value in pairs)


NAMES = {
    "bike": "bike",
    "venue": "venue",
    "surface": "surface",
    "tyres": "tyre set",
    "rider": "rider",
    "control": "what was changed",
}
"""The labels of what can be chosen by."""


def choices(entries: Iterable[LedgerEntry], name: str) -> tuple[str, ...]:
    """List what can be chosen, in the order first met."""
    return tuple(dict.fromkeys(value for one in entries if (value := _values(one)[name])))


def stepped(wanted: LedgerFilter, name: str, by: int, among: tuple[str, ...]) -> LedgerFilter:
    """Step a choice through any and everything there is, round and round."""
    ring = ("", *among)
    held = getattr(wanted, name)
    at = ring.index(held) if held in ring else 0
    return attrs.evolve(wanted, **{name: ring[(at + by) % len(ring)]})


def chosen(wanted: LedgerFilter, name: str, text: str, among: tuple[str, ...]) -> LedgerFilter | str:
    """Choose by what was typed: the whole word or a unique start; gives what is wrong with it."""
    typed = text.strip().casefold()
    if typed in ("", ANY):
        return attrs.evolve(wanted, **{name: ""})
    found = [one for one in among if one.casefold() == typed] or [
        one for one in among if one.casefold().startswith(typed)
    ]
    if len(found) == 1:
        return attrs.evolve(wanted, **{name: found[0]})
    return f"one of: {', '.join((ANY, *among))}"


def _values(entry: LedgerEntry) -> dict[str, str]:
    session = entry.session.session
    return {
        "bike": entry.bike,
        "venue": entry.session.venue or "",
        "surface": entry.column,
        "tyres": session.tyres or "",
        "rider": session.rider or "",
        "control": entry.changes[0].label if entry.changes else "",
    }
