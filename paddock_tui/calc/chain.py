"""Roller chain: pitch from its number, links for a centre distance, centre distance from links.

L = 2 C + (N1 + N2) / 2 + (N2 - N1)^2 / (4 pi^2 C), lengths in pitches, within 0.005 pitch of the exact
geometry for motorcycle ratios. Sources: Machinery's Handbook; Shigley, equation 17-34; ISO 606 for pitches.
"""

import math

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within

_EIGHTH_INCH_MM = 25.4 / 8.0
_EIGHTIETH_INCH_MM = 25.4 / 80.0
_ODD_WIDTHS = frozenset({428, 532})


@attrs.frozen
class ChainSize:
    """Pitch and inner width of a chain in mm; the width None where its number does not tell."""

    pitch_mm: float
    inner_width_mm: float | None


def chain_size(number: int) -> ChainSize:
    """Size from a number such as 520: first digit in eighths of an inch, last two in eightieths.

    428 and 532 do not follow the rule for the width. Refused outside the series 4xx to 6xx.
    """
    within("chain number", number, 400, 699)
    width = None if number in _ODD_WIDTHS else number % 100 * _EIGHTIETH_INCH_MM
    return ChainSize(number // 100 * _EIGHTH_INCH_MM, width or None)


def pitch_diameter_mm(teeth: int, pitch_mm: float) -> float:
    """Diameter in mm on which the rollers lie: p / sin(180 degrees / N). Source: ASME B29.1."""
    return above("pitch", pitch_mm, 0.0, 50.0, "mm") / math.sin(math.pi / _teeth(teeth))


def links_exact(front_teeth: int, rear_teeth: int, centre_mm: float, pitch_mm: float) -> float:
    """Length of chain in pitches for a centre distance in mm, not yet a whole number."""
    front, rear = _teeth(front_teeth), _teeth(rear_teeth)
    centre = above("centre distance", centre_mm, 0.0, 2000.0, "mm") / above(
        "pitch", pitch_mm, 0.0, 50.0, "mm"
    )
    above("centre distance in pitches", centre, (front + rear) / (2.0 * math.pi), None)
    return 2.0 * centre + (front + rear) / 2.0 + (rear - front) ** 2 / (4.0 * math.pi**2 * centre)


def links_even(front_teeth: int, rear_teeth: int, centre_mm: float, pitch_mm: float) -> int:
    """Links to buy: the length rounded up to an even number (an odd one needs a cranked link)."""
    exact = links_exact(front_teeth, rear_teeth, centre_mm, pitch_mm)
    return 2 * math.ceil(exact / 2.0 - 1e-9)


def centre_mm(front_teeth: int, rear_teeth: int, links: float, pitch_mm: float) -> float:
    """Return the centre distance in mm at which a chain of so many links is taut (no slack left).

    C = (A + sqrt(A^2 - 8 ((N2 - N1) / 2 pi)^2)) / 4 with A = L - (N1 + N2) / 2.
    """
    front, rear = _teeth(front_teeth), _teeth(rear_teeth)
    spare = above("links over half the teeth", links - (front + rear) / 2.0, 0.0, 400.0)
    root = spare**2 - 8.0 * ((rear - front) / (2.0 * math.pi)) ** 2
    if root < 0.0:
        raise Inconsistent("chain", f"{links:g} links are too few for {front:g} and {rear:g} teeth")
    return (spare + math.sqrt(root)) / 4.0 * above("pitch", pitch_mm, 0.0, 50.0, "mm")


def _teeth(teeth: int) -> float:
    return within("teeth", teeth, 6, 120)
