"""Before a day: what it needs, said for each rider and bike, and what nobody knows said as that."""

import datetime as dt
import threading
from pathlib import Path

import attrs
import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.day.before import day_to_come, first_session, who_goes
from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.after import after_page
from paddock_tui.pages.before import before_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from tests.screens.rider import riding
from tests.screens.test_worked_out_aside import until_it_has_ended
from tests.small import snapshot

JULY = dt.datetime(2026, 7, 10, 20, 0)
DAY = Ref("day", "2026-07-18-anvilfen")
COMING = """date = 2026-07-18
venue = "anvilfen"
group = "intermediate"
forecast = "wet"

[bookings.entry]
by = 2026-07-01

[entries.ines.magpie]
travel = "van"

[timetable.intermediate.1]
from = 09:20:00
to = 09:40:00

[timetable.intermediate.2]
from = 10:20:00
to = 10:40:00
"""


def coming(garage: Path, text: str = COMING) -> Desk:
    (garage / f"days/{DAY.id}.toml").write_text(text, encoding="utf-8")
    return Desk(garage, lambda: JULY)


def rows(desk: Desk) -> dict[str, Row]:
    return {row.key: row for row in before_page(desk).rows()}


def changed(garage: Path, name: str, old: str, new: str) -> None:
    file = garage / name
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_the_next_day_from_today_on_is_meant_and_a_retired_one_is_none(garage: Path) -> None:
    desk = coming(garage)
    assert day_to_come(desk) == DAY
    changed(garage, f"days/{DAY.id}.toml", "venue", "retired = 2026-07-02\nvenue")
    assert day_to_come(Desk(garage, lambda: JULY)) == Ref("day", "2026-06-20-anvilfen")


def test_a_day_says_what_rider_bike_and_papers_need_and_what_nobody_knows(garage: Path) -> None:
    found = rows(coming(garage))
    name = "ines on magpie"

    assert (found["booked entry"].value, found["booked entry"].severity) == ("due by 2026-07-01", "caution")
    assert found["bring 0"].value == "second fuel can: the pump at the gate was shut"
    assert found[f"{name} last"].opens == Ref("session", "2026-06-20-2-magpie")
    assert found[f"{name} set-up"].value == "profile magpie-ines-dry, riding mode wild, damping live"
    otherwise = "the first session has otherwise: riding mode, preset, rear start pressure and 11 more"
    assert found[f"{name} set-up"].aside == otherwise
    assert found[f"{name} chain slack"].value == "34 mm, measured 20 Jun"
    assert found[f"{name} battery"].value == "ok 20 Jun"
    assert found[f"{name} expected"].value.startswith("2 sessions, 0.7 h, about ")
    assert found["magpie noise-certificate"].severity == "serious"
    assert "not good on the day" in found["magpie noise-certificate"].aside
    assert found["ines licence"].value == "good until 2026-12-31"
    assert not found["ines medical"].known
    assert found[f"{name} emergency"].value == "not on this laptop"
    assert "cans" in found[f"{name} fuel"].value or "can" in found[f"{name} fuel"].value
    assert found[f"{name} bring tyres"].value == "wet: magpie-wet"
    assert not any("otter" in key for key in found)
    first = "noise certificate, bike: good until 2026-06-30"
    assert before_page(coming(garage)).answer == f"First, 4 to see to: {first}"


CELL = """[entries.ines.magpie.checks.battery]
status = "to fix"
[entries.ines.magpie.checks.coolant]"""


def test_what_is_not_known_of_battery_and_chain_is_said(garage: Path) -> None:
    changed(
        garage, "days/2026-06-20-anvilfen.toml", "[entries.ines.magpie.checks.battery]", "[flags.battery]"
    )
    for file in sorted((garage / "sessions").rglob("*magpie.toml")):
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("chain_slack = ", "distance = "), encoding="utf-8")
    found = rows(coming(garage))
    assert not found["ines on magpie battery"].known
    assert not found["ines on magpie chain slack"].known
    changed(garage, "days/2026-06-20-anvilfen.toml", "[entries.ines.magpie.checks.coolant]", CELL)
    found = rows(coming(garage))
    battery = [one for one in found.values() if "battery" in f"{one.label} {one.value}".casefold()]
    assert [(one.label, one.severity) for one in battery] == [("still open", "caution")], battery


def test_service_and_tyres_are_held_against_what_the_day_will_take(garage: Path) -> None:
    changed(garage, "riders/ines.toml", "heat_cycles = 12", "heat_cycles = 7")
    oil = "ines on magpie service oil"
    calm = rows(coming(garage))
    assert (calm[oil].severity, calm[oil].aside) == ("", "")
    tyre = calm["ines on magpie front tyre"]
    assert (tyre.severity, tyre.aside) == ("caution", "fewer than the day has sessions")

    # Sixteen hours are left: a day of nine takes them not, one of three such days' length does.
    changed(garage, "bikes/magpie.toml", "every_hours = ", 'every_hours = "10 h" # ')
    long = rows(coming(garage, COMING.replace("to = 10:40:00", "to = 18:40:00")))
    assert (long[oil].severity, long[oil].aside) in (
        ("caution", "falls due in the day"),
        ("serious", "overdue"),
    )


def test_service_by_distance_is_held_against_the_kilometres_of_the_day(garage: Path) -> None:
    chain = "ines on magpie service chain"
    assert rows(coming(garage))[chain].value == "41.2 h to go, 9654 km to go"
    changed(garage, "bikes/magpie.toml", "12000 km", "2400 km")
    soon = rows(coming(garage))[chain]
    assert (soon.value, soon.severity, soon.aside) == (
        "41.2 h to go, 54 km to go",
        "caution",
        "falls due in the day",
    )
    changed(garage, "bikes/magpie.toml", "2400 km", "2300 km")
    assert (rows(coming(garage))[chain].severity, rows(coming(garage))[chain].aside) == ("serious", "overdue")


def test_a_profile_for_the_forecast_is_the_start_and_one_key_makes_it_and_one_takes_it_back(
    garage: Path,
) -> None:
    desk = coming(garage)
    loaded = desk.files.read(DAY)
    assert loaded is not None
    day = loaded.possible
    assert isinstance(day, RidingDay)
    (made,) = who_goes(desk, DAY, day)
    ref, step = first_session(desk, DAY, made)

    assert made.profile == Ref("profile", "magpie-ines-wet")
    assert isinstance(step, Step)
    assert ref == Ref("session", "2026-07-18-1-magpie")
    before = snapshot(garage)
    desk.do(step)
    desk.wait()
    text = (garage / f"sessions/2026/{ref.id}.toml").read_text(encoding="utf-8")
    assert all(line in text for line in ('day = "2026-07-18-anvilfen"', 'taken_from = "magpie-ines-wet"'))
    assert "start = 09:20:00" in text
    assert 'mode = "wading"' in text
    assert rows(desk)["ines on magpie made"].opens == ref
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_of_what_is_open_about_a_person_it_says_whose_and_how_severe_alone(garage: Path) -> None:
    last = "sessions/2026/2026-06-20-2-magpie.toml"
    text = (garage / last).read_text(encoding="utf-8")
    wobbly = '\n[incidents.9]\nat = 10:39:00\nkind = "fall"\nhead_contact = true\n'
    (garage / last).write_text(text + wobbly, encoding="utf-8")
    page = before_page(coming(garage))
    said = "\n".join(plain_page(page, 80))

    assert any(row.value.startswith("rider: ") for row in page.rows())
    assert "helmet" not in said.partition("papers")[0]
    assert "head" not in said


def test_without_entries_whoever_rode_last_is_shown_and_said_so(garage: Path) -> None:
    desk = coming(garage, COMING.replace("[entries.ines.magpie]", "[other]"))
    page = before_page(desk)

    notes = {section.title: section.note for section in page.sections}
    assert notes["ines on magpie · last time here"] == "not entered on the day: whoever rode it last"
    assert any(title.startswith("tobin on otter") for title in notes)


async def test_t_on_a_days_page_leads_there_and_v_makes_the_session(garage: Path) -> None:
    coming(garage).close()
    before = snapshot(garage)
    async with riding(garage, now=JULY) as rider:
        rider.app.main.open(DAY)
        await rider.types("t")
        assert rider.app.main.place.room == "before"
        await rider.types("v")
        assert (garage / "sessions/2026/2026-07-18-1-magpie.toml").exists()
        await rider.types("u")
    assert snapshot(garage) == before


@pytest.mark.parametrize(
    ("room", "waits", "then"),
    [
        ("before", "What is due is not known yet.", "before it goes"),
        ("after", "What is left is not known yet.", "brought forward"),
    ],
)
async def test_a_day_that_much_is_read_for_shows_what_its_record_says_meanwhile(
    garage: Path, monkeypatch: pytest.MonkeyPatch, room: str, waits: str, then: str
) -> None:
    monkeypatch.setattr("paddock_tui.pages.day_memory.MANY_UNREAD", -1)
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    may_go_on, made = threading.Event(), {"before": before_page, "after": after_page}[room]

    def slowly(looks: LooksAt, wanted: Ref | None, read: Reading | None = None) -> Page:
        if threading.current_thread().name == "answer":
            may_go_on.wait(10)
        return made(looks, wanted, read)

    monkeypatch.setattr(f"paddock_tui.pages.{room}.{room}_page", slowly)
    async with riding(garage) as rider:
        rider.app.main.go(attrs.evolve(rider.app.main.place, room=room))
        assert rider.pilot is not None
        await rider.pilot.pause()
        page = rider.app.main.board.page
        assert page.answer == waits
        assert "reading" in page.heading
        assert page.rows()
        assert not any(then in one.title for one in page.sections)
        may_go_on.set()
        await until_it_has_ended(rider)
        page = rider.app.main.board.page
        assert page.answer != waits
        assert "reading" not in page.heading
        assert any(then in one.title for one in page.sections)
        whole = made(Desk(garage, rider.desk.now), None, None)
        said, wanted = ({(row.label, row.value) for row in one.rows()} for one in (page, whole))
        assert said == wanted
