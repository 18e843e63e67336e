"""Anti-squat: which way each part of the geometry moves it, and what is refused."""

import attrs
import pytest

from paddock_tui.calc.anti_squat import ChainLine, Point, anti_squat, chain_pull_n
from paddock_tui.calc.errors import Inconsistent, OutOfRange

LINE = ChainLine(315.0, Point(570.0, 385.0), Point(655.0, 425.0), 16, 43, 15.875)


def percent(line: ChainLine, height: float = 650.0) -> float:
    return anti_squat(line, 1430.0, height).percent


def test_pivot_up_bigger_rear_and_smaller_front_raise_it_and_a_high_centre_lowers_it() -> None:
    base = percent(LINE)
    assert percent(attrs.evolve(LINE, pivot=Point(570.0, 388.0))) > base
    assert percent(attrs.evolve(LINE, rear_teeth=44)) > base
    assert percent(attrs.evolve(LINE, front_teeth=15)) > base
    assert percent(LINE, 700.0) < base


def test_it_goes_smoothly_through_chain_and_swingarm_side_by_side_and_says_so_there() -> None:
    level = attrs.evolve(LINE, pivot=Point(570.0, 351.38))
    assert level.chain_deg == pytest.approx(level.swingarm_deg, abs=0.01)
    with pytest.raises(Inconsistent, match="side by side"):
        percent(level)
    near = [percent(attrs.evolve(LINE, pivot=Point(570.0, 351.38 + off))) for off in (-2.0, 2.0)]
    assert near[1] - near[0] == pytest.approx(6.2, abs=1.0)


def test_the_pull_grows_with_thrust_and_with_a_smaller_sprocket() -> None:
    assert chain_pull_n(4000, 0.32, 43, 15.875) == pytest.approx(2 * chain_pull_n(2000, 0.32, 43, 15.875))
    assert chain_pull_n(2000, 0.32, 40, 15.875) > chain_pull_n(2000, 0.32, 43, 15.875)


@pytest.mark.parametrize("gearbox", [Point(20.0, 425.0), Point(655.0, 4250.0)])
def test_a_sprocket_that_cannot_be_there_is_refused(gearbox: Point) -> None:
    with pytest.raises((Inconsistent, OutOfRange)):
        attrs.evolve(LINE, gearbox=gearbox)
