"""Beside rows: short where something is to be said, nothing where the row holds it already."""

from paddock_tui.advice.about import History
from paddock_tui.advice.beside_setup import BesideRow, beside_session, beside_setup
from tests.advice.given import about, bike, past, sample, session, tyres, venue

NEXT = sample("session", "2026-06-20-4-magpie")
RIDDEN = sample("session", "2026-05-16-3-magpie")


def at(found: dict[tuple[str, ...], BesideRow], path: str) -> BesideRow:
    return found[tuple(path.split("."))]


def test_a_row_offers_a_start_that_differs_and_is_silent_where_it_stands_so() -> None:
    found = beside_setup(NEXT)

    assert at(found, "setup.controls.traction").short == "usual 8"
    assert [one.value for one in at(found, "setup.controls.traction").puts] == [8]
    abs_ = at(found, "setup.controls.front-abs")
    assert (abs_.short, abs_.puts) == ("", ())
    assert abs_.working[0].startswith("start at 4")


def test_a_starting_pressure_that_cannot_be_told_names_what_is_missing() -> None:
    found = at(beside_setup(NEXT), "setup.front_start")

    assert found.short == "needs the front tyre air, hot"
    assert found.puts == ()


def test_a_session_that_was_ridden_is_not_told_how_to_start_but_shows_the_working() -> None:
    found = beside_setup(RIDDEN)

    for path in ("setup.front_start", "setup.controls.rear-abs"):
        assert (at(found, path).short, at(found, path).puts) == ("", ())
        assert at(found, path).working
    assert at(found, "setup.front_sprocket").short == "ratio 2.688"


def test_a_pressure_that_stands_there_in_another_unit_is_not_offered_again() -> None:
    cold = '[pressures.cold]\nfront = "2.00 bar"\ntemperature = "15 C"\n'
    lead = 'parked = 10:00:00\nsurface = "dry"\n'
    history = History((past(1, f'{lead}{cold}[pressures.hot]\nat = 10:01:00\nfront = "2.50 bar"\n'),))
    tyre = tyres('[front]\nhot_dry = "2.50 bar"\n')

    def start(held: str) -> BesideRow:
        text = f'surface = "dry"\nair = "15 C"\n[setup]\nfront_start = "{held}"\n'
        told = about(history, session=session(text), tyres=tyre, venue=venue(""), bike=bike(""))
        return at(beside_setup(told), "setup.front_start")

    assert [one.value for one in start("2.10 bar").puts] == ["2.00 bar"]
    assert (start("200 kPa").puts, start("200 kPa").short) == ((), "")


def test_the_session_page_says_what_fuel_is_left_and_what_is_measured() -> None:
    found = beside_session(sample("session", "2026-05-16-1-magpie"))

    assert at(found, "sag.front.rider.lifted").short == "rider sag 33 mm"
    assert at(found, "sag.rear.alone.lifted").short == "free sag 11 mm"
    assert at(found, "top_speed").short.endswith("to the limiter")
    assert at(beside_session(NEXT), "fuel_added").short == "10.8 l left at the flag"


def test_a_cold_reading_without_a_gauge_says_for_which_one_it_is_taken_and_since_when() -> None:
    named = past(1, '[pressures.cold]\nfront = "2.00 bar"\ngauge = "round one"\n')
    unnamed = past(2, '[pressures.cold]\nfront = "2.00 bar"\n')
    history = History((named, unnamed))
    row = ("pressures", "cold", "gauge")

    found = beside_session(about(history, session=session('[pressures.cold]\nfront = "2.10 bar"\n')))[row]
    assert found.short == "taken for round one"
    assert found.working == (f"taken for round one, named in session {named.id}",)
    own = session('[pressures.cold]\nfront = "2.10 bar"\ngauge = "another"\n')
    assert row not in beside_session(about(history, session=own))
    assert row not in beside_session(
        about(History((unnamed,)), session=session('[pressures.cold]\nfront = "2 bar"\n'))
    )


def test_what_to_do_now_is_said_on_the_day_itself_only() -> None:
    text = """date = {day}
surface = "dry"
parked = 12:30:00
[pressures.hot]
at = 12:31:00
front = "2.65 bar"
"""
    tyre = tyres('[front]\nhot_dry = "2.50 bar"\n')

    def beside(day: str) -> BesideRow:
        told = about(session=session(text.format(day=day)), tyres=tyre)
        return at(beside_session(told), "pressures.hot.set_to_front")

    assert beside("2026-06-20").short == "let out to 2.50 bar"
    assert [one.value for one in beside("2026-06-20").puts] == ["2.50 bar"]
    assert (beside("2026-06-19").short, beside("2026-06-19").puts) == ("", ())


def test_the_wheelie_control_says_which_gears_can_lift_the_front_where_no_start_is_said() -> None:
    row = at(beside_setup(NEXT), "setup.controls.wheelie")

    assert row.short == "usual 4"
    assert any("1st and 2nd can lift the front on torque alone" in line for line in row.working)
    assert [one.value for one in row.puts] == [4]
    assert "assumed: level road, rider still, no aerodynamic drag" in row.working
    assert at(beside_setup(RIDDEN), "setup.controls.wheelie").short.startswith("1st and 2nd can lift")


def test_without_the_centre_of_mass_the_wheelie_control_says_nothing_of_gears() -> None:
    row = at(beside_setup(sample("session", "2026-06-20-2-otter")), "setup.controls.wheelie")

    assert "lift" not in row.short
    assert not any("lift the front" in line for line in row.working)


def test_the_surface_has_the_ratios_of_wet_to_dry_beside_it_while_it_is_wet_and_to_come() -> None:
    line = "wet, if grip is 50-70 %: corner speed 71-84 %, braking distance 1.4-2 times"

    def beside(lines: str) -> BesideRow | None:
        return beside_session(about(session=session(lines))).get(("surface",))

    for page in (beside_session(NEXT), beside_setup(NEXT)):
        assert at(page, "surface").short == line
    assert beside('surface = "dry"\n') is None
    assert beside("") is None
    ridden = beside('surface = "wet"\nparked = 10:00:00\n')
    assert ridden is not None
    assert (ridden.short, ridden.working[0]) == ("", line)
    water = beside('surface = "standing water"\n')
    assert water is not None
    assert water.short.startswith("beyond this estimate")


def test_a_situation_without_records_says_nothing() -> None:
    assert beside_setup(about()) == {}
    assert beside_session(about()) == {}
