"""Rules about rider sag: outside what is usual or what a technician set, and preload with no room left."""

from paddock_tui.facts.sag import PreloadEnd, RiderSag, is_long, rider_window
from paddock_tui.limits import Limits
from paddock_tui.limits.sag import (
    AGREES,
    LONG_TRAVEL,
    OUTER,
    ROAD,
    ROAD_LONG,
    RULE,
    SOURCE,
    TRACK,
    TRACK_LONG,
)
from paddock_tui.quantities import Quantity
from paddock_tui.rules.core import CAUTION, SERIOUS, SUSPENSION, RaisedFinding, Remedy, Result, rule
from paddock_tui.trade.spring_choice import PreloadAt


@rule(
    RULE,
    CAUTION,
    source=SOURCE,
    per="end",
    when=("to_come",),
    at="session:sag.{subject}.rider.extended",
    limits=(*TRACK, *ROAD, *TRACK_LONG, *ROAD_LONG, LONG_TRAVEL, *OUTER, AGREES),
    rank=SUSPENSION,
)
def rider_sag_out_of_its_window(
    subject: str,
    rider_sag: RiderSag,
    preload_end: PreloadEnd | None,
    sag_figure: Quantity | None,
    kind: str,
    limits: Limits,
) -> Result:
    """Rider sag outside the window, or away from the technician's figure where there is one.

    With preload at its end nothing but another spring mends it.
    """
    low, high, words = _window(rider_sag, sag_figure, kind, limits)
    if low <= rider_sag.mm <= high:
        return None
    little = rider_sag.mm < low
    outer = limits[OUTER[0]], limits[OUTER[1]]
    long = is_long(rider_sag.travel_mm, limits)
    outside = rider_sag.mm < outer[0] or (rider_sag.mm > outer[1] and not long)
    serious = sag_figure is None and outside
    used_up = preload_end is not None and preload_end.at is (PreloadAt.LEAST if little else PreloadAt.MOST)
    ask = f"Preload has no way left: the spring seems too {'stiff' if little else 'soft'}; ask a technician."
    turn = (
        f"{'Back preload off' if little else 'Wind preload on'} at the {subject}, measure "
        "again, enter what was measured. A technician's figure goes before any window."
    )
    return RaisedFinding(
        message=f"{_first(str(rider_sag))}: too {'little' if little else 'much'} for {words}.",
        why="Sag sets the height of that end: rake, weight on the wheel, and the travel left each way.",
        remedy=Remedy(ask if used_up else turn),
        severity=SERIOUS if serious else CAUTION,
        facts=f"{rider_sag}; {words}" + (f"; {preload_end}" if used_up else ""),
    )


def _window(sag: RiderSag, figure: Quantity | None, kind: str, limits: Limits) -> tuple[float, float, str]:
    """Return the window in mm, and what it is: the technician's figure before any table."""
    if figure is not None:
        near = limits[AGREES]
        return figure.to("mm") - near, figure.to("mm") + near, f"the technician's {figure}"
    window = rider_window(sag.travel_mm, kind == "road", limits)
    return window.low_mm, window.high_mm, window.said


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]
