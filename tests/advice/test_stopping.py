"""Stopping on the bench: a deceleration or a friction that was typed, never one that was assumed."""

from decimal import Decimal

from paddock_tui.advice.stopping import stopping
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, session

FAST = about(session=session('top_speed = "180 km/h"\n'))
FILLED = stopping(FAST)
SAID = "{} at the very most, if 7 m/s2; the rear may lift sooner; not a marker"


def test_a_stop_from_the_fastest_speed_of_the_straight() -> None:
    found = answers(FILLED, rate=7.0)["stop"]

    # 50 m/s x 1 s + 2500 / 14.
    assert found.text == (
        "229 m at best, 50 m before the brakes bite, if 7 m/s2; the rear may lift sooner; not a marker"
    )
    assert "half of the riders in a trial used 56 % or less of what they had" in found.working
    assert any(line.startswith("published means on the road: 7 dry, 3.5 wet") for line in found.working)


def test_no_grip_is_assumed() -> None:
    found = answers(FILLED)["stop"]

    assert (found.text, found.known) == ("needs the deceleration", False)


def test_a_friction_stands_in_for_a_deceleration_which_goes_before_it() -> None:
    # 2500 / (2 x 9.80665 x 0.8) = 159.3 m.
    assert answers(FILLED, friction=0.8)["stop"].text.startswith(
        "210 m at best, 50 m before the brakes bite, if friction 0.8"
    )
    assert "if 7 m/s2" in answers(FILLED, friction=0.8, rate=7.0)["stop"].text


def test_a_slope_downhill_lengthens_it_and_a_longer_reaction_too() -> None:
    def metres(**typed: float) -> int:
        return int(answers(FILLED, BAR, rate=7.0, **typed)["stop"].text.partition(" ")[0])

    assert metres(slope=-5.0) > metres() > metres(slope=5.0)
    assert metres(reaction=1.5) - metres() == 25
    assert answers(FILLED, rate=0.5, slope=-30.0)["stop"].text == (
        "slope: this braking does not stop the bike downhill"
    )


def test_the_speed_that_a_room_allows_is_in_the_riders_units() -> None:
    room = Quantity(Decimal("228.57"), "m")

    assert answers(FILLED, rate=7.0, room=room)["room"].text == SAID.format("179 km/h")
    assert answers(FILLED, PSI, rate=7.0, room=room)["room"].text == SAID.format("111 mph")


def test_a_timed_stop_tells_what_the_braking_was() -> None:
    assert answers(FILLED, time=8.0)["timed"].text == "6.2 m/s2 in the mean, over 200 m"


def test_nothing_known_names_what_is_needed() -> None:
    assert answers(stopping(about()))["stop"].text == "needs the speed to brake from, the deceleration"


def balanced(**typed: object) -> str:
    chassis = {
        "wheelbase": Quantity(Decimal(1400), "mm"),
        "height": Quantity(Decimal(660), "mm"),
        "ahead": Quantity(Decimal(700), "mm"),
    }
    return answers(FILLED, BAR, **chassis, **typed)["stop"].text


def test_the_rear_that_lifts_decides_over_a_friction_that_would_hold_more() -> None:
    # (1.4 - 0.7) / 0.66 = 1.06 g: 50 + 2500 / (2 x 9.80665 x 1.0606) = 170.2 m, where friction 1.4 gives 142.
    assert balanced(friction=1.4) == (
        "171 m at best, 50 m before the brakes bite, the rear lifts at 1.06 g; not a marker"
    )
    assert (
        balanced(friction=0.8) == "210 m at best, 50 m before the brakes bite, if friction 0.8; not a marker"
    )
    assert balanced(rate=15.0) == balanced(friction=1.4)


def test_a_distance_is_never_rounded_in_the_riders_favour() -> None:
    metres = [int(balanced(friction=mu).split()[0]) for mu in (0.6, 0.7, 0.8)]
    exact = [50 + 2500 / (2 * 9.80665 * mu) for mu in (0.6, 0.7, 0.8)]

    assert all(one - 1 < wanted <= one for one, wanted in zip(metres, exact, strict=True))


def test_downhill_the_rear_lifts_sooner() -> None:
    assert int(balanced(friction=1.4, slope=-10.0).split()[0]) > int(balanced(friction=1.4).split()[0])
