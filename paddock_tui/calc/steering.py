"""Steering geometry: rake, trail and wheelbase, and what fork height, ride height and tyres make of them.

Lengths in mm, the rake in degrees from the vertical. Ground trail a = (R sin e - d) / cos e, normal trail
an = R sin e - d, with d the whole offset of axle and steering axis (yokes and axle lead together), and the
wheel's flop a sin e cos e. A change turns the bike as one rigid body about tyres that are not pressed in:
sag and loaded radii move the figures by some millimetres, the step from one set-up to another hardly.
Sources: Meijaard and others 2007, Proc. R. Soc. A 463 (trail); plane geometry.
"""

import math

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within


@attrs.frozen
class Steering:
    """Rake in degrees; offset and front wheel's radius in mm."""

    rake_deg: float
    offset_mm: float
    radius_mm: float

    def __attrs_post_init__(self) -> None:
        within("rake", self.rake_deg, 5.0, 45.0, "degrees")
        within("offset", self.offset_mm, -50.0, 150.0, "mm")
        within("front wheel's radius", self.radius_mm, 100.0, 600.0, "mm")

    @property
    def trail_mm(self) -> float:
        """Trail on the ground: (R sin e - d) / cos e."""
        return self.normal_trail_mm / math.cos(math.radians(self.rake_deg))

    @property
    def normal_trail_mm(self) -> float:
        """Trail square to the steering axis: R sin e - d."""
        return self.radius_mm * math.sin(math.radians(self.rake_deg)) - self.offset_mm

    @property
    def flop_mm(self) -> float:
        """How readily the wheel falls to the side that it is turned to: a sin e cos e."""
        rake = math.radians(self.rake_deg)
        return self.trail_mm * math.sin(rake) * math.cos(rake)


def offset_of_trail_mm(rake_deg: float, trail_mm: float, radius_mm: float) -> float:
    """Return the whole offset that a published trail stands for: R sin e - a cos e."""
    rake = math.radians(within("rake", rake_deg, 5.0, 45.0, "degrees"))
    return radius_mm * math.sin(rake) - within("trail", trail_mm, 0.0, 250.0, "mm") * math.cos(rake)


@attrs.frozen
class Swingarm:
    """Length from pivot to rear axle in mm, and the pivot's height above the ground in mm."""

    length_mm: float
    pivot_height_mm: float


@attrs.frozen
class SteeringGeometry:
    """A bike as it stands: wheelbase and rear wheel's radius in mm, steering, and swingarm if known."""

    wheelbase_mm: float
    rear_radius_mm: float
    steering: Steering
    swingarm: Swingarm | None = None

    def __attrs_post_init__(self) -> None:
        within("wheelbase", self.wheelbase_mm, 800.0, 2500.0, "mm")
        within("rear wheel's radius", self.rear_radius_mm, 100.0, 600.0, "mm")
        if self.swingarm is not None:
            within("swingarm", self.swingarm.length_mm, 200.0, 1000.0, "mm")
            drop = self.swingarm.pivot_height_mm - self.rear_radius_mm
            if abs(drop) >= self.swingarm.length_mm * math.sin(math.radians(45.0)):
                raise Inconsistent("swingarm", "the pivot's height and the length do not go together")

    @property
    def swingarm_deg(self) -> float | None:
        """How far in degrees the swingarm rises from the rear axle to its pivot; None without a swingarm."""
        arm = self.swingarm
        if arm is None:
            return None
        return math.degrees(math.asin((arm.pivot_height_mm - self.rear_radius_mm) / arm.length_mm))


@attrs.frozen
class GeometryChange:
    """What is changed, in mm: fork further through the yokes (front lower), rear end up, axle back along the
    swingarm, and what other tyres add to each wheel's radius."""

    fork_through_mm: float = 0.0
    rear_up_mm: float = 0.0
    axle_back_mm: float = 0.0
    front_radius_mm: float = 0.0
    rear_radius_mm: float = 0.0

    def __attrs_post_init__(self) -> None:
        for what, mm in attrs.asdict(self).items():
            within(what.removesuffix("_mm").replace("_", " "), mm, -100.0, 100.0, "mm")


def after(chassis: SteeringGeometry, move: GeometryChange) -> SteeringGeometry:
    """Return the bike after a change: both wheels on the ground again, all else as it was.

    `rear_up_mm` is at the axle, square to the ground; with a swingarm known the axle goes round its pivot.
    """
    steering = chassis.steering
    rake = math.radians(steering.rake_deg)
    rear_x, rear_z = _rear_axle(chassis, move)
    front_x = chassis.wheelbase_mm - move.fork_through_mm * math.sin(rake)
    front_z = steering.radius_mm + move.fork_through_mm * math.cos(rake)
    front_r, rear_r = steering.radius_mm + move.front_radius_mm, chassis.rear_radius_mm + move.rear_radius_mm
    apart = math.hypot(front_x - rear_x, front_z - rear_z)
    turned = math.asin(within("pitch", (front_r - rear_r) / apart, -0.5, 0.5)) - math.atan2(
        front_z - rear_z, front_x - rear_x
    )
    arm = chassis.swingarm
    if arm is not None:
        pivot_x, pivot_z = _pivot(chassis, arm)
        off_x, off_z = pivot_x - rear_x, pivot_z - rear_z
        height = rear_r + off_x * math.sin(turned) + off_z * math.cos(turned)
        arm = Swingarm(arm.length_mm + move.axle_back_mm, height)
    return SteeringGeometry(
        math.sqrt(apart**2 - (front_r - rear_r) ** 2),
        rear_r,
        Steering(steering.rake_deg + math.degrees(turned), steering.offset_mm, front_r),
        arm,
    )


def _pivot(chassis: SteeringGeometry, arm: Swingarm) -> tuple[float, float]:
    """Return where the pivot is: ahead of the rear axle, and above the ground."""
    drop = arm.pivot_height_mm - chassis.rear_radius_mm
    return math.sqrt(arm.length_mm**2 - drop**2), arm.pivot_height_mm


def _rear_axle(chassis: SteeringGeometry, move: GeometryChange) -> tuple[float, float]:
    """Return where the rear axle is in the frame after the change, the old one being at x = 0."""
    low = chassis.rear_radius_mm - move.rear_up_mm
    arm = chassis.swingarm
    if arm is None:
        return -move.axle_back_mm, low
    pivot_x, pivot_z = _pivot(chassis, arm)
    sine = (pivot_z - low) / above("swingarm", arm.length_mm, 0.0, None, "mm")
    angle = math.asin(within("swingarm's rise", sine, -0.9, 0.9))
    length = arm.length_mm + move.axle_back_mm
    return pivot_x - length * math.cos(angle), pivot_z - length * math.sin(angle)
