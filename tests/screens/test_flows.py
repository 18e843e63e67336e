"""What the screen says and keeps while things go as they should not, and on the way back."""

import datetime as dt
import threading
from pathlib import Path

import pytest
from textual.geometry import Region

from paddock_tui.records.paths import Ref
from tests.screens.rider import BEFORE, riding
from tests.small import snapshot

ROOMS = {"setup", "session", "checklist", "review", "bench", "record", "why", "help", "actions", "garage"}
LITTLE = "serious little-traction-help-in-the-wet traction"


async def test_what_cannot_be_read_is_said_beside_its_row_and_stays_until_it_can(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        await rider.types("p")
        for path, typed, said in (
            (("surface",), "moist", "dry, damp"),
            (("track",), "warm", "a temperature"),
            (("setup", "mode"), "race", "wading"),
            (("setup", "controls", "traction"), "six", "0 to 10"),
            (("setup", "controls", "throttle"), "7", "crisp, even or gentle"),
            (("setup", "adjusters", "front-rebound"), "2.0.1", "a number"),
            (("setup", "rear_sprocket"), "4O", "number"),
            (("setup", "front_start"), "3.45 stone", "bar"),
        ):
            rider.to(*path)
            await rider.types(f"enter ctrl+u text:{typed.replace(' ', '_')} enter")
            assert rider.typing == typed
            assert said in rider.screen, (path, rider.screen)
            await rider.types("escape down up")
            assert not rider.app.main.board.is_typing
            await rider.types("enter")
            assert rider.typing == typed
            await rider.types("escape")
        assert snapshot(garage) == before
        rider.to("setup", "controls", "traction")
        await rider.types("enter ctrl+u 6 enter")

        assert rider.value == "6"
        assert rider.last.startswith("traction control 3 -> 6 (more help), u undoes")


async def test_a_question_left_unanswered_offers_its_text_again(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("r a")
        assert "why do you ride with it?" in rider.last
        assert "serious: Traction control low for a wet track: 3 (range 0-10)." in rider.screen
        await rider.types("enter")
        assert "say why" in rider.screen
        await rider.types("text:behind_the escape")
        assert "not accepted" in rider.last
        await rider.types("a")
        assert rider.typing == "behind the"
        await rider.types("end text:_instructor enter")
        assert 'reason = "behind the instructor"' in rider.text
        assert rider.verdict.startswith("CARE 2 (0 to answer)")
        await rider.types("e text:t6_sl enter")
        assert rider.typing == "t6 sl"
        await rider.types("escape g e")

        assert rider.typing == "t6 sl"
        assert "traction control 3 -> 6" in rider.screen


async def test_undo_and_redo_go_over_every_kind_of_step(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        await rider.types("r f")
        assert LITTLE not in rider.findings()
        await rider.types("p")
        rider.to("setup", "controls", "wheelie")
        await rider.types("4")
        rider.to("surface")
        await rider.types("backspace n")
        assert "surface" in rider.last
        await rider.types("text:dry enter")
        made = snapshot(garage)
        assert rider.app.main.place.subject == Ref("session", "2026-06-20-5-magpie")
        await rider.types("u u u u u")
        rider.app.main.follower.poll()
        assert rider.last.startswith("undone: "), "what this program took back is no change of others"
        assert snapshot(garage) == before
        assert LITTLE in rider.findings()
        await rider.types("u")
        assert "nothing to undo" in rider.last
        await rider.types("y y y y y")
        assert snapshot(garage) == made
        await rider.types("y")

        assert "nothing to do again" in rider.last


async def test_enter_on_a_finding_goes_to_the_row_it_is_about(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("r enter")

        row = rider.app.main.board.cursor_row
        assert row is not None
        assert (rider.app.main.place.room, row.label) == ("setup", "traction control")
        await rider.types("r down enter")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.label == "slide control"


async def test_a_finding_is_accepted_and_mended_only_where_findings_are_shown(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("g a")
        assert rider.typing is None
        assert "no finding" in rider.last
        await rider.types("f")

        assert rider.desk.can_undo() is None


async def test_what_another_program_does_is_said_and_the_rest_goes_on(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "traction")
        rider.file.write_text(rider.text.replace("traction = 3 ", "traction = 8 "), encoding="utf-8")
        rider.app.main.follower.poll()
        assert rider.value == "8"
        assert LITTLE not in rider.findings()
        assert rider.last.startswith("changed by another program: 1 fact in")
        await rider.types("enter text:10")
        rider.file.write_text(rider.text.replace("slide = 3", "slide = 9"), encoding="utf-8")
        rider.app.main.follower.poll()
        assert rider.typing == "10"
        await rider.types("enter")
        assert "traction = 10 " in rider.text
        assert "slide = 9" in rider.text
        assert rider.verdict.startswith("HOLD")
        rider.file.write_text(rider.text + "\n[broken", encoding="utf-8")
        rider.app.main.follower.poll()
        broken = rider.file.read_bytes()
        await rider.types("s r c p 5 space")
        assert "cannot be read" in rider.screen or "expected" in rider.screen
        assert rider.file.read_bytes() == broken
        rider.file.unlink()
        rider.app.main.follower.poll()
        await rider.types("s r c p 5 u y g")

        assert "the shed" in rider.screen.lower() or "garage" in rider.screen


async def test_a_clash_with_another_program_is_said_and_the_files_value_shown(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "slide")
        # The writer is held until the file has changed under it.
        gate = threading.Event()
        rider.desk._writer.submit(gate.wait)
        await rider.presses("6")
        assert rider.value == "6"
        rider.file.write_text(rider.text.replace("slide = 3", "slide = 5"), encoding="utf-8")
        gate.set()
        await rider.types("")

        assert "another program set setup.controls.slide to 5; yours was 6" in rider.last
        assert rider.value == "5"
        await rider.types("6")
        assert "slide = 6" in rider.text


async def test_a_ridden_session_offers_what_was_typed_when_its_question_is_left(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        rider.app.main.open(Ref("session", "2026-05-16-3-magpie"))
        rider.to("said")
        await rider.types("enter ctrl+u text:calmer enter")
        assert "this session was ridden" in rider.last
        await rider.types("escape enter")

        assert rider.typing == "calmer"
        assert snapshot(garage) == before
        await rider.types("enter enter")
        assert snapshot(garage) != before
        assert rider.value == "calmer"


async def test_half_typed_text_of_an_entry_line_comes_back_after_a_restart(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("e text:t6_sl6")
        rider.app.save_half_typed()
    async with riding(garage) as rider:
        assert rider.typing == "t6 sl6"
        await rider.types("enter")

        assert "slide = 6" in rider.text
        assert "traction = 6" in rider.text


@pytest.mark.parametrize("size", [(80, 24), (40, 20)])
async def test_every_room_opens_and_tells_the_same_verdict(garage: Path, size: tuple[int, int]) -> None:
    shown: set[str] = set()
    async with riding(garage, *size) as rider:
        for keys in ("p", "s", "c", "r", "b", "t", "tab w", "?", "escape", "m", "escape", "g"):
            await rider.types(keys)
            assert rider.verdict.startswith("CARE 2")
            shown.add(rider.app.main.place.room)
    assert shown == ROOMS


async def test_keys_typed_ahead_find_the_page_and_the_editor_of_the_keys_before_them(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p tab down 6 enter down 4 down 6 s g p")

        assert [words for words in ("traction = 6 ", "wheelie = 4", "slide = 6") if words in rider.text] == [
            "traction = 6 ",
            "wheelie = 4",
            "slide = 6",
        ]
        await rider.types("r a escape e text:t3_sl3 enter g")
        assert "traction = 3 " in rider.text
        assert "slide = 3" in rider.text
        assert rider.app.main.place.room == "garage"


async def test_quitting_at_once_keeps_what_was_typed_before(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.presses("p tab down 6 q")
    assert "traction = 6 " in rider.text
    assert rider.app.return_code == 0


async def test_the_clock_alone_paints_nothing_until_something_is_due(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        painted: list[Region] = []
        refresh = rider.app.main.board.refresh

        def noted(*regions: Region, **options: bool) -> object:
            painted.extend(regions)
            return refresh(*regions, **options)

        monkeypatch.setattr(rider.app.main.board, "refresh", noted)
        rider.desk.now = lambda: BEFORE + dt.timedelta(minutes=10)
        rider.app.main.draw()
        await rider.settled()
        # The minutes beside the answer, and in the last line.
        assert {region.y for region in painted} == {1, 23}
        painted.clear()
        rider.desk.now = lambda: BEFORE + dt.timedelta(minutes=10, seconds=-40)
        rider.app.main.draw()
        await rider.settled()
        assert painted == []
        assert rider.verdict.startswith("CARE 2 ")
        rider.desk.now = lambda: BEFORE + dt.timedelta(minutes=24)
        rider.app.main.draw()
        await rider.settled()

        assert painted
        assert not rider.verdict.startswith("CARE 2 ")


async def test_letters_type_on_a_row_of_words_and_alt_makes_them_commands(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "wheelie")
        await rider.types("4 s")
        rider.to("aim")
        held = rider.text
        await rider.types("text:out_463_undo")
        assert (rider.typing, rider.text) == ("out 463 undo", held)
        await rider.types("escape text:ride enter")  # typing replaces what was left
        assert 'aim = "ride"' in rider.text
        rider.to("aim")
        await rider.types("escape u escape u")
        assert rider.last.startswith("undone: ")
    assert snapshot(garage) == before


async def test_the_first_of_two_digits_stays_open_and_any_key_ends_it(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        rider.to("setup", "controls", "traction")
        await rider.types("1")
        assert "1_" in rider.screen
        assert "traction = 3 " in rider.text
        await rider.types("w")
        assert "traction = 1 " in rider.text
        assert rider.app.main.place.room == "why"
        await rider.types("escape 1 0 enter")
        assert rider.typing is None
        assert "traction = 10 " in rider.text
        await rider.types("1 down")
        assert "traction = 1 " in rider.text
        assert rider.value != "1"


async def test_a_command_on_a_row_that_names_a_session_is_about_that_one(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("g")
        other = next(
            row
            for row in rider.app.main.board.page.rows()
            if row.opens == Ref("session", "2026-05-16-3-magpie")
        )
        assert rider.app.main.board.go(other.identity)
        await rider.types("i")
        assert rider.app.main.place.subject == other.opens
        assert rider.app.main.place.room == "return"
