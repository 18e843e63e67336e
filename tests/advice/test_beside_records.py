"""Beside rows of tyre sets, bikes and days: counts, ages, wear, margins; nothing where nothing is known."""

import datetime as dt
import tomllib

import attrs

from paddock_tui.advice.about import About, History
from paddock_tui.advice.beside_records import beside_bike, beside_day, beside_tyres
from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.facts import Situation
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.reading import read_record
from tests.advice.given import about, bike, past, sample, session, tyres

BIKE = """
[front]
pads_start = "5.0 mm"
[start]
on = 2026-05-01
hours = "10 h"
kilometres = "1000 km"
[service.oil]
every_hours = "11 h"
last_hours = "5 h"
every = "6 months"
last = 2026-01-31
"""
SET = """
[front]
date_code = "2025"
cycles_before = 3
distance_before = "100 km"
[rear]
date_code = "5030"
"""
TODAY = 'date = 2026-05-16\nnumber = 9\nbike = "plain"\nrider = "ann"\ntyres = "set"\n'
RIDDEN = "parked = 10:20:00\nwent_out = 10:00:00\nridden_laps = 8\n"


def at(found: dict[Path, BesideRow], path: str) -> BesideRow:
    return found[tuple(path.split("."))]


def told(*lines: str, today: str = TODAY) -> About:
    history = History(tuple(past(number, text) for number, text in enumerate(lines, 1)))
    return about(history, session=session(today), bike=bike(BIKE), tyres=tyres(SET))


def test_age_is_taken_on_the_sessions_own_day_and_a_later_code_refused() -> None:
    # Week 20 of 2025 began on 12 May 2025.
    found = beside_tyres(told(), "set", tyres(SET))

    assert at(found, "front.date_code").short == "1.0 years old"
    assert at(found, "front.date_code").working[0] == "1.0 years old on 2026-05-16: week 20 of 2025"
    rear = at(found, "rear.date_code")
    assert rear.short == ""
    assert rear.working[0] == "date code: week 50 of 2030 is after 2026-05-16"


def test_an_unreadable_date_code_says_nothing_beside_the_row() -> None:
    found = beside_tyres(told(), "set", tyres('[front]\ndate_code = "9925"\n'))

    assert at(found, "front.date_code").short == ""
    assert at(found, "front.date_code").working[0] == "needs the date code"


def test_cycles_distance_and_hours_are_the_start_and_what_was_ridden() -> None:
    found = beside_tyres(told(RIDDEN, RIDDEN, "planned_laps = 5\n"), "set", tyres(SET))

    assert at(found, "front.cycles_before").short == "5 heat cycles by now"
    assert at(found, "front.distance_before").short == "164 km, 0.7 h here"
    assert (
        "counted from sessions of bike plain: 2 sessions on this tyre"
        in at(found, "front.cycles_before").working
    )
    assert at(found, "rear.cycles_before").short == "at least 2 heat cycles by now"
    assert at(found, "rear.distance_before").short == "at least 64 km, 0.7 h here"


def test_the_session_in_question_counts_once_it_was_ridden() -> None:
    before = beside_tyres(told(RIDDEN), "set", tyres(SET))
    after = beside_tyres(told(RIDDEN, today=TODAY + "parked = 12:20:00\n"), "set", tyres(SET))

    assert at(before, "front.cycles_before").short == "4 heat cycles by now"
    assert at(after, "front.cycles_before").short == "5 heat cycles by now"
    assert "of 1 session nobody knows how far" in at(after, "front.distance_before").working


def test_without_sessions_the_start_stands_alone_and_says_that_none_was_counted() -> None:
    found = beside_tyres(told(RIDDEN), "another", tyres(SET))

    assert at(found, "front.cycles_before").short == "none counted on this bike"
    assert at(found, "front.cycles_before").working[0].startswith("3 heat cycles before")
    assert at(found, "rear.cycles_before").working[0] == "needs the heat cycles before"
    assert at(found, "rear.cycles_before").short == ""


def test_a_tyre_that_goes_on_from_another_set_takes_that_ones_start() -> None:
    later = tyres('[front]\ncontinues = "set"\n')
    known = told(RIDDEN)
    history = attrs.evolve(known.history, tyre_sets={"set": tyres(SET)})
    found = beside_tyres(attrs.evolve(known, history=history), "later", later)

    row = at(found, "front.cycles_before")
    assert row.short == "4 heat cycles by now"
    assert "this tyre goes on from set set" in row.working


def test_the_bike_counts_hours_distance_and_what_is_due() -> None:
    found = beside_bike(told(RIDDEN, RIDDEN, RIDDEN))

    assert at(found, "start.hours").short == "11.0 h by now"
    assert at(found, "start.kilometres").short == "1096 km by now"
    assert at(found, "service.oil.every_hours").short == "5.0 h to go"
    assert at(found, "service.oil.every").short == "2.5 months to go, 2026-07-31"


def test_a_session_of_unknown_length_makes_the_count_a_least() -> None:
    found = beside_bike(told('parked = 10:20:00\n[pressures.hot]\nfront = "2.4 bar"\n'))

    assert at(found, "start.hours").short == "at least 10.0 h by now"
    assert at(found, "start.kilometres").short == "at least 1000 km by now"


def test_service_that_is_past_is_said_to_be_over() -> None:
    found = beside_bike(told('ridden_time = "420 min"\nparked = 10:20:00\n', today="date = 2026-08-05\n"))

    assert at(found, "service.oil.every_hours").short == "1.0 h over"
    assert at(found, "service.oil.every").short == "5 days over, 2026-07-31"


def test_pads_are_reckoned_to_the_organisers_least_else_to_common_practice() -> None:
    worn = [f'{RIDDEN}front_pads = "{mm} mm"\n' for mm in (4.8, 4.6, 4.4)]  # the fourth is the start's
    limited = read_record("day", tomllib.loads('[limits]\npads = "4.0 mm"\n')).record
    assert isinstance(limited, RidingDay)
    known = told(*worn)

    alone, posted = (
        at(beside_bike(one), "front.pads_start")
        for one in (
            known,
            attrs.evolve(known, situation=attrs.evolve(known.situation, day=limited)),
        )
    )
    assert alone.short == "0.20 mm a session, 1.5 mm within 14"
    assert any("paddock practice" in line for line in alone.working)
    assert posted.short == "0.20 mm a session, 4 mm within 2"


def test_fewer_than_four_readings_of_pads_carry_a_rate_but_no_time_and_one_reading_none() -> None:
    slow = at(beside_bike(told(f'{RIDDEN}front_pads = "4.9 mm"\n')), "front.pads_start")
    none = at(beside_bike(told()), "front.pads_start")

    assert slow.short == "0.10 mm a session"
    assert none.short == ""
    assert "takes two readings" in none.working[0]


def test_a_bike_by_itself_is_counted_to_today() -> None:
    alone = Situation(bike=bike(BIKE), refs={"bike": Ref("bike", "plain")}, now=dt.datetime(2026, 6, 20, 12))
    found = beside_bike(About(alone, History((past(1, RIDDEN),))))

    assert at(found, "service.oil.every").short == "41 days to go, 2026-07-31"
    assert "counted to 2026-06-20" in at(found, "start.hours").working


def test_every_noise_reading_of_the_day_is_set_against_its_limit() -> None:
    known = sample("session", "2026-05-16-3-magpie")
    day = known.situation.day
    assert day is not None
    found = beside_day(known, day)

    assert at(found, "entries.ines.magpie.noise.reading").short == "2.5 dB under the limit"
    assert at(found, "entries.tobin.otter.noise.reading").short == "1.5 dB under the limit: close"
    assert at(found, "limits.noise").short == "6550 rpm by the stroke"


def test_nothing_known_says_nothing() -> None:
    assert beside_bike(about()) == {}
    assert beside_day(about(), RidingDay()) == {}
    found = beside_tyres(about(), "set", tyres(""))
    assert all(one.short == "" and one.working for one in found.values())


def test_records_that_cannot_be_true_do_not_stop_the_page() -> None:
    made = bike("""
[front]
pads_start = "900 mm"
[start]
on = 0001-01-01
hours = "-5 h"
kilometres = "99999999999 km"
[service.oil]
every_hours = "0 h"
last_hours = "-3 h"
every = "999 months"
last = 9999-12-31
""")
    odd = 'distance = "-5 km"\nridden_time = "9999999 min"\nfront_pads = "-3 mm"\n'
    absurd = tyres('[front]\ncycles_before = -9\ndistance_before = "-1 km"\nsize = "999/99 ZR99"\n')
    known = about(
        History((past(1, odd), past(2, odd))), session=session(TODAY + odd), bike=made, tyres=absurd
    )

    assert all(one.working for one in beside_tyres(known, "set", absurd).values())
    assert all(one.working for one in beside_bike(known).values())
