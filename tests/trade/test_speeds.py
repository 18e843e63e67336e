"""Speeds as posted and as computed with."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paddock_tui.trade.errors import OutOfRange
from paddock_tui.trade.speeds import km_h_from_m_s, km_h_from_mph, limiter_figure_km_h, m_s_from_km_h


@pytest.mark.parametrize(("mph", "km_h"), [(19, 30.6), (56, 90.1)])
def test_limiter_figures_in_miles(mph: float, km_h: float) -> None:
    """Common practice, no source: 19 mph is a little over a posted 30 km/h, 56 mph a little over 90."""
    assert round(km_h_from_mph(mph), 1) == km_h


@settings(max_examples=50, deadline=None)
@given(st.floats(0.0, 300.0))
def test_there_and_back(km_h: float) -> None:
    assert km_h_from_m_s(m_s_from_km_h(km_h)) == pytest.approx(km_h)


@pytest.mark.parametrize(
    ("posted", "step", "figure"), [(60, 1, 60), (60, 25, 50), (50, 0.1, 50), (24.9, 5, 20)]
)
def test_the_limiters_figure_is_never_above_the_posted_one(posted: float, step: float, figure: float) -> None:
    assert limiter_figure_km_h(posted, step) == pytest.approx(figure)


def test_a_negative_speed_is_refused() -> None:
    with pytest.raises(OutOfRange):
        m_s_from_km_h(-1.0)
