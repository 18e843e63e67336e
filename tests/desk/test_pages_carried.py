"""Pages over what an earlier run carried: they say the same as over all sessions, and read few old ones."""

from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.advice.bike_counts import bike_counts
from paddock_tui.advice.ledger import neighbours
from paddock_tui.advice.next_change import next_change
from paddock_tui.advice.tyre_ratings import tyre_ratings
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.next_change import ridden_one
from paddock_tui.facts.unread_past import UnreadSession
from paddock_tui.pages.after import after_page
from paddock_tui.pages.before import before_page
from paddock_tui.pages.corners import corners_page
from paddock_tui.pages.rows import Page
from paddock_tui.store.garage import GarageFiles
from tests.bench._career import Career, write_career
from tests.desk.kept_soon import keep_soon

SESSIONS = 240
FEW = 24
"""So many bygone sessions of three bikes may be read for a page: those of the day there before."""

Asked = Callable[[LooksAt], object]


def corners_of(looks: LooksAt) -> Page:
    """Make the page of the corners of the session in hand."""
    ref = looks.session_in_hand()
    assert ref is not None
    loaded = looks.files.read(ref)
    assert loaded is not None
    return corners_page(loaded, looks.assembled(ref).situation, "", looks.units())


ASKED: dict[str, Asked] = {
    "before the day": before_page,
    "after the day": after_page,
    "next change": lambda looks: next_change(looks.about(ridden_one(looks.files, looks.session_in_hand()))),
    "corners": corners_of,
    "a season that is over": lambda looks: season(looks, 2000),
    "counters": lambda looks: bike_counts(looks.about(looks.session_in_hand())).answers(looks.units()),
    "tyre ratings": lambda looks: tyre_ratings(looks.about(looks.session_in_hand())).filled,
}


@pytest.fixture(scope="module")
def career(tmp_path_factory: pytest.TempPathFactory) -> Career:
    return write_career(tmp_path_factory.mktemp("career") / "garage", SESSIONS, seed=5)


@pytest.fixture(autouse=True)
def _carried(career: Career, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Have a run leave what it learnt of every bike, of files that were written a moment ago."""
    keep_soon(monkeypatch, far=(6, 3))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    # How much laps scatter is told by so many sessions at most: of so few here, by fewer.
    monkeypatch.setattr(neighbours, "MOST_SESSIONS", 3)
    for _ in range(2):
        run = looks_at(career)
        after_page(run)
        before_page(run)
        for keep in run.histories.to_keep(run.files):
            keep()


def looks_at(career: Career) -> LooksAt:
    return LooksAt(GarageFiles(career.root), lambda: career.at)


@pytest.mark.parametrize("name", ASKED)
def test_a_page_says_the_same_over_what_was_carried_and_reads_few_old_sessions(
    career: Career, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    now = looks_at(career)
    said = ASKED[name](now)
    past = [one for bike in now.files.listing("bike") for one in now.history_of(bike).past]
    assert sum(isinstance(one, UnreadSession) for one in past) > 8 * FEW
    assert now.histories.read_later <= FEW
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "none"))
    fresh = looks_at(career)
    assert said == ASKED[name](fresh)
    assert fresh.histories.read_later == 0
