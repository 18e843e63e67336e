"""What is missing for a verdict is answered where it stands: one key says that it was looked at."""

from pathlib import Path

from paddock_tui.records.paths import Ref
from tests.screens.rider import riding

HAND = Ref("session", "2026-06-20-4-magpie")
BEFORE = Ref("session", "2026-06-20-2-magpie")


async def test_one_key_on_a_row_of_what_is_missing_answers_it_and_all_that_it_covers(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("r")
        board = rider.app.main.board

        def missing() -> list[str]:
            return [row.key.removeprefix("missing ") for row in board.page.rows() if row.key[:7] == "missing"]

        def go(name: str) -> None:
            board.go(next(row.identity for row in board.page.rows() if row.key == f"missing {name}"))

        before = missing()
        assert before[:3] == ["last-outing", "brakes-tried", "tyres-seen"]
        go("last-outing")
        await rider.types("1")
        assert rider.desk.files.data(BEFORE)["happened"] == "nothing"
        go("brakes-tried")
        await rider.types("1")
        assert rider.desk.files.data(HAND)["checks"]["walked-round"]["status"] == "ok"
        assert missing() == before[3:]
        await rider.types("u")
        assert missing() == before[1:]
        # What takes a figure is not answered by a key: enter goes to its row.
        go("pressures")
        await rider.types("1")
        assert missing() == before[1:]
        await rider.types("enter")
        assert rider.app.main.place.room == "session"


async def test_a_list_done_on_paper_is_answered_once_with_whose_initials(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("c")
        rows = [
            row for row in rider.app.main.board.page.rows() if row.kind == "check" and row.label == "open"
        ]
        first = rows[0]
        rider.app.main.board.go(first.identity)
        await rider.types("4")
        assert "initials of who went through it" in rider.screen
        await rider.types("text:ab enter")
        held = rider.desk.files.data(HAND)["checks"]
        answered = [one for one in held.values() if one.get("by") == "AB, on paper"]
        assert len(answered) > 3
        assert {one["status"] for one in answered} == {"ok"}


async def test_what_a_to_do_asks_for_on_the_way_out_is_not_said_again_under_what_is_missing(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        await rider.types("r")
        asked = {row.key for row in rider.app.main.board.page.rows() if row.key.startswith("missing ")}
        await rider.types("o")
        page = rider.app.main.board.page
        (section,) = (one for one in page.sections if one.title == "missing")

        assert asked - {row.key for row in section.rows} == {"missing pressures", "missing dash"}
        assert section.note == "no verdict without these; 2 more above"
