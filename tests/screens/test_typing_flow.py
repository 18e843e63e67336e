"""One way to type each kind of value, on every page: by keys."""

import datetime as dt
import tomllib
from pathlib import Path

from paddock_tui.records.paths import Ref
from tests.screens.rider import riding
from tests.small import snapshot

BACK = dt.datetime(2026, 6, 20, 13, 41)


async def test_a_unit_behind_digits_is_text_and_no_command(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "adjusters", "front-preload")
        await rider.types("1 2 text:_turns")
        assert rider.typing == "12 turns"
        await rider.types("enter")
        assert "front-preload = 12\n" in rider.text or "front-preload = 12 " in rider.text
        rider.to("setup", "adjusters", "front-rebound")
        await rider.types("text:8clicks")
        assert (rider.app.main.place.room, rider.typing) == ("setup", "8clicks")
        await rider.types("enter g")
        assert rider.app.main.place.room == "garage"


async def test_cold_readings_and_times_go_on_by_themselves(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s")
        rider.to("start")
        await rider.types("1 3 2 5")
        assert "start = 13:25:00" in rider.text
        await rider.types("p")
        rider.to("setup", "front_start")
        await rider.types("2 1 8")
        assert 'front_start = "2.18 bar"' in rider.text
        assert rider.typing is None


async def test_a_choice_is_taken_by_its_number_and_letters_stay_commands(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("surface")
        assert "1 dry 2 damp 3 drying 4 wet" in rider.screen
        await rider.types("2 enter")
        assert 'surface = "damp"' in rider.text
        await rider.types("u")
        assert 'surface = "wet"' in rider.text
        await rider.types("enter text:DRYI enter")
        assert 'surface = "drying"' in rider.text
        await rider.types("9 enter")
        assert "expected dry, damp" in rider.screen
        await rider.types("escape")


async def test_alt_and_a_letter_act_on_the_row_they_are_typed_on_also_where_escape_goes_back(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        before = snapshot(garage)
        await rider.types("g")
        rows = rider.app.main.board.page.rows()
        bike = next(row for row in rows if row.opens == Ref("bike", "magpie"))
        assert rider.app.main.board.go(bike.identity)
        await rider.types("enter")
        rider.to("wet_mass")
        await rider.types("escape x")  # in one piece, as alt and x
        assert rider.app.main.place.room == "record"
        assert "no entry of a table" in rider.last
        assert snapshot(garage) == before
        await rider.types_by_hand("escape up")
        assert rider.app.main.place.room == "garage"


async def test_ranges_and_names_are_read_as_the_screens_write_them(garage: Path) -> None:
    async with riding(garage) as rider:
        rider.app.main.open(Ref("bike", "magpie"))
        file = garage / "bikes/magpie.toml"
        for typed in ("0-30", "0 to 30", "0 30", "0..30"):
            rider.to("adjusters", "front-rebound", "range")
            await rider.types(f"enter ctrl+u text:{typed.replace(' ', '_')} enter")
            assert "range = [0, 30]" in file.read_text(encoding="utf-8"), typed
            await rider.types("escape u")
        rider.app.main.open(Ref("checklist", "after-a-fall"))
        rider.to("items", "inspected-again", "kinds")
        await rider.types("enter ctrl+u text:Track,RACE enter")
        assert 'kinds = ["track day", "race"]' in (garage / "checklists/after-a-fall.toml").read_text("utf-8")


async def test_enter_goes_on_to_the_next_open_row_and_an_arrow_accepts_what_is_complete(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        await rider.types("s")
        rider.to("pressures", "cold", "front")
        await rider.types("text:2.15_bar enter")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path == ("pressures", "cold", "rear")
        await rider.types("text:1.95 down")
        assert 'front = "2.15 bar"\nrear = "1.95 bar"' in rider.text
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.path == ("pressures", "cold", "temperature")
        rider.to("pressures", "cold", "rear")
        await rider.types("enter ctrl+u text:1.9_bananas up")
        assert rider.typing == "1.9 bananas"
        assert 'rear = "1.95 bar"' in rider.text


async def test_space_answers_yes_or_no_and_turns_off_what_can_be_off(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s")
        rider.to("filled_to_brim")
        before = "filled_to_brim = true" in rider.text
        await rider.types("space")
        assert ("filled_to_brim = true" in rider.text) is not before
        await rider.types("escape p")
        rider.to("setup", "controls", "traction")
        await rider.types("space")
        assert 'traction = "off"' in rider.text
        await rider.types("space")
        assert "traction = 3" in rider.text


async def test_names_of_functions_are_taken_by_a_start_that_fits_one_alone_in_either_case(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        rider.app.main.open(Ref("bike", "magpie"))
        file = garage / "bikes/magpie.toml"
        for typed, function in (("WHEEL", "wheelie"), ("eng", "engine-braking"), ("Trac", "traction")):
            rider.to("controls", "traction", "function")
            await rider.types(f"enter ctrl+u text:{typed} enter")
            controls = tomllib.loads(file.read_text(encoding="utf-8"))["controls"]
            assert controls["traction"]["function"] == function
        rider.to("controls", "traction", "function")
        await rider.types("enter ctrl+u text:p enter")
        assert rider.typing == "p", "power and pit limiter begin so"
