"""Chain pull, and how much of the squat under drive chain and swingarm hold up, the bike upright.

Lengths in mm in one plane: x ahead of the rear axle, heights above the ground. The squat line runs from the
rear tyre's contact to where the upper run of the chain meets the line of the swingarm; its slope over h / p
is the anti-squat: at 100 % drive neither lifts the rear nor lets it sink. Pull T = S R / r, with the pitch
circle r = pitch / (2 sin(pi / z)). Rigid swingarm, no slack, no lean, no tyre growth; the figure falls as
the swingarm comes up. Source: Cossalter, Motorcycle Dynamics, 2nd ed. 2006, from memory; checked by moments
about the pivot.
"""

import math

import attrs

from paddock_tui.calc.chain import pitch_diameter_mm
from paddock_tui.calc.errors import Inconsistent, above, within


@attrs.frozen
class Point:
    """A place in mm: ahead of the rear axle, and above the ground."""

    ahead_mm: float
    height_mm: float


@attrs.frozen
class ChainLine:
    """The geometry of the drive: rear axle's height, swingarm pivot, gearbox sprocket, teeth and pitch."""

    axle_height_mm: float
    pivot: Point
    gearbox: Point
    front_teeth: int
    rear_teeth: int
    pitch_mm: float

    def __attrs_post_init__(self) -> None:
        within("rear axle's height", self.axle_height_mm, 100.0, 600.0, "mm")
        within("pivot ahead of the rear axle", self.pivot.ahead_mm, 200.0, 1000.0, "mm")
        within("gearbox sprocket ahead of the rear axle", self.gearbox.ahead_mm, 200.0, 1200.0, "mm")
        for what, place in (("pivot", self.pivot), ("gearbox sprocket", self.gearbox)):
            within(f"height of the {what}", place.height_mm, 100.0, 900.0, "mm")
        if self.gearbox.ahead_mm <= self.rear_pitch_radius_mm:
            raise Inconsistent("gearbox sprocket", "it is inside the rear one")

    @property
    def rear_pitch_radius_mm(self) -> float:
        """Radius on which the chain lies on the rear sprocket."""
        return pitch_diameter_mm(self.rear_teeth, self.pitch_mm) / 2.0

    @property
    def swingarm_deg(self) -> float:
        """How far the swingarm rises from the axle to the pivot."""
        rise = self.pivot.height_mm - self.axle_height_mm
        return math.degrees(math.atan2(rise, self.pivot.ahead_mm))

    @property
    def chain_deg(self) -> float:
        """How far the upper run of the chain rises from the rear to the gearbox sprocket."""
        rise = self.gearbox.height_mm - self.axle_height_mm
        apart = math.hypot(self.gearbox.ahead_mm, rise)
        front = pitch_diameter_mm(self.front_teeth, self.pitch_mm) / 2.0
        falls = math.asin((self.rear_pitch_radius_mm - front) / apart)
        return math.degrees(math.atan2(rise, self.gearbox.ahead_mm) - falls)


@attrs.frozen
class AntiSquat:
    """Percent of the squat that is held up, with the angles in degrees it comes from."""

    percent: float
    swingarm_deg: float
    chain_deg: float
    squat_line_deg: float


def anti_squat(line: ChainLine, wheelbase_mm: float, centre_height_mm: float) -> AntiSquat:
    """Return the anti-squat of a bike that stands so.

    Inconsistent where chain and swingarm run side by side, so that they meet nowhere near the bike.
    """
    wheelbase = within("wheelbase", wheelbase_mm, 800.0, 2500.0, "mm")
    height = within("height of the centre of mass", centre_height_mm, 200.0, 1500.0, "mm")
    arm, chain = (math.tan(math.radians(one)) for one in (line.swingarm_deg, line.chain_deg))
    leaves = math.radians(line.chain_deg)
    chain_at_axle = line.axle_height_mm + line.rear_pitch_radius_mm / math.cos(leaves)
    if abs(arm - chain) < 1e-3:
        raise Inconsistent("chain and swingarm", "they run side by side: no point where they meet")
    ahead = (chain_at_axle - line.axle_height_mm) / (arm - chain)
    # tan of the squat line, which stays finite as chain and swingarm turn parallel
    slope = line.axle_height_mm / ahead + arm
    angle = math.degrees(math.atan(slope))
    return AntiSquat(100.0 * slope / (height / wheelbase), line.swingarm_deg, line.chain_deg, angle)


def chain_pull_n(thrust_n: float, wheel_radius_m: float, rear_teeth: int, pitch_mm: float) -> float:
    """Return the pull in N in the upper run of the chain for a thrust of the wheel: S R / r."""
    thrust = within("thrust", thrust_n, 0.0, 20000.0, "N")
    radius = above("wheel's radius", wheel_radius_m, 0.0, 1.0, "m")
    return thrust * radius / (pitch_diameter_mm(rear_teeth, pitch_mm) / 2000.0)
