"""Whether the spring suits the rider: what free and rider sag, and where preload stands, say of its rate.

With rider sag as wanted, little free sag means a soft spring wound up, much of it a stiff one; preload at its
end with rider sag still out means the same. Where top-out springs are fitted, or it is not known, no table
serves: only a technician's figures do. The result is a reason to ask, not an order.
"""

import enum

import attrs

from paddock_tui.calc.errors import Inconsistent, within


@attrs.frozen
class Windows:
    """Rider and free sag in mm, each from low to high, and whether a technician gave them for this bike."""

    rider_low_mm: float
    rider_high_mm: float
    free_low_mm: float
    free_high_mm: float
    from_technician: bool = False

    def __attrs_post_init__(self) -> None:
        if self.rider_low_mm > self.rider_high_mm or self.free_low_mm > self.free_high_mm:
            raise Inconsistent("sag window", "its low end is above its high end")


FREE_FRONT_MM = (20.0, 30.0)
FREE_REAR_MM = (3.0, 15.0)
"""Free sag in common use; published windows differ by some 5 mm, and that of the front is the weakest."""


class SpringFit(enum.Enum):
    """What can be said of the spring's rate for this rider."""

    TOO_SOFT = "too soft"
    RIGHT = "right"
    TOO_STIFF = "too stiff"
    CANNOT_TELL = "cannot tell"


class PreloadAt(enum.Enum):
    """Where the preload adjuster stands."""

    LEAST = "least"
    BETWEEN = "between"
    MOST = "most"
    UNKNOWN = "unknown"


@attrs.frozen
class RateVerdict:
    """The verdict on the rate, and why in one line."""

    rate: SpringFit
    why: str


def judge_rate(
    rider_sag_mm: float,
    free_sag_mm: float | None,
    windows: Windows,
    preload_at: PreloadAt = PreloadAt.UNKNOWN,
    top_out_springs: bool | None = None,
) -> RateVerdict:
    """Judge the rate by both sags; free sag None is not measured, `top_out_springs` None is not known."""
    within("rider sag", rider_sag_mm, 0.0, 200.0, "mm")
    if free_sag_mm is not None:
        within("free sag", free_sag_mm, 0.0, rider_sag_mm, "mm")
    if top_out_springs is not False and not windows.from_technician:
        why = "top-out springs are fitted or may be: only a technician's figures tell"
        return RateVerdict(SpringFit.CANNOT_TELL, why)
    if rider_sag_mm > windows.rider_high_mm:
        return _too_much(preload_at)
    if rider_sag_mm < windows.rider_low_mm:
        return _too_little(preload_at)
    return _by_free_sag(free_sag_mm, windows, preload_at)


def _too_much(preload_at: PreloadAt) -> RateVerdict:
    if preload_at is PreloadAt.MOST:
        return RateVerdict(SpringFit.TOO_SOFT, "rider sag is too much with preload at its most")
    return RateVerdict(SpringFit.CANNOT_TELL, "rider sag is too much: set it with preload first")


def _too_little(preload_at: PreloadAt) -> RateVerdict:
    if preload_at is PreloadAt.LEAST:
        return RateVerdict(SpringFit.TOO_STIFF, "rider sag is too little with preload at its least")
    return RateVerdict(SpringFit.CANNOT_TELL, "rider sag is too little: set it with preload first")


def _by_free_sag(free_sag_mm: float | None, windows: Windows, preload_at: PreloadAt) -> RateVerdict:
    if free_sag_mm is None:
        return RateVerdict(SpringFit.CANNOT_TELL, "rider sag is in its window; free sag is not measured")
    if free_sag_mm < windows.free_low_mm:
        return RateVerdict(
            SpringFit.TOO_SOFT, "rider sag is right with little free sag: the spring is wound up"
        )
    if free_sag_mm > windows.free_high_mm:
        return RateVerdict(
            SpringFit.TOO_STIFF, "rider sag is right with much free sag: the spring is hardly loaded"
        )
    ends = {PreloadAt.LEAST: "least", PreloadAt.MOST: "most"}
    if preload_at in ends:
        why = f"both sags are in their windows, but preload is at its {ends[preload_at]}: no room left"
        return RateVerdict(SpringFit.CANNOT_TELL, why)
    return RateVerdict(SpringFit.RIGHT, "both sags are in their windows")
