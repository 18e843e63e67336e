"""Chain wear: a miscounted chain is refused, a gauge has its error, big sprockets take less."""

import pytest

from paddock_tui.calc.chain_wear import elongation, most_elongation_percent, pin_to_pin_mm
from paddock_tui.calc.errors import Inconsistent


def test_a_grown_chain_is_longer_in_percent_and_millimetres() -> None:
    found = elongation(320.7, 20, 15.875, 0.3)
    assert (found.percent, found.mm) == pytest.approx((1.008, 3.2), abs=1e-3)
    assert found.error_percent == pytest.approx(0.0945, abs=1e-4)


@pytest.mark.parametrize("length", [302.0, 333.4 + 40.0])
def test_a_length_of_one_link_more_or_less_is_refused(length: float) -> None:
    with pytest.raises(Inconsistent, match="count the links"):
        elongation(length, 20, 15.875)
    with pytest.raises(Inconsistent):
        pin_to_pin_mm(328.0, 312.0)


def test_a_large_sprocket_lowers_the_limit_and_never_raises_it() -> None:
    limits = [most_elongation_percent(teeth, 2.0) for teeth in (30, 67, 100, 120, 160)]
    assert limits == sorted(limits, reverse=True)
    assert limits[0] == 2.0
    assert limits[-1] == pytest.approx(1.25)
