"""After a day: the road home, counters, what is left to do until it is done, what was learnt, the packing."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.day.after import day_over, done_todo, noting_todo
from paddock_tui.desk.day.packing import served
from paddock_tui.pages.after import AfterMemory, after_page
from paddock_tui.pages.before import before_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from tests.desk.test_before import COMING, DAY
from tests.screens.rider import riding
from tests.small import snapshot

EVENING = dt.datetime(2026, 6, 20, 18, 0)
APRIL = Ref("day", "2026-04-18-quernstone")
JUNE = Ref("day", "2026-06-20-anvilfen")
OTTER = Ref("bike", "otter")
NEXT_DAY = dt.date(2026, 7, 18)


def at(garage: Path, now: dt.datetime = EVENING) -> Desk:
    return Desk(garage, lambda: now)


def words(rows: tuple[Row, ...]) -> list[str]:
    return [" ".join(filter(None, (row.label, row.value, row.aside))) for row in rows]


def section(desk: Desk, day: Ref, title: str) -> tuple[Row, ...]:
    return next(one.rows for one in after_page(desk, day).sections if one.title == title)


def do(desk: Desk, step: Step | str) -> None:
    assert isinstance(step, Step)
    desk.do(step)
    desk.wait()


def test_the_latest_day_that_was_ridden_is_meant_and_one_that_was_not_says_so(garage: Path) -> None:
    desk = at(garage)
    assert day_over(desk) == JUNE
    assert day_over(at(garage, dt.datetime(2026, 6, 1, 9, 0))) == Ref("day", "2026-05-16-anvilfen")
    (garage / f"days/{DAY.id}.toml").write_text(COMING, encoding="utf-8")
    lines = list(plain_page(after_page(at(garage), DAY)))
    assert "  nothing was ridden on this day" in lines


def test_the_road_home_is_offered_as_steps_with_what_the_rules_find(garage: Path) -> None:
    road = words(section(at(garage), APRIL, "ines on badger: the road home"))
    assert road == [
        "open tyre pressures up to the road figures",
        "open ABS, traction control and riding mode back for the road",
        "open lights back on and tried, brake light by both levers",
        "open mirrors on and set",
        "open number plate and its light on",
        "open tyres looked at: wear, cuts, made for the road",
        "caution The front leaves with 2.20 bar; the road figure is 2.50 bar. Pump it up to 2.50 bar cold"
        " before leaving, and enter what it was set to.",
        "caution The rear leaves with 2.15 bar; the road figure is 2.70 bar. Pump it up to 2.70 bar cold"
        " before leaving, and enter what it was set to.",
    ]
    titles = [one.title for one in after_page(at(garage), JUNE).sections]
    assert not any("road home" in one for one in titles)  # In the van.


def test_counters_are_brought_forward_with_what_the_day_added(garage: Path) -> None:
    told = words(section(at(garage), JUNE, "ines on magpie: brought forward"))
    assert told[:4] == [
        "hours 62.8 h 0.6 h of it on this day",
        "distance 7556 km 65 km on this day",
        "front tyre 6 heat cycles, 214 km 1 heat cycle on this day",
        "rear tyre 5 heat cycles, 145 km 1 heat cycle on this day",
    ]
    assert told[6] == "chain slack 34 mm, measured 20 Jun ridden 1 session since"


def test_what_is_left_to_do_stays_before_every_day_until_it_is_done(garage: Path) -> None:
    (garage / f"days/{DAY.id}.toml").write_text(COMING.replace("ines.magpie", "tobin.otter"), "utf-8")
    whole = snapshot(garage)
    desk = at(garage)
    assert "to do head bearings greased by 2026-07-18 · since 20 Jun" in words(
        section(desk, JUNE, "tobin on otter: before the next day")
    )
    do(desk, noting_todo(desk.files, OTTER, "clutch lever bent", JUNE_DATE, NEXT_DAY))
    before = [row for row in before_page(desk, DAY).rows() if row.label == "to do"]
    assert [(row.value, row.severity) for row in before] == [
        ("head bearings greased", "caution"),
        ("clutch lever bent", "caution"),
    ]
    later = at(garage, dt.datetime(2027, 3, 1, 9, 0))
    assert "clutch lever bent" in " ".join(words(section(later, JUNE, "tobin on otter: before the next day")))
    do(desk, done_todo(desk.files, OTTER, "3", dt.date(2026, 7, 1)))
    assert "clutch lever bent" not in " ".join(words(before_page(desk, DAY).rows()))
    assert done_todo(desk.files, OTTER, "3", dt.date(2026, 7, 1)) == (
        "it stands so already: 1 is done, backspace opens it again"
    )
    for _ in range(2):
        desk.undo()
        desk.wait()
    assert snapshot(garage) == whole


JUNE_DATE = dt.date(2026, 6, 20)


def test_the_packing_list_says_what_was_lacking_and_takes_nothing_away(garage: Path) -> None:
    (garage / f"days/{DAY.id}.toml").write_text(COMING, encoding="utf-8")
    desk = at(garage)
    packed = [row for row in before_page(desk, DAY).rows() if row.key.startswith("pack ")]
    told = {row.key.removeprefix("pack "): (row.value, row.aside, row.severity) for row in packed}
    assert told["brake-pads"] == ("2, spares, rider", "missing twice, last 2026-05-16", "caution")
    assert told["torque-wrench"] == ("1, tools, helper", "borrowed once, last 2026-05-16", "caution")
    assert told["rain-suit"] == ("kit bag, each rider", "not used once, last 2026-04-18", "")
    assert told["fuel-cans"] == ("2, van, upright and tied", "", "")

    file = garage / "days/2026-06-20-anvilfen.toml"
    noted = '\n[packing.rain-suit]\nwas = "not used"\n\n[packing.zip-ties]\nwas = "missing"\n'
    file.write_text(file.read_text(encoding="utf-8") + noted, encoding="utf-8")
    desk = at(garage)
    again = {row.key: row.aside for row in before_page(desk, DAY).rows() if row.key.startswith("pack ")}
    assert again["pack rain-suit"] == "not used twice, last 2026-06-20"
    assert again["pack zip-ties"] == "missing once, last 2026-06-20 · on no list"
    assert set(again) == {row.key for row in packed} | {"pack zip-ties"}
    # What is noted of a day changes what is said from the next one on.
    assert served(desk, JUNE_DATE)["rain-suit"].words() == "not used once, last 2026-04-18"


def test_what_is_open_of_a_person_is_named_by_its_severity_alone(garage: Path) -> None:
    file = garage / "sessions/2026/2026-06-20-2-magpie.toml"
    text = '\n[incidents.1]\nwhat = "fall"\nmoving = true\nhead_contact = true\nnote = "plantedword"\n'
    file.write_text(file.read_text(encoding="utf-8") + text, encoding="utf-8")
    said = " ".join(plain_page(after_page(at(garage), JUNE)))
    assert "plantedword" not in said
    assert "concussion" not in said
    assert "head contact" not in said.casefold()


async def test_t_leads_there_and_keys_answer_note_and_save(garage: Path) -> None:
    whole = snapshot(garage)
    async with riding(garage, now=EVENING) as rider:
        rider.app.main.open(APRIL)
        await rider.types("t")
        main = rider.app.main
        assert main.place.room == "after"
        step = next(row for row in main.board.page.rows() if row.path[-2:-1] == ("home-lights",))
        assert main.board.go(step.identity)
        await rider.types("1")
        day = garage / f"days/{APRIL.id}.toml"
        assert '[entries.ines.badger.checks.home-lights]\nstatus = "ok"' in day.read_text(encoding="utf-8")

        fix = next(row for row in main.board.page.rows() if row.label == "to fix")
        assert main.board.go(fix.identity)
        await rider.types("v")
        noted = (garage / "bikes/badger.toml").read_text(encoding="utf-8")
        assert (
            '[todos.1]\nwhat = "battery charged, terminals tight"\nsince = 2026-04-18\nby = 2026-05-16'
            in noted
        )

        rider.app.main.open(JUNE)
        await rider.types("t")
        profile = next(row for row in main.board.page.rows() if row.label == "profile")
        assert main.board.go(profile.identity)
        await rider.types("v")
        made = (garage / "profiles/magpie-ines-2026-06-20.toml").read_text(encoding="utf-8")
        assert 'note = "cannot tell yet: tyre set, riding mode' in made
        todo = next(row for row in main.board.page.rows() if row.label == "to do")
        assert main.board.go(todo.identity)
        await rider.types("1")
        assert "done = 2026-06-20" in (garage / "bikes/otter.toml").read_text(encoding="utf-8")
        await rider.types("u u u u")
    assert snapshot(garage) == whole


async def test_n_asks_what_is_to_be_done_and_by_when(garage: Path) -> None:
    whole = snapshot(garage)
    async with riding(garage, now=EVENING) as rider:
        rider.app.main.open(JUNE)
        await rider.types("t")
        main = rider.app.main
        add = next(row for row in main.board.page.rows() if row.adds == ("todos",) and row.ref == OTTER)
        assert main.board.go(add.identity)
        await rider.types("n text:bleed_the_clutch_2026-07-01 enter")
        noted = (garage / "bikes/otter.toml").read_text(encoding="utf-8")
        assert '[todos.3]\nwhat = "bleed the clutch"\nsince = 2026-06-20\nby = 2026-07-01' in noted
        more = next(row for row in main.board.page.rows() if row.adds == ("packing",))
        assert main.board.go(more.identity)
        await rider.types("n text:zip_ties enter")
        assert '[packing.zip-ties]\nwas = "missing"' in (garage / f"days/{JUNE.id}.toml").read_text("utf-8")
        await rider.types("u u")
    assert snapshot(garage) == whole


def test_what_comes_from_another_laptop_stands_on_the_page_at_once(garage: Path) -> None:
    """A rider's last outing comes as a new file within the minute in which the page was made."""
    desk, memory = at(garage), AfterMemory()
    before = [one.title for one in memory.page(desk, JUNE).sections]
    assert memory.page(desk, JUNE) is memory.page(desk, JUNE)
    folder = garage / "sessions/2026"
    text = (folder / "2026-06-20-2-magpie.toml").read_text(encoding="utf-8")
    other = text.replace('rider = "ines"', 'rider = "tobin"').replace("number = 2", "number = 3")
    (folder / "2026-06-20-3-magpie.toml").write_text(other, encoding="utf-8")
    desk.poll()

    after = [one.title for one in memory.page(desk, JUNE).sections]
    assert {one for one in after if one not in before} >= {"tobin on magpie: learnt"}
