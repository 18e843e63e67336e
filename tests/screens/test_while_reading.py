"""While earlier sessions are still read: pages that rest on none of them show, all else waits in order."""

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from paddock_tui.desk.looking import LooksAt
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.screens.registry import REGISTRY, waits_for_verdict
from tests.screens.rider import Rider, riding
from tests.screens.test_worked_out_aside import until_it_has_ended


@pytest.fixture
def may_judge(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """No garage is small, and what is read aside waits for a word."""
    gate, judged = threading.Event(), LooksAt.review

    def waits(looks: LooksAt, ref: Ref | None = None, going_out: bool = False) -> Review:
        if threading.current_thread().name == "answer":
            gate.wait(10)
        return judged(looks, ref, going_out)

    monkeypatch.setattr("paddock_tui.screens.judged_page.MANY_UNREAD", 0)
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    monkeypatch.setattr(LooksAt, "review", waits)
    yield gate
    gate.set()


async def judged(rider: Rider, may_judge: threading.Event) -> None:
    may_judge.set()
    await until_it_has_ended(rider)
    await rider.settled()


async def test_values_are_edited_without_a_verdict(garage: Path, may_judge: threading.Event) -> None:
    async with riding(garage) as rider:
        assert rider.verdict.startswith("reading")
        assert rider.app.main.board.page.clock == ""
        await rider.presses("p")
        assert rider.app.main.place.room == "setup"
        assert rider.verdict.startswith("reading")
        rows = rider.app.main.board.page.rows()
        assert not any(row.working for row in rows)
        row = next(one for one in rows if one.path == ("setup", "controls", "traction"))
        assert row.ref is not None
        assert rider.app.main.board.go(row.identity)
        await rider.presses("6")
        assert rider.desk.files.data(row.ref)["setup"]["controls"]["traction"] == 6
        await judged(rider, may_judge)
        assert not rider.verdict.startswith("reading")
        whole = Rider(garage).desk.review().findings
        assert rider.app.main._seen is not None
        found = rider.app.main._seen.review.findings
        assert [one.message for one in found] == [one.message for one in whole]
        assert "traction = 6" in rider.file.read_text()


async def test_what_waits_is_said_and_done_in_order(garage: Path, may_judge: threading.Event) -> None:
    async with riding(garage) as rider:
        await rider.presses("r")
        assert "review waits for the verdict" in rider.screen
        await rider.presses("p")
        assert rider.app.main.place.room == "garage"
        await judged(rider, may_judge)
        assert rider.app.main.place.room == "setup"
        await rider.presses("escape")
        assert rider.app.main._back[-1].room == "review"


async def test_escape_forgets_what_waits(garage: Path, may_judge: threading.Event) -> None:
    async with riding(garage) as rider:
        await rider.presses("o")
        await rider.presses("p")
        await rider.presses("escape")
        await rider.presses("s")
        assert rider.app.main.place.room == "session"
        await judged(rider, may_judge)
        assert rider.app.main.place.room == "session"


def test_every_answer_to_a_verdict_waits() -> None:
    assert all(map(waits_for_verdict, ("out", "accept", "remedy", "in", "checklist", "next", "before")))
    assert not any(
        map(waits_for_verdict, ("setup", "session", "garage", "undo", "quit", "emergency", "help"))
    )
    assert sum(one.unjudged for one in REGISTRY) < len(REGISTRY) / 2
