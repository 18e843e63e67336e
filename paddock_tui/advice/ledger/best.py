"""Which session was best at a place, and what its set-up had that the last one there has not."""

from collections.abc import Iterable, Iterator

import attrs

from paddock_tui.advice.session_laps import stint_of
from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import PastSession
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference, session_differences
from paddock_tui.records.session import is_ridden


@attrs.frozen
class Best:
    """The session with the fastest usual lap of a rider at a venue on a surface; `last` is the last there."""

    bike: str
    best: PastSession
    usual_s: float
    last: PastSession
    differs: tuple[SetUpDifference, ...]
    of: int

    @property
    def place(self) -> tuple[str, str, str]:
        """Venue, rider and surface as judged."""
        return (
            self.best.venue or "",
            self.best.session.rider or "",
            COLUMN.get(self.best.session.surface or "", ""),
        )


def bests(past: Iterable[PastSession], name: str, bike: Bike | None) -> Iterator[Best]:
    """Return the best session of each venue, rider and surface with three clean laps, the last ones first.

    One session alone is no best: there is nothing that it was better than.
    """
    groups: dict[tuple[str, str, str], list[tuple[PastSession, float]]] = {}
    for one in past:
        column = COLUMN.get(one.session.surface or "")
        found = stint_of(one.session) if one.may_time and is_ridden(one.session) else None
        if one.venue is None or column is None or found is None or len(found.clean) < FEWEST:
            continue
        if found.usual_s is not None:
            key = (one.venue, one.session.rider or "", column)
            groups.setdefault(key, []).append((one, found.usual_s))
    for timed in reversed(list(groups.values())):
        if len(timed) < 2:
            continue
        best, usual_s = min(timed, key=lambda each: each[1])
        last = timed[-1][0]
        differs = session_differences(best.session, last.session, bike)
        yield Best(name, best, usual_s, last, differs, len(timed))
