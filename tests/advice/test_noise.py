"""Noise: how far from the limit, revs by the stroke, what a reading counts as, another distance."""

import tomllib
from decimal import Decimal

from paddock_tui.advice.noise import noise, noise_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.day import RidingDay
from paddock_tui.records.reading import read_record
from tests.advice.given import about, answers, bike, sample, session

DAY = '[limits]\nnoise = "102 dB(A)"\n[entries.ann.plain.noise]\nreading = "{reading}"\n'
BIKE = '[drive]\nstroke = "55 mm"\n'


def day(reading: str) -> RidingDay:
    found = read_record("day", tomllib.loads(DAY.format(reading=reading))).record
    assert isinstance(found, RidingDay)
    return found


def on(reading: str = "100 dB(A)", **typed: object) -> dict[str, tuple[str, str]]:
    ours = session('rider = "ann"\nbike = "plain"\nair = "8 C"\n')
    told = about(session=ours, day=day(reading), bike=bike(BIKE))
    return {key: (one.text, one.short) for key, one in answers(noise(told), **typed).items()}


def test_the_margin_is_said_with_its_side_and_a_small_one_as_close() -> None:
    assert on("99.5 dB(A)")["margin"] == (
        "2.5 dB under the limit of 102 dB(A)",
        "2.5 dB under the limit",
    )
    assert on("103 dB(A)")["margin"][1] == "1 dB over the limit"
    assert on("100.5 dB(A)")["margin"][1] == "1.5 dB under the limit: close"
    assert on("102 dB(A)")["margin"][1] == "0 dB under the limit: close"


def test_revs_go_by_stroke_and_mean_piston_speed() -> None:
    # 30000 x 11 / 55 = 6000.
    assert on()["revs"][0].startswith("6000 rpm")
    assert on(piston=5.5)["revs"][0].startswith("3000 rpm")


def test_a_reading_counts_less_by_meter_and_cold() -> None:
    # 100.9 rounded down, less 2 dB for type 2, less 1 dB at 8 C.
    assert on("100.9 dB(A)", meter=2)["counted"][0].startswith("97 dB(A)")
    assert on(meter=3)["counted"][0] == "type of the meter: 3 is outside the range here, 1 to 2"
    assert on()["counted"][0] == "needs the type of the meter"


def test_twice_the_distance_is_six_decibels_less() -> None:
    assert on(wanted_at=Quantity(Decimal(1), "m"))["distance"][0].startswith("about 94 dB(A) at 1 m")


def test_nothing_is_judged_by_another_limit_or_without_a_reading() -> None:
    reading = Quantity(Decimal(99), "dB(A)")

    assert noise_of(about(), reading, None).text == "needs the noise limit"
    assert noise_of(about(), None, reading).text == "needs the noise reading"
    assert "outside the range" in noise_of(about(), Quantity(Decimal(300), "dB(A)"), reading).text


def test_the_sample_is_filled_from_its_day_and_bike() -> None:
    found = answers(noise(sample("session", "2026-05-16-3-magpie")))

    assert found["margin"].short == "2.5 dB under the limit"
    assert "noise limit: 102 dB(A) (day 2026-05-16-anvilfen)" in found["margin"].working
