"""Thrust of each gear along the torque curve: where to shift, and the gearing for a wanted speed.

Thrust = torque x overall ratio x efficiency / rolling radius, the torque a straight line between the points
of its curve and nothing outside them. A shift is worth it from where the next gear pushes as hard, revs
after it being revs before x next / this; that is where thrusts cross, not the peak of torque or power. Revs
in 1/min, torques in N m, thrust in N, radii in m. Left out: the time of the shift, the engine's own
inertia. Source: Gillespie, Fundamentals of Vehicle Dynamics, chapter 2, from memory.
"""

import math
from itertools import pairwise

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.wheelie_gears import GearTorque, drive_force_n

_STEPS = 400


@attrs.frozen
class UpshiftPoint:
    """One upshift: the gear reached, revs before and after, and whether it is due at the limiter."""

    to_gear: int
    before_rpm: float
    after_rpm: float
    at_limiter: bool


def torque_at_n_m(curve: GearTorque, revs_rpm: float) -> float | None:
    """Return the torque at revs, a straight line between points; None outside the curve."""
    if not curve or not curve[0][0] <= revs_rpm <= curve[-1][0]:
        return None
    for (low, first), (high, second) in pairwise(curve):
        if low <= revs_rpm <= high:
            return first + (second - first) * (revs_rpm - low) / (high - low)
    return curve[0][1]


def power_kw(torque_n_m: float, revs_rpm: float) -> float:
    """Return the power in kW of a torque at revs: M 2 pi n / 60."""
    torque = within("torque", torque_n_m, 0.0, 1000.0, "N m")
    return torque * 2.0 * math.pi * within("revs", revs_rpm, 0.0, 30000.0, "1/min") / 60000.0


def most_power_kw(curve: GearTorque) -> tuple[float, float]:
    """Return the most power in kW along a torque curve, and the revs of it."""
    _checked(curve)
    low, high = curve[0][0], curve[-1][0]
    tried = {low + (high - low) * step / _STEPS for step in range(_STEPS + 1)} | {revs for revs, _ in curve}
    return max((power_kw(torque_at_n_m(curve, revs) or 0.0, revs), revs) for revs in tried)


def upshifts(gears: tuple[float, ...], curve: GearTorque, limiter_rpm: float) -> tuple[UpshiftPoint, ...]:
    """Return where each upshift is due: the first revs from which on the next gear pushes at least as hard.

    Where it never does below the limiter, or the curve ends before it, the shift is due at the limiter.
    """
    _checked(curve)
    limiter = within("limiter", limiter_rpm, 500.0, 30000.0, "1/min")
    found = []
    for gear, (lower, higher) in enumerate(pairwise(gears), start=2):
        drop = above("gear ratio", higher, 0.0, 10.0) / above("gear ratio", lower, 0.0, 10.0)
        if drop >= 1.0:
            raise Inconsistent("gears", "the ratios must fall from first to top")
        crossing = _crossing(curve, drop, limiter)
        before = limiter if crossing is None else crossing
        found.append(UpshiftPoint(gear, before, before * drop, crossing is None))
    return tuple(found)


def _crossing(curve: GearTorque, drop: float, limiter: float) -> float | None:
    """Return the revs from which on the next gear pushes at least as hard all the way to the limiter."""
    low, high = max(curve[0][0] / drop, curve[0][0]), min(limiter, curve[-1][0])
    if low >= high:
        return None

    def over(revs: float) -> float:
        now, then = torque_at_n_m(curve, revs), torque_at_n_m(curve, revs * drop)
        return (then or 0.0) * drop - (now or 0.0)

    # Both torques are straight lines between these revs, and so is what one has over the other.
    bends = {revs / of for revs, _ in curve for of in (1.0, drop)}
    revs = [low, *sorted(one for one in bends if low < one < high), high]
    ahead = [over(one) for one in revs]
    behind = [place for place, one in enumerate(ahead) if one < 0.0]
    if not behind:
        return low
    last = behind[-1]
    if last == len(revs) - 1:
        return None
    share = -ahead[last] / (ahead[last + 1] - ahead[last])
    return revs[last] + share * (revs[last + 1] - revs[last])


@attrs.frozen
class GearThrust:
    """The most thrust of one gear in N, and the revs and road speed in m/s at which it has it."""

    gear: int
    thrust_n: float
    revs_rpm: float
    speed_m_s: float


def thrust_per_gear(
    overall: tuple[float, ...], curve: GearTorque, circumference_m: float, efficiency: float
) -> tuple[GearThrust, ...]:
    """Return the most thrust of each gear, first gear first."""
    _checked(curve)
    rolled = above("rolling circumference", circumference_m, 0.0, 5.0, "m")
    revs, torque = max(curve, key=lambda point: point[1])
    return tuple(
        GearThrust(
            gear,
            drive_force_n(torque, ratio, rolled / (2.0 * math.pi), efficiency),
            revs,
            revs / 60.0 * rolled / ratio,
        )
        for gear, ratio in enumerate(overall, start=1)
    )


def overall_for_speed(speed_m_s: float, revs_rpm: float, circumference_m: float, slip: float = 0.0) -> float:
    """Return the overall ratio at which a speed needs these revs: n C (1 - slip) / (60 v)."""
    speed = above("speed", speed_m_s, 0.0, 150.0, "m/s")
    rolled = above("rolling circumference", circumference_m, 0.0, 5.0, "m")
    turns = above("revs", revs_rpm, 0.0, 30000.0, "1/min") / 60.0
    return turns * rolled * (1.0 - within("slip", slip, 0.0, 0.5)) / speed


def _checked(curve: GearTorque) -> None:
    if len(curve) < 2:
        raise Inconsistent("torque curve", "it takes two points or more")
    if any(later <= sooner for (sooner, _), (later, _) in pairwise(curve)):
        raise Inconsistent("torque curve", "the revs must rise from point to point")
    for revs, torque in curve:
        power_kw(torque, revs)
