"""Stamping going out keeps what was known then; stamping anew keeps only what is known now."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.gone_through import going_through
from paddock_tui.desk.day.went_out import going_out
from paddock_tui.records.paths import GARAGE, Ref
from tests.desk.opened import at_desk
from tests.rules.situations import at, look, put
from tests.small import write

A = Ref("session", "a")
WET, LOW = put("session", "surface", "wet"), at("traction", 3)


def test_the_second_stamp_takes_the_place_of_the_first(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__a="date = 2026-05-16\n"))

    desk.do(going_out(desk.files, A, dt.time(9, 20), look(WET, LOW)))
    first = desk.files.data(A)["out"]
    desk.do(going_out(desk.files, A, dt.time(9, 30), look()))
    second = desk.files.data(A)["out"]

    assert first["at"] == dt.time(9, 20)
    assert first["findings"]["little-traction-help-in-the-wet"] == {"traction": "serious"}
    assert second["at"] == dt.time(9, 30)
    assert second["verdict"] == "NO FINDINGS"
    assert "little-traction-help-in-the-wet" not in second.get("findings", {})
    assert desk.files.data(A)["went_out"] == dt.time(9, 30)
    desk.close()


def test_what_is_older_is_gone_through_in_one_step_that_can_be_taken_back(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path))

    desk.do(going_through(desk.files, dt.date(2026, 5, 15), "IS"))
    assert desk.files.data(GARAGE)["before"] == {"on": dt.date(2026, 5, 15), "by": "IS"}
    desk.do(going_through(desk.files, dt.date(2026, 6, 15), "TO"))
    assert desk.files.data(GARAGE)["before"] == {"on": dt.date(2026, 6, 15), "by": "TO"}
    desk.close()
