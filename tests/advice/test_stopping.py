"""Stopping on the bench: a deceleration or a friction that was typed, never one that was assumed."""

from decimal import Decimal

from paddock_tui.advice.stopping import stopping
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, session

FAST = about(session=session('top_speed = "180 km/h"\n'))
FILLED = stopping(FAST)


def test_a_stop_from_the_fastest_speed_of_the_straight() -> None:
    found = answers(FILLED, rate=7.0)["stop"]

    # 50 m/s x 1 s + 2500 / 14.
    assert found.text == "229 m, 50 before the brakes bite, if 7 m/s2"
    assert "half of the riders in a trial used 56 % or less of what they had" in found.working
    assert any(line.startswith("published means on the road: 7 dry, 3.5 wet") for line in found.working)


def test_no_grip_is_assumed() -> None:
    found = answers(FILLED)["stop"]

    assert (found.text, found.known) == ("needs the deceleration", False)


def test_a_friction_stands_in_for_a_deceleration_which_goes_before_it() -> None:
    # 2500 / (2 x 9.80665 x 0.8) = 159.3 m.
    assert answers(FILLED, friction=0.8)["stop"].text == "209 m, 50 before the brakes bite, if friction 0.8"
    assert answers(FILLED, friction=0.8, rate=7.0)["stop"].text.endswith("if 7 m/s2")


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

    assert answers(FILLED, rate=7.0, room=room)["room"].text == "180 km/h at most, if 7 m/s2"
    assert answers(FILLED, PSI, rate=7.0, room=room)["room"].text == "112 mph at most, if 7 m/s2"


def test_a_timed_stop_tells_what_the_braking_was() -> None:
    assert answers(FILLED, time=8.0)["timed"].text == "6.2 m/s2 in the mean, over 200 m"


def test_nothing_known_names_what_is_needed() -> None:
    assert answers(stopping(about()))["stop"].text == "needs the speed to brake from, the deceleration"
