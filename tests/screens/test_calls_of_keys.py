"""A key that shows a page works no longer in a garage of many seasons than in one of two days."""

import functools
from collections.abc import Iterator
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.store import heads, kept_heads
from tests.bench._career import SESSIONS_A_DAY, write_career
from tests.bench._sizes_probe import Screen
from tests.counted_calls import calls_of

RIDERS = 3
DAYS = 2
FEW = 28
"""Sessions of two days, the last one of the rider and with the number of the last of `LARGE`."""

LARGE = FEW + SESSIONS_A_DAY * RIDERS * (heads.MANY + 6)

MOST = 1.03
MORE = 400
"""So many times the calls of the small garage, and so many more: other sessions have other findings."""

ROOMS = ("setup", "session", "checklist", "last", "dash", "out", "review", "corners", "brief")


@pytest.fixture(scope="module")
def screens(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Screen, Screen]]:
    """The pages of a small garage and of a large one, each room shown twice before."""
    monkeypatch = pytest.MonkeyPatch()
    root = tmp_path_factory.mktemp("careers")
    monkeypatch.setenv("XDG_CACHE_HOME", str(root / "cache"))
    # What was written a moment ago is noted as well.
    for where in (heads, kept_heads):
        monkeypatch.setattr(where, "RESTS_NS", -(10**15))
    yield _shown(root / f"{FEW}", FEW), _shown(root / f"{LARGE}", LARGE)
    monkeypatch.undo()


def _shown(folder: Path, count: int) -> Screen:
    career = write_career(folder, count)
    screen = Screen(Desk(career.root, lambda: career.at), "setup")
    for room in (*ROOMS, *ROOMS):
        screen.go_to(room)
    return screen


@pytest.mark.parametrize("room", ROOMS)
def test_a_page_by_key_takes_as_many_calls_in_a_large_garage(
    screens: tuple[Screen, Screen], room: str
) -> None:
    for screen in screens:
        screen.go_to("setup")
    few, many = (calls_of(functools.partial(screen.go_to, room)) for screen in screens)
    assert few > 1000, "nothing was shown"
    assert many <= MOST * few + MORE, f"{many} for {few}"
