"""Gears that lift the front: filled from bike, rider and set-up, never from a guess."""

import math
from decimal import Decimal

from paddock_tui.advice.about import About
from paddock_tui.advice.wheelie_gears import lifting
from paddock_tui.quantities import Quantity
from tests.advice.given import about, answers, bike, rider, sample, session, tyres

BIKE = """
wet_mass = "200 kg"
[chassis]
centre_height = "650 mm"
centre_ahead = "700 mm"
[drive]
primary = 2.0
gearbox = [2.4, 1.8, 1.4]
front_sprocket = 16
rear_sprocket = 40
peak_torque = "100 N m"
[rear]
circumference = "2000 mm"
"""
CURVE = '[torque_curve]\n4000 = "50 N m"\n8000 = "100 N m"\n12000 = "80 N m"\n'
ANN = rider('weight = "80 kg"\n')


def given(extra: str = "", setup: str = "") -> About:
    return about(session=session(setup), bike=bike(BIKE + extra), rider=ANN)


def test_gears_are_named_by_the_force_at_the_wheel_over_the_one_that_lifts() -> None:
    found = answers(lifting(given()))

    # 280 kg x 9.80665 x 700 / 650 = 2957 N; 100 N m x 12.0 x 0.9 / (2 m / tau) = 3393 N in first.
    needed = 280 * 9.80665 * 700 / 650
    shares = [100 * 2 * gear * 2.5 * 0.9 / (2 / math.tau) / needed * 100 for gear in (2.4, 1.8, 1.4)]
    assert (
        found["shares"].text
        == f"{shares[0]:.0f} {shares[1]:.0f} {shares[2]:.0f} % of what lifts it, first to top"
    )
    assert found["gears"].text == found["gears"].short == "1st can lift the front on torque alone"
    assert "assumed: level road, rider still, no aerodynamic drag" in found["gears"].working
    assert found["revs"].text.startswith("torque: only its peak is known")


def test_a_curve_says_between_which_revs() -> None:
    found = answers(lifting(given(CURVE)))["revs"]

    # First lifts from 87.15 N m on: 4000 + 4000 x 37.15 / 50 and 8000 + 4000 x 12.85 / 20.
    assert found.text == "1st 6970-10570 rpm"


def test_the_sprockets_of_the_set_up_count_not_those_delivered() -> None:
    found = answers(lifting(given("", "[setup]\nrear_sprocket = 50\n")))["gears"]

    assert found.text == "1st and 2nd can lift the front on torque alone"


def test_more_torque_tried_lifts_in_more_gears_and_a_soft_one_in_none() -> None:
    calculator = lifting(given(CURVE))
    strong, soft = Quantity(Decimal(200), "N m"), Quantity(Decimal(60), "N m")

    assert answers(calculator, peak=strong)["gears"].text == "1st to 3rd can lift the front on torque alone"
    weak = answers(calculator, peak=soft)
    assert weak["gears"].text == "no gear can lift the front on torque alone"
    assert weak["revs"].text == "at no revs of the curve"


def test_without_the_centre_of_mass_it_says_what_it_needs_and_guesses_nothing() -> None:
    plain = bike(BIKE.replace('centre_height = "650 mm"', "").replace('centre_ahead = "700 mm"', ""))

    found = answers(lifting(about(session=session(""), bike=plain, rider=ANN)))["gears"]

    assert found.text == "needs the height of the centre of mass, the centre of mass ahead of the axle"
    assert not found.known


def test_a_ratio_that_cannot_be_is_refused_in_a_sentence() -> None:
    found = answers(lifting(given()), primary=0.0)["gears"]

    assert "outside the range" in found.text


def test_nothing_known_needs_everything() -> None:
    text = answers(lifting(about()))["gears"].text

    for name in (
        "front sprocket",
        "gearbox",
        "rolling circumference",
        "peak torque",
        "rider's weight in kit",
    ):
        assert f"the {name}" in text


def test_a_tyre_that_rolls_further_pushes_less() -> None:
    tall = about(
        session=session(""), bike=bike(BIKE), rider=ANN, tyres=tyres('[rear]\ncircumference = "2400 mm"\n')
    )

    assert answers(lifting(tall))["gears"].text == "no gear can lift the front on torque alone"


def test_the_sample_lifts_in_first_and_second() -> None:
    found = answers(lifting(sample("session", "2026-06-20-4-magpie")))

    assert found["gears"].text == "1st and 2nd can lift the front on torque alone"
