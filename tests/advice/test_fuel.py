"""Fuel: litres for the plan, what is left at the flag, what to add, and the cans for the day."""

from decimal import Decimal
from typing import Any

from paddock_tui.advice.about import History
from paddock_tui.advice.fuel import fuel
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, PSI, about, answers, bike, past, rider, sample, session, venue
from tests.every import every


def litres(number: float) -> Quantity:
    return Quantity(Decimal(str(number)), "l")


PLAN = {
    "laps": 10,
    "length": Quantity(Decimal(4), "km"),
    "rate": Quantity(Decimal(15), "l/100km"),
    "around": 2,
    "warm_up": 0,
}
BLANK = fuel(about())


def test_laps_with_out_and_in_lap_and_the_reserve_make_the_litres() -> None:
    found = answers(BLANK, **PLAN)["needed"]

    # 12 laps x 4 km x 15 l/100km = 7.2 l, and 2 l.
    assert found.text == "9.2 l: 7.2 l for 48.0 km, 2.0 l reserve"
    assert any("kg of petrol" in line for line in found.working)


def test_minutes_count_as_laps_by_the_usual_lap() -> None:
    typed = PLAN | {"laps": None, "minutes": Quantity(Decimal(20), "min"), "usual": 120.0, "around": 0}

    assert answers(BLANK, **typed)["needed"].text == "8.0 l: 6.0 l for 40.0 km, 2.0 l reserve"


def test_the_riders_own_reserve_counts_in_place_of_the_usual_one_and_the_share_all_the_same() -> None:
    assert answers(BLANK, **PLAN, own_reserve=litres(4))["needed"].text.startswith("11.2 l")
    assert answers(BLANK, **PLAN, own_reserve=litres(1))["needed"].text.startswith("8.3 l")


@every(
    ("tank", "flag", "add", "put"),
    [
        (16, "8.8 l left", "nothing: the reserve is there at the flag", None),
        (8, "0.8 l left (less than the reserve)", "1.5 l more", "1.5 l"),
        (6, "it runs out 1.2 l before the flag", "3.5 l more", "3.5 l"),
    ],
)
def test_the_tank_tells_what_is_left_and_what_to_add(tank: int, flag: str, add: str, put: str | None) -> None:
    found = answers(BLANK, **PLAN, tank=litres(tank))

    assert found["flag"].text == flag
    assert found["add"].text.startswith(add)
    assert [one.value for one in found["add"].puts] == ([put] if put else [])


def test_gallons_and_miles_are_shown_to_whoever_wants_them() -> None:
    found = answers(BLANK, PSI, **PLAN)["needed"]

    assert found.text == "2.43 US gal: 1.90 US gal for 29.8 mi, 0.53 US gal reserve"


def test_what_is_missing_is_named_and_absurd_plans_are_refused() -> None:
    nothing = answers(BLANK)["needed"]
    absurd = answers(BLANK, **(PLAN | {"laps": 900}))["needed"]

    assert nothing.text == "needs the planned laps, the lap length"
    assert absurd.text == "planned laps: 900 laps is outside the range here, 0 to 500 laps"


def test_the_cans_hold_what_the_day_needs_besides_the_tank() -> None:
    typed = PLAN | {"sessions": 6, "can": litres(10), "tank": litres(15)}

    # 6 x 7.2 + 2 - 15 = 30.2 l.
    assert answers(BLANK, **typed)["cans"].text == "30.2 l besides what is in the tank: 4 cans"


def test_without_history_the_bikes_own_consumption_serves_else_the_most_of_common_practice() -> None:
    own = bike('[tank]\ncapacity = "16 l"\nconsumption = "12 l/100km"\n')

    assert str(fuel(about(session=session(""), bike=own)).filled["rate"].value) == "12 l/100km"
    assert BLANK.filled["rate"].origin == "no own rate, the most of 10 to 16: paddock practice, unpublished"
    assert str(BLANK.filled["rate"].value) == "16.0 l/100km"


def test_a_brimmed_tank_is_full_and_another_is_counted_on() -> None:
    own = bike('[tank]\ncapacity = "16 l"\nconsumption = "10 l/100km"\n')
    history = History((past(1, 'ridden_laps = 10\nfuel_added = "5 l"\nfilled_to_brim = true\n', own),))

    brimmed = fuel(about(history, session=session("filled_to_brim = true\n"), bike=own))
    topped = fuel(about(history, session=session('fuel_added = "1 l"\n'), bike=own))

    assert str(brimmed.filled["tank"].value) == "16 l"
    assert str(topped.filled["tank"].value) == "13.0 l"
    assert topped.filled["tank"].origin == "estimated from the brim of 2026-05-16-1 on"


def test_the_usual_lap_is_the_median_clean_one_of_the_last_day_else_the_ridden_pace() -> None:
    laps = '[laps]\n1 = "2:10.0 out"\n2 = "1:40.0"\n3 = "1:42.0"\n4 = "1:44.0"\n'
    older = past(1, '[laps]\n1 = "1:20.0"\n', day="2026-05-01")
    who: dict[str, Any] = {"session": session('rider = "ann"\nplanned_time = "20 min"\n'), "rider": rider("")}
    place = venue('length = "4 km"\n')

    timed = fuel(about(History((older, past(1, laps))), venue=place, **who))
    paced = fuel(about(History((past(1, 'ridden_time = "18 min"\nridden_laps = 9\n'),)), venue=place, **who))

    assert timed.filled["usual"].value == 102.0
    assert paced.filled["usual"].value == 120.0
    assert paced.filled["usual"].origin == "ridden time over laps of session 2026-05-16-1"


def test_the_sample_needs_less_than_half_its_brimmed_tank() -> None:
    found = answers(fuel(sample("session", "2026-06-20-4-magpie")), BAR)

    # Learnt in this mode: 4.5 l brimmed after 9 laps of 3.85 km.
    rate = 100 * 4.5 / (9 * 3.85)
    assert any(
        f"consumption: {rate:.1f} l/100km (learnt from 1 stretch" in line for line in found["flag"].working
    )
    assert found["flag"].text == "10.8 l left"


def test_the_sample_without_timing_goes_by_its_pace() -> None:
    found = answers(fuel(sample("session", "2026-04-18-2-badger")))["needed"]

    assert found.text.startswith("5.2 l: 3.2 l for 34.3 km")


def test_no_more_is_added_than_the_tank_holds() -> None:
    thirsty = "planned_laps = 60\n[setup]\n"
    calculator = fuel(about(session=session(thirsty), venue=venue('length = "4 km"\n')))
    typed = {
        "rate": Quantity(Decimal(12), "l/100km"),
        "tank": Quantity(Decimal("16.5"), "l"),
        "capacity": Quantity(Decimal("16.5"), "l"),
    }

    found = answers(calculator, **typed)["add"]

    assert found.text.startswith("brim it (0.0 l), and ")
    assert found.text.endswith(" is still missing: plan fewer laps")
    assert found.puts == ()


def test_the_way_home_is_the_days() -> None:
    of_session = fuel(sample("session", "2026-06-20-4-magpie")).filled["home"]

    assert (str(of_session.value), of_session.origin) == ("64 km", "day 2026-06-20-anvilfen")
