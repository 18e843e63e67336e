"""The sample garage as a story: timetable, laps, pressures, sag, fuel, and the session to come."""

from typing import Any

import pytest

from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Venue
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from tests.every import every
from tests.sample import amount, named, read, records

# ---- days and sessions fit together ---------------------------------------------------------------


def in_days() -> list[Any]:
    """Give every session of a day, with its day and its venue."""
    found = []
    for name, session in records(Session):
        if session.day is not None:
            day = read(Ref("day", session.day)).record
            assert isinstance(day, RidingDay)
            venue = read(Ref("venue", day.venue or "")).record
            found.append(pytest.param(session, day, venue, id=name))
    return found


def is_ridden(session: Session) -> bool:
    hot = session.pressures.get("hot")
    return session.parked is not None or bool(session.laps) or (hot is not None and hot.front is not None)


@every(("session", "day"), [one.values[:2] for one in in_days()])
def test_a_session_stands_in_the_timetable_of_a_group_and_its_rider_is_entered(
    session: Session, day: RidingDay
) -> None:
    assert session.date == day.date
    starts = [slots[str(session.number)].from_ for slots in day.timetable.values()]
    assert session.start in starts
    entry = day.entries[session.rider or ""][session.bike or ""]
    assert entry.signed_on
    assert entry.briefing
    assert entry.inspected


@every(("session", "day"), [one.values[:2] for one in in_days()])
def test_no_lap_stands_where_timing_is_forbidden(session: Session, day: RidingDay) -> None:
    if day.timing == "forbidden":
        assert not session.laps
        assert session.best_lap is None


@every(("session", "day"), [one.values[:2] for one in in_days()])
def test_the_limiter_holds_the_posted_limit(session: Session, day: RidingDay) -> None:
    setting = session.setup.controls.get("pit-limiter")
    if isinstance(setting, str) and setting != "off":
        number, unit = setting.split(" ")
        assert float(number) <= amount(day.limits.pit_lane, unit) * 1.001


@every(("session", "venue"), [one.values[::2] for one in in_days()])
def test_laps_are_plausible(session: Session, venue: Venue) -> None:
    if not session.laps:
        return
    assert list(session.laps) == [str(number) for number in range(1, len(session.laps) + 1)]
    marks = [lap.mark for lap in session.laps.values()]
    assert (marks[0], marks[-1]) == ("out", "in")
    clean = [float(lap.seconds) for lap in session.laps.values() if not lap.mark]
    usual = sorted(clean)[len(clean) // 2]
    assert len(clean) >= 5
    assert all(abs(lap - usual) < 0.05 * usual for lap in clean)
    assert all(float(lap.seconds) > usual for lap in session.laps.values() if lap.mark)
    mean_km_h = amount(venue.length, "km") / (usual / 3600)
    assert 100 < mean_km_h < 150
    out, back = session.went_out, session.parked
    assert out is not None
    assert back is not None
    away_s = (back.hour - out.hour) * 3600 + (back.minute - out.minute) * 60 + back.second - out.second
    total_s = sum(float(lap.seconds) for lap in session.laps.values())
    assert total_s < away_s < total_s + 240


def test_the_usual_lap_at_one_venue_is_about_one_forty_four() -> None:
    of_day = [
        float(lap.seconds)
        for _, session in records(Session)
        if session.day == "2026-05-16-anvilfen" and session.rider == "ines"
        for lap in session.laps.values()
        if not lap.mark
    ]
    assert 104 <= sorted(of_day)[len(of_day) // 2] < 106


# ---- physics ----------------------------------------------------------------------------------------


def gas_c_of(cold: float, cold_c: float, hot: float) -> float:
    """Gas temperature in C from the gas law at constant volume, pressures in bar gauge."""
    return (hot + 1.013) / (cold + 1.013) * (cold_c + 273.15) - 273.15


@every("session", named(Session))
@every("end", ["front", "rear"])
def test_hot_pressures_follow_from_cold_ones_within_the_tyres_working_range(
    session: Session, end: str
) -> None:
    cold, hot = session.pressures.get("cold"), session.pressures.get("hot")
    if cold is None or hot is None:
        return
    set_to = getattr(cold, f"set_to_{end}") or getattr(cold, end)
    start, after = amount(set_to, "bar"), amount(getattr(hot, end), "bar")
    warm = session.pressures.get("warmers")
    cold_c = amount(cold.temperature, "C")
    if warm is not None:
        cold_c = amount(warm.temperature, "C")
        start = amount(getattr(warm, f"set_to_{end}"), "bar")
    tyres = read(Ref("tyres", session.tyres or "")).record
    assert isinstance(tyres, TyreSet)
    tyre = getattr(tyres, end)
    gas_c = gas_c_of(start, cold_c, after)
    assert amount(tyre.works_from, "C") - 1 <= gas_c <= amount(tyre.works_to, "C")
    target = tyre.hot_wet if session.surface == "wet" else tyre.hot_dry
    assert abs(after - amount(target, "bar")) < 0.14


@every("session", named(Session))
def test_starting_pressures_of_a_cold_reading_are_those_of_the_set_up(session: Session) -> None:
    cold = session.pressures.get("cold")
    if cold is not None:
        for end in ("front", "rear"):
            set_to = getattr(cold, f"set_to_{end}") or getattr(cold, end)
            assert amount(set_to, "bar") == pytest.approx(
                amount(getattr(session.setup, f"{end}_start"), "bar"), abs=0.005
            )


@every("session", named(Session))
def test_sag_lengths_give_a_sag_that_can_be(session: Session) -> None:
    for end, loads in session.sag.items():
        sags = {}
        for load, lengths in loads.items():
            pushed, lifted = amount(lengths.pushed, "mm"), amount(lengths.lifted, "mm")
            assert pushed <= lifted
            sags[load] = amount(lengths.extended, "mm") - (pushed + lifted) / 2
            assert lengths.preload == session.setup.adjusters[f"{end}-preload"]
        assert 5 <= sags["alone"] < sags["rider"] <= 35


def stretches(bike_id: str) -> list[float]:
    """Give l/100 km of every stretch between two fillings to the brim, sessions in order."""
    mine = sorted(
        (session for _, session in records(Session) if session.bike == bike_id and session.retired is None),
        key=lambda session: (session.date, session.number),
    )
    found: list[float] = []
    km = litres = 0.0
    started = False
    for session in mine:
        if session.fuel_added is not None:
            litres += amount(session.fuel_added, "l")
            if session.filled_to_brim:
                if started:
                    found.append(100 * litres / km)
                km, litres, started = 0.0, 0.0, True
        km += ridden_km(session)
    return found


def ridden_km(session: Session) -> float:
    if session.day is None:
        return 0.0
    day = read(Ref("day", session.day)).record
    assert isinstance(day, RidingDay)
    venue = read(Ref("venue", day.venue or "")).record
    assert isinstance(venue, Venue)
    return amount(venue.length, "km") * (len(session.laps) or session.ridden_laps or 0)


@every(
    ("bike_id", "count", "low", "high"), [("magpie", 6, 10, 15), ("otter", 1, 14, 16), ("badger", 2, 9, 10)]
)
def test_refills_to_the_brim_teach_a_plausible_rate(
    bike_id: str, count: int, low: float, high: float
) -> None:
    rates = stretches(bike_id)
    assert len(rates) == count
    assert all(low <= rate <= high for rate in rates), rates


# ---- the story ----------------------------------------------------------------------------------------


def test_a_dozen_sessions_are_ridden_and_the_next_one_is_not() -> None:
    sessions = {name: session for name, session in records(Session) if session.retired is None}
    open_ones = [name for name, session in sessions.items() if not is_ridden(session)]
    assert len(sessions) - len(open_ones) >= 12
    assert open_ones == ["2026-06-20-4-magpie"]
    following = sessions[open_ones[0]]
    assert following.date == max(session.date for session in sessions.values() if session.date)
    assert following.surface == "wet"
    assert following.setup.controls["traction"] == 3
    assert following.dash.read is None
    assert "cold" not in following.pressures
    assert following.track is None
