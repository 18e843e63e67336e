"""The rule about fuel: there is a reserve left at the flag."""

import math

from paddock_tui.facts.fuel import FuelAhead, HomeAhead
from paddock_tui.limits import Limits
from paddock_tui.limits.fuel import HOLD_BELOW, RESERVE, RESERVE_SHARE, SPARING
from paddock_tui.rules.core import CAUTION, FUEL, HOLD, SERIOUS, RaisedFinding, Remedy, Result, Severity, rule


@rule(
    "fuel-short-at-the-flag",
    SERIOUS,
    when=("to_come",),
    at="session:fuel_added",
    limits=(HOLD_BELOW, RESERVE, RESERVE_SHARE, SPARING),
    rank=FUEL,
)
def fuel_short_at_the_flag(fuel_ahead: FuelAhead, limits: Limits) -> Result:
    """Too little is left at the flag: dry before it is worse than under the reserve only."""
    left, reserve = fuel_ahead.left_l, fuel_ahead.reserve_l
    if left >= reserve:
        return None
    said = f"{left:.1f} l left" if left >= 0 else f"{-left:.1f} l too little to reach it"
    return RaisedFinding(
        message=f"Fuel at the flag: {said}, the reserve is {reserve:.1f} l.",
        why=f"Out of fuel on the track is a stop on the line or in a corner. Worked out: {fuel_ahead}.",
        remedy=Remedy(
            f"{_filling(fuel_ahead)}: engine off and cool, away from warmers, generator and flames, an "
            "extinguisher near. Then enter it."
        ),
        severity=_severity(fuel_ahead, limits),
        subject="fuel",
    )


@rule("fuel-short-of-home", CAUTION, when=("on_the_road", "to_come"), at="session:fuel_added", rank=FUEL)
def fuel_short_of_home(home_ahead: HomeAhead) -> Result:
    """The tank does not reach home by road with the reserve in it."""
    if home_ahead.goes_km >= home_ahead.way.to("km"):
        return None
    return RaisedFinding(
        message=f"Fuel for {math.floor(home_ahead.goes_km)} km, {home_ahead.way} to ride home.",
        why=f"Track fuel went faster than the road's. Worked out: {home_ahead}.",
        remedy=Remedy("Fill up on the way out, engine off, and enter it; or plan the filling station."),
        subject="fuel-home",
    )


def _filling(ahead: FuelAhead) -> str:
    """Say what to fill: the litres that are missing; to the brim and fewer laps where it holds no more."""
    lacking = round(ahead.reserve_l - ahead.left_l - ahead.room_l, 6)
    if lacking > 0.0:
        return f"Brim it, and {lacking:.1f} l is still missing: plan fewer laps"
    return f"Fill {ahead.to_add_l:g} l or more, to the brim where weight does not matter"


def _severity(ahead: FuelAhead, limits: Limits) -> Severity:
    """Dry on a rate learnt, or even at less than the entered one: a hold; on the entered one serious."""
    rate = ahead.rate
    if rate.learnt:
        return HOLD if ahead.left_l < limits[HOLD_BELOW] else CAUTION
    if rate.given is None or ahead.left_l >= limits[HOLD_BELOW]:
        return CAUTION
    sparing = ahead.tank.litres - limits[SPARING] * ahead.plan.needed_l
    return HOLD if sparing < limits[HOLD_BELOW] else SERIOUS
