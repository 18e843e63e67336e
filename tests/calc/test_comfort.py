"""Heat index and wind chill: where they hold and how they go."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.comfort import heat_index, wind_chill
from paddock_tui.calc.errors import OutOfRange
from tests.every import every
from tests.examples import examples


@examples(25)
@given(st.floats(28, 42), st.floats(40, 80), st.floats(1, 5))
def test_hotter_or_damper_feels_hotter(celsius: float, humidity: float, more: float) -> None:
    here = heat_index(celsius, humidity).celsius

    assert heat_index(celsius + more, humidity).celsius > here
    assert heat_index(celsius, humidity + more).celsius > here


@examples(25)
@given(st.floats(-40, 8), st.floats(5, 250), st.floats(1, 20))
def test_colder_or_windier_feels_colder(celsius: float, km_h: float, more: float) -> None:
    here = wind_chill(celsius, km_h).celsius

    assert wind_chill(celsius - more / 4.0, km_h).celsius < here
    assert wind_chill(celsius, km_h + more).celsius < here


@every(("celsius", "charted"), [(26.0, False), (27.0, True), (44.0, True), (45.0, False)])
def test_the_chart_of_the_heat_index_goes_from_80_to_112_f(celsius: float, charted: bool) -> None:
    assert heat_index(celsius, 30.0).charted is charted


def test_a_figure_hotter_than_the_chart_prints_is_not_charted() -> None:
    """40 C may be charted, but not with the air of a steam bath."""
    assert heat_index(40.0, 45.0).charted
    assert heat_index(40.0, 80.0).celsius > 58.4
    assert not heat_index(40.0, 80.0).charted


def test_riding_speed_is_beyond_the_table_of_the_wind_chill() -> None:
    assert wind_chill(5.0, 80.0).tabled
    assert not wind_chill(5.0, 80.1).tabled


def test_very_dry_air_is_adjusted_down_and_very_damp_air_up() -> None:
    """Across each edge the figure moves by no more than the adjustment itself begins with."""
    assert heat_index(35.0, 12.9).celsius == pytest.approx(heat_index(35.0, 13.1).celsius, abs=0.1)
    assert heat_index(28.0, 85.1).celsius == pytest.approx(heat_index(28.0, 84.9).celsius, abs=0.1)
    assert heat_index(35.0, 5.0).celsius < 35.0


def test_damp_air_is_adjusted_from_80_f_on() -> None:
    """By (R - 85) / 10 x (87 - F) / 5: 1.4 F at 95 % and 80 F, nothing before."""
    edge_c = (80.0 - 32.0) / 1.8
    step_f = (heat_index(edge_c + 1e-9, 95.0).celsius - heat_index(edge_c - 1e-9, 95.0).celsius) * 1.8

    assert step_f == pytest.approx(1.4, abs=1e-5)


@every(
    ("celsius", "km_h", "words"), [(10.1, 20.0, "air temperature"), (5.0, 4.7, "wind"), (5.0, 301.0, "wind")]
)
def test_wind_chill_is_not_defined_for_warm_or_still_air(celsius: float, km_h: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        wind_chill(celsius, km_h)


@pytest.mark.parametrize("celsius", [19.9, 50.1])
def test_heat_index_is_refused_outside_its_range(celsius: float) -> None:
    with pytest.raises(OutOfRange, match="air temperature"):
        heat_index(celsius, 50.0)
