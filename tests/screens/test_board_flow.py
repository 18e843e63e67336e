"""The board of the day by keyboard: enter goes there, others' changes show, and no head is ever named."""

from pathlib import Path

from paddock_tui.screens.judged_page import STAYS_OFF
from paddock_tui.screens.page_answers import STAYS_IN
from tests.desk.opened import NEXT, at_desk, typed
from tests.screens.rider import BEFORE, riding


async def test_the_board_follows_others_hides_a_head_and_enter_goes_there(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.chooses("board")
        assert "13:20 in 25 min" in rider.screen
        assert "Traction control low" in rider.screen

        other = at_desk(garage, BEFORE)
        other.do(typed(other, NEXT, ("incidents.1.what", "fall"), ("incidents.1.head_contact", "yes")))
        other.settled()
        rider.app.main.follower.poll()
        await rider.shows("rider: hold")
        page = rider.app.main.board.page
        assert page.clock == STAYS_IN
        assert not any(word in rider.screen for word in ("head", STAYS_OFF, "fall", "concussion"))

        await rider.chooses("crew")
        assert rider.app.main.board.page.clock == STAYS_IN
        assert not any(word in rider.screen for word in ("head", "Head", "fall", "concussion"))
        await rider.chooses("board")
        await rider.types("enter")
        assert rider.app.main.place.room == "session"
        assert rider.app.main.place.subject == NEXT
