"""Gearing: overall ratios, speed at revs and revs at speed, what each shift drops, and the longest straight.

v = revs / 60 x circumference / overall x (1 - slip), overall = primary x gear x rear / front. Speeds in m/s,
engine revs in 1/min, the rolling circumference in m. A loaded tyre rolls 1 to 3 % less than its marking says,
and less again when leaned: measure it where it matters. Source: elementary; the slip term as in Mannering and
Washburn, Principles of Highway Engineering, problem 2.7.
"""

from itertools import pairwise

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within

_MOST_REVS = 30000.0
_MOST_M_S = 150.0


def overall_ratio(primary: float, gear: float, front_teeth: int, rear_teeth: int) -> float:
    """Return turns of the engine for one of the rear wheel: primary x gear x rear / front."""
    return (
        above("primary ratio", primary, 0.0, 10.0)
        * above("gear ratio", gear, 0.0, 10.0)
        * final_ratio(front_teeth, rear_teeth)
    )


def final_ratio(front_teeth: int, rear_teeth: int) -> float:
    """Return turns of the front sprocket for one of the rear: rear / front teeth."""
    return within("rear teeth", rear_teeth, 6, 120) / within("front teeth", front_teeth, 6, 120)


def speed_at_revs_m_s(revs_rpm: float, overall: float, circumference_m: float, slip: float = 0.0) -> float:
    """Road speed in m/s at engine revs; slip 0 to 0.5 is the share of the wheel's turning that is lost."""
    return _revs(revs_rpm) / 60.0 * _advance_m(overall, circumference_m, slip)


def revs_at_speed_rpm(speed_m_s: float, overall: float, circumference_m: float, slip: float = 0.0) -> float:
    """Return the engine revs in 1/min at a road speed in m/s."""
    speed = within("speed", speed_m_s, 0.0, _MOST_M_S, "m/s")
    return speed * 60.0 / _advance_m(overall, circumference_m, slip)


@attrs.frozen
class GearTrain:
    """From crank to road: primary ratio, gears from first to top, sprockets, rolling circumference in m."""

    primary: float
    gears: tuple[float, ...]
    front_teeth: int
    rear_teeth: int
    circumference_m: float

    def __attrs_post_init__(self) -> None:
        if not self.gears:
            raise Inconsistent("gears", "none is given")
        if any(higher >= lower for lower, higher in pairwise(self.gears)):
            raise Inconsistent("gears", "the ratios must fall from first to top")

    def overall(self, gear: int) -> float:
        """Overall ratio of a gear, 1 for first."""
        place = int(within("gear", gear, 1, len(self.gears)))
        return overall_ratio(self.primary, self.gears[place - 1], self.front_teeth, self.rear_teeth)

    def speed_m_s(self, revs_rpm: float, gear: int) -> float:
        """Road speed in m/s at revs in a gear."""
        return speed_at_revs_m_s(revs_rpm, self.overall(gear), self.circumference_m)

    def revs_rpm(self, speed_m_s: float, gear: int) -> float:
        """Return the engine revs in 1/min at a road speed in m/s in a gear."""
        return revs_at_speed_rpm(speed_m_s, self.overall(gear), self.circumference_m)


@attrs.frozen
class Upshift:
    """One upshift: the gear reached, revs after it, and how far they drop, in 1/min."""

    to_gear: int
    revs_after_rpm: float
    drop_rpm: float


def shifts(gears: tuple[float, ...], revs_before_rpm: float) -> tuple[Upshift, ...]:
    """Return what each upshift from the same revs leaves: revs after = revs before x next ratio / this
    ratio.
    """
    revs = _revs(revs_before_rpm)
    found = []
    for gear, (lower, higher) in enumerate(pairwise(gears), start=2):
        after = revs * above("gear ratio", higher, 0.0, 10.0) / above("gear ratio", lower, 0.0, 10.0)
        found.append(Upshift(gear, after, revs - after))
    return tuple(found)


@attrs.frozen
class GearRevs:
    """Revs in 1/min in one gear."""

    gear: int
    revs_rpm: float


def revs_per_gear(drive: GearTrain, speed_m_s: float) -> tuple[GearRevs, ...]:
    """Return revs of every gear at one speed, for the pit lane as for a key corner."""
    return tuple(GearRevs(gear, drive.revs_rpm(speed_m_s, gear)) for gear in range(1, len(drive.gears) + 1))


@attrs.frozen
class Straight:
    """Top gear against the longest straight: speed at the limiter in m/s, revs at the fastest speed seen.

    `spare_rpm` is what is left to the limiter there; none or less says that the limiter is reached before
    the end, much of it that top gear is too long. Both are figures to compare with what was felt.
    """

    limiter_m_s: float
    revs_rpm: float
    spare_rpm: float

    @property
    def reaches_limiter(self) -> bool:
        """Whether the limiter comes in before the end of the straight."""
        return self.spare_rpm <= 0.0


def on_straight(drive: GearTrain, limiter_rpm: float, fastest_m_s: float) -> Straight:
    """Compare the limiter in top gear with the fastest speed of the longest straight."""
    top = len(drive.gears)
    revs = drive.revs_rpm(fastest_m_s, top)
    return Straight(drive.speed_m_s(limiter_rpm, top), revs, _revs(limiter_rpm) - revs)


def _revs(revs_rpm: float) -> float:
    return within("revs", revs_rpm, 0.0, _MOST_REVS, "1/min")


def _advance_m(overall: float, circumference_m: float, slip: float) -> float:
    rolled_m = above("rolling circumference", circumference_m, 0.0, 5.0, "m")
    return rolled_m * (1.0 - within("slip", slip, 0.0, 0.5)) / above("overall ratio", overall, 0.0, 100.0)
