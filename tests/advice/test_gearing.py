"""Gearing and sprockets: speeds, revs, the longest straight, pairs with their chain."""

import math
from decimal import Decimal

from paddock_tui.advice.gearing import gearing
from paddock_tui.advice.sprockets import sprockets
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, bike, sample, session, tyres

BIKE = """
[rear]
tyre_size = "180/55 ZR17 M/C (73W)"
[drive]
primary = 2.0
gearbox = [2.5, 2.0, 1.5]
chain = "520"
links = 110
front_sprocket = 16
rear_sprocket = 40
rev_limit = "12000 rpm"
"""


def test_speed_at_the_limiter_follows_from_revs_ratios_and_the_measured_circumference() -> None:
    rolled = tyres('[rear]\ncircumference = "2000 mm"\nsize = "180/55 ZR17"\n')

    found = answers(gearing(about(session=session(""), bike=bike(BIKE), tyres=rolled)))

    # 12000 / 60 x 2.000 m / (2.0 x 1.5 x 40 / 16) = 53.3 m/s.
    top = f"{200 * 2.0 / 7.5 * 3.6:.0f} km/h in top gear at 12000 rpm"
    assert found["limiter"].text == f"{top}; 190 to 194 km/h as the tyre rolls"
    assert found["ratio"].text == "2.500 final; overall 12.50 10.00 7.50"
    assert found["gears"].text.startswith("115 144 192 km/h, first to top; give or take 1 %")
    assert found["drops"].text == "2400 3000 rpm, from first up"


def test_a_marking_serves_where_nothing_was_measured_and_says_so() -> None:
    found = answers(gearing(about(session=session(""), bike=bike(BIKE))))["limiter"]

    # 17 inch is 432 mm; 180 x 0.55 = 99 mm on each side.
    round_m = math.pi * (432 + 2 * 99) / 1000
    assert found.text.startswith(f"{200 * round_m / 7.5 * 3.6:.0f} km/h")
    assert any("rolls 1 to 3 % less" in line for line in found.working)


def test_the_straight_says_what_is_left_to_the_limiter_or_that_it_comes_in() -> None:
    rolled = tyres('[rear]\ncircumference = "2000 mm"\n')
    made = bike(BIKE)

    def straight(kmh: int) -> str:
        told = about(session=session(f'top_speed = "{kmh} km/h"\n'), bike=made, tyres=rolled)
        return answers(gearing(told))["straight"].text

    text = "160 km/h is about 10000 rpm in top, 2000 rpm to the limiter, at least 1900 rpm as the tyre rolls"
    assert straight(160) == text
    assert straight(200).endswith("the limiter comes in before the end")


def test_units_of_speed_are_the_riders() -> None:
    mph = {"pit": Quantity(Decimal(37), "mph"), "round": Quantity(Decimal(2), "m")}
    calculator = gearing(about(session=session(""), bike=bike(BIKE)))

    assert answers(calculator, BAR, **mph)["pits"].text == "6200 4960 3720 rpm, first to top"
    assert answers(calculator, PSI, **mph)["limiter"].text.startswith("119 mph")


def test_what_is_missing_is_named_and_absurd_teeth_are_refused() -> None:
    nothing = answers(gearing(about()))
    odd = answers(gearing(about()), front=2, rear=40)["ratio"]

    assert nothing["ratio"].text == "needs the front sprocket, the rear sprocket"
    assert "the rolling circumference" in nothing["limiter"].text
    assert odd.text == "front sprocket: 2 teeth is outside the range here, 8 to 100 teeth"


def test_ratios_that_do_not_fall_are_refused_in_a_sentence() -> None:
    found = answers(gearing(about(session=session(""), bike=bike(BIKE))), gears=(1.5, 2.0))["limiter"]

    assert found.text == "gears: the ratios must fall from first to top"


def test_the_sample_runs_283_at_the_limiter_and_225_on_the_straight() -> None:
    found = answers(gearing(sample("session", "2026-06-20-4-magpie")))

    # 13400 / 60 x pi x 0.642 m / (1.659 x 1.286 x 43 / 16), 190/55-17 as marked.
    top = 13400 / 60 * math.pi * 0.642 / (1.659 * 1.286 * 43 / 16) * 3.6
    assert found["limiter"].text.startswith(f"{top:.0f} km/h in top gear at 13400 rpm; ")
    assert "1 to 3 % less as the tyre rolls" in found["limiter"].working
    assert found["straight"].short == "about 2740 rpm to the limiter"
    assert found["pits"].short == "5680 rpm in first, 4570 in second"


def test_revs_and_speed_of_different_sessions_are_never_compared() -> None:
    calculator = gearing(sample("session", "2026-06-20-2-otter"))

    assert str(calculator.filled["fastest"].value) == "122 mph"
    assert "seen" not in calculator.filled


def test_pairs_stand_in_order_of_their_ratio_and_set_both_ends_at_once() -> None:
    found = answers(sprockets(about(session=session(""), bike=bike(BIKE))))

    pairs = [one for key, one in found.items() if "/" in key]
    ratios = [float(one.text[:5]) for one in pairs]
    assert len(pairs) == 15
    assert ratios == sorted(ratios)
    assert found["16 / 40"].text == "2.500, as fitted"
    assert found["15 / 40"].text.startswith("2.667, 6.7 % shorter, needs the axle ")
    assert [(one.path[-1], one.value) for one in found["15 / 40"].puts] == [
        ("front_sprocket", 15),
        ("rear_sprocket", 40),
    ]


def test_the_room_for_the_axle_decides_only_where_it_is_known() -> None:
    calculator = sprockets(about(session=session(""), bike=bike(BIKE)))
    room = {"back": Quantity(Decimal(1), "mm"), "forward": Quantity(Decimal(1), "mm")}

    unknown, known = answers(calculator)["16 / 42"], answers(calculator, **room)["16 / 42"]

    assert "not known whether the axle has the room" in unknown.working
    assert unknown.puts
    # With the fitted chain 3.9 mm forward, with two links more 12 mm back: 1 mm is room for neither.
    assert "does not fit: " in known.text
    assert " mm of room missing to go " in known.text
    assert known.puts == ()


def test_only_a_chain_that_fits_is_offered_and_its_links_with_it() -> None:
    calculator = sprockets(about(session=session(""), bike=bike(BIKE)))
    room = {"back": Quantity(Decimal(14), "mm"), "forward": Quantity(Decimal(1), "mm")}

    found = answers(calculator, **room)["16 / 42"]

    links = [one.value for one in found.puts if one.path[-1] == "links"]
    assert len(links) == 1
    assert found.text.endswith(f" back with {links[0]} links")


def test_links_for_a_centre_distance_are_even_and_long_enough() -> None:
    calculator = sprockets(about(session=session(""), bike=bike(BIKE)))

    found = answers(calculator, centre=Quantity(Decimal(600), "mm"))["links"]

    # 2 C + 28 + 24^2 / (4 pi^2 C) with C = 600 / 15.875.
    assert found.text == "104 links, 103.98 exactly"


def test_too_many_pairs_and_a_chain_too_short_are_refused_in_a_sentence() -> None:
    calculator = sprockets(about(session=session(""), bike=bike(BIKE)))

    many = answers(calculator, fronts=tuple(range(10, 18)), rears=tuple(range(36, 48)))["pairs"]
    short = answers(calculator, links=30)

    assert many.text == "pairs: more than 60: name fewer sprockets"
    assert not any(one.known for one in short.values())


def test_sprockets_need_teeth_links_and_chain() -> None:
    assert answers(sprockets(about()))["centre"].text == (
        "needs the front sprocket, the rear sprocket, the number of links, the chain's code"
    )
