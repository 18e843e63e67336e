"""What is kept close behind and what is kept far back: which of them a run goes on from."""

import json
import re
import shutil
from pathlib import Path

import attrs
import pytest

from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.store.cached import cache_folder
from paddock_tui.store.garage import GarageFiles
from tests.bench._career import Career, write_career
from tests.desk.carried_runs import BIKES, Run, carried
from tests.desk.changed_by_others import EDITS
from tests.desk.kept_soon import keep_soon

SESSIONS = 48


@pytest.fixture(scope="module")
def _written(tmp_path_factory: pytest.TempPathFactory) -> Career:
    return write_career(tmp_path_factory.mktemp("career") / "garage", SESSIONS, seed=3)


@pytest.fixture
def career(_written: Career, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Career:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    keep_soon(monkeypatch, far=(4, 3))
    return attrs.evolve(_written, root=Path(shutil.copytree(_written.root, tmp_path / "garage")))


def test_what_is_kept_close_behind_goes_with_the_last_days_and_what_is_kept_far_back_stands(
    career: Career,
) -> None:
    runs = [Run(career) for _ in range(3)]
    first, *others = [run.reviews() for run in runs]
    far, near = (run.unread["badger"] for run in runs[1:])

    assert others == [first, first]
    assert 0 < far < near < len(of_bike(runs[0].looks.files, "badger"))
    assert [path.name for path in carried()] == [
        f"{name}-{bike}.json" for name in ("before", "just-before") for bike in BIKES
    ]
    last = runs[0].looks.files.path_of(of_bike(runs[0].looks.files, "badger")[near - 1][1])
    assert last is not None
    EDITS["a hit to the head"][1](last)
    edited, again = Run(career), Run(career)
    found = edited.reviews()
    assert found == again.reviews()
    assert (edited.unread["badger"], again.unread["badger"]) == (far, near)


def test_an_earlier_session_goes_on_from_what_is_kept_far_back(career: Career) -> None:
    for _ in range(2):
        Run(career).reviews()
    run = Run(career)
    run.judged()
    files, near = run.looks.files, run.unread["badger"]
    ref = of_bike(files, "badger")[near - 1][1]
    before = run.looks.histories.read_later
    found = run.looks.judged(run.looks.assembled(ref).situation)
    read = run.looks.histories.read_later - before
    shutil.rmtree(cache_folder())
    alone = LooksAt(GarageFiles(career.root), lambda: career.at)

    assert alone.judged(alone.assembled(ref).situation) == found
    assert alone.histories.read_later == 0
    assert read < near - 2


def test_who_shares_a_bike_has_what_is_open_for_him_kept_too(career: Career) -> None:
    """The last sessions are of both riders in turn: what one left does for both."""
    files = GarageFiles(career.root)
    last = [ref for _, ref in of_bike(files, "badger")][-12:]
    riders = sorted(path.stem for path in (career.root / "riders").glob("*.toml"))[:2]
    for place, ref in enumerate(last):
        path = files.path_of(ref)
        assert path is not None
        path.write_text(re.sub(r'rider = "[^"]*"', f'rider = "{riders[place % 2]}"', path.read_text()))

    def judged(run: Run, ref: Ref) -> Review:
        found = run.looks.judged(run.looks.assembled(ref).situation)
        for keep in run.looks.histories.to_keep(run.looks.files):
            keep()
        return found

    for _ in range(3):
        for ref in last[-2:]:
            judged(Run(career), ref)
    (near,) = (path for path in carried() if path.stem == "just-before-badger")
    folds = json.loads(near.read_text().split("\n")[1])["folds"]
    read = []
    found = {}
    for ref in last[-2:]:
        run = Run(career)
        found[ref] = judged(run, ref)
        read.append(run.looks.histories.read_later)
    shutil.rmtree(cache_folder())

    assert set(riders) <= set(folds)
    assert max(read) < len(of_bike(files, "badger")) // 2
    assert {ref: judged(Run(career), ref) for ref in last[-2:]} == found
