"""Balance and lifting wheels on the bench."""

from decimal import Decimal

from paddock_tui.advice.about import About
from paddock_tui.advice.balance import balance
from paddock_tui.quantities import Quantity
from tests.advice.given import PSI, about, answers, bike, rider, session

BIKE = """
wet_mass = "200 kg"
[chassis]
wheelbase = "1400 mm"
centre_height = "640 mm"
centre_ahead = "700 mm"
"""


def given() -> About:
    return about(session=session(""), bike=bike(BIKE), rider=rider('weight = "60 kg"\n'))


def test_both_wheels_lift_where_the_centre_of_mass_says() -> None:
    calculator = balance(given())

    assert answers(calculator)["lifts"].text == "1.09 g of drive lifts the front, 1.09 g of braking the rear"
    # 1.09375 g x cos - sin, of 10 %.
    uphill = answers(calculator, slope=10.0)["lifts"].text
    assert uphill == "0.99 g of drive lifts the front, 1.19 g of braking the rear"


def test_the_smaller_of_lift_and_grip_is_told_with_the_friction_in_the_same_line() -> None:
    calculator = balance(given())

    assert answers(calculator, friction=0.8)["grip"].text == (
        "drive 0.63 g (slides), braking 0.80 g (slides), if friction 0.8"
    )
    assert answers(calculator, friction=1.2)["grip"].text == (
        "drive 1.09 g (front lifts), braking 1.09 g (rear lifts), if friction 1.2"
    )
    steep = answers(calculator, friction=0.1, slope=30.0)["grip"].text
    assert steep.startswith("drive none: the slope is too much")


def test_no_friction_is_assumed_where_none_was_typed() -> None:
    found = answers(balance(given()))["grip"]

    assert (found.text, found.known) == ("needs the friction", False)


def test_loads_are_told_in_the_riders_units_and_braking_moves_them() -> None:
    calculator = balance(given())

    assert answers(calculator)["rest"].text == "130.0 kg front, 130.0 kg rear, 50 % on the front"
    assert answers(calculator, PSI)["rest"].text.endswith(" lb rear, 50 % on the front")
    # 260 kg x 0.5 x 640 / 1400.
    assert answers(calculator, braking=0.5)["moved"].text.startswith("59.4 kg more on the front")


def test_braking_beyond_the_lift_of_the_rear_is_beyond_the_estimate_not_an_error() -> None:
    found = answers(balance(given()), braking=1.2)["moved"]

    assert found.known
    assert found.text == "beyond this estimate: the rear lifts at 1.09 g"


def test_scales_under_both_wheels_find_the_centre_of_mass() -> None:
    tried = {"front_scale": Quantity(Decimal(130), "kg"), "rear_scale": Quantity(Decimal(150), "kg")}

    assert answers(balance(given()), **tried)["scales"].text == (
        "centre of mass 650 mm ahead of the rear axle"
    )


def test_missing_figures_are_named_and_impossible_ones_refused() -> None:
    nothing = answers(balance(about()))
    outside = answers(balance(given()), ahead=Quantity(Decimal(1500), "mm"))["lifts"]

    assert nothing["lifts"].text == (
        "needs the wheelbase, the height of the centre of mass, the centre of mass ahead of the axle"
    )
    assert outside.text == "centre of mass: it has to be between the axles"
    assert not outside.known
