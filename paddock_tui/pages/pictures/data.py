"""The kinds of picture: lanes on one scale, front and rear side by side, and a chart of points.

All places are numbers of the picture's own scale; who draws it chooses cells or millimetres. Each has one
`sentence` with the same facts and a table of them, for those who cannot see it. Marks are told apart by their
sign: the full block is what counts or stands now, a letter is the first one of its word.
"""

from typing import TypeAlias

import attrs

NOW = "█"
"""The sign of what counts or stands now."""

SEVERAL = "*"
"""The sign where several marks other than the one of now stand on one place."""


@attrs.frozen
class Mark:
    """One mark: its sign, its place on the scale, and its word for the table."""

    sign: str
    at: float
    word: str = ""


@attrs.frozen
class Stretch:
    """A piece of a scale, from `low` to `high`, with words that stand on it where it has room for them."""

    low: float
    high: float
    words: str = ""


@attrs.frozen
class Lane:
    """One line of a picture: marks on the scale of the picture.

    `band` is what is wanted there, `reach` an interval drawn as a line between its ends, `used` a part
    that is filled, `stretches` pieces with words. A lane that is `shut` has no track: what
    stands there does nothing.
    `value` stands before the scale and `note` behind it.
    """

    label: str
    marks: tuple[Mark, ...] = ()
    value: str = ""
    note: str = ""
    band: Stretch | None = None
    reach: Stretch | None = None
    used: Stretch | None = None
    stretches: tuple[Stretch, ...] = ()
    shut: bool = False


@attrs.frozen
class Lanes:
    """Lanes on one scale from `low` to `high`, ticks below, and a line across all of them at `zero`.

    `ends` are the words above its two ends.
    """

    low: float
    high: float
    lanes: tuple[Lane, ...]
    sentence: str
    ticks: tuple[tuple[float, str], ...] = ()
    zero: float | None = None
    ends: tuple[str, str] = ("", "")
    heads: tuple[str, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()


@attrs.frozen
class Pair:
    """One adjuster of both ends of a bike: what it is, and the lane of each end; None where it has none."""

    what: str
    front: Lane | None
    rear: Lane | None


@attrs.frozen
class Pairs:
    """Front and rear side by side: the outer end of both scales is 1.0, the inner 0.0.

    So a front and a rear that stand alike mirror each other. `outer` and `inner` are the words of the ends.
    """

    pairs: tuple[Pair, ...]
    sentence: str
    outer: str = "more"
    inner: str = "less"
    heads: tuple[str, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()


@attrs.frozen
class ChartLevel:
    """One line of a chart: its place on the upright scale and its words; `wanted` draws a line across."""

    at: float
    words: str = ""
    wanted: bool = False


@attrs.frozen
class Dot:
    """One point of a chart: its place across and upright (None: off the scale, in the row on top)."""

    across: float
    at: float | None
    sign: str = NOW


@attrs.frozen
class Chart:
    """Points over a scale from `low` to `high`, drawn on `levels` from the top downwards.

    `band` is a range of the upright scale that is shaded. `over` are the words of the row on top, for what
    was set aside or lies beyond; empty has no such row. `ticks` stand below. `counted` says that the places
    across are whole numbers, each with as many cells.
    """

    low: float
    high: float
    levels: tuple[ChartLevel, ...]
    dots: tuple[Dot, ...]
    sentence: str
    ticks: tuple[tuple[float, str], ...] = ()
    band: tuple[float, float] | None = None
    over: str = ""
    counted: bool = False
    heads: tuple[str, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()


Picture: TypeAlias = Lanes | Pairs | Chart
