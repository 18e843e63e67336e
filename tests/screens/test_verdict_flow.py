"""Whose verdict stands at the top right, and what the clock says after a head was hit."""

from pathlib import Path

from tests.screens.rider import riding


async def test_a_ridden_session_says_so_and_elsewhere_the_one_in_hand_is_judged(garage: Path) -> None:
    async with riding(garage) as rider:
        in_hand = rider.verdict
        await rider.types("g")
        board = rider.app.main.board
        row = next(one for one in board.page.rows() if one.label == "2026-06-20-1-magpie")
        board.go(row.identity)
        await rider.types("enter")
        assert rider.verdict.split(" · ")[1] == "ridden, no verdict saved"
        assert rider.verdict.split(" ")[0] in ("NO", "CARE", "HOLD")
        for room in ("g", "l", "t", "?"):
            await rider.types(room)
            assert rider.verdict == in_hand, room


async def test_after_a_hit_on_the_head_nothing_counts_down_to_going_out(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s")
        assert "out in " in rider.screen
        rider.to("incidents", "1", "what")
        await rider.types("enter text:fall enter")
        rider.to("incidents", "1", "head_contact")
        await rider.types("enter text:yes enter down")
        assert "out in " not in rider.screen
        assert "no riding today: the head" in rider.screen
        await rider.types("escape o")
        assert "fix first" in rider.screen
