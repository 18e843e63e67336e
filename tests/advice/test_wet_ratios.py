"""Wet against dry: ratios with their assumption in the same line, and nothing beyond them."""

from paddock_tui.advice.wet_ratios import wet_to_dry_ratios
from tests.advice.given import about, answers, bike, session
from tests.every import every

BIKE = '[chassis]\nwheelbase = "1400 mm"\ncentre_height = "640 mm"\ncentre_ahead = "700 mm"\n'
LINE = "wet, if grip is 50-70 %: corner speed 71-84 %, braking distance 1.4-2 times"


def on(surface: str, **typed: float) -> dict[str, tuple[str, str]]:
    told = about(session=session(f'surface = "{surface}"\n'), bike=bike(BIKE))
    return {key: (one.text, one.short) for key, one in answers(wet_to_dry_ratios(told), **typed).items()}


@every("surface", ["damp", "drying", "wet"])
def test_a_wet_or_damp_track_has_its_line_beside_the_row(surface: str) -> None:
    assert on(surface)["words"] == (LINE, LINE)


def test_in_the_dry_the_bench_answers_and_the_row_says_nothing() -> None:
    assert on("dry")["words"] == (LINE, "")


def test_standing_water_is_beyond_the_estimate() -> None:
    found = on("standing water", friction=1.0)

    assert all(text.startswith("beyond this estimate") for text, _ in found.values())


def test_other_assumptions_can_be_tried_and_stand_in_the_line() -> None:
    found = on("wet", low=0.64, high=0.81)

    assert (
        found["words"][0] == "wet, if grip is 64-81 %: corner speed 80-90 %, braking distance 1.2-1.6 times"
    )
    assert found["lean"][0] == "wet, if grip is 64-81 %: tangent of the lean 64-81 %"


def test_drive_and_braking_take_the_lift_of_a_wheel_into_account() -> None:
    # Dry, both wheels lift at 700 / 640 = 1.094 g. Wet, friction 0.7 brakes at 0.7 g and drives at
    # 0.7 x 700 / (1400 - 0.7 x 640) = 0.515 g; friction 0.98 at 0.98 g and 0.98 x 700 / 772.8 = 0.888 g.
    assert on("wet", friction=1.4)["push"][0] == (
        "wet, if friction 1.4 falls to 50-70 %: drive 47-81 %, braking 64-90 % of dry"
    )


def test_every_line_of_ratios_carries_its_assumption() -> None:
    assert all(text.startswith("wet, if ") for text, _ in on("wet", friction=1.0).values())


def test_what_is_not_known_is_named_and_more_than_one_refused() -> None:
    nothing = answers(wet_to_dry_ratios(about()))

    assert nothing["words"].text == "needs the surface"
    assert on("wet", high=1.5)["words"][0] == (
        "wet friction, at best: 1.5 is outside the range here, 0.05 to 1"
    )
