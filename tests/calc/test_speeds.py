"""What a limiter that counts in steps can be set to."""

import pytest

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.speeds import limiter_figure_km_h
from tests.every import every


@every(("posted", "step", "figure"), [(60, 1, 60), (60, 25, 50), (50, 0.1, 50), (24.9, 5, 20)])
def test_the_limiters_figure_is_never_above_the_posted_one(posted: float, step: float, figure: float) -> None:
    assert limiter_figure_km_h(posted, step) == pytest.approx(figure)


def test_a_negative_speed_is_refused() -> None:
    with pytest.raises(OutOfRange):
        limiter_figure_km_h(-1.0)
