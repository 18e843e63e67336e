"""The ideal lap of sectors: never slower than the best lap, and refused where sectors do not go together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.sectors import ideal_lap
from tests.every import every

TIMES = st.floats(10, 90)


@given(st.dictionaries(st.integers(1, 30), st.tuples(TIMES, TIMES, TIMES), min_size=1, max_size=8))
def test_the_ideal_lap_is_at_most_the_best_one_and_made_of_ridden_sectors(
    laps: dict[int, tuple[float, float, float]],
) -> None:
    found = ideal_lap(laps)
    assert found.ideal_s <= found.best_s + 1e-9
    assert found.ideal_s == pytest.approx(sum(min(one[place] for one in laps.values()) for place in range(3)))
    assert all(laps[one.best_lap][one.number - 1] == one.best_s for one in found.sectors)
    assert found.widest.to_find_s == max(one.to_find_s for one in found.sectors)


@every("laps", [{}, {2: (30.0, 40.0), 3: (30.0, 40.0, 30.0)}, {2: (70.0,)}, {2: (30.0, 0.0)}])
def test_what_does_not_go_together_is_refused(laps: dict[int, tuple[float, ...]]) -> None:
    with pytest.raises((Inconsistent, OutOfRange)):
        ideal_lap(laps)
