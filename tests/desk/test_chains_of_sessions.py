"""Sessions made from one another: which one is next, which was ridden, which number and date are free."""

import datetime as dt
import tomllib
from pathlib import Path

from paddock_tui.desk.sessions.next_change import next_of, ridden_one
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.desk.sessions.numbers import next_number
from paddock_tui.records.edits import Create, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.small import session, write

DATE = dt.date(2026, 5, 16)
RIDDEN = "10:20:00"


def at(name: str) -> Ref:
    return Ref("session", name)


def test_of_two_sessions_made_from_one_the_later_is_next(tmp_path: Path) -> None:
    files = GarageFiles(
        write(
            tmp_path,
            sessions__a=session(1, parked=RIDDEN),
            sessions__b=session(2, copied_from='"a"'),
            sessions__c=session(3, copied_from='"a"'),
            sessions__d=session(4, copied_from='"a"', parked=RIDDEN),
            sessions__e=session(5, copied_from='"b"'),
        )
    )

    assert next_of(files, at("a")) == at("c")
    assert next_of(files, at("e")) is None


def test_sessions_that_are_copied_from_each_other_lead_to_none_that_was_ridden(tmp_path: Path) -> None:
    files = GarageFiles(
        write(
            tmp_path,
            sessions__a=session(1, copied_from='"b"'),
            sessions__b=session(2, copied_from='"a"'),
            sessions__c=session(3, copied_from='"d"'),
            sessions__d=session(4, parked=RIDDEN),
        )
    )

    assert ridden_one(files, at("a")) is None
    assert ridden_one(files, at("c")) == at("d")


def test_sessions_of_other_years_are_passed_over_and_those_behind_them_counted(tmp_path: Path) -> None:
    files = GarageFiles(
        write(
            tmp_path,
            **{"sessions__2024-05-16-1-plain": session(9), "sessions__2026-05-16-3-plain": session(3)},
        )
    )

    assert next_number(files, DATE, "plain") == 4
    assert next_number(files, DATE, "plain", after=7) == 8
    assert next_number(files, DATE, "other") == 1


def test_a_session_made_from_one_of_today_is_of_today_though_a_day_comes(tmp_path: Path) -> None:
    files = GarageFiles(
        write(tmp_path, sessions__a=session(1, parked=RIDDEN), days__next="date = 2026-05-17\n")
    )
    _, step = next_session(files, at("a"), dt.datetime(2026, 5, 16, 11, 0))

    assert isinstance(step, Step)
    (create,) = step.changes
    assert isinstance(create, Create)
    assert tomllib.loads(create.text)["date"] == DATE
