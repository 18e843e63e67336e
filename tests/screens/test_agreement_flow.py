"""After an action every page agrees with it: by keys."""

import datetime as dt
import re
from pathlib import Path

from tests.bench.returning import RETURN
from tests.screens.rider import riding

OUT = dt.datetime(2026, 6, 20, 13, 22)


async def test_once_out_nothing_counts_down_to_it_and_i_says_since_when(garage: Path) -> None:
    async with riding(garage, now=OUT) as rider:
        await rider.types("s")
        rider.to("went_out")
        await rider.types("1 3 1 9 escape down")
        assert "went_out = 13:19:00" in rider.text
        assert rider.app.main._seen is not None
        assert rider.app.main._seen.page.clock == "out since 13:19 · flag 13:40 in 18 min"
        await rider.types("i")
        assert rider.last.startswith("parked 13:22, out since 13:19, 3 min; u undoes")


async def test_an_unanswered_serious_finding_asks_before_going_out_as_a_hold_does(garage: Path) -> None:
    async with riding(garage) as rider:
        before = rider.text
        await rider.types("o end enter")
        assert "serious, no answer: enter goes out, escape stays" in rider.last
        assert "Traction control low" in rider.screen
        await rider.types("escape")
        assert "not gone out" in rider.last
        assert rider.text == before


async def test_the_review_opens_at_the_worst_finding_that_is_new(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("r")
        first = rider.app.main.board.cursor_row
        assert first is not None
        assert first.severity in ("hold", "serious")
        await rider.types("p")
        rider.to("setup", "controls", "front-abs")
        await rider.types("1 r")
        new = rider.app.main.board.cursor_row
        assert new is not None
        assert new.kind == "finding"
        assert new.key != first.key
        assert "abs" in new.value.casefold()


async def test_fall_crash_and_drop_find_the_incident_and_the_wet_package_has_a_key(garage: Path) -> None:
    async with riding(garage) as rider:
        for word in ("fall", "crash", "drop"):
            await rider.types(f"m / text:{word} enter")
            assert "incident" in {row.key for row in rider.app.main.board.page.rows()}, word
            await rider.types("escape")
        await rider.chooses("incident")
        assert "[incidents.1]" in rider.text
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path[:2] == ("incidents", "1")
        await rider.types("escape u p k")
        assert "enter sets them" in rider.screen
        await rider.types("escape")


async def test_undo_says_what_it_took_back_until_the_next_key(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        await rider.types("6 u")
        assert rider.last.startswith("undone: slide control 3 -> 6")
        rider.file.write_text(rider.text.replace("start = 13:20:00", "start = 13:25:00"), encoding="utf-8")
        rider.app.main.follower.poll()
        rider.app.main.draw()
        assert rider.last.startswith("undone: slide control 3 -> 6")
        await rider.types("down")
        assert rider.last.startswith("changed by another program: 1 fact in session/")


async def test_the_key_of_the_wet_package_stands_in_the_last_line_where_the_surface_is_wet(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        for surface in ("dry", "wet", "damp"):
            rider.file.write_text(
                re.sub('surface = "[a-z ]+"', f'surface = "{surface}"', rider.text), "utf-8"
            )
            rider.app.main.follower.poll()
            await rider.types("down")
            assert ("k wet package" in rider.last) is (surface != "dry"), rider.last


async def test_a_serious_thing_that_is_only_not_done_yet_asks_at_going_out_too(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "traction")
        await rider.types("8 down o end enter")
        assert "serious, no answer: enter goes out, escape stays" in rider.last
        assert "The dash was not read" in rider.screen
        await rider.types("escape")
        assert "went_out" not in rider.text


async def test_the_key_that_is_said_for_the_next_thing_leads_to_its_row(garage: Path) -> None:
    async with riding(garage, now=dt.datetime(2026, 6, 20, 12, 58)) as rider:
        await rider.types("g")
        assert rider.last.startswith("out in 22 min, read the cold pressures, due 13:10: s")
        await rider.types("s")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path == ("pressures", "cold", "front")
        await rider.types("2 1 5")
        assert rider.text.count('front = "2.15 bar"') == 1
        await rider.types("home g end s")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path == ("pressures", "cold", "rear")


async def test_who_is_back_before_the_planned_start_is_sent_out_to_it_on_no_page(garage: Path) -> None:
    async with riding(garage, now=dt.datetime(2026, 6, 20, 13, 5)) as rider:
        await rider.types("s o end enter enter")
        assert "went_out = 13:05:00" in rider.text
        await rider.types("i escape home g")
        assert rider.last.startswith("out 14:20 in 75 min"), rider.last
        await rider.types("t")
        assert "13:20 in" not in rider.screen
        assert "timetable at a glance ── next 14:20 in 75 min" in rider.screen
        await rider.chooses("board")
        assert "14:20 in 75 min ines magpie" in rider.screen


async def test_the_key_of_the_day_leads_to_what_is_late_on_it(garage: Path) -> None:
    file = garage / "days/2026-06-20-anvilfen.toml"
    text = file.read_text(encoding="utf-8").replace("briefing = true\n", "briefing = false\n")
    file.write_text(re.sub(r"\[entries\.ines\.magpie\.checks\.briefing\]\n(?:\w.*\n)+", "", text), "utf-8")
    async with riding(garage, now=dt.datetime(2026, 6, 20, 13, 12)) as rider:
        await rider.types("p")
        assert rider.last.startswith("HOLD: stay in, late: attend the riders' briefing: t"), rider.last
        await rider.types("t")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path == ("entries", "ines", "magpie", "briefing")


async def test_of_two_things_due_in_one_minute_the_hold_is_said_first(garage: Path) -> None:
    day = garage / "days/2026-06-20-anvilfen.toml"
    day.write_text(day.read_text(encoding="utf-8").replace("signed_on = true", "signed_on = false"))
    async with riding(garage) as rider:
        assert "sign on" in rider.last
        await rider.types("r")
        review = rider.app.main._seen
        assert review is not None
        due = [(one.due, str(one.severity)) for one in review.review.to_do]
        assert due[0][1] == "hold"
        assert due[0][0] == due[1][0]
        assert due[1][1] != "hold"


async def test_a_session_that_nobody_took_out_is_never_called_ridden(garage: Path) -> None:
    """Not by its time having passed, nor by hot pressures read of a bike that stood."""
    async with riding(garage, now=dt.datetime(2026, 6, 20, 15, 0)) as rider:
        await rider.types("s")
        rider.to("pressures", "hot", "front")
        await rider.types("2 1 0 g")
        row = next(one for one in rider.app.main.board.page.rows() if "2026-06-20-4-magpie" in one.label)
        assert "hot" in rider.text
        assert "ridden" not in f"{row.value} {row.aside} {row.range}"


async def test_the_next_session_made_by_fuel_says_where_it_went_and_the_old_page_has_it(garage: Path) -> None:
    async with riding(garage, now=dt.datetime(2026, 6, 20, 13, 41)) as rider:
        await rider.types(RETURN)
        assert rider.last.startswith("fuel added 6.5 L, with new session 2026-06-20-5-magpie")
        assert rider.app.main._seen is not None
        assert rider.app.main._seen.page.heading.startswith("debrief · session 4")
        assert "fuel added 6.5 L" in rider.screen
