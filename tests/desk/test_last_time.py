"""Last time here: which session it was, and whether the conditions are alike."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.desk.sessions.last_time import last_time, unlike, untold
from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.situation import Situation
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import Tyre, TyreSet
from tests.every import every

NOW = Session(date=dt.date(2026, 6, 20), surface="dry", tyres="new")
SETS = {"new": TyreSet(front=Tyre(kind="track-day"), rear=Tyre(kind="track-day"))}
SETS["slick"] = TyreSet(front=Tyre(kind="slick"), rear=Tyre(kind="slick"))

MORNING = dt.datetime(2026, 6, 20, 8)


def past(day: int, venue: str = "fen", **values: Any) -> PastSession:
    session = attrs.evolve(NOW, date=dt.date(2026, 5, day), number=day, parked=dt.time(12), **values)
    return PastSession(f"may-{day}", session, venue)


def found(*sessions: PastSession, now: Session = NOW) -> tuple[str, str] | None:
    history = History(sessions, SETS)
    situation = Situation(session=now, history=history, refs={"venue": Ref("venue", "fen")}, now=MORNING)
    one = last_time(situation)
    return None if one is None else (one.past.id, one.unlike)


def degrees(text: str) -> Quantity:
    quantity = parse(text)
    assert isinstance(quantity, Quantity)
    return quantity


def test_the_last_session_in_like_conditions_is_taken_before_a_later_one_in_others() -> None:
    assert found(past(1), past(2), past(3, surface="wet")) == ("may-2", "")


def test_without_one_it_is_the_last_one_here_and_what_differs_is_said() -> None:
    assert found(past(1, surface="wet"), past(2, surface="damp")) == ("may-2", "surface damp, now dry")


def test_a_session_that_nobody_took_out_is_no_last_time() -> None:
    made = past(2)
    assert found(past(1), attrs.evolve(made, session=attrs.evolve(made.session, parked=None))) == (
        "may-1",
        "",
    )


def test_other_venues_and_today_do_not_count() -> None:
    today = PastSession("today", NOW, "fen")

    assert found(past(1, venue="hill"), today) is None
    assert found(past(1), past(2, venue="hill"), today) == ("may-1", "")


@every(
    ("then", "now", "said"),
    [
        ({"surface": "drying"}, {"surface": "damp"}, []),
        ({"surface": None}, {}, []),
        ({"tyres": "slick"}, {}, ["front tyre slick, now track-day", "rear tyre slick, now track-day"]),
        ({"track": degrees("20 C")}, {"track": degrees("28 C")}, []),
        ({"track": degrees("20 C")}, {"track": degrees("28.1 C")}, ["track 20 C, now 28.1 C"]),
        ({"track": "hot"}, {"track": degrees("28.1 C")}, []),
    ],
)
def test_like_means_surface_column_tyre_kind_and_track_within_8_c(
    then: dict[str, Any], now: dict[str, Any], said: list[str]
) -> None:
    history = History((), SETS)

    assert list(unlike(attrs.evolve(NOW, **now), attrs.evolve(NOW, **then), history, Limits())) == said


@every(
    ("then", "now", "said"),
    [
        ({"track": degrees("20 C")}, {"track": degrees("28 C")}, []),
        ({"surface": None}, {}, ["surface", "track temperature"]),
        ({}, {"surface": None, "tyres": None}, ["surface", "tyre kind", "track temperature"]),
        ({"track": "hot"}, {"track": degrees("28 C")}, ["track temperature"]),
    ],
)
def test_what_is_not_known_of_one_of_the_two_is_told(
    then: dict[str, Any], now: dict[str, Any], said: list[str]
) -> None:
    history = History((), SETS)

    assert list(untold(attrs.evolve(NOW, **now), attrs.evolve(NOW, **then), history)) == said
