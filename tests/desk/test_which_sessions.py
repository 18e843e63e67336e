"""Which of many sessions are out, come next, or are gone back to; and which amounts are of a season."""

import datetime as dt
from decimal import Decimal
from pathlib import Path

from paddock_tui.desk.day.out_now import going_next, out_now
from paddock_tui.desk.season import all_spent
from paddock_tui.desk.sessions.came_from import comes_from
from paddock_tui.records.paths import Ref
from tests.desk.opened import at_desk
from tests.small import write

_NOON = dt.datetime(2026, 6, 20, 12, 0)
_RIDDEN = "ridden_laps = 5\n"


def _session(date: str, number: int, more: str = "", bike: str = "plain") -> str:
    return f'date = {date}\nnumber = {number}\nbike = "{bike}"\nrider = "ann"\n{more}'


def test_only_todays_sessions_go_out_next_or_are_out(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__long_ago=_session("2026-06-18", 1, "went_out = 09:00:00\n"),
        sessions__left=_session("2026-06-19", 1),
        sessions__first=_session("2026-06-20", 1, "went_out = 11:50:00\n"),
        sessions__second=_session("2026-06-20", 2),
        sessions__third=_session("2026-06-20", 3),
        sessions__later=_session("2026-06-21", 1),
    )
    files = at_desk(root, _NOON).files
    assert out_now(files, _NOON) == (Ref("session", "first"),)
    assert going_next(files, _NOON) == (Ref("session", "second"),)


def test_a_session_comes_from_those_before_it_and_a_profile_from_all(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        profiles__other='bike = "plain"\nrider = "ann"\n',
        sessions__one=_session("2026-06-18", 1, _RIDDEN),
        sessions__two=_session("2026-06-19", 1),
        sessions__three=_session("2026-06-20", 1, _RIDDEN),
    )
    files = at_desk(root, _NOON).files
    assert comes_from(files, Ref("session", "two"))[0] == Ref("session", "one")
    assert Ref("session", "three") not in comes_from(files, Ref("session", "two"))
    assert comes_from(files, Ref("profile", "other"))[0] == Ref("session", "three")


def test_an_amount_of_a_bike_without_its_date_or_without_a_sum_is_of_no_season(tmp_path: Path) -> None:
    bike = (
        '[costs.1]\non = 2026-03-01\nwhat = "parts"\namount = "40 EUR"\n'
        '[costs.2]\nwhat = "parts"\namount = "50 EUR"\n'
        '[costs.3]\non = 2026-03-02\nwhat = "parts"\n'
    )
    found = list(all_spent(at_desk(write(tmp_path, bikes__plain=bike), _NOON)))
    assert [(one.on, one.amount.amount) for one in found] == [(dt.date(2026, 3, 1), Decimal(40))]
