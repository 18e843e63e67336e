"""The air of the day: figures of the standards' own reference air, plain words before figures."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.air_today import air_on_rows, air_today
from paddock_tui.advice.beside_setup import BesideRow, beside_session, beside_setup
from paddock_tui.advice.calculators import Answer
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, bike, session, venue
from tests.every import every
from tests.examples import examples

BIKE = '[drive]\npower = "100 kW"\n'


def amount(number: float, unit: str) -> Quantity:
    return Quantity(Decimal(str(number)), unit)


def on(weather: str = "", place: str = "", made: str = BIKE, **typed: object) -> dict[str, Answer]:
    told = about(session=session(weather), venue=venue(place), bike=bike(made))
    return answers(air_today(told), **typed)


def beside(weather: str) -> dict[tuple[str, ...], BesideRow]:
    return beside_session(about(session=session(weather), bike=bike(BIKE)))


def test_the_standard_atmosphere_at_the_sea_is_at_altitude_nought() -> None:
    found = on('air = "15 C"\nhumidity = "0 %"\nair_pressure = "1013.25 hPa"\n')["density"]

    assert found.text == "1.225 kg/m3 (1.22 to 1.23), as the standard air at 0 m (-50 to 50)"
    assert "air outside: 1013 hPa (as measured)" in found.working


def test_at_the_reference_air_of_both_standards_all_of_the_rated_power_is_to_be_expected() -> None:
    found = on('air = "25 C"\nhumidity = "0 %"\nair_pressure = "990 hPa"\n')

    assert found["sae"].text.startswith("100.0 kW of 100.0 kW: factor 1.000, within 0.95 to 1.05")
    assert found["iso"].text.startswith("100.0 kW of 100.0 kW: factor 1.000, within 0.93 to 1.07")
    assert found["density"].short.endswith(": 100 % power")


def test_without_a_rated_power_the_share_is_said_and_out_of_the_band_no_figure() -> None:
    found = on('air = "30 C"\nhumidity = "50 %"\nair_pressure = "850 hPa"\n', made="")

    assert found["sae"].text == "no figure: factor 1.24 is outside 0.95 to 1.05"
    assert "% power" not in found["density"].short
    inside = on('air = "25 C"\nhumidity = "0 %"\nair_pressure = "1000 hPa"\n', made="")
    assert "% of the rated power" in inside["sae"].text


def test_the_altitude_serves_where_no_pressure_is_measured_and_a_forecast_goes_before_it() -> None:
    weather = 'air = "15 C"\nhumidity = "0 %"\n'
    usual = on(weather, 'altitude = "1000 m"\n')["density"]
    fore = on(weather, 'altitude = "1000 m"\n', reduced=amount(1013.25, "hPa"))["density"]
    low = on(weather, 'altitude = "1000 m"\n', reduced=amount(993, "hPa"))["density"]

    assert usual.short.startswith("air as at about ")
    assert any(line.startswith("air outside: 899 hPa (standard") for line in usual.working)
    assert usual.text.partition(" (")[0] == fore.text.partition(" (")[0] != low.text.partition(" (")[0]
    assert usual.text != fore.text, "the forecast leaves a narrower band"
    assert any("(the forecast's, taken up to that altitude)" in line for line in low.working)


def test_sea_level_is_not_assumed() -> None:
    assert on('air = "15 C"\nhumidity = "40 %"\n')["density"].text == "needs the air pressure"


def test_what_is_missing_is_named_and_absurd_pressure_refused() -> None:
    assert on('air = "15 C"\nair_pressure = "1000 hPa"\n')["density"].text == "needs the humidity"
    refused = on('air = "15 C"\nhumidity = "40 %"\nair_pressure = "1 hPa"\n')
    assert "outside the range" in refused["density"].text
    assert "outside the range" in refused["iso"].text
    assert on('air = "cold"\n')["dew"].text == "needs the air temperature, the humidity"


@every(
    ("track", "text", "short"),
    [
        ("11 C", "track 1 C above the dew point of 10 C: damp patches possible", "damp patches possible"),
        ("12 C", "track 2 C above the dew point of 10 C: damp patches possible", "damp patches possible"),
        ("10 C", "track 0 C above the dew point of 10 C: ", "moisture settles on the track"),
        ("9 C", "track 1 C under the dew point of 10 C: ", "moisture settles on the track"),
        ("13 C", "track 3 C above the dew point of 10 C: nothing settles", ""),
    ],
)
def test_a_track_near_the_dew_point_is_told(track: str, text: str, short: str) -> None:
    weather = f'air = "10 C"\nhumidity = "100 %"\ntrack = "{track}"\n'

    found = on(weather)["damp"]

    assert found.text.startswith(text)
    assert found.short == short
    assert any("paddock practice, unpublished" in line for line in found.working)
    assert beside(weather)[("track",)].short == short


def test_degrees_between_track_and_dew_point_follow_the_units() -> None:
    told = about(session=session('air = "10 C"\nhumidity = "100 %"\ntrack = "11 C"\n'), units=PSI)

    assert answers(air_today(told), PSI)["damp"].text.startswith("track 1.8 F above the dew point of 50 F")


def test_without_the_track_its_row_says_the_dew_point_and_on_a_wet_one_nothing() -> None:
    air = 'air = "10 C"\nhumidity = "100 %"\n'

    assert beside(air)[("track",)].short == "dew point 10 C"
    assert beside(f'{air}surface = "wet"\n')[("track",)].short == ""
    assert beside("")[("track",)].short == ""


@every(
    ("weather", "short", "text"),
    [
        # The published charts: 88 F at 60 % as 95 F, 90 F at 70 % as 105 F; 5 C at 80 km/h as -3 C.
        ('air = "88 F"\nhumidity = "60 %"\n', "hot in leathers: drink, shade", "(heat index 35 C)"),
        ('air = "90 F"\nhumidity = "70 %"\n', "very hot in leathers: rest, shade", "(heat index 41 C)"),
        ('air = "82 F"\nhumidity = "50 %"\n', "warm in leathers: drink, shade", "leathers make it worse"),
        ('air = "20 C"\nhumidity = "50 %"\n', "", "not hot: "),
        ('air = "5 C"\n', "cold hands likely at speed", "(wind chill -3 C at 80 km/h)"),
        ('air = "17 C"\n', "", "no heat at 17 C"),
        ('air = "11 C"\n', "", "cool: wind at speed still takes heat at 11 C"),
    ],
)
def test_heat_and_cold_are_a_plain_word_with_the_figure_behind_it(
    weather: str, short: str, text: str
) -> None:
    row = beside(weather)[("air",)]

    assert row.short == short
    assert text in row.working[0]


def test_heat_without_humidity_is_the_least_that_it_can_be() -> None:
    found = on('air = "35 C"\n')["heat"]

    assert "heat index at least 3" in found.text
    assert any("humidity is not known" in line for line in found.working)


def test_beyond_chart_and_table_no_figure_is_given() -> None:
    # The polynomial carried on says 206 C here.
    absurd = on('air = "50 C"\nhumidity = "100 %"\n')["heat"]
    assert absurd.text.startswith("very hot: ")
    assert absurd.text.endswith("(beyond the published chart, so no figure is given)")
    assert not any(word.rstrip(")").isdigit() for word in absurd.text.split())
    fast = on('air = "5 C"\n', riding=amount(160, "km/h"))["cold_riding"]
    assert "(wind chill below -3 C at 160 km/h)" in fast.text
    assert on('air = "5 C"\nwind = "30 km/h"\n')["cold_wind"].text.startswith("keep warm until the call")
    assert on('air = "5 C"\nwind = "2 km/h"\n')["cold_wind"].text == "calm: as cold as the air, 5 C"


@every("celsius", range(-10, 41))
def test_heat_and_cold_leave_no_hole_between_them(celsius: int) -> None:
    found = on(f'air = "{celsius} C"\nhumidity = "50 %"\nwind = "20 km/h"\n')

    assert all(found[key].known for key in ("heat", "cold_riding", "cold_wind"))


def test_a_ridden_session_keeps_the_workings_and_says_of_the_air_only_what_it_was() -> None:
    weather = (
        'air = "31 C"\nhumidity = "60 %"\nair_pressure = "1007 hPa"\ntrack = "24 C"\nparked = 10:00:00\n'
    )
    found = beside(weather)

    assert (found[("air",)].short, found[("track",)].short) == ("", "")
    assert all(found[(key,)].working for key in ("air", "track"))
    assert found[("air_pressure",)].short.startswith("air as at ")


def test_the_set_up_page_says_it_too_and_a_word_for_the_air_says_nothing() -> None:
    told = about(session=session('air = "31 C"\nhumidity = "60 %"\n'), bike=bike(BIKE))

    assert beside_setup(told)[("air",)].short == "hot in leathers: drink, shade"
    assert ("air",) not in beside('air = "hot"\n')
    assert [one.path for one in air_on_rows(about(session=session('air = "hot"\n')))] == [
        ("air_pressure",),
        ("track",),
    ]


@examples(25)
@given(st.integers(-20, 50), st.integers(0, 100), st.integers(600, 1100), st.integers(-5, 70))
def test_what_stands_beside_a_row_is_short(air: int, humidity: int, hpa: int, track: int) -> None:
    weather = f'air = "{air} C"\nhumidity = "{humidity} %"\nair_pressure = "{hpa} hPa"\ntrack = "{track} C"\n'
    told = about(session=session(weather), units=BAR)

    for row in air_on_rows(told):
        assert len(row.answers[0].short) <= 33
