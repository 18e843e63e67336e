"""Rules about what a tyre has behind it: what was seen on it, heat cycles, age."""

from paddock_tui.facts.past import End
from paddock_tui.facts.tyres import TyreSeen, WornTread
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import OLD, SOON_OLD
from paddock_tui.rules.core import CAUTION, HOLD, SERIOUS, TYRES, RaisedFinding, Remedy, Result, rule


@rule("tyre-blued-or-cracked", CAUTION, per="end", at="session:look.{subject}", rank=TYRES)
def tyre_blued_or_cracked(end: End, last_seen: TyreSeen, tyre_kind_at: str) -> Result:
    """Blueing or cracks were seen: overheated, or old; on race rubber blue is mostly colour."""
    found = [look for look in last_seen.looks if look in ("blueing", "cracks")]
    if not found:
        return None
    race = tyre_kind_at in ("slick", "race-treaded") and found == ["blueing"]
    mind = " On race rubber it may be colour only." if race else ""
    return RaisedFinding(
        message=f"The {end} tyre shows {' and '.join(found)} ({last_seen.when}).",
        why=f"Blue rubber was too hot, cracked rubber is old or stood badly; both have less to give.{mind}",
        remedy=Remedy("Have the tyre vendor look at it before it is ridden hard again."),
    )


@rule(
    "tyre-past-its-cycles",
    CAUTION,
    per="end",
    at="tyres:{subject}.cycles_before",
    when=("to_come",),
    rank=TYRES,
)
def tyre_past_its_cycles(end: End, tyre_cycles: int, cycles_limit: int, tyre_kind_at: str) -> Result:
    """A tyre has seen as many heat cycles as the rider allows; a road tyre is made for any number."""
    if tyre_cycles < cycles_limit or tyre_kind_at in ("road", "sport-touring"):
        return None
    return RaisedFinding(
        message=f"The {end} tyre has {tyre_cycles} heat cycles behind it; your limit is {cycles_limit}.",
        why="Each time it heats and cools the rubber hardens a little: it looks well and slides earlier.",
        remedy=Remedy("Move it to practice, or replace it."),
    )


@rule(
    "tyre-old",
    CAUTION,
    per="end",
    at="tyres:{subject}.date_code",
    when=("to_come",),
    limits=(OLD, SOON_OLD),
    rank=TYRES,
)
def tyre_old(end: End, tyre_age: float, tyre_kind_at: str, limits: Limits) -> Result:
    """A tyre is older than its rubber stays good for."""
    soon = tyre_kind_at in ("slick", "wet", "intermediate")
    most = limits[SOON_OLD if soon else OLD]
    if tyre_age <= most:
        return None
    return RaisedFinding(
        message=f"The {end} tyre is {tyre_age:.1f} years old by its date code.",
        why="Rubber hardens on the shelf too; the maker's own limit comes before any figure.",
        remedy=Remedy("Ask the tyre vendor, feel the rubber, look for cracks; replace it where in doubt."),
    )


@rule(
    "tread-at-its-limit",
    SERIOUS,
    per="end",
    at="tyres:{subject}.tread_middle",
    when=("organised", "to_come"),
    rank=TYRES,
)
def tread_at_its_limit(end: End, worn_tread: WornTread, column: str, surface: str) -> Result:
    """Tread at or under what this tyre counts as worn at: serious in the dry, a hold in the damp and wet."""
    return RaisedFinding(
        message=f"The {end} tyre is at its limit: {worn_tread}.",
        why="At its marks a tyre has no depth left for water, and less rubber to take heat.",
        remedy=Remedy("Fit another tyre, or measure it again at its thinnest and enter that."),
        severity=SERIOUS if column == "dry" else HOLD,
    )
