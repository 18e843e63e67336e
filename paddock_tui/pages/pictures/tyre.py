"""What part of a tyre is used: tread down to where it counts as worn."""

from collections.abc import Sequence

import attrs

from paddock_tui.pages.pictures.data import Lane, Lanes, Mark, Stretch

LEGEND = "█ left  · gone  w worn"


@attrs.frozen
class TreadDepth:
    """The depth of one place of a tyre and the depth at which it counts as worn, in mm."""

    label: str
    left_mm: float
    worn_mm: float | None


def tread_lanes(depths: Sequence[TreadDepth]) -> Lanes | None:
    """Draw what is left at each place over the deepest; None where nothing was measured."""
    if not depths:
        return None
    most = max(max(one.left_mm, one.worn_mm or 0.0) for one in depths)
    high = float(int(most) + 1)
    return Lanes(
        0.0,
        high,
        tuple(_lane(one) for one in depths),
        "; ".join(f"{one.label} {_room(one)}" for one in depths),
        ticks=((0.0, "0"), (high, f"{high:g} mm")),
        heads=("", "left, mm", "worn at, mm", "so"),
        table=tuple((one.label, f"{one.left_mm:g}", _worn(one), _room(one)) for one in depths),
    )


def _worn(one: TreadDepth) -> str:
    return "not known" if one.worn_mm is None else f"{one.worn_mm:g}"


def _lane(one: TreadDepth) -> Lane:
    worn = (Mark("w", one.worn_mm, "worn"),) if one.worn_mm is not None else ()
    return Lane(one.label, worn, f"{one.left_mm:.1f}", _room(one), used=Stretch(0.0, one.left_mm))


def _room(one: TreadDepth) -> str:
    if one.worn_mm is None:
        return f"{one.left_mm:g} mm, where it is worn not known"
    left = one.left_mm - one.worn_mm
    if left <= 0:
        return f"{one.left_mm:g} mm, worn: {one.worn_mm:g} mm"
    return f"{left:.1f} mm to worn"
