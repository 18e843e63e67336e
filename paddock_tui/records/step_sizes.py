"""Values whose steps a rider may choose: minus and plus move them by so much."""

from collections.abc import Mapping

from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount

STEP_SIZES: dict[str, Amount] = {
    "tyre_pressure": c.TYRE_PRESSURE,
    "height": c.SMALL,
    "fuel": c.VOLUME,
    "spring": c.SPRING,
    "tread": c.TREAD,
}
"""What each size is called in the settings file, with the values that it steps."""


def stepped_by(shape: object, sizes: Mapping[str, float]) -> Amount | None:
    """Return an amount that steps as the settings say; None where they say nothing of it."""
    for name, amount in STEP_SIZES.items():
        if shape is amount and name in sizes:
            return Amount(amount.dimension, amount.unit, amount.low, amount.high, step=sizes[name])
    return None
