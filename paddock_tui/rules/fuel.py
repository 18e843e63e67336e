"""The rule about fuel: there is a reserve left at the flag."""

from paddock_tui.facts.fuel import FuelAhead
from paddock_tui.limits import Limits
from paddock_tui.limits.fuel import HOLD_BELOW, RESERVE, RESERVE_SHARE
from paddock_tui.rules.core import CAUTION, FUEL, HOLD, SERIOUS, RaisedFinding, Remedy, Result, Severity, rule


@rule(
    "fuel-short-at-the-flag",
    SERIOUS,
    when=("to_come",),
    at="session:fuel_added",
    limits=(HOLD_BELOW, RESERVE, RESERVE_SHARE),
    rank=FUEL,
)
def fuel_short_at_the_flag(fuel_ahead: FuelAhead, limits: Limits) -> Result:
    """Too little is left at the flag; only a rate learnt from refills can make that worse than a caution."""
    left, reserve = fuel_ahead.left_l, fuel_ahead.reserve_l
    if left >= reserve:
        return None
    said = f"{left:.1f} l left" if left >= 0 else f"dry {-left:.1f} l before the flag"
    return RaisedFinding(
        message=f"Fuel at the flag: {said}, the reserve is {reserve:.1f} l.",
        why=f"Out of fuel on the track is a stop on the line or in a corner. Worked out: {fuel_ahead}.",
        remedy=Remedy(
            f"Fill {fuel_ahead.to_add_l:g} l or more, to the brim where weight does not matter: engine off "
            "and cool, away from warmers, generator and flames, an extinguisher near. Then enter it."
        ),
        severity=_severity(fuel_ahead, left, limits),
        subject="fuel",
    )


def _severity(ahead: FuelAhead, left: float, limits: Limits) -> Severity:
    if not ahead.rate.learnt:
        return CAUTION
    return HOLD if left < limits[HOLD_BELOW] else SERIOUS
