"""Pages say the same with what an earlier run left of bygone seasons, and few read any of those sessions."""

import re
from pathlib import Path

import pytest

from paddock_tui.advice import tyre_air_learnt
from paddock_tui.desk import Desk
from paddock_tui.facts.past import History
from paddock_tui.facts.unread_past import UnreadSession
from paddock_tui.records.paths import Ref
from paddock_tui.screens.judged_page import JudgedPage, context_of, judged_page
from paddock_tui.screens.place import Place
from paddock_tui.store.cached import cache_folder
from tests.bench._career import SESSIONS_A_DAY, Career, write_career
from tests.desk.kept_soon import keep_soon

BIKES = 3
VENUE = "quernstone"
"""It has corners, of which nothing was ever said."""

SESSIONS = 5 * SESSIONS_A_DAY * BIKES
HELD, LATE, FEW = 2, 6, 1 + SESSIONS_A_DAY
"""So many last sessions are held, so many are gone through again, and so many earlier ones may be read: the
sessions of a day are looked at together.
"""

READ_FEW = ("setup", "session", "checklist", "last", "review", "out", "return", "bench", "corners", "record")
OTHERS = ("today", "board", "slip", "modes")
"""Rooms that may read more: their pages say the same all the same."""


@pytest.fixture(autouse=True)
def _soon(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Keep what is worth it in a small career, of files that were written a moment ago."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    keep_soon(monkeypatch, far=(LATE, 3), held=HELD)
    monkeypatch.setattr(tyre_air_learnt, "ENOUGH", 2)


@pytest.fixture(scope="module")
def career(tmp_path_factory: pytest.TempPathFactory) -> Career:
    """Write a career at one venue: every session counts for its bike's pads, the last have no top speed."""
    career = write_career(tmp_path_factory.mktemp("career") / "garage", SESSIONS, seed=3)
    for path in (career.root / "bikes").glob("*.toml"):
        path.write_text(re.sub(r"(?m)^(\[start\]\n)on = .*\n", r"\1", path.read_text()))
    for path in (career.root / "days").glob("*.toml"):
        path.write_text(re.sub(r"(?m)^venue = .*", f'venue = "{VENUE}"', path.read_text()))
    for name in career.sessions[-2 * BIKES :]:
        (path,) = (career.root / "sessions").rglob(f"{name}.toml")
        path.write_text(re.sub(r"(?m)^top_speed = .*\n", "", path.read_text()))
    return career


def desk_of(career: Career) -> Desk:
    return Desk(career.root, lambda: career.at)


def left_by_a_run(career: Career) -> None:
    """Have a run leave what it learnt of bygone sessions."""
    desk = desk_of(career)
    desk.review()
    for keep in desk.histories.to_keep(desk.files):
        keep()
    assert list(cache_folder().rglob("before-*.json"))


def ridden(career: Career) -> Ref:
    """Return the last session but one of the bike in hand, with everything read in it that others read."""
    return Ref("session", career.sessions[-1 - BIKES])


def made(desk: Desk, subject: Ref, room: str) -> JudgedPage:
    """Make a room's page, or that of the tyre set."""
    tyres = Ref("tyres", str(desk.files.data(subject)["tyres"])) if room == "record" else None
    place = Place(room, subject, tyres)
    return judged_page(desk, place, context_of(desk, place, None, None))


@pytest.mark.parametrize("of", ["the one in hand", "one that was ridden"])
def test_pages_say_the_same_and_few_read_any_earlier_session(career: Career, of: str) -> None:
    subject = Ref("session", career.in_hand) if of == "the one in hand" else ridden(career)
    desk = desk_of(career)
    whole = {room: made(desk, subject, room) for room in (*READ_FEW, *OTHERS)}
    assert desk.histories.read_later == 0
    left_by_a_run(career)
    desk = desk_of(career)

    for room in READ_FEW:
        assert made(desk, subject, room) == whole[room], room
        unread = [one for one in history(desk, subject).past if isinstance(one, UnreadSession)]
        assert len(unread) > 2 * FEW
        assert desk.histories.read_later <= FEW, room
    for room in OTHERS:
        assert made(desk, subject, room) == whole[room], room


def history(desk: Desk, subject: Ref) -> History:
    return desk.assembled(subject).situation.history


def test_the_first_page_after_the_verdict_judges_nothing_anew(career: Career) -> None:
    """What the session in hand names is read with those before it as well: it stays what it was."""
    desk = desk_of(career)
    subject = Ref("session", career.in_hand)
    first = made(desk, subject, "setup")

    again = made(desk, subject, "session")

    assert again.review is first.review
