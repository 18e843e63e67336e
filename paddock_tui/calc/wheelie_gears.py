"""Which gears can lift the front wheel on torque alone.

The rear wheel pushes with F = torque x overall ratio x efficiency / rolling radius. The front wheel carries
nothing once F reaches m g b / h, with the centre of mass b ahead of the rear axle at height h. Left out: air
(pushing at the height of the centre of mass it changes nothing), the engine's and wheels' own inertia (takes
drive in the low gears), slope, clutch, and what the rider does with body or throttle: a bike lifts its front
in more gears than these over a crest, out of a dip or with the body back. Torques in N m, radii in m, masses
in kg, forces in N, revs in 1/min. Source: Cossalter, Motorcycle Dynamics, 2nd ed. 2006, from memory.
"""

from collections.abc import Iterable
from itertools import pairwise
from typing import Final

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.springs import G_M_S2

CRANK_TO_WHEEL: Final = 0.9
"""Share of the crankshaft's torque that reaches the rear wheel; paddock practice, unpublished."""

GearTorque = tuple[tuple[float, float], ...]
"""A torque curve: revs in 1/min and torque in N m, rising by revs; one point where only the peak is known."""


@attrs.frozen
class GearLift:
    """One gear: the most force at the rear wheel, as a share of what lifts the front, and where it lifts.

    `from_rpm` and `to_rpm` bound the revs between which the force is enough; None where it never is. Between
    two points of the curve the torque is taken as a straight line.
    """

    gear: int
    force_n: float
    share: float
    from_rpm: float | None = None
    to_rpm: float | None = None

    @property
    def lifts(self) -> bool:
        """Whether torque alone lifts the front in this gear."""
        return self.share >= 1.0


def lift_force_n(mass_kg: float, ahead_m: float, height_m: float) -> float:
    """Return the force in N at the rear wheel from which on the front carries nothing: m g b / h."""
    weight = above("mass", mass_kg, 0.0, 1000.0, "kg") * G_M_S2
    ahead = above("centre of mass ahead of the rear axle", ahead_m, 0.0, 5.0, "m")
    return weight * ahead / above("height of the centre of mass", height_m, 0.0, 5.0, "m")


def drive_force_n(torque_n_m: float, overall: float, radius_m: float, efficiency: float) -> float:
    """Return the force in N at the rear wheel from torque at the crankshaft, overall ratio and rolling
    radius.
    """
    torque = within("torque", torque_n_m, 0.0, 1000.0, "N m")
    share = above("efficiency", efficiency, 0.0, 1.0)
    return (
        torque * above("overall ratio", overall, 0.0, 100.0) * share / above("rolling radius", radius_m, 0, 2)
    )


def gears_that_lift(
    overall: Iterable[float],
    curve: GearTorque,
    radius_m: float,
    lift_n: float,
    efficiency: float = CRANK_TO_WHEEL,
) -> tuple[GearLift, ...]:
    """Judge every gear by its overall ratio, first gear first; all gears are given, `lifts` says which do."""
    _check(curve)
    needed = above("force that lifts the front", lift_n, 0.0, None, "N")
    found = []
    for gear, ratio in enumerate(overall, start=1):
        per_n_m = drive_force_n(1.0, ratio, radius_m, efficiency)
        force = per_n_m * max(torque for _, torque in curve)
        revs = _revs_above(curve, needed / per_n_m)
        found.append(GearLift(gear, force, force / needed, *revs))
    return tuple(found)


def _check(curve: GearTorque) -> None:
    if not curve:
        raise Inconsistent("torque curve", "no point is given")
    if any(later <= sooner for (sooner, _), (later, _) in pairwise(curve)):
        raise Inconsistent("torque curve", "the revs must rise from point to point")
    for _, torque in curve:
        within("torque", torque, 0.0, 1000.0, "N m")


def _revs_above(curve: GearTorque, torque: float) -> tuple[float | None, float | None]:
    """Lowest and highest revs at which the curve is at or above a torque."""
    marks = [revs for revs, has in curve if has >= torque]
    for (low, first), (high, second) in pairwise(curve):
        if (first < torque) != (second < torque):
            marks.append(low + (high - low) * (torque - first) / (second - first))
    return (min(marks), max(marks)) if marks else (None, None)


def in_words(gears: Iterable[GearLift]) -> str:
    """Name the gears that lift, '1st to 3rd' or '1st'; empty where none does. They are always the lowest."""
    names = [_ordinal(one.gear) for one in gears if one.lifts]
    if len(names) < 2:
        return "".join(names)
    return f"{names[0]} {'and' if len(names) == 2 else 'to'} {names[-1]}"


def _ordinal(gear: int) -> str:
    return f"{gear}{({1: 'st', 2: 'nd', 3: 'rd'}).get(gear, 'th')}"
