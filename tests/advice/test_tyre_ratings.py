"""Load index and speed symbol against bike, rider and top speed; shares only where the chassis is known."""

import pytest

from paddock_tui.advice.about import History
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.tyre_ratings import tyre_ratings
from tests.advice.given import PSI, about, answers, bike, past, rider, session, tyres

CHASSIS = 'wet_mass = "200 kg"\n[chassis]\nwheelbase = "1400 mm"\ncentre_ahead = "700 mm"\n'
SET = '[front]\nsize = "120/70 ZR17 M/C (58W)"\n[rear]\nsize = "190/55 ZR17 75H"\n'


def on(made: str = CHASSIS, fitted: str = SET, top: str = 'top_speed = "205 km/h"\n') -> dict[str, Answer]:
    told = about(
        session=session(top), bike=bike(made), rider=rider('weight = "80 kg"\n'), tyres=tyres(fitted)
    )
    return answers(tyre_ratings(told))


def test_load_is_the_share_of_bike_and_rider_where_the_chassis_is_known() -> None:
    found = on()

    assert found["front_load"].text == "rated 236 kg, bears 140 kg of 280 kg standing: 96 kg spare"
    assert found["rear_load"].short == "387 kg"


def test_without_the_chassis_no_share_is_guessed() -> None:
    assert on('wet_mass = "200 kg"\n')["front_load"].text == (
        "rated 236 kg; the share of 280 kg on this axle is not known"
    )
    assert on("")["front_load"].text == "rated 236 kg; what bike and rider weigh together is not known"


def test_too_much_for_a_tyre_and_too_fast_are_said_beside_the_row() -> None:
    found = on(fitted='[front]\nsize = "120/70 R17 30H"\n[rear]\nsize = "190/55 R17 75S"\n')

    assert found["front_load"].short == "rated 106 kg, bears 140 kg"
    assert found["rear_speed"].short == "180 km/h, ridden 205 km/h"
    assert found["rear_speed"].text.endswith("faster than it is rated for")


@pytest.mark.parametrize(
    ("top", "text"),
    [
        ("205 km/h", "(W): over 270 km/h; 205 km/h was reached"),
        ("285 km/h", "(W): over 270 km/h; 285 km/h was reached: whether it is made for that its maker says"),
    ],
)
def test_an_open_rating_is_not_taken_for_more_than_it_says(top: str, text: str) -> None:
    assert on(top=f'top_speed = "{top}"\n')["front_speed"].text == text


def test_the_fastest_earlier_session_serves_where_this_one_has_none() -> None:
    history = History((past(1, 'top_speed = "230 km/h"\n'), past(2, 'top_speed = "226 km/h"\n')))
    told = about(history, session=session(""), tyres=tyres(SET))

    found = answers(tyre_ratings(told))["front_speed"]

    assert "speed: 230 km/h (the most before, session 2026-05-16-1)" in found.working
    assert answers(tyre_ratings(about(tyres=tyres(SET))))["front_speed"].text.endswith(
        "no top speed is known"
    )


def test_a_marking_without_a_rating_needs_it_and_a_z_in_the_size_counts() -> None:
    found = on(fitted='[front]\nsize = "120/70 R17"\n[rear]\nsize = "190/55 ZR17"\n')

    assert found["front_load"].text == "needs the front load index"
    assert found["rear_speed"].text.startswith("Z: over 240 km/h")
    assert on(fitted='[front]\nsize = "nonsense"\n')["front_speed"].text == "needs the front speed symbol"


def test_a_set_that_was_never_on_this_bike_is_not_set_against_it() -> None:
    told = about(session=session(""), bike=bike(CHASSIS), rider=rider('weight = "80 kg"\n'), tyres=tyres(SET))

    found = answers(tyre_ratings(told, tyres(SET), "another"))

    assert found["front_load"].text.endswith("is not known")


def test_figures_follow_the_units() -> None:
    told = about(units=PSI, tyres=tyres(SET))

    found = answers(tyre_ratings(told), PSI)

    assert (found["front_load"].short, found["front_speed"].short) == ("520 lb", "over 168 mph")
