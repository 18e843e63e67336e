"""Lean on the bench: filled with the tightest corner, the tyre's width in every answer where it is known."""

from decimal import Decimal

from paddock_tui.advice.lean import lean
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, bike, session, venue

CORNERS = '[corners.2]\nradius = "60 m"\n[corners.10]\nradius = "40 m"\n[corners.1]\nradius = "90 m"\n'
HERE = about(session=session(""), venue=venue(CORNERS))
KMH_72 = Quantity(Decimal(72), "km/h")


def test_lean_follows_from_speed_and_the_tightest_corner() -> None:
    calculator = lean(HERE)

    assert calculator.filled["radius"].origin == "corner 10, the tightest known, venue here"
    # atan(20^2 / (9.80665 x 40)) = 45.6 degrees.
    assert answers(calculator, speed=KMH_72)["lean"].text == "46 deg, and more for the width of the tyre"


def test_the_width_of_the_tyre_adds_to_it_where_it_is_known() -> None:
    tall = bike('[chassis]\ncentre_height = "600 mm"\n')
    calculator = lean(about(session=session(""), venue=venue(CORNERS), bike=tall))

    # asin(90 x sin(45.6) / 510) = 7.2 degrees more.
    found = answers(calculator, speed=KMH_72, crown=Quantity(Decimal(90), "mm"))["lean"]
    assert found.text == "53 deg, 46 without the tyre's width"


def test_what_it_asks_of_the_tyres_is_told_against_the_friction_that_was_typed() -> None:
    calculator = lean(HERE)

    def asks(**more: float) -> str:
        return answers(calculator, BAR, speed=KMH_72, **more)["friction"].text

    assert asks() == "friction of at least 1.02"
    assert asks(friction=1.2) == "friction of at least 1.02, 85 % of the 1.2 assumed"
    assert asks(friction=0.8) == "beyond this estimate: it asks a friction of 1.02, assumed 0.80"
    assert asks(bank=10.0) == "friction of at least 0.71"


def test_speed_and_radius_for_a_lean_and_that_lean_in_every_corner() -> None:
    calculator = lean(HERE)
    found = answers(calculator, lean=45, speed=KMH_72)

    # sqrt(9.80665 x 40) = 19.8 m/s = 71 km/h; 20^2 / 9.80665 = 40.8 m.
    assert found["speed"].text == "71 km/h, less by the width of the tyre"
    assert found["radius"].text == "41 m, more by the width of the tyre"
    assert found["corners"].text == "corner 1: 106, 2: 87, 10: 71 km/h, less by the width of the tyre"
    assert answers(calculator, PSI, lean=45)["corners"].text.startswith("corner 1: 66, 2: 54, 10: 44 mph")


def test_the_width_of_the_tyre_lowers_every_speed_of_a_lean() -> None:
    tall = bike('[chassis]\ncentre_height = "600 mm"\n')
    calculator = lean(about(session=session(""), venue=venue('[corners.1]\nradius = "100 m"\n'), bike=tall))
    wide = {"lean": 50, "crown": Quantity(Decimal(90), "mm"), "speed": KMH_72, "friction": 1.3}

    found, thin = answers(calculator, **wide), answers(calculator, **(wide | {"crown": None}))

    # tan = (0.51 sin 50) / (0.09 + 0.51 cos 50) = 0.935: 109 km/h, where a thin tyre would carry 123.
    assert (found["speed"].text, thin["speed"].text[:8]) == ("109 km/h", "123 km/h")
    assert found["corners"].text == "corner 1: 109 km/h"
    assert found["radius"].text == "44 m"
    assert (found["left"].text[:4], thin["left"].text[:4]) == ("69 %", "39 %")


def test_more_than_any_tyre_holds_is_refused_and_not_printed() -> None:
    found = answers(lean(about()), speed=Quantity(Decimal(300), "km/h"), radius=Quantity(Decimal(10), "m"))

    assert found["friction"].text == "speed and radius: they ask more than any tyre on any road holds"
    assert not found["friction"].known


def test_what_a_friction_carries_round_a_bank() -> None:
    calculator = lean(HERE)

    # sqrt(9.80665 x 40 x tan(atan(1) + 10 deg)) = 23.7 m/s.
    assert answers(calculator, friction=1.0, bank=10.0)["most"].text == (
        "85 km/h if friction 1, with nothing left over"
    )


def test_the_brakes_have_what_the_lean_leaves_or_it_is_beyond_the_estimate() -> None:
    calculator = lean(HERE)

    assert answers(calculator, lean=30, friction=1.0)["left"].text == (
        "81 % of the upright braking, if friction 1"
    )
    beyond = answers(calculator, lean=50, friction=1.0)["left"]
    assert beyond.known
    assert beyond.text == "beyond this estimate: it asks a friction of 1.19, assumed 1.00"


def test_a_venue_without_radii_says_so_and_nothing_known_names_what_is_needed() -> None:
    assert answers(lean(about(venue=venue(""))), lean=40)["corners"].text == (
        "corners: no radius is known of this venue's"
    )
    nothing = answers(lean(about()))
    assert nothing["lean"].text == "needs the speed in the corner, the radius of the corner"
    assert nothing["left"].text == "needs the lean, the friction"
