"""Sag: measured with stiction averaged, as a share of travel, and for another rider's weight.

Free sag is that of the bike alone, rider sag with the rider in full kit in the riding position; public texts
call either of them static. All lengths in mm, at the wheel (fork: along the tube).
"""

from typing import Final

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.springs import G_M_S2

_MOST_SAG_MM = 200.0
_MOST_GAP_MM = 30.0
_MOST_TRAVEL_MM = 400.0


@attrs.frozen
class Sag:
    """Sag in mm with stiction averaged out, and the gap between the two settled lengths in mm."""

    sag_mm: float
    stiction_mm: float


def sag_of_lengths(extended_mm: float, pushed_mm: float, lifted_mm: float) -> Sag:
    """Return the sag from three lengths: L1 - (L2 + L3) / 2; the gap of L2 and L3 is stiction.

    L1 fully extended; L2 settled after a push down let up slowly; L3 settled after a lift let down slowly. A
    settled length above the extended one, or a sag over 200 mm, is refused, and so is a length after the push
    over that after the lift, and a gap of more than 30 mm: no friction is like that. Common practice.
    """
    extended = above("extended length", extended_mm, 0.0, None, "mm")
    for what, length in (("length after the push", pushed_mm), ("length after the lift", lifted_mm)):
        within(what, length, max(extended - _MOST_SAG_MM, 0.0), extended, "mm")
    if pushed_mm > lifted_mm:
        why = f"{pushed_mm:g} mm is over the {lifted_mm:g} mm after the lift: are the two swapped?"
        raise Inconsistent("length after the push", why)
    if lifted_mm - pushed_mm > _MOST_GAP_MM:
        why = f"{lifted_mm - pushed_mm:g} mm between push and lift is no friction: measure again"
        raise Inconsistent("stiction", why)
    return Sag(extended - (pushed_mm + lifted_mm) / 2.0, lifted_mm - pushed_mm)


SAME_LENGTH_MM: Final = 3.0
"""Fully extended lengths of one end further apart than this were not taken at the same points. Common
practice."""


def same_points(alone_mm: float, rider_mm: float) -> None:
    """Raise Inconsistent where two fully extended lengths of one end cannot be of the same two points."""
    if abs(alone_mm - rider_mm) > SAME_LENGTH_MM:
        why = (
            f"{alone_mm:g} mm alone and {rider_mm:g} mm with the rider are not the same points: measure again"
        )
        raise Inconsistent("fully extended", why)


def percent_of_travel(sag_mm: float, travel_mm: float) -> float:
    """Return the sag in percent of the wheel travel of that end."""
    travel = above("travel", travel_mm, 0.0, _MOST_TRAVEL_MM, "mm")
    return 100.0 * within("sag", sag_mm, 0.0, travel, "mm") / travel


def wheel_rate_from_sags_n_per_mm(free_sag_mm: float, rider_sag_mm: float, rider_share_n: float) -> float:
    """Return the wheel rate from free and rider sag and the rider's weight on that wheel: F / (rider -
    free).

    Holds only while there is some free sag (a spring against its top stop would come out too stiff), without
    top-out springs at work, and for a linkage that is nearly linear there.
    """
    free = above("free sag", free_sag_mm, 0.0, _MOST_SAG_MM, "mm")
    further = above("rider sag over free sag", rider_sag_mm - free, 0.0, _MOST_SAG_MM, "mm")
    return above("rider's weight on this wheel", rider_share_n, 0.0, None, "N") / further


def wheel_rate_to_serve_n_per_mm(
    free_sag_wanted_mm: float, rider_sag_wanted_mm: float, rider_share_n: float
) -> float:
    """Return the wheel rate with which both sags come out as wanted, an estimate: F / (rider -
    free).
    """
    return wheel_rate_from_sags_n_per_mm(free_sag_wanted_mm, rider_sag_wanted_mm, rider_share_n)


@attrs.frozen
class OtherRider:
    """Sag in mm to expect with another rider, and how far in mm at the wheel preload must make it up.

    A positive `make_up_mm` asks for more preload. Preload is set for the weight the same way whether the
    damping is automatic or by hand: only the damping is done by the electronics.
    """

    rider_sag_mm: float
    make_up_mm: float


def for_other_rider(
    free_sag_mm: float, rider_sag_mm: float, measured_kg: float, other_kg: float
) -> OtherRider:
    """Return the sag with another rider's weight in kit, by proportion: free + (rider - free) other /
    measured.

    Holds while there is some free sag, for riders who sit alike, on a spring that is nearly linear there.
    """
    free = above("free sag", free_sag_mm, 0.0, _MOST_SAG_MM, "mm")
    further = above("rider sag over free sag", rider_sag_mm - free, 0.0, _MOST_SAG_MM, "mm")
    ratio = _rider_kg(other_kg) / _rider_kg(measured_kg)
    expected = within("sag to expect", free + further * ratio, 0.0, _MOST_SAG_MM, "mm")
    return OtherRider(expected, expected - rider_sag_mm)


def sag_shift_mm(extra_kg: float, share: float, wheel_rate_n_per_mm: float) -> float:
    """Further sag in mm from extra mass of which `share` (0 to 1) stands on this wheel: m g share / k."""
    load_n = within("extra mass", extra_kg, -150.0, 150.0, "kg") * G_M_S2
    return (
        load_n
        * within("share", share, 0.0, 1.0)
        / above("wheel rate", wheel_rate_n_per_mm, 0.0, None, "N/mm")
    )


def _rider_kg(mass_kg: float) -> float:
    return within("rider in kit", mass_kg, 30.0, 250.0, "kg")
