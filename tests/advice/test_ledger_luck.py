"""How large the luck of a session is, learnt over what a rider rode on a bike on such a surface."""

import itertools
import math
import statistics

import attrs
import pytest

from paddock_tui.calc.session_luck import Luck
from paddock_tui.facts.past import PastSession
from tests.advice.test_ledger import of, ridden

DAYS = {"2026-05-02": (9.0, 0.3, -0.2, 0.1, -0.4, 0.2), "2026-05-09": (9.0, -0.1, 0.2, 0.3, -0.3, 0.0)}
"""By how many s the usual laps of two earlier days lay off; the first session of each counts for nothing."""


def on_record(
    lap_s: float = 60.0, venue: str = "", surface: str = "dry", turned: bool = False
) -> list[PastSession]:
    """Two days on one set-up, or with traction turned for every session."""
    found = []
    for day, offs in DAYS.items():
        for number, off in enumerate(offs, 1):
            one = ridden(number, 2 * number - 2 if turned else 4, lap_s + off * lap_s / 60.0, day=day)
            session = attrs.evolve(one.session, surface=surface)
            found.append(attrs.evolve(one, session=session, venue=venue or one.venue))
    return found


def luck_after(before: list[PastSession]) -> Luck:
    """The luck by which going back is judged after what is on record."""
    found = of(*before, ridden(1, 5, 60.0), ridden(2, 6, 59.0), ridden(3, 5, 60.0))
    there = next(one for one in found if one.session.id == "2026-05-16-2")
    assert there.judgement is not None
    assert there.judgement.luck is not None
    return there.judgement.luck


def by_hand() -> tuple[float, float]:
    """Luck and drift of a session from the steps of both days, by statistics of the standard library."""
    steps = [later - one for offs in DAYS.values() for one, later in itertools.pairwise(offs[1:])]
    # A step has twice a session's variance; the mean of each day's four holds two sessions out of eight.
    variance = statistics.pvariance(steps) * len(steps) / (2.0 * (len(steps) - 2 / len(steps)))
    return math.sqrt(variance), statistics.fmean(steps)


@pytest.mark.parametrize("turned", [False, True])
def test_like_sessions_one_after_the_other_tell_how_large_luck_is_whatever_was_turned(turned: bool) -> None:
    luck = luck_after(on_record(turned=turned))

    assert (luck.learnt, luck.steps) == (True, 8)
    assert luck.freedom == pytest.approx(2 * (2 * 16 / 11) - 1)
    assert (luck.sd_s, luck.drift_s) == pytest.approx(by_hand())


def test_what_is_judged_tells_nothing_of_the_luck_it_is_judged_by() -> None:
    alone = luck_after([])
    assert (alone.learnt, alone.steps) == (False, 0)


def test_sessions_at_another_venue_tell_luck_as_a_share_of_the_lap() -> None:
    assert luck_after(on_record(120.0, "far", "wet")).learnt is False

    luck = luck_after(on_record(120.0, "far"))
    assert luck.learnt is True
    # The usual lap there is the median of all its sessions: a little over 120 s.
    assert (luck.sd_s, luck.drift_s) == pytest.approx(by_hand(), rel=0.01)
