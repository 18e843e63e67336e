"""Where the centre of mass is, from three weighings: both wheels level, then one with the other raised.

The bike turns as one rigid body: suspension locked, brakes off and wheels free to roll, the tank full or
empty as stated, the scale under the wheel that stays down and the raised wheel on a level block. Moments
about the raised axle give h = r + (b cos t - share x apart) / sin t, exact for unequal wheels too. Half a
kilogram on the scale is some 12 mm, so that the height comes with its error. Source: plane statics; the
form for equal wheels, h = r + L dW / (W tan t), as in Jazar, Vehicle Dynamics, chapter 2.
"""

import math
from collections.abc import Callable
from typing import Literal

import attrs

from paddock_tui.calc.balance import centre_ahead_m
from paddock_tui.calc.errors import Inconsistent, above, within

Axle = Literal["front", "rear"]

_LEAST_LEAN = math.radians(2.0)
_MOST_HEIGHT_M = 2.0


@attrs.frozen
class AxleWeighing:
    """Readings in kg and lengths in m of one bike, with or without a rider, on a scale.

    `front_kg` and `rear_kg` are read level, `down_kg` under the wheel that stays down while the axle of the
    `raised` end is `raise_m` higher than it was. The radii are loaded ones, axle to ground.
    """

    wheelbase_m: float
    front_kg: float
    rear_kg: float
    raised: Axle
    down_kg: float
    raise_m: float
    front_radius_m: float
    rear_radius_m: float

    def __attrs_post_init__(self) -> None:
        centre_ahead_m(self.wheelbase_m, self.front_kg, self.rear_kg)
        for end, radius in (("front", self.front_radius_m), ("rear", self.rear_radius_m)):
            within(f"{end} wheel's radius", radius, 0.1, 0.6, "m")
        above("height by which the axle was raised", self.raise_m, 0.0, 1.2, "m")
        if not 0.0 < self.down_kg < self.mass_kg:
            raise Inconsistent(
                "reading with one end raised", f"it has to be under the {self.mass_kg:g} kg of both"
            )

    @property
    def mass_kg(self) -> float:
        """Both level readings together."""
        return self.front_kg + self.rear_kg


@attrs.frozen
class ScaleErrors:
    """How far each reading may be off: the scale in kg, lengths in m."""

    scale_kg: float
    raise_m: float
    radius_m: float
    wheelbase_m: float


@attrs.frozen
class Centre:
    """The centre of mass in m above the ground and ahead of the rear axle, each with its error either way."""

    height_m: float
    ahead_m: float
    height_error_m: float = 0.0
    ahead_error_m: float = 0.0


def centre_of_mass(weighing: AxleWeighing, errors: ScaleErrors) -> Centre:
    """Return the centre of mass of a weighing, and what the errors of its readings come to (root of squares).

    Raises Inconsistent where the readings give a height below the ground or over two metres.
    """
    height, ahead = centre_height_m(weighing), _ahead(weighing)
    height_error = _error(weighing, errors, _height)
    if not 0.0 < height <= _MOST_HEIGHT_M:
        raise Inconsistent("weighings", f"they put the centre of mass at {height * 1000:.0f} mm: weigh again")
    return Centre(height, ahead, height_error, _error(weighing, errors, _ahead))


def centre_height_m(weighing: AxleWeighing) -> float:
    """Return the height of the centre of mass in m above the ground, whatever it comes to.

    Raises Inconsistent where the raised axle leans the bike by less than two degrees.
    """
    turned = _turned(weighing)
    if abs(turned) < _LEAST_LEAN:
        raise Inconsistent(
            "height by which the axle was raised", "too little to tell a height by: raise it more"
        )
    return _height(weighing)


def together(bike: Centre, bike_kg: float, rider: Centre, rider_kg: float) -> tuple[float, Centre]:
    """Return mass and centre of bike and rider as one; the error is that of the bike's share."""
    mass = above("mass of the bike", bike_kg, 0.0, 1000.0, "kg") + within("rider", rider_kg, 0.0, 250.0, "kg")
    share = bike_kg / mass
    return mass, Centre(
        share * bike.height_m + (1.0 - share) * rider.height_m,
        share * bike.ahead_m + (1.0 - share) * rider.ahead_m,
        share * bike.height_error_m,
        share * bike.ahead_error_m,
    )


def _ahead(weighing: AxleWeighing) -> float:
    return centre_ahead_m(weighing.wheelbase_m, weighing.front_kg, weighing.rear_kg)


def _turned(weighing: AxleWeighing) -> float:
    """Return the angle in radians by which the bike was turned, nose up above nothing."""
    apart, level = _axles(weighing)
    up = weighing.raise_m if weighing.raised == "front" else -weighing.raise_m
    sine = (weighing.front_radius_m - weighing.rear_radius_m + up) / apart
    return (
        math.asin(within("height by which the axle was raised, over the wheelbase", sine, -0.9, 0.9)) - level
    )


def _height(weighing: AxleWeighing) -> float:
    apart, level = _axles(weighing)
    turned = _turned(weighing)
    down = weighing.down_kg / weighing.mass_kg
    front = down if weighing.raised == "rear" else 1.0 - down
    reach = apart * math.cos(level + turned)
    over_axle = (_ahead(weighing) * math.cos(turned) - front * reach) / math.sin(turned)
    return weighing.rear_radius_m + over_axle


def _axles(weighing: AxleWeighing) -> tuple[float, float]:
    """Return the distance of the axles in m, and in radians how far their line rises to the front, level."""
    rise = weighing.front_radius_m - weighing.rear_radius_m
    return math.hypot(weighing.wheelbase_m, rise), math.atan2(rise, weighing.wheelbase_m)


def _error(weighing: AxleWeighing, errors: ScaleErrors, find: Callable[[AxleWeighing], float]) -> float:
    """Return what independent errors of the readings come to, each tried by half of it either way."""
    tried = {
        "front_kg": errors.scale_kg,
        "rear_kg": errors.scale_kg,
        "down_kg": errors.scale_kg,
        "raise_m": errors.raise_m,
        "front_radius_m": errors.radius_m,
        "rear_radius_m": errors.radius_m,
        "wheelbase_m": errors.wheelbase_m,
    }
    parts = []
    for name, off in tried.items():
        within("error of a reading", off, 0.0, 10.0)
        was, step = getattr(weighing, name), min(off, 1e-3)
        if step > 0.0:
            high = find(attrs.evolve(weighing, **{name: was + step / 2.0}))
            low = find(attrs.evolve(weighing, **{name: was - step / 2.0}))
            parts.append((high - low) / step * off)
    return math.hypot(*parts)
