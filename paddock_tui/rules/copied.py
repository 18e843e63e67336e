"""Rules about a set-up that was made for another rider, or on another kind of tyre."""

from paddock_tui.facts.copied import WeightDifference
from paddock_tui.limits import Limits
from paddock_tui.limits.rider import OTHER_RIDERS_WEIGHT
from paddock_tui.rules.core import CAUTION, SUSPENSION, RaisedFinding, Remedy, Result, rule


@rule(
    "set-up-of-another-rider",
    CAUTION,
    when=("to_come", "sags_now"),
    at="session:copied_from",
    limits=(OTHER_RIDERS_WEIGHT,),
    rank=SUSPENSION,
)
def set_up_of_another_rider(other_rider: WeightDifference, limits: Limits) -> Result:
    """Copied from a rider of quite another weight, and sag not measured since."""
    if abs(other_rider.kg) <= limits[OTHER_RIDERS_WEIGHT]:
        return None
    return RaisedFinding(
        message=f"Set-up copied; you are {other_rider}.",
        quoted=(str(other_rider),),
        why="Height, balance and spring rate are made for a weight; aids and damping for a way of riding.",
        remedy=Remedy("Measure rider sag at both ends first and set preload; aids from your own group."),
        subject="rider",
    )


@rule(
    "set-up-from-another-kind-of-tyre",
    CAUTION,
    when=("to_come",),
    at="session:tyres",
    rank=SUSPENSION,
)
def set_up_from_another_kind_of_tyre(other_kind: str) -> Result:
    """Made on another kind of tyre than is on now, and never ridden on this kind."""
    return RaisedFinding(
        message=f"The set-up was carried over {other_kind}.",
        quoted=(other_kind,),
        why="Carcass, profile and grip differ: height, damping and the aids meet another tyre.",
        remedy=Remedy("Height and sag first, the tyre's own pressures, two easy laps; then one change."),
        subject="tyres",
    )
