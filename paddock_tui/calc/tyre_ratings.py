"""What the service description of a tyre stands for: load index in kg, speed symbol in km/h.

Source: ISO 4223-1, UN Regulation 75 annex 4. The index rises by 10^(1/80) a step from 45 kg at 0, rounded to
the standard's figures.
"""

import attrs

from paddock_tui.calc.errors import Inconsistent, within

_FIRST_INDEX = 20
_LOADS_KG = (
    *(80, 82.5, 85, 87.5, 90, 92.5, 95, 97.5, 100, 103),
    *(106, 109, 112, 115, 118, 121, 125, 128, 132, 136),
    *(140, 145, 150, 155, 160, 165, 170, 175, 180, 185),
    *(190, 195, 200, 206, 212, 218, 224, 230, 236, 243),
    *(250, 257, 265, 272, 280, 290, 300, 307, 315, 325),
    *(335, 345, 355, 365, 375, 387, 400, 412, 425, 437),
    *(450, 462, 475, 487, 500, 515, 530, 545, 560, 580),
    600,
)
_SYMBOLS = "BCDEFGJKLMNPQRSTUHVW"
_KM_H = (50, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170, 180, 190, 200, 210, 240, 270)
_SPEEDS_KM_H = dict(zip(_SYMBOLS, _KM_H, strict=True))
SPEED_SYMBOLS = frozenset(_SPEEDS_KM_H)


def load_kg(load_index: int) -> float:
    """Load in kg of a load index from 20 to 90."""
    last = _FIRST_INDEX + len(_LOADS_KG) - 1
    return float(_LOADS_KG[int(within("load index", load_index, _FIRST_INDEX, last)) - _FIRST_INDEX])


@attrs.frozen
class SpeedRating:
    """Speed in km/h of a symbol; `over`: the tyre is made for more, by how much only its maker says."""

    km_h: int
    over: bool = False


def speed_rating(symbol: str) -> SpeedRating:
    """Rating of a symbol; V or W in brackets, or Z in a size, is for more than the figure (Z: over 240)."""
    text = symbol.strip().upper()
    if text == "Z":
        return SpeedRating(240, over=True)
    bracketed = text.startswith("(") and text.endswith(")")
    letter = text[1:-1] if bracketed else text
    if letter not in _SPEEDS_KM_H or (bracketed and letter not in ("V", "W")):
        raise Inconsistent("speed symbol", f"{symbol} is not one of the standard's")
    return SpeedRating(_SPEEDS_KM_H[letter], bracketed)
