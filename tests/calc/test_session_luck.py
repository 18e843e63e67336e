"""The luck of a session before its record is believed: the larger of what is assumed and what steps tell."""

import math

import pytest

from paddock_tui.calc.session_luck import LapRecord, RecordedStep, Ridden, luck_of
from tests.every import every

JUDGED = [Ridden(key, (104.0, 104.1, 104.2, 103.9, 104.0, 103.8)) for key in ("x", "y")]
ASSUMED_S, SCATTER_S = 0.36, 0.2
"""1.8 times the scatter, which is more than 0.15 % of the lap."""


def record(*changes_s: float) -> LapRecord:
    """Give one day of sessions that follow each other, by how much slower each was than the one before."""
    steps = tuple(RecordedStep(str(at), str(at + 1), change) for at, change in enumerate(changes_s))
    return LapRecord(1.0, SCATTER_S, 20, (steps,))


@every(
    ("changes_s", "wanted_s"),
    [
        # Mean 1/3, squares about it 24/9, over 2 (3 - 1/3) of one run: 0.5 s^2 a session, of which the laps'
        # own scatter over six of them is no luck.
        ((1.0, -1.0, 1.0), math.sqrt(0.5 - SCATTER_S**2 / 6.0)),
        ((0.1, -0.1, 0.1), ASSUMED_S),
        # Two steps are too few to tell anything.
        ((1.0, -1.0), ASSUMED_S),
    ],
)
def test_few_steps_raise_the_luck_that_is_assumed_and_never_lower_it(
    changes_s: tuple[float, ...], wanted_s: float
) -> None:
    found = luck_of(JUDGED, record(*changes_s))
    assert not found.learnt
    assert found.sd_s == pytest.approx(wanted_s)
    assert found.variance(6) == pytest.approx(wanted_s**2 + SCATTER_S**2 / 6.0)
