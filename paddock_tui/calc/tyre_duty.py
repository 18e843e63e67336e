"""What a tyre is rated for against what is asked of it: load and speed. Nothing of grip, age or damage.

A rating holds at the maker's pressure for that load, and a track pressure may be lower: ask the vendor.
"""

import attrs

from paddock_tui.calc.errors import above, within
from paddock_tui.calc.tyre_ratings import SpeedRating, load_kg, speed_rating


@attrs.frozen
class AxleMasses:
    """Mass in kg that rests on each axle standing on level ground."""

    front_kg: float
    rear_kg: float


def axle_loads(mass_kg: float, wheelbase_mm: float, centre_ahead_mm: float) -> AxleMasses:
    """Return the share of bike and rider on each axle: front = m b / p, b the centre of mass ahead of the
    rear
    axle.

    Standing, without braking or driving, which move all of it to one wheel. Source: the balance of moments.
    """
    mass = within("bike and rider", mass_kg, 80.0, 850.0, "kg")
    base = within("wheelbase", wheelbase_mm, 1000.0, 2500.0, "mm")
    ahead = within("centre of mass ahead of the rear axle", centre_ahead_mm, 0.0, base, "mm")
    return AxleMasses(mass * ahead / base, mass * (1.0 - ahead / base))


@attrs.frozen
class LoadDuty:
    """What an index bears in kg, and what is asked of it in kg."""

    rated_kg: float
    asked_kg: float

    @property
    def spare_kg(self) -> float:
        """Kilograms to the rating, below zero over it."""
        return self.rated_kg - self.asked_kg


def load_duty(load_index: int, asked_kg: float) -> LoadDuty:
    """Compare a load index with the mass on that axle."""
    return LoadDuty(load_kg(load_index), above("mass on the axle", asked_kg, 0.0, 850.0, "kg"))


@attrs.frozen
class SpeedDuty:
    """A speed rating and a speed in km/h; `enough` is None where the rating ends at 'over'."""

    rating: SpeedRating
    km_h: float

    @property
    def enough(self) -> bool | None:
        """Whether the rating covers the speed; None above the figure of one that has no upper end."""
        if self.km_h <= self.rating.km_h:
            return True
        return None if self.rating.over else False


def speed_duty(symbol: str, speed_km_h: float) -> SpeedDuty:
    """Compare a speed symbol with a speed that was reached."""
    return SpeedDuty(speed_rating(symbol), within("speed", speed_km_h, 0.0, 400.0, "km/h"))
