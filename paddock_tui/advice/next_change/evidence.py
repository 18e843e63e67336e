"""What was measured beside what was felt: travel used, hot pressures, the track; each points to a change.

It proposes nothing by itself: it is counted with the symptoms that the same change answers, and said.
Common practice, no source.
"""

from collections.abc import Iterator

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, End
from paddock_tui.advice.next_change import adjusters
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.start_pressure import start_move
from paddock_tui.advice.next_change.words import Move, Refusal
from paddock_tui.facts.outing import track_moved_k
from paddock_tui.facts.past import PastSession
from paddock_tui.limits.next_change import GAUGE_ERRS, LITTLE_USED, READ_OVER
from paddock_tui.limits.sag import TRAVEL_LEFT


@attrs.frozen
class Evidence:
    """What was measured, in words, and the moves that it speaks for."""

    text: str
    moves: tuple[Move, ...]


def evidence(case: Case) -> tuple[Evidence, ...]:
    """Return what was measured in a session that speaks for a change."""
    return (*_travel(case), *_pressures(case), *_track(case))


def all_travel_used(case: Case, end: End) -> bool:
    """Return whether one end is known to have used all its travel; the marker rests a little before it."""
    left = _left_mm(case, end)
    return left is not None and left <= case.limits[TRAVEL_LEFT]


def warmer_since(case: Case) -> tuple[PastSession, float] | None:
    """Return the session ridden before, and how much warmer the track is by more than makes it alike.

    Below zero is colder; None where it is alike, or not known both times.
    """
    before = next(case.ridden_before(), None)
    by = track_moved_k(before.session, case.session, case.limits) if before is not None else None
    return None if before is None or by is None else (before, by)


@attrs.frozen
class TravelRead:
    """How much wheel travel one end has left in mm; `lacks` is why that cannot be told, `said` how it was."""

    left_mm: float | None = None
    said: str = ""
    lacks: str = ""


def travel_read(case: Case, end: End) -> TravelRead | None:
    """Return what the marker tells of the wheel's travel; None where it was not read.

    A fork's marker goes as far as the wheel, unless the bike's file has a ratio for the fork; a shock's
    goes as far as the wheel times the motion ratio, which has to be known.
    """
    session, own = case.session, case.bike_end(end)
    used = session.front_travel_used if end == "front" else session.rear_travel_used
    if used is None:
        return None
    ratio = own.motion_ratio or (1.0 if end == "front" else None)
    lacking = [
        word for word, value in (("wheel travel", own.travel), ("motion ratio", ratio)) if value is None
    ]
    if own.travel is None or ratio is None:
        return TravelRead(lacks=f"enter its {' and '.join(lacking)} in the bike's file")
    travel, at_wheel = own.travel.to("mm"), used.to("mm") / ratio
    if at_wheel > travel * (1.0 + case.limits[READ_OVER]):
        where = f"{used} at the shock would be {at_wheel:.0f} mm at the wheel" if ratio != 1.0 else str(used)
        return TravelRead(
            lacks=f"{where}, which has {travel:.0f}: read the marker again, along fork or shock"
        )
    said = f" ({used} at the shock, {at_wheel:.0f} mm at the wheel)" if ratio != 1.0 else ""
    return TravelRead(max(travel - at_wheel, 0.0), said)


def travel_lacks(case: Case) -> Iterator[str]:
    """Say of each marker that was read and tells nothing why, and what is to be entered."""
    for end in ENDS:
        read = travel_read(case, end)
        if read is not None and read.lacks:
            yield f"{end} travel used is not weighed: {read.lacks}"


def _left_mm(case: Case, end: End) -> float | None:
    read = travel_read(case, end)
    return None if read is None else read.left_mm


def _travel(case: Case) -> Iterator[Evidence]:
    for end in ENDS:
        if all_travel_used(case, end):
            read = travel_read(case, end)
            at_shock = read.said if read is not None else ""
            text = f"all travel is used at the {end}{at_shock}, if the marker was set before the outing"
            firmer = adjusters.damping(case, end, "compression", 2), adjusters.preload(case, end, 1)
            yield Evidence(text, _made(*firmer))
    travel, left = case.bike.front.travel, _left_mm(case, "front")
    if travel is not None and left is not None and left > (1.0 - case.limits[LITTLE_USED]) * travel.to("mm"):
        text = f"{left:.0f} mm of travel at the front are left"
        yield Evidence(text, _made(adjusters.fast_compression(case, "front", -2)))


def _pressures(case: Case) -> Iterator[Evidence]:
    for end in ENDS:
        over = case.over_target_kpa(end)
        if over is not None and abs(over) > 100.0 * case.limits[GAUGE_ERRS]:
            by = figures.pressure(abs(over), case.about.units)
            text = f"the {end} is {by} {'over' if over > 0 else 'under'} its hot target"
            yield Evidence(text, _made(start_move(case, end)))


def _track(case: Case) -> Iterator[Evidence]:
    """Hot oil is thin: a track that got much warmer speaks for more rebound where that is felt."""
    found = warmer_since(case)
    if found is not None and found[1] > 0.0:
        before, by = found
        text = f"the track is {by:.0f} C warmer than in session {before.session.number or before.id}"
        yield Evidence(text, _made(*(adjusters.damping(case, end, "rebound", 1) for end in ENDS)))


def _made(*moves: Move | Refusal) -> tuple[Move, ...]:
    return tuple(one for one in moves if isinstance(one, Move))
