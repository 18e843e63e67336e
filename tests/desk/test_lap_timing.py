"""Where the day forbids lap timing no lap is entered, and those that are kept are in no trend."""

from pathlib import Path

from paddock_tui.desk.debrief.lap_timing import WHY
from paddock_tui.desk.edits.entry_line import entry_context
from paddock_tui.entry import read_line
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk, refused, typed


def forbid(garage: Path, day: str) -> None:
    file = garage / "days" / f"{day}.toml"
    text = file.read_text(encoding="utf-8")
    assert 'timing = "allowed"' in text
    file.write_text(text.replace('timing = "allowed"', 'timing = "forbidden"'), encoding="utf-8")


def test_a_lap_is_refused_with_the_reason_in_every_way_it_may_be_typed(garage: Path) -> None:
    forbid(garage, "2026-06-20-anvilfen")
    desk = at_desk(garage)
    context = entry_context(desk, NEXT)
    assert context is not None
    line = read_line("laps 1:44.3", context)

    assert [one.message for one in line.errors] == [WHY]
    assert WHY in refused(desk, NEXT, ("best_lap", "1:44.3"))[0]
    assert WHY in refused(desk, NEXT, ("laps.1", "1:44.3"))[0]
    assert typed(desk, NEXT, ("ridden_laps", "8")).changes


def test_laps_that_stand_there_may_be_cleared(garage: Path) -> None:
    forbid(garage, "2026-06-20-anvilfen")
    desk, ridden = at_desk(garage), Ref("session", "2026-06-20-2-otter")
    laps = dict(desk.files.data(ridden)["laps"])

    desk.do(typed(desk, ridden, ("laps.1", "")))
    desk.settled()

    assert "1" in laps
    assert desk.files.data(ridden)["laps"] == {number: lap for number, lap in laps.items() if number != "1"}
    assert WHY in refused(desk, ridden, ("laps.1", laps["1"]))[0]


def test_the_usual_lap_does_not_rest_on_laps_of_a_day_without_timing(garage: Path) -> None:
    context = entry_context(at_desk(garage), NEXT)
    assert context is not None
    assert context.usual_s is not None
    for day in ("2026-06-20-anvilfen", "2026-05-16-anvilfen"):
        forbid(garage, day)

    context = entry_context(at_desk(garage), NEXT)

    assert context is not None
    assert context.usual_s is None
