"""Questions in the last line, and the filter: what is typed there is never taken for something else."""

from pathlib import Path

from tests.screens.rider import riding
from tests.small import snapshot


async def test_a_word_typed_where_enter_alone_says_yes_is_refused(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage) as rider:
        await rider.types("p")
        await rider.chooses("start")
        assert rider.typing == ""
        await rider.types("n o enter")
        assert "enter alone, without a word, says yes; escape says no" in rider.screen
        assert rider.typing == "no"
        await rider.types("escape")
        assert rider.last.startswith("nothing was changed")
        await rider.chooses("start")
        assert rider.typing == ""
    assert snapshot(garage) == before


async def test_a_filter_is_said_finds_the_label_first_and_is_not_offered_again(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("m / text:re-test")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.value == "re-test"
        await rider.types("escape / text:nothing_such enter")
        assert "rows with nothing such" in rider.screen
        assert "no row has them; /, enter: all rows" in rider.screen
        await rider.types("/")
        assert rider.typing == ""
        await rider.types("enter")
        assert "rows with nothing" not in rider.screen


async def test_while_a_row_is_typed_in_the_last_line_names_no_letter_as_a_key(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s enter down enter")  # a folded section opens first
        assert rider.last.endswith("enter saves  escape leaves")
        await rider.types("escape")
        assert "? help" in rider.last
