"""Pressures: figures follow the gas law, missing facts are named, what cannot be told says wait."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.pressure_later import afternoon
from paddock_tui.advice.pressures import pressures
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, sample, session, tyres, venue
from tests.every import every
from tests.examples import examples

K = 273.15
AIR = SEA_LEVEL_KPA / 100


def amount(number: float | str, unit: str) -> Quantity:
    return Quantity(Decimal(str(number)), unit)


BLANK = pressures(about())
KNOWN = {"front_hot": amount(2.5, "bar"), "front_gas": amount(50, "C"), "cold_at": amount(10, "C")}


def test_the_cold_start_is_the_wanted_hot_pressure_by_the_gas_law() -> None:
    found = answers(BLANK, **KNOWN)["front_start"]

    cold = (2.5 + AIR) * (10 + K) / (50 + K) - AIR
    assert found.text == f"{cold:.2f} bar cold at 10 C for 2.50 bar hot"
    assert found.short == f"{cold:.2f} bar for 2.50 bar hot"
    assert [(one.path, one.value, one.role) for one in found.puts] == [
        (("setup", "front_start"), f"{cold:.2f} bar", "setup")
    ]
    assert any("the vendor's figures come first" in line for line in found.working)


def test_units_may_be_mixed_and_the_answer_is_in_the_preferred_ones() -> None:
    mixed = {"front_hot": amount(36, "psi"), "front_gas": amount(122, "F"), "cold_at": amount(50, "F")}

    metric, other = answers(BLANK, BAR, **mixed)["front_start"], answers(BLANK, PSI, **mixed)["front_start"]

    hot = 36 * 0.0689476
    cold = (hot + AIR) * (10 + K) / (50 + K) - AIR
    assert metric.text == f"{cold:.2f} bar cold at 10 C for {hot:.2f} bar hot"
    assert other.text == f"{cold / 0.0689476:.1f} psi cold at 50 F for 36.0 psi hot"
    assert other.puts[0].value == f"{cold / 0.0689476:.1f} psi"


def test_a_spread_of_the_gas_widens_the_figure_both_ways() -> None:
    found = answers(BLANK, **KNOWN, front_spread=5.0)["front_start"]

    low, high = ((2.5 + AIR) * (10 + K) / (gas + K) - AIR for gas in (55, 45))
    assert found.text.endswith(f", {low:.2f} to {high:.2f} bar by the spread") or found.text.endswith(
        f", {low:.2f} bar to {high:.2f} bar by the spread"
    )


def test_every_missing_fact_is_named() -> None:
    found = answers(BLANK)

    assert found["front_start"].text == (
        "needs the front hot target, the front tyre air, hot, the temperature of the cold tyre"
    )
    assert found["rear_now"].missing == (
        "rear hot reading",
        "rear hot target",
        "time from parking to the reading",
    )


@every(
    ("key", "value", "said"),
    [
        ("front_gas", amount(5, "C"), "is outside the range here, 10 to 150 C"),
        ("front_gas", amount(400, "C"), "is outside the range here, -40 to 150 C"),
        ("cold_at", amount(-60, "C"), "cold tyre at: -60 C is outside the range here, -40 to 150 C"),
        ("front_hot", amount(20, "bar"), "is outside the range here"),
        (
            "air_pressure",
            amount(50, "hPa"),
            "air pressure: 50 hPa is outside the range here, 600 to 1100 hPa",
        ),
    ],
)
def test_absurd_figures_are_refused_with_the_range_that_holds(key: str, value: Quantity, said: str) -> None:
    found = answers(BLANK, **(KNOWN | {key: value}))["front_start"]

    assert not found.known
    assert said in found.text
    assert found.puts == ()


@examples(25)
@given(st.decimals("1.6", "3.2", places=2), st.integers(-5, 40), st.integers(45, 110), st.integers(700, 1050))
def test_starting_at_the_answer_gives_the_wanted_pressure_back(
    hot: Decimal, cold_c: int, gas_c: int, hpa: int
) -> None:
    typed = {
        "front_hot": Quantity(hot, "bar"),
        "front_gas": amount(gas_c, "C"),
        "cold_at": amount(cold_c, "C"),
        "air_pressure": amount(hpa, "hPa"),
    }
    start = answers(BLANK, **typed)["front_start"].puts[0].value
    back = answers(BLANK, **typed, front_cold=amount(str(start).split()[0], "bar"))["front_expected"]

    assert float(back.text.split()[1]) == pytest.approx(float(hot), abs=0.011)


def test_the_sample_starts_its_third_session_from_what_two_readings_taught() -> None:
    found = answers(pressures(sample("session", "2026-05-16-3-magpie")))

    gas_k = round(45.95, 0) + K
    cold = (2.50 + 1.011) * (15 + K) / gas_k - 1.011
    # Two readings tell no spread: five degrees either way, and 0.05 bar is as fine as that can be said.
    assert cold == pytest.approx(2.159, abs=0.001)
    assert found["front_start"].text == (
        "2.20 bar cold at 15 C for 2.50 bar hot, 2.11 bar to 2.21 bar by the spread"
    )
    assert "learnt from 2 hot readings of this tyre here, dry" in " ".join(found["front_start"].working)
    assert found["front_now"].text.startswith("wait: it has cooled")


def test_the_sample_in_the_wet_has_no_reading_yet_and_says_what_was_reached_elsewhere() -> None:
    found = answers(pressures(sample("session", "2026-06-20-4-magpie")))["front_start"]

    assert found.text == "needs the front tyre air, hot"
    assert any(line.startswith("on a dry track the air in this tyre reached") for line in found.working)


def test_a_rider_who_thinks_in_psi_reads_psi() -> None:
    found = answers(pressures(sample("session", "2026-05-16-2-otter")), PSI)["front_start"]

    assert found.puts[0].value == "26.0 psi"


NOW = {"front_hot": amount(2.5, "bar"), "front_read": amount(2.6, "bar")}


@every(
    ("read", "minutes", "text", "puts"),
    [
        ("2.60", 2, "let out to 2.50 bar: read while hot", 1),
        ("2.42", 2, "put in to 2.50 bar: read while hot", 1),
        ("2.51", 2, "leave it: on its target of 2.50 bar", 0),
        ("2.60", 12, "let out to 2.50 bar: it has cooled and still reads above the hot target", 1),
        ("2.42", 12, "wait: it has cooled since parking by an amount that is not known", 0),
    ],
)
def test_a_hot_reading_is_let_out_put_in_left_or_waited_with(
    read: str, minutes: int, text: str, puts: int
) -> None:
    typed = NOW | {"front_read": amount(read, "bar"), "minutes": amount(minutes, "min")}

    found = answers(BLANK, **typed)["front_now"]

    assert found.text.startswith(text)
    assert len(found.puts) == puts


def test_an_estimate_of_the_gas_now_turns_a_late_reading_into_a_step() -> None:
    typed = KNOWN | {
        "front_read": amount("2.55", "bar"),
        "minutes": amount(12, "min"),
        "gas_now": amount(35, "C"),
    }

    found = answers(BLANK, **typed)["front_now"]

    target_now = (2.5 + AIR) * (35 + K) / (50 + K) - AIR
    assert found.text.startswith(f"let out to {target_now:.2f} bar: scaled")


def test_the_wet_target_is_for_a_wet_track_and_the_dry_one_for_dry_and_damp() -> None:
    tyre = tyres('[front]\nhot_dry = "2.50 bar"\nhot_wet = "2.30 bar"\n')

    def target(surface: str) -> object:
        filled = pressures(about(session=session(f'surface = "{surface}"\n'), tyres=tyre)).filled
        return str(filled["front_hot"].value)

    assert [target(one) for one in ("dry", "damp", "wet")] == ["2.50 bar", "2.50 bar", "2.30 bar"]


def test_a_slick_has_no_target_for_the_wet() -> None:
    tyre = tyres('[front]\nhot_dry = "2.50 bar"\n')

    found = answers(pressures(about(session=session('surface = "wet"\n'), tyres=tyre)))

    assert "front hot target" in found["front_start"].missing


def test_altitude_stands_in_for_a_barometer_and_says_so() -> None:
    place = venue('altitude = "1000 m"\n')
    found = answers(pressures(about(session=session(""), venue=place)), **KNOWN)["front_start"]

    assert any("899 hPa (standard atmosphere at that altitude" in line for line in found.working)


MORNING = {"front_set": amount("2.20", "bar"), "then": amount(8, "C"), "now": amount(28, "C")}


def test_the_morning_setting_reads_more_in_the_warm_afternoon() -> None:
    found = answers(afternoon(about()), **MORNING)["front_now"]

    now = (2.20 + AIR) * (28 + K) / (8 + K) - AIR
    assert found.text == f"{now:.2f} bar cold now is the same air"
    assert found.puts[0].path == ("setup", "front_start")


def test_higher_up_the_same_air_reads_more_on_the_gauge() -> None:
    typed = MORNING | {"now": amount(8, "C"), "altitude_then": amount(0, "m"), "altitude": amount(900, "m")}

    found = answers(afternoon(about()), **typed)["front_now"]

    # ISO 2533: 89.87 hPa x 10 at 900 m geopotential altitude.
    assert found.text.startswith(f"{2.20 + 1.01325 - 0.90971:.2f} bar")


def test_the_afternoon_begins_with_the_first_cold_setting_of_the_day_on_these_tyres() -> None:
    calculator = afternoon(sample("session", "2026-05-16-3-magpie"))

    assert str(calculator.filled["front_set"].value) == "2.20 bar"
    assert calculator.filled["front_set"].origin == "session 2026-05-16-1-magpie"
    assert answers(calculator)["front_now"].text == "2.25 bar cold now is the same air"


def test_without_a_cold_reading_the_air_that_was_left_in_the_tyre_is_what_goes_out() -> None:
    calculator = pressures(sample("session", "2026-05-16-2-magpie"))

    # 2.58 bar hot from 2.20 bar at 11 C is gas at 44.6 C; then set to 2.50 bar, and cold again at 14 C.
    gas_k = (2.58 + 1.012) / (2.20 + 1.012) * (11 + K)
    cold = (2.50 + 1.012) * (14 + K) / gas_k - 1.012
    assert str(calculator.filled["front_cold"].value) == f"{cold:.2f} bar"
    assert calculator.filled["front_cold"].origin == (
        "the air left in session 2026-05-16-1-magpie, as it would read cold"
    )
