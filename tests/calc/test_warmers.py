"""On warmers and back: the way there and the way back agree, hotter air on the track asks for less."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_pressure import Ambient
from paddock_tui.calc.warmers import TyreAir, hot_from_warmers, on_warmers_for_hot


@given(st.floats(120, 280), st.floats(50, 95), st.floats(50, 110), st.floats(88, 103), st.floats(88, 103))
def test_the_way_back_is_the_way_there(
    hot: float, warm_c: float, track_c: float, setting: float, reading: float
) -> None:
    air, ambient = TyreAir(warm_c, track_c), Ambient(setting, reading)
    set_to = on_warmers_for_hot(hot, air, ambient)
    assert hot_from_warmers(set_to.best, air, ambient).best == pytest.approx(hot)
    if setting == reading and warm_c < track_c:
        assert set_to.best <= hot


def test_air_that_gets_hotter_on_the_track_asks_for_less_and_cooler_for_more() -> None:
    hotter, cooler = (on_warmers_for_hot(200.0, TyreAir(70.0, track)).best for track in (85.0, 60.0))
    assert hotter < 200.0 < cooler
    assert hotter == pytest.approx((200.0 + 101.325) * 343.15 / 358.15 - 101.325)


def test_a_spread_gives_a_band_about_the_best_figure() -> None:
    band = on_warmers_for_hot(200.0, TyreAir(70.0, 80.0, 3.0, 4.0))
    back = hot_from_warmers(band.best, TyreAir(70.0, 80.0, 3.0, 4.0))
    assert band.low < band.best < band.high
    assert back.low < 200.0 < back.high
    with pytest.raises(OutOfRange):
        TyreAir(70.0, 80.0, -1.0)
