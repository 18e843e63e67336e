"""The verdict on a spring's rate."""

import pytest

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.spring_choice import (
    FREE_FRONT_MM,
    FREE_REAR_MM,
    PreloadAt,
    SpringFit,
    Windows,
    judge_rate,
)
from tests.every import every

TRACK_FRONT, TRACK_REAR = Windows(25.0, 35.0, *FREE_FRONT_MM), Windows(25.0, 35.0, *FREE_REAR_MM)


@every(
    ("rider", "free", "preload", "rate"),
    [
        (30, 8, PreloadAt.BETWEEN, SpringFit.RIGHT),
        (30, 8, PreloadAt.UNKNOWN, SpringFit.RIGHT),
        (30, 3, PreloadAt.BETWEEN, SpringFit.RIGHT),
        (30, 2.9, PreloadAt.BETWEEN, SpringFit.TOO_SOFT),
        (30, 15, PreloadAt.BETWEEN, SpringFit.RIGHT),
        (30, 15.1, PreloadAt.BETWEEN, SpringFit.TOO_STIFF),
        (30, 8, PreloadAt.MOST, SpringFit.CANNOT_TELL),
        (30, None, PreloadAt.BETWEEN, SpringFit.CANNOT_TELL),
        (36, 8, PreloadAt.BETWEEN, SpringFit.CANNOT_TELL),
        (36, 8, PreloadAt.MOST, SpringFit.TOO_SOFT),
        (36, None, PreloadAt.LEAST, SpringFit.CANNOT_TELL),
        (24, 8, PreloadAt.BETWEEN, SpringFit.CANNOT_TELL),
        (24, 8, PreloadAt.LEAST, SpringFit.TOO_STIFF),
    ],
)
def test_rear_on_track(rider: float, free: float | None, preload: PreloadAt, rate: SpringFit) -> None:
    verdict = judge_rate(rider, free, TRACK_REAR, preload, top_out_springs=False)

    assert verdict.rate is rate
    assert verdict.why


@pytest.mark.parametrize("top_out", [True, None])
def test_top_out_springs_fitted_or_not_known_tell_nothing_by_a_table(top_out: bool | None) -> None:
    assert judge_rate(30, 25, TRACK_FRONT, top_out_springs=top_out).rate is SpringFit.CANNOT_TELL


def test_a_technicians_figures_serve_with_top_out_springs() -> None:
    windows = Windows(30, 34, 18, 22, from_technician=True)

    assert judge_rate(32, 20, windows, PreloadAt.BETWEEN, top_out_springs=True).rate is SpringFit.RIGHT


def test_free_sag_above_rider_sag_is_refused() -> None:
    with pytest.raises(OutOfRange, match="free sag"):
        judge_rate(30, 31, TRACK_REAR, top_out_springs=False)


def test_a_window_upside_down_is_refused() -> None:
    with pytest.raises(Inconsistent):
        Windows(35, 25, 3, 15)
