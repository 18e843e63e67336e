"""Pictures of changes: what each did with its whiskers, and the laps of its two sessions over each other."""

from collections.abc import Sequence

from paddock_tui.advice.ledger import LedgerEntry
from paddock_tui.advice.session_laps import stint_of
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.pictured import picture_row
from paddock_tui.pages.pictures.effects import ShownEffect, effect_lanes
from paddock_tui.pages.pictures.laps import two_stints
from paddock_tui.pages.rows import Row
from paddock_tui.text import printable

_MOST = 8
"""Changes that are drawn together: the latest ones that stand alone and have laps."""

_TELLS = ("helped", "made it worse")


def effects_row(entries: Sequence[LedgerEntry]) -> Row | None:
    """Make the row of what changes did that stand alone; None where no laps can be compared."""
    found = [one for one in entries if one.laps is not None and not one.others]
    lanes = effect_lanes([_effect(one, dated=True) for one in found[:_MOST]])
    return picture_row("effect on the usual lap", lanes) if lanes is not None else None


def effect_row(entry: LedgerEntry) -> Row | None:
    """Make the row of what one change did; None where its laps cannot be compared."""
    lanes = effect_lanes([_effect(entry)]) if entry.laps is not None else None
    return picture_row("effect on the usual lap", lanes) if lanes is not None else None


def two_sessions_row(entry: LedgerEntry) -> Row | None:
    """Make the row of both sessions' laps over each other; None with too few."""
    if entry.source is None or not (entry.source.may_time and entry.session.may_time):
        return None
    chart = two_stints(stint_of(entry.source.session), stint_of(entry.session.session))
    return picture_row("laps of both sessions", chart) if chart is not None else None


def _effect(entry: LedgerEntry, *, dated: bool = False) -> ShownEffect:
    laps, judgement = entry.laps, entry.judgement
    if laps is None:
        raise LookupError("the change has no laps to compare")
    words = entry.changes[0].figures if entry.changes else ""
    day = entry.session.session.date
    lead = f"{short_date(day)} " if dated and day is not None else ""
    return ShownEffect(
        printable(f"{lead}{entry.label} {words}".strip()),
        laps.shift_s,
        laps.low_s,
        laps.high_s,
        entry.verdict,
        entry.verdict in _TELLS,
        judgement.needs if judgement is not None else "",
    )
