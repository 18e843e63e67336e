"""How far the rear wheel rolls in one turn, and what that figure rests on."""

import functools
from decimal import Decimal
from typing import Literal

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_size import UnreadableSize, circumference, parse_tyre_size
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.tyres import Tyre


@attrs.frozen
class Rolled:
    """A circumference, the record it comes from, and the marking where it was worked out from one."""

    length: Quantity
    role: Literal["tyres", "bike"]
    marking: str | None = None


def rear_rolled(tyre: Tyre, bike: Bike | None) -> Rolled | None:
    """Return the circumference: of this tyre measured, of the bike's measured, else from a marking."""
    if tyre.circumference is not None:
        return Rolled(tyre.circumference, "tyres")
    if bike is not None and bike.rear.circumference is not None:
        return Rolled(bike.rear.circumference, "bike")
    return _marked(tyre.size, "tyres") or _marked(bike.rear.tyre_size if bike is not None else None, "bike")


def _marked(size: str | None, role: Literal["tyres", "bike"]) -> Rolled | None:
    metres = _of_marking(size) if size is not None else None
    return None if metres is None else Rolled(Quantity(Decimal(f"{metres * 1000:.0f}"), "mm"), role, size)


@functools.lru_cache(maxsize=64)
def _of_marking(size: str) -> float | None:
    try:
        return circumference(parse_tyre_size(size)).metres
    except (UnreadableSize, OutOfRange):
        return None
