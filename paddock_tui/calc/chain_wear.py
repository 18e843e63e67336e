"""How far a chain has grown, from a length over links, and what it may grow to.

Lengths in mm over so many pitches, the chain under tension, measured at several places: it wears unevenly,
and the worst place counts. From inside and outside of the rollers the length is their mean. The maker's own
figure goes before every general one. Source: chain makers' texts citing ANSI B29.1.
"""

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within

_MOST_PERCENT = 15.0


@attrs.frozen
class Elongation:
    """How much longer in percent, in mm over the links measured, and what an error of the gauge makes."""

    percent: float
    mm: float
    error_percent: float


def elongation(length_mm: float, links: int, pitch_mm: float, gauge_mm: float = 0.0) -> Elongation:
    """Return how far a chain has grown over its new length; Inconsistent where the count of links is off.

    `gauge_mm` is how far the reading may be off. New chains measure up to a few tenths of a percent over.
    """
    count = within("links", links, 1, 250)
    new = count * above("pitch", pitch_mm, 0.0, 50.0, "mm")
    length = above("length over the links", length_mm, 0.0, 10_000.0, "mm")
    error = 100.0 * within("error of the gauge", gauge_mm, 0.0, 10.0, "mm") / new
    percent = 100.0 * (length - new) / new
    if not -0.5 - error <= percent <= _MOST_PERCENT:
        why = f"{links:g} links are {new:.1f} mm when new: count the links, and measure pin to pin"
        raise Inconsistent("length over the links", why)
    return Elongation(percent, length - new, error)


def pin_to_pin_mm(inside_mm: float, outside_mm: float) -> float:
    """Return the length from pin to pin of one taken inside and one taken outside the rollers: their mean."""
    inside = above("length inside the rollers", inside_mm, 0.0, 10_000.0, "mm")
    if outside_mm <= inside:
        raise Inconsistent("length outside the rollers", "it has to be over the one inside")
    return (inside + outside_mm) / 2.0


def most_elongation_percent(largest_teeth: int, general_percent: float) -> float:
    """Return what a general text lets a chain grow: a general figure, less on a large sprocket, 200 / z."""
    teeth = within("teeth", largest_teeth, 6, 200)
    return min(above("general limit", general_percent, 0.0, 10.0, "%"), 200.0 / teeth)
