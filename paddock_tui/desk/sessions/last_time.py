"""Last time here: the last session on this bike at this venue before, in like conditions if there is one."""

from collections.abc import Iterator

import attrs

from paddock_tui.facts.outing import COLUMN, track_moved_k, track_warmer_k
from paddock_tui.facts.past import ENDS, History, PastSession, tyre_of
from paddock_tui.facts.situation import Situation
from paddock_tui.limits import Limits
from paddock_tui.records.session import Session


@attrs.frozen
class LastTime:
    """The session found, and why it is not in like conditions; empty where it is, as far as known.

    `untold` is what could not be compared, since it is not known of one of the two.
    """

    past: PastSession
    unlike: str = ""
    untold: tuple[str, ...] = ()


def last_time(situation: Situation) -> LastTime | None:
    """Find the last ridden session of this bike here on an earlier day, in like conditions where one is.

    None where the venue is not known or the bike was never here before.
    """
    session, venue = situation.session, situation.refs.get("venue")
    if session is None or venue is None or session.date is None:
        return None
    here = (
        one
        for one in reversed(situation.history.past)
        if one.venue == venue.id and one.date is not None and one.date < session.date and one.ridden
    )
    last: LastTime | None = None
    for one in here:
        told = "; ".join(unlike(session, one.session, situation.history, situation.limits))
        if last is None or not told:
            found = LastTime(one, told, tuple(untold(session, one.session, situation.history)))
            if not told:
                return found
            last = found
    return last


def unlike(now: Session, then: Session, history: History, limits: Limits) -> Iterator[str]:
    """Say what makes the conditions of two sessions different; what is not known makes no difference."""
    here, there = (COLUMN.get(one.surface or "") for one in (now, then))
    if here is not None and there is not None and here != there:
        yield f"surface {then.surface}, now {now.surface}"
    for end in ENDS:
        kinds = [tyre_of(history.tyre_sets.get(one.tyres or ""), end).kind for one in (then, now)]
        if None not in kinds and kinds[0] != kinds[1]:
            yield f"{end} tyre {kinds[0]}, now {kinds[1]}"
    if track_moved_k(then, now, limits) is not None:
        yield f"track {then.track}, now {now.track}"


def untold(now: Session, then: Session, history: History) -> Iterator[str]:
    """Name what cannot be compared of two sessions, since it is not known of one of them."""
    if None in (COLUMN.get(one.surface or "") for one in (now, then)):
        yield "surface"
    sets = [history.tyre_sets.get(one.tyres or "") for one in (then, now)]
    if any(tyre_of(one, end).kind is None for one in sets for end in ENDS):
        yield "tyre kind"
    if track_warmer_k(then, now) is None:
        yield "track temperature"
