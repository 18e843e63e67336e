"""Service: hours ridden as far as anybody knows them, and what is due when."""

import datetime as dt
from typing import Any

import pytest

from paddock_tui.facts.service import ServiceDue, hours_ridden
from tests.every import every
from tests.rules.cases.work import HOURS, service
from tests.rules.situations import Change, files, put, situation, went_before

OIL = service("oil", every_hours="5 h", last_hours="6 h", every="6 months", last=dt.date(2026, 1, 31))


def hours(*changes: Change) -> float:
    session = situation(files(*changes)).session
    assert session is not None
    return hours_ridden(session)


def due(*changes: Change, **more: Any) -> ServiceDue:
    (found,) = situation(files(*changes), **more).facts().get("service_items")
    assert isinstance(found, ServiceDue)
    return found


def test_hours_are_the_ridden_time_else_the_laps_else_from_out_to_parked() -> None:
    out = (put("session", "went_out", dt.time(10, 0)), put("session", "parked", dt.time(10, 18)))
    laps = put("session", "laps", {"1": "2:00.0", "2": "2:00.0"})

    assert hours() == 0.0
    assert hours(*out) == pytest.approx(0.3)
    assert hours(*out, laps) == pytest.approx(4 / 60)
    assert hours(*out, laps, put("session", "ridden_time", "15 min")) == pytest.approx(0.25)


def test_a_clock_that_runs_backwards_counts_nothing() -> None:
    assert hours(put("session", "went_out", dt.time(10, 18)), put("session", "parked", dt.time(10, 0))) == 0.0


def test_what_was_ridden_since_the_count_began_is_added() -> None:
    old = {"date": dt.date(2025, 12, 31), "ridden_time": "600 min"}
    found = due(HOURS, OIL, history=went_before(old, {"ridden_time": "30 min"}))

    assert found.hours == pytest.approx(0.5)
    assert found.date == dt.date(2026, 7, 31)


def test_what_has_no_interval_or_no_last_time_is_never_due() -> None:
    found = due(HOURS, service("oil", every_hours="5 h"))

    assert (found.hours, found.date) == (None, None)


@every(
    ("name", "brake", "oil"),
    [
        ("brake-fluid", True, False),
        ("front-brake-fluid", True, False),
        ("oil", False, True),
        ("fork-oil", False, False),
    ],
)
def test_brake_fluid_and_engine_oil_are_told_by_name(name: str, brake: bool, oil: bool) -> None:
    found = due(service(name, every="12 months"))

    assert (found.is_brake_fluid, found.is_oil) == (brake, oil)
    assert found.label == name.replace("-", " ")
