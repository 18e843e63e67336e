"""Rules about rider sag: outside what is usual or what a technician set, and preload with no room left."""

from paddock_tui.calc.spring_choice import PreloadAt
from paddock_tui.facts.sag import (
    PreloadEnd,
    RiderSag,
    SagBefore,
    TravelUsed,
    is_long,
    window_of,
)
from paddock_tui.limits import Limits
from paddock_tui.limits.sag import (
    AGREES,
    FREE_LEAST,
    FREE_MOST,
    FREE_RULE,
    FREE_SOURCE,
    LONG_TRAVEL,
    OUTER,
    RIDDEN_APART,
    RIDDEN_RULE,
    ROAD,
    ROAD_LONG,
    RULE,
    SOURCE,
    TRACK,
    TRACK_LONG,
    TRAVEL_LEFT,
    TRAVEL_RULE,
)
from paddock_tui.quantities import Quantity
from paddock_tui.rules.core import CAUTION, NOTE, SERIOUS, SUSPENSION, RaisedFinding, Remedy, Result, rule


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
    window = window_of(sag_figure, rider_sag.travel_mm, kind == "road", limits)
    if window.low_mm <= rider_sag.mm <= window.high_mm:
        return None
    little = rider_sag.mm < window.low_mm
    outer = limits[OUTER[0]], limits[OUTER[1]]
    long = is_long(rider_sag.travel_mm, limits)
    outside = rider_sag.mm < outer[0] or (rider_sag.mm > outer[1] and not long)
    serious = sag_figure is None and outside
    used_up = preload_end is not None and preload_end.at is (PreloadAt.LEAST if little else PreloadAt.MOST)
    ask = f"Preload has no way left: the spring seems too {'stiff' if little else 'soft'}; ask a technician."
    turn = (
        f"{'Back preload off' if little else 'Wind preload on'} at the {subject} toward {window.aim}, "
        "measure again, enter what was measured. A technician's figure goes before any window."
    )
    return RaisedFinding(
        message=f"{_first(str(rider_sag))}: too {'little' if little else 'much'} for {window.said}.",
        why="Sag sets the height of that end: rake, weight on the wheel, and the travel left each way.",
        remedy=Remedy(ask if used_up else turn),
        severity=SERIOUS if serious else CAUTION,
        facts=f"{rider_sag}; {window.said}" + (f"; {preload_end}" if used_up else ""),
    )


@rule(
    FREE_RULE,
    NOTE,
    source=FREE_SOURCE,
    per="end",
    when=("to_come",),
    at="session:sag.rear.alone.extended",
    limits=(FREE_LEAST, FREE_MOST),
    rank=SUSPENSION,
)
def rear_free_sag_and_spring(
    free_sag: float,
    rider_sag: RiderSag,
    sag_figure: Quantity | None,
    kind: str,
    limits: Limits,
) -> Result:
    """Free sag at the rear that tells of the spring: hardly any with rider sag right, or much of it."""
    window = window_of(sag_figure, rider_sag.travel_mm, kind == "road", limits)
    soft = free_sag < limits[FREE_LEAST] and rider_sag.mm >= window.low_mm
    stiff = free_sag > limits[FREE_MOST] and rider_sag.mm <= window.high_mm
    if not (soft or stiff):
        return None
    spring, other = ("soft", "stiffer") if soft else ("stiff", "softer")
    return RaisedFinding(
        message=f"Rear free sag {free_sag:.0f} mm, rider sag {rider_sag.mm:.0f} mm: spring too {spring}.",
        why="Preload moves both sags equally; only another spring brings the one right and leaves the other.",
        remedy=Remedy(f"Ask a technician for the next {other} spring; measure both sags again on it."),
        subject="rear",
        facts=f"free sag {free_sag:.1f} mm; {rider_sag}; {window.said}",
    )


@rule(
    RIDDEN_RULE,
    NOTE,
    source=FREE_SOURCE,
    per="end",
    when=("to_come",),
    at="session:sag.{subject}.rider.extended",
    limits=(RIDDEN_APART,),
    rank=SUSPENSION,
)
def sag_not_as_ridden_before(
    subject: str, rider_sag: RiderSag, sag_before: SagBefore, limits: Limits
) -> Result:
    """Rider sag that is not what was ridden before: an earlier sag is no target, but it is worth knowing."""
    apart = rider_sag.mm - sag_before.mm
    if abs(apart) < limits[RIDDEN_APART] - 1e-9:
        return None
    return RaisedFinding(
        message=f"{_first(str(rider_sag))}: not what you rode, {sag_before}.",
        why="It is another bike to turn and to brake; what you felt before was felt at the other height.",
        remedy=Remedy("Ride it as it is on purpose, or go back; judge nothing else in the same outing."),
        severity=CAUTION if sag_before.theirs else NOTE,
        facts=f"{rider_sag}; {sag_before}",
    )


@rule(
    TRAVEL_RULE,
    CAUTION,
    per="end",
    when=("to_come",),
    at="session:{subject}_travel_used",
    limits=(TRAVEL_LEFT,),
    rank=SUSPENSION,
)
def travel_used_up(subject: str, travel_left: TravelUsed, limits: Limits) -> Result:
    """Next to no travel was left after an outing in which it dived or was harsh, the marker set before it."""
    if travel_left.left_mm > limits[TRAVEL_LEFT] + 1e-9:
        return None
    return RaisedFinding(
        message=f"{_first(subject)} travel: {travel_left.left_mm:.0f} mm left, and it {_did(travel_left)}.",
        why="At the end of its travel a wheel cannot follow the next bump: it hops, or the tyre lets go.",
        remedy=Remedy("Sag first; then a little preload, oil level or the next spring: ask a technician."),
        facts=str(travel_left),
    )


def _did(used: TravelUsed) -> str:
    return "dived" if used.felt == "dives" else "was harsh"


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]
