"""The dash card by keyboard: rows are found as planned, or show something else; what happens undoes it."""

from pathlib import Path

from tests.screens.rider import riding


async def test_the_card_is_gone_through_by_keys_and_undone_by_a_stall(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        board = rider.app.main.board
        await rider.types("d")
        assert board.page.heading.startswith("dash card")
        assert rider.value == "not read"

        # Nobody wrote down wheelie: nothing can be as planned before that is read.
        await rider.types("enter")
        assert rider.last.startswith("not planned yet: wheelie control")

        # Down to wheelie: what the dash shows becomes the plan, and the cursor goes on.
        await rider.types("down down down")
        await rider.types("4")
        assert "wheelie = 4" in rider.text
        assert rider.value == "3"

        # The dash shows another front ABS than planned: a hold in the wet, and it can be put right.
        await rider.types("enter")
        await rider.types("2")
        assert "[dash.values]\nfront-abs = 2" in rider.text
        assert rider.verdict.startswith("HOLD 1")
        await rider.types("up")
        await rider.types("backspace")
        assert "front-abs = 2" not in rider.text
        assert rider.verdict.startswith("CARE")

        # Words: 1 is as planned, as on a checklist; the last open row makes the reading whole.
        await rider.types("enter enter enter")
        await rider.types("1 1 1 1 1")
        assert "throttle =" not in rider.text.partition("[dash")[2]
        await rider.types("enter enter")
        assert "read = 12:55:00" in rider.text
        assert 'by = "IS"' in rider.text
        assert 'planned_mode = "wild"' in rider.text
        assert "read 12:55 IS" in rider.screen


async def test_on_a_phone_all_is_said_to_be_as_planned_and_a_stall_opens_it_again(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        await rider.types("e")
        await rider.types("text:w4 enter")
        await rider.types("d")
        await rider.types("enter")
        assert "read 12:55 IS" in rider.screen
        await rider.types("end up up up up")
        await rider.types("enter")
        assert 'what = "stall"' in rider.text
        assert "stall 12:55" in rider.last
        await rider.types("u")
        assert 'what = "stall"' not in rider.text
