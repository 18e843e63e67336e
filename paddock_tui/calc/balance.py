"""Where the mass stands between the axles, and what each wheel carries when the bike drives or brakes.

Lengths in m, masses in kg, loads in N, accelerations in m/s2. With the wheelbase p and the centre of mass b
ahead of the rear axle at height h: front share b / p, load moved m a h / p. The bike is taken as one rigid
body, rider still, suspension and air left out. Sources: OpenStax University Physics 1, example 12.1 (centre
from loads); Cossalter, Motorcycle Dynamics, 2nd ed. 2006, and Foale, Motorcycle Handling and Chassis Design,
2nd ed. 2006 (load transfer), from memory.
"""

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.springs import G_M_S2

_LONGEST_M = 5.0
_MOST_KG = 5000.0
_MOST_M_S2 = 100.0


@attrs.frozen
class Balance:
    """Wheelbase, height of the centre of mass above the ground, and how far it is ahead of the rear axle.

    Raises Inconsistent where the centre of mass is not between the axles.
    """

    wheelbase_m: float
    centre_height_m: float
    centre_ahead_m: float

    def __attrs_post_init__(self) -> None:
        above("wheelbase", self.wheelbase_m, 0.0, _LONGEST_M, "m")
        above("height of the centre of mass", self.centre_height_m, 0.0, _LONGEST_M, "m")
        above("centre of mass ahead of the rear axle", self.centre_ahead_m, 0.0, _LONGEST_M, "m")
        if self.centre_ahead_m >= self.wheelbase_m:
            raise Inconsistent("centre of mass", "it has to be between the axles")

    @property
    def centre_behind_m(self) -> float:
        """How far the centre of mass is behind the front axle, in m."""
        return self.wheelbase_m - self.centre_ahead_m

    @property
    def front_share(self) -> float:
        """Share of the weight on the front wheel at rest on the level, 0 to 1."""
        return self.centre_ahead_m / self.wheelbase_m


@attrs.frozen
class AxleLoads:
    """What each wheel carries in N."""

    front_n: float
    rear_n: float

    @property
    def total_n(self) -> float:
        """Both together."""
        return self.front_n + self.rear_n


def centre_ahead_m(wheelbase_m: float, front_kg: float, rear_kg: float) -> float:
    """Return the centre of mass ahead of the rear axle, from what stands on each wheel: b = p F / (F + R)."""
    wheelbase = above("wheelbase", wheelbase_m, 0.0, _LONGEST_M, "m")
    front = above("mass on the front wheel", front_kg, 0.0, _MOST_KG, "kg")
    rear = above("mass on the rear wheel", rear_kg, 0.0, _MOST_KG, "kg")
    return wheelbase * front / (front + rear)


def load_transfer_n(balance: Balance, mass_kg: float, accelerating_m_s2: float) -> float:
    """Load in N that driving moves to the rear wheel; less than nothing where braking moves it forward."""
    mass = above("mass", mass_kg, 0.0, _MOST_KG, "kg")
    rate = within("acceleration", accelerating_m_s2, -_MOST_M_S2, _MOST_M_S2, "m/s2")
    return mass * rate * balance.centre_height_m / balance.wheelbase_m


def axle_loads(
    balance: Balance, mass_kg: float, accelerating_m_s2: float = 0.0, g_m_s2: float = G_M_S2
) -> AxleLoads:
    """Loads of both wheels on the level while driving (above 0) or braking (below 0).

    A load below nothing says that this wheel is off the ground: the figure is then beyond the limit.
    """
    moved = load_transfer_n(balance, mass_kg, accelerating_m_s2)
    weight = mass_kg * g_m_s2
    return AxleLoads(weight * balance.front_share - moved, weight * (1.0 - balance.front_share) + moved)
