"""Sag and springs: measured figures, preload within the adjuster's range, verdicts with their reason."""

from paddock_tui.advice.about import ENDS, About, History
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.sag import sag
from paddock_tui.advice.sag_of_another_rider import riders
from paddock_tui.advice.spring_rates import DOUBT
from tests.advice.given import about, answers, bike, past, rider, sample, session

LENGTHS = """
[sag.front.alone]
extended = "700 mm"
pushed = "676 mm"
lifted = "680 mm"
preload = {at}
[sag.front.rider]
extended = "700 mm"
pushed = "658 mm"
lifted = "662 mm"
preload = {at}
"""
BIKE = """
[front]
spring = "9.0 N/mm"
travel = "120 mm"
top_out_springs = "none"
preload_per_turn = "1.0 mm"
{technician}
[adjusters.front-preload]
end = "front"
what = "preload"
unit = "{unit}"
step = 0.25
range = [0, 15]
counted_from = "{counted}"
"""
TECHNICIAN = 'technician_rider_sag = "34 mm"\ntechnician_free_sag = "24 mm"'


def front(at: float = 5, unit: str = "turn", counted: str = "open", technician: str = TECHNICIAN) -> About:
    made = bike(BIKE.format(unit=unit, counted=counted, technician=technician))
    return about(session=session(LENGTHS.format(at=at), made), bike=made)


def found(
    at: float = 5, unit: str = "turn", counted: str = "open", technician: str = TECHNICIAN
) -> dict[str, Answer]:
    return answers(sag(front(at, unit, counted, technician), "front"))


def test_sag_is_the_extended_length_less_the_middle_of_the_two_settled_ones() -> None:
    told = found()

    assert told["free"].text == "22 mm, 18 % of travel, 20 to 24 mm by the tape, stiction 4 mm"
    assert told["rider"].text == "40 mm, 33 % of travel, 38 to 42 mm by the tape, stiction 4 mm"


def test_too_much_sag_asks_for_more_preload_in_the_adjusters_own_numbers() -> None:
    told = found()["preload"]

    assert told.text == "11 turns for 34 mm: 34 mm to expect"
    assert [(one.path, one.value) for one in told.puts] == [(("setup", "adjusters", "front-preload"), 11)]


def test_an_adjuster_counted_from_closed_goes_the_other_way() -> None:
    assert found(at=10, counted="closed")["preload"].text == "4 turns for 34 mm: 34 mm to expect"


def test_the_end_of_the_range_is_said_and_not_offered() -> None:
    told = found(at=12)["preload"]

    assert told.text == "out of reach: 15 turns, its end, leaves 37 mm where the target is 34 mm"
    assert told.puts == ()


def test_what_a_click_moves_is_asked_for() -> None:
    assert found(unit="click")["preload"].text == "needs the preload of one turn or click"


def test_without_a_technicians_figure_a_sag_inside_the_window_is_left_alone() -> None:
    made = bike(BIKE.format(unit="turn", counted="open", technician=""))
    text = LENGTHS.format(at=5).replace("658", "668").replace("662", "672")

    told = answers(sag(about(session=session(text, made), bike=made), "front"))

    assert told["preload"].text == "nothing to turn: 30 mm is within 20 to 40 mm"
    assert told["serve"].text == "needs the target free sag"


def test_the_rate_that_would_serve_follows_from_both_sags_and_the_fitted_spring() -> None:
    told = found()["serve"]

    # 2 x 9.0 N/mm over 40 - 22 mm carries 324 N; 34 - 24 mm of it asks for 32.4 N/mm, two legs.
    assert told.text == f"about 16.2 N/mm each leg; fitted 9.0 N/mm; {DOUBT}"
    assert any("324 N" in line for line in told.working)


def test_the_verdict_on_the_rate_gives_its_reason_and_its_windows() -> None:
    told = found()["verdict"]

    assert told.text == "rate cannot tell: rider sag is too much: set it with preload first"
    assert any("windows about the technician's figures: rider 29 to 39 mm" in line for line in told.working)


def test_top_out_springs_that_are_not_known_let_no_table_serve() -> None:
    made = bike(
        BIKE.format(unit="turn", counted="open", technician="").replace('top_out_springs = "none"\n', "")
    )

    told = answers(sag(about(session=session(LENGTHS.format(at=5), made), bike=made), "front"))["verdict"]

    assert told.text.startswith("rate cannot tell: top-out springs are fitted or may be")


def test_lengths_that_cannot_be_are_refused_with_the_range() -> None:
    made = bike(BIKE.format(unit="turn", counted="open", technician=""))
    text = LENGTHS.format(at=5).replace("658", "758")

    told = answers(sag(about(session=session(text, made), bike=made), "front"))["rider"]

    assert told.text == "length after the push: 758 mm is outside the range here, 500 to 700 mm"


def test_missing_lengths_and_missing_linkage_are_named() -> None:
    told = answers(sag(about(), "rear"))

    assert told["rider"].text == "needs the three lengths with the rider on"
    assert told["wheel_rate"].text == "needs the rate of one shock spring, the motion ratio"


def test_the_last_reading_of_this_rider_serves_a_session_without_one() -> None:
    made = bike(BIKE.format(unit="turn", counted="open", technician=TECHNICIAN))
    history = History((past(1, LENGTHS.format(at=5), made),))
    own = about(history, session=session('rider = "ann"\n'), bike=made)
    other = about(history, session=session('rider = "bob"\n'), bike=made)

    calculator = sag(own, "front")

    assert calculator.filled["rider_pushed"].origin == "measured in session 2026-05-16-1"
    assert answers(calculator)["rider"].text.startswith("40 mm")
    assert not answers(sag(other, "front"))["rider"].known


def test_the_sample_stands_on_its_technicians_figures() -> None:
    rates = ("about 9.5 N/mm each leg", "about 85.0 N/mm")
    for end, rate in zip(ENDS, rates, strict=True):
        told = answers(sag(sample("session", "2026-06-20-4-magpie"), end))

        assert told["verdict"].text == "rate right: both sags are in their windows"
        assert told["serve"].text.startswith("top-out springs: " if end == "front" else rate)
        bare = answers(sag(sample("session", "2026-06-20-4-magpie"), end), top_out="none")
        assert bare["serve"].text.startswith(rate)
    # 85 N/mm through 0.46 of spring travel for wheel travel.
    assert told["wheel_rate"].text.startswith(f"{85 * 0.46**2:.1f} N/mm at the wheel")


def test_another_rider_sags_in_proportion_to_the_weight() -> None:
    made = bike(BIKE.format(unit="turn", counted="open", technician=TECHNICIAN))
    history = History((past(1, LENGTHS.format(at=5), made),), {}, {"ann": rider('weight = "60 kg"\n')})
    heavy = rider('weight = "198.416 lb"\n')
    other = about(history, rider_id="bob", session=session('rider = "bob"\n'), bike=made, rider=heavy)

    told = answers(riders(other))["front"]

    # 22 + (40 - 22) x 90 / 60 = 49 mm.
    assert told.text == "49 mm: 9 mm at the wheel to make up by more preload"


def test_another_rider_needs_that_riders_weight() -> None:
    told = answers(riders(sample("session", "2026-06-20-4-magpie")))["front"]

    assert told.text == "needs the weight of the other rider"
