"""Moisture on the track by its temperature and the dew point."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.dew import MARGIN_K, Damp, damp_risk
from paddock_tui.calc.errors import OutOfRange
from tests.every import every
from tests.examples import examples


@every(
    ("track_c", "damp"),
    [
        (8.0, Damp.SETTLES),
        (10.0, Damp.SETTLES),
        (10.1, Damp.PATCHES),
        (10.0 + MARGIN_K, Damp.PATCHES),
        (12.1, Damp.DRYING),
    ],
)
def test_at_the_dew_point_it_settles_and_near_it_patches_may(track_c: float, damp: Damp) -> None:
    assert damp_risk(track_c, 10.0).damp is damp


@examples(25)
@given(st.floats(-5, 70), st.floats(-30, 40))
def test_the_distance_is_kept_whichever_side(track_c: float, dew_c: float) -> None:
    assert damp_risk(track_c, dew_c).over_k == pytest.approx(track_c - dew_c)


def test_a_track_that_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="track temperature"):
        damp_risk(81.0, 10.0)
