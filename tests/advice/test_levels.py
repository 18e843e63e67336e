"""Levels: starts in each bike's own numbers, whichever way it counts, and never against the riding mode."""

from decimal import Decimal
from typing import Any

from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.levels import levels
from paddock_tui.quantities import Quantity
from tests.advice.given import about, answers, bike, rider, sample, session, tyres
from tests.every import every

BIKE = """
[controls.traction]
kind = "level"
levels = [{low}, {high}]
most_help = {most}
off = true
[controls.engine-braking]
kind = "level"
levels = [1, 5]
{frees}
[controls.throttle]
kind = "choice"
choices = ["sharp", "even", "soft"]
most_help = "soft"
[modes.open]
use = "any"
[modes.rain.limits]
traction = [6, 10]
[modes.rain.fixes]
throttle = "soft"
"""
TYRES = '[rear]\nkind = "track-day"\nscrubbed = true\n'


def found(
    low: int = 0, high: int = 10, most: int = 10, frees: str = "frees_most = 5", text: str = "", **typed: Any
) -> dict[str, Answer]:
    made = bike(BIKE.format(low=low, high=high, most=most, frees=frees))
    told = about(
        session=session('surface = "dry"\ntrack = "25 C"\n' + text, made),
        bike=made,
        rider=rider('group = "intermediate"\n'),
        tyres=tyres(TYRES),
    )
    return answers(levels(told), **{"first": False, **typed})


@every(("low", "high", "most", "start"), [(0, 10, 10, 5), (0, 10, 0, 5), (1, 8, 8, 5), (1, 8, 1, 4)])
def test_half_of_the_help_is_rounded_toward_more_whichever_way_the_bike_counts(
    low: int, high: int, most: int, start: int
) -> None:
    told = found(low, high, most)["traction"]

    assert told.text == f"start at {start}, a start, not a rule (50 % of most help)"
    assert [(one.path, one.value) for one in told.puts] == [(("setup", "controls", "traction"), start)]


OPEN = '[setup]\nmode = "open"\n[setup.controls]\n'


def test_a_bikes_number_is_told_as_help() -> None:
    assert "now 3, which is 30 % of most help" in found(text=f"{OPEN}traction = 3\n")["traction"].working
    assert "now off, below the least" in found(text=f'{OPEN}traction = "off"\n')["traction"].working
    tried = found(text=f"{OPEN}traction = 12\n")["traction"]
    assert "now 12, which this bike does not have" in tried.working
    untold = found(text="[setup.controls]\ntraction = 3\n")["traction"].working
    assert not any(line.startswith("now ") for line in untold), "a riding mode may set another value"


def test_words_and_two_ended_scales_have_starts_of_their_own() -> None:
    told = found()

    assert told["throttle"].text.startswith('start at "even"')
    assert told["engine-braking"].text == "start at 3, a start, not a rule (50 % of most engine braking)"


def test_an_end_that_is_not_known_gets_no_level() -> None:
    told = found(frees="")["engine-braking"]

    assert "which end brakes least is not known" in told.text
    assert told.puts == ()


def test_a_cold_track_and_a_fresh_tyre_ask_for_more() -> None:
    assert found(track=Quantity(Decimal(50), "F"))["traction"].text.startswith("start at 6")
    assert found(track="cold")["traction"].text.startswith("start at 6")
    assert found(scrubbed=False)["traction"].text.startswith("start at 7")


def test_the_riding_mode_is_never_contradicted() -> None:
    told = found(text='[setup]\nmode = "rain"\n')

    assert told["traction"].text == "5 would be the start (50 % of most help): the riding mode allows 6 to 10"
    assert told["throttle"].text.endswith("the riding mode fixes it to soft")
    assert told["traction"].puts == told["throttle"].puts == ()


def test_a_tyre_that_does_not_suit_gets_no_level_and_the_road_its_own() -> None:
    wet = found(surface="wet", tyre="slick")["traction"]

    assert wet.text == "no level helps: this tyre is not for this surface"
    assert found(text='kind = "road"\n')["traction"].text.startswith("start at 7")


def test_what_is_missing_is_named() -> None:
    made = bike(BIKE.format(low=0, high=10, most=10, frees=""))

    told = answers(levels(about(bike=made, session=session("", made))))["traction"]

    assert told.text == "needs the rider's group, the surface, the kind of the rear tyre"


def test_a_tread_measured_later_says_nothing_of_the_session() -> None:
    calculator = levels(sample("session", "2026-05-16-3-magpie"))

    assert "worn" not in calculator.filled
    assert answers(calculator)["traction"].text.startswith("start at 5,")


def test_both_bikes_of_the_sample_start_in_their_own_numbers() -> None:
    up = answers(levels(sample("session", "2026-06-20-4-magpie")))
    down = answers(levels(sample("session", "2026-06-20-2-otter")))

    # Intermediate in the wet on track-day tyres: 0.80; advanced on a drying track, as damp: 0.55.
    assert up["traction"].text.startswith("start at 8")
    assert down["rear-grip"].text.startswith("start at 3")
    assert down["rear-grip"].label == "rear grip"


def test_a_profile_starts_from_the_surface_it_was_made_for() -> None:
    told = answers(levels(sample("profile", "magpie-ines-wet")))["traction"]

    assert told.text == "needs the kind of the rear tyre"


def test_a_first_session_on_a_bike_starts_one_step_higher_whichever_way_it_counts() -> None:
    assert found(0, 10, 10, first=True)["traction"].text.startswith("start at 6")
    assert found(1, 8, 1, first=True)["traction"].text.startswith("start at 3")
    assert found(first=True)["throttle"].text.startswith('start at "soft"')
    # Engine braking has no end that is better: a first session moves nothing there.
    assert found(first=True)["engine-braking"].text == found()["engine-braking"].text


def test_who_never_rode_the_bike_is_told_that_it_is_a_first_session() -> None:
    made = bike(BIKE.format(low=0, high=10, most=10, frees=""))
    told = about(
        session=session('surface = "dry"\n', made),
        bike=made,
        rider=rider('group = "intermediate"\n'),
        tyres=tyres(TYRES),
    )
    answer = answers(levels(told))["traction"]
    assert answer.text.startswith("start at 6")
    assert "one step more for a first session on this bike, or here" in answer.working
