"""What was measured beside what was felt: travel used, hot pressures, the track; each points to a change.

It proposes nothing by itself: it is counted with the symptoms that the same change answers, and said.
Common practice, no source.
"""

from collections.abc import Iterator
from typing import Final

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, End
from paddock_tui.advice.ledger.conditions import LIKE_TRACK_K
from paddock_tui.advice.next_change import adjusters
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import GAUGE_ERRS_KPA
from paddock_tui.advice.next_change.start_pressure import start_move
from paddock_tui.advice.next_change.words import CannotChange, Move
from paddock_tui.facts.past import PastSession
from paddock_tui.quantities import Quantity

ALL_USED_MM: Final = 2.0
"""With so little travel left it was all used: the marker rests a little before the end."""

LITTLE_USED: Final = 0.75
"""Under this share of the fork's travel it stands on the track as if it were locked."""


@attrs.frozen
class Evidence:
    """What was measured, in words, and the moves that it speaks for."""

    text: str
    moves: tuple[Move, ...]


def evidence(case: Case) -> tuple[Evidence, ...]:
    """Return what was measured in a session that speaks for a change."""
    return (*_travel(case), *_pressures(case), *_track(case))


def all_travel_used(case: Case, end: End) -> bool:
    """Return whether one end is known to have used all its travel."""
    left = _left_mm(case, end)
    return left is not None and left <= ALL_USED_MM


def warmer_since(case: Case) -> tuple[PastSession, float] | None:
    """Return the session ridden before, and how much warmer the track is by more than makes it alike.

    Below zero is colder; None where it is alike, or not known both times.
    """
    before, now = next(case.ridden_before(), None), case.session.track
    then = before.session.track if before is not None else None
    if before is None or not isinstance(now, Quantity) or not isinstance(then, Quantity):
        return None
    by = now.to("C") - then.to("C")
    return (before, by) if abs(by) > LIKE_TRACK_K else None


def _left_mm(case: Case, end: End) -> float | None:
    travel, session = case.bike_end(end).travel, case.session
    used = session.front_travel_used if end == "front" else session.rear_travel_used
    return None if travel is None or used is None else travel.to("mm") - used.to("mm")


def _travel(case: Case) -> Iterator[Evidence]:
    for end in ENDS:
        if all_travel_used(case, end):
            text = f"all travel is used at the {end}, if the marker was set before the outing"
            firmer = adjusters.damping(case, end, "compression", 2), adjusters.preload(case, end, 1)
            yield Evidence(text, _made(*firmer))
    travel, left = case.bike.front.travel, _left_mm(case, "front")
    if travel is not None and left is not None and left > (1.0 - LITTLE_USED) * travel.to("mm"):
        text = f"{left:.0f} mm of travel at the front are left"
        yield Evidence(text, _made(adjusters.fast_compression(case, "front", -2)))


def _pressures(case: Case) -> Iterator[Evidence]:
    for end in ENDS:
        over = case.over_target_kpa(end)
        if over is not None and abs(over) > GAUGE_ERRS_KPA:
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


def _made(*moves: Move | CannotChange) -> tuple[Move, ...]:
    return tuple(one for one in moves if isinstance(one, Move))
