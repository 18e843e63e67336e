"""The next change by keyboard: a question is answered, the change taken over, an own one written, undone."""

from pathlib import Path

from tests.screens.rider import riding
from tests.small import snapshot

RIDDEN = "2026-04-18-1-badger"


def replace(garage: Path, session: str, old: str, new: str) -> None:
    """Change one line of a session's file."""
    path = garage / f"sessions/2026/{session}.toml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


async def test_the_change_is_taken_into_the_next_session_and_back(garage: Path) -> None:
    replace(garage, "2026-06-20-2-magpie", 'front = "2.46 bar"', 'front = "2.70 bar"')
    replace(garage, "2026-06-20-4-magpie", 'surface = "wet"', 'surface = "damp"')
    # The tyres were on the bike before: another first outing on them would be asked for first.
    replace(garage, "2026-05-16-3-magpie", 'tyres = "magpie-trackday-1"', 'tyres = "magpie-trackday-2"')
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        board = rider.app.main.board
        await rider.types("j")
        assert board.page.heading.startswith("next change · session 2 · Sat 20 Jun 10:20")
        assert rider.value.startswith("front start pressure 2.15 bar -> 2.05 bar")
        await rider.types("v")
        assert 'front_start = "2.05 bar"' in rider.text
        assert "u undoes" in rider.last
        await rider.types("u")
        assert snapshot(garage) == before


async def test_a_question_is_answered_by_a_digit_and_leads_on(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        main = rider.app.main
        await rider.types("g / text:04-18-1-badger enter enter")
        await rider.types("j")
        assert "Push that end down hard" in rider.screen
        await rider.types("down down down 3")
        assert "[symptoms.1]" in (garage / f"sessions/2026/{RIDDEN}.toml").read_text(encoding="utf-8")
        assert 'answer = "creeps"' in (garage / f"sessions/2026/{RIDDEN}.toml").read_text(encoding="utf-8")
        assert "Push that end down hard" not in rider.screen
        assert main.place.room == "next"
        await rider.types("u")
        assert snapshot(garage) == before


async def test_several_changes_are_allowed_and_said_to_be_so(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        rider.file.write_text(rider.text.replace('surface = "wet"', 'surface = "damp"'), encoding="utf-8")
        rider.app.main.follower.poll()
        await rider.types("p j")
        assert "2 aids were lowered in one step." in rider.screen


async def test_an_own_change_is_made_on_the_next_session(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        main = rider.app.main
        await rider.types("j / text:your_own enter")
        await rider.types("enter")
        assert main.place.room == "setup"
        assert main.place.subject is not None
        assert main.place.subject.id == "2026-06-20-4-magpie"


async def test_two_set_ups_are_compared_and_a_start_is_previewed(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        main = rider.app.main
        await rider.types("p m / text:compare enter enter")
        await rider.types("text:nothing enter")
        assert "one of: " in rider.screen
        await rider.types("ctrl+u text:wading enter")
        assert main.place.room == "compare"
        assert "wading allows 6 to 10" in rider.screen
        await rider.types("escape")
        assert main.place.room == "setup"
        await rider.types("m / text:starting_levels enter enter")
        assert "finding" in rider.screen
        await rider.types("escape")
        assert snapshot(garage) == before
        await rider.types("m / text:starting_levels enter enter")
        await rider.types("enter")
        assert "traction = 8" in rider.text
        await rider.types("u")
        assert snapshot(garage) == before
