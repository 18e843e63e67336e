"""A tyre's marking read into its sizes: 120/70 ZR17, 120/70-17, 120/70R17 M/C (58W).

Design section height H = width x aspect / 100, rounded to the millimetre, and overall diameter d + 2 H with
the nominal rim diameter d. Source: UN Regulation 75, 6.1.2; ISO 5751-1. A real tyre differs by its tolerance,
by growth with speed, by load and wear: a measured circumference is better.
"""

import enum
import math
import re

import attrs

from paddock_tui.calc.errors import above, within
from paddock_tui.calc.tyre_ratings import SPEED_SYMBOLS


class Construction(enum.Enum):
    """How the carcass is built."""

    RADIAL = "radial"
    BIAS_BELTED = "bias-belted"
    DIAGONAL = "diagonal"


@attrs.frozen
class TyreSize:
    """What a marking says; None where it does not. `speed_symbol` keeps its brackets, `size_symbol` is the
    letter before the construction (Z, or on older tyres V or H), `overall_mm` the diameter that slicks carry
    in place of an aspect ratio (which then follows from it)."""

    width_mm: int
    aspect_percent: int
    construction: Construction
    rim_inch: float
    motorcycle: bool = False
    load_index: int | None = None
    speed_symbol: str | None = None
    size_symbol: str | None = None
    overall_mm: int | None = None

    @property
    def rim_mm(self) -> int:
        """Nominal rim diameter in mm of the rim code: 16 is 406, 17 is 432, 18 is 457."""
        return _whole(self.rim_inch * 25.4)

    @property
    def section_height_mm(self) -> int:
        """Design section height in mm."""
        return _whole(self.width_mm * self.aspect_percent / 100.0)

    @property
    def diameter_mm(self) -> int:
        """Design overall diameter in mm."""
        if self.overall_mm is not None:
            return self.overall_mm
        return self.rim_mm + 2 * self.section_height_mm


@attrs.frozen
class UnreadableSize(ValueError):
    """Where a marking cannot be read: the place (0-based), and what was expected there."""

    text: str
    at: int
    expected: str

    def sentence(self) -> str:
        """Say it in one line."""
        found = self.text[self.at :].strip()
        where = f"at “{found}”" if found else "at the end"
        return f"{where}: expected {self.expected}"

    def __str__(self) -> str:
        return self.sentence()


_LEAST_OVERALL_MM = 400

_CONSTRUCTIONS = {"R": Construction.RADIAL, "B": Construction.BIAS_BELTED, "-": Construction.DIAGONAL}


def parse_tyre_size(text: str) -> TyreSize:
    """Read a marking; raises UnreadableSize with the place, OutOfRange for sizes no motorcycle tyre has.

    Slicks: 200/660 R17 names the overall diameter, 200/60 R420 the rim in mm (paddock practice, unpublished).
    Inch and letter sizes do not tell their height: the circumference has to be measured.
    """
    reader = _Reader(text)
    if reader.may_take(r"\d\.\d{2}|M[A-Z]\d{2}") is not None:
        raise UnreadableSize(text, 0, "a size in mm: this marking does not tell the height, measure one turn")
    width = int(reader.take(r"\d{2,3}(?!\d)", "the width in mm, e.g. 120"))
    reader.take(r"/", "a slash")
    aspect = int(reader.take(r"\d{2,3}(?!\d)", "the aspect ratio in percent, e.g. 70"))
    kind = reader.take(r"[ZVHW]?[RB]|-", "R, ZR, B or - before the rim").upper()
    rim = float(reader.take(r"[3-5]\d{2}(?!\d)|\d{2}(\.\d)?(?!\d)", "the rim in inches, e.g. 17"))
    rim = within("rim", rim, 300.0, 600.0, "mm") / 25.4 if rim > 99.0 else rim
    motorcycle = reader.may_take(r"M/C\b") is not None
    service = reader.may_take(r"\(?\d{2}(?!\d)")
    load, symbol = _service(reader, service)
    motorcycle = reader.may_take(r"M/C\b") is not None or motorcycle
    reader.may_take(r"T[LT]\b")
    reader.finish("nothing more")
    return TyreSize(
        width_mm=int(within("tyre width", width, 50, 330, "mm")),
        aspect_percent=_aspect_percent(width, aspect, rim),
        construction=_CONSTRUCTIONS[kind[-1]],
        rim_inch=within("rim", rim, 8.0, 26.0, "in"),
        motorcycle=motorcycle,
        load_index=load,
        speed_symbol=symbol,
        size_symbol=kind[:-1] or None,
        overall_mm=aspect if aspect >= _LEAST_OVERALL_MM else None,
    )


def _aspect_percent(width_mm: int, aspect: int, rim_inch: float) -> int:
    """Return the aspect ratio, found back where the figure is an overall diameter in mm."""
    if aspect >= _LEAST_OVERALL_MM:
        aspect = _whole(100.0 * (aspect - rim_inch * 25.4) / 2.0 / max(width_mm, 1))
    return int(within("aspect ratio", aspect, 25, 110, "%"))


class Origin(enum.Enum):
    """Where a circumference comes from."""

    MEASURED = "measured"
    MARKING = "from the marking"


@attrs.frozen
class Circumference:
    """A circumference in m, and where it comes from."""

    metres: float
    origin: Origin


def circumference(size: TyreSize, measured_m: float | None = None) -> Circumference:
    """Return the measured circumference where one is given, else pi times the design diameter.

    The latter is an upper bound: a loaded tyre rolls 1 to 3 % less. Measured: 1 to 3 m.
    """
    if measured_m is not None:
        return Circumference(within("measured circumference", measured_m, 1.0, 3.0, "m"), Origin.MEASURED)
    return Circumference(circumference_of_diameter_m(size.diameter_mm / 1000.0), Origin.MARKING)


def circumference_of_diameter_m(diameter_m: float) -> float:
    """Circumference in m of a diameter in m."""
    return math.pi * above("diameter", diameter_m, 0.0, 2.0, "m")


class _Reader:
    """Takes pieces of a text from left to right, skipping blanks."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0

    def may_take(self, pattern: str) -> str | None:
        self.at += len(self.text[self.at :]) - len(self.text[self.at :].lstrip())
        found = re.compile(pattern, re.IGNORECASE | re.ASCII).match(self.text, self.at)
        if found is None:
            return None
        self.at = found.end()
        return found.group()

    def take(self, pattern: str, expected: str) -> str:
        found = self.may_take(pattern)
        if found is None:
            raise UnreadableSize(self.text, self.at, expected)
        return found

    def finish(self, expected: str) -> None:
        if self.text[self.at :].strip():
            raise UnreadableSize(self.text, self.at, expected)


def _service(reader: _Reader, opening: str | None) -> tuple[int | None, str | None]:
    """Load index and speed symbol after the index was taken, its opening bracket perhaps with it."""
    if opening is None:
        return None, None
    load = int(opening.removeprefix("("))
    at = reader.at
    if opening.startswith("("):
        letter = reader.take(r"[A-Z]", "a speed symbol, e.g. W").upper()
        reader.take(r"\)", "a closing bracket")
        symbol = f"({letter})"
    else:
        symbol = letter = reader.take(r"[A-Z]", "a speed symbol, e.g. W").upper()
    if letter not in SPEED_SYMBOLS or (symbol != letter and letter not in "VW"):
        raise UnreadableSize(reader.text, at, "a speed symbol; only V and W stand in brackets")
    return load, symbol


def _whole(millimetres: float) -> int:
    return math.floor(millimetres + 0.5 + 1e-9)
