"""What the wet leaves, as ratios: never more than the dry, and never less than the friction says."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.balance import Balance
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.lean import corner_speed_m_s, lean_deg
from paddock_tui.calc.longitudinal import sliding_m_s2
from paddock_tui.calc.stopping import braking_m
from paddock_tui.calc.wet_grip import Friction, wet_ratios, wet_to_dry
from tests.calc.test_balance import balances, few


@st.composite
def frictions(draw: st.DrawFn) -> Friction:
    dry = draw(st.floats(0.3, 1.8))
    return Friction(dry, dry * draw(st.floats(0.2, 1.0)))


@few
@given(frictions(), st.none() | balances())
def test_every_ratio_is_above_nothing_and_at_most_one(friction: Friction, balance: Balance | None) -> None:
    found = wet_to_dry(friction, balance)

    for ratio in (found.corner_speed, found.lean_tangent, found.braking, found.driving):
        assert 0 < ratio <= 1 + 1e-12
    assert found.stopping >= 1 - 1e-12


@few
@given(frictions(), st.floats(20, 300))
def test_ratios_are_those_of_the_figures_computed_one_by_one(friction: Friction, radius: float) -> None:
    found = wet_to_dry(friction)
    wet, dry = corner_speed_m_s(friction.wet, radius), corner_speed_m_s(friction.dry, radius)

    assert found.corner_speed == pytest.approx(wet / dry)
    tangents = [math.tan(math.radians(lean_deg(speed, radius))) for speed in (wet, dry)]
    assert found.lean_tangent == pytest.approx(tangents[0] / tangents[1])
    distances = [braking_m(30, sliding_m_s2(mu)) for mu in (friction.wet, friction.dry)]
    assert found.stopping == pytest.approx(distances[0] / distances[1])


@few
@given(frictions(), balances())
def test_a_wheel_that_lifts_in_the_dry_leaves_less_to_lose(friction: Friction, balance: Balance) -> None:
    """Braking never loses more than the friction does: in the dry the rear lifts before the tyres slide."""
    assert wet_to_dry(friction, balance).braking >= friction.ratio - 1e-9


def test_a_rear_that_would_lift_even_in_the_wet_loses_no_braking() -> None:
    assert wet_to_dry(Friction(1.2, 0.9), Balance(1.4, 0.8, 0.8)).braking == 1


def test_a_bike_whose_front_lifts_wet_and_dry_loses_no_drive() -> None:
    assert wet_to_dry(Friction(1.6, 1.2), Balance(1.4, 0.7, 0.7)).driving == 1


def test_the_sentence_carries_its_assumption_in_the_same_line() -> None:
    said = wet_ratios().sentence()

    assert said == "wet, if grip is 50-70 %: corner speed 71-84 %, braking distance 1.4-2 times"
    assert len(said) <= 78


def test_one_assumption_gives_one_figure_and_the_order_does_not_matter() -> None:
    said = wet_ratios(0.64, 0.64).sentence()
    assert said == "wet, if grip is 64 %: corner speed 80 %, braking distance 1.6 times"
    assert wet_ratios(0.7, 0.5) == wet_ratios(0.5, 0.7)


def test_more_grip_in_the_wet_is_not_reckoned_with() -> None:
    with pytest.raises(Inconsistent, match="more in the wet"):
        wet_ratios(0.5, 1.1)


@pytest.mark.parametrize("ratio", [0.0, -0.5])
def test_no_grip_at_all_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRange):
        wet_ratios(ratio, 0.7)
