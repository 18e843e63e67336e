"""What one run leaves of bygone seasons for the next: the same review with it and without, always."""

import json
import random
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import attrs
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from paddock_tui.desk.lookup import of_bike
from paddock_tui.facts.past import walk_named
from paddock_tui.facts.unread_past import UnreadSession
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.store import carried_files
from paddock_tui.store.cached import cache_folder
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.program import program
from tests.bench._career import Career, write_career
from tests.desk.carried_runs import BIKES, Run, carried
from tests.desk.changed_by_others import EDITS
from tests.desk.kept_soon import keep_soon
from tests.examples import examples

SESSIONS = 48
FRESH = (HealthCheck.function_scoped_fixture,)
"""Each example lays out its own garage."""


@pytest.fixture(autouse=True)
def _soon(monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep what is worth it in a small career, of files that were written a moment ago."""
    keep_soon(monkeypatch, far=(4, 3))


@pytest.fixture(autouse=True)
def caches(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """Say in which folder the user's cache is."""

    def use(name: str) -> None:
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / name))

    use("cache")
    return use


@pytest.fixture(scope="module")
def _written(tmp_path_factory: pytest.TempPathFactory) -> Career:
    return write_career(tmp_path_factory.mktemp("career") / "garage", SESSIONS, seed=3)


@pytest.fixture
def career(_written: Career, tmp_path: Path) -> Career:
    return attrs.evolve(_written, root=Path(shutil.copytree(_written.root, tmp_path / "garage")))


def fresh(career: Career, caches: Callable[[str], None]) -> dict[str, Review]:
    """Judge with nothing carried."""
    caches("none")
    for path in carried():
        path.unlink()
    run = Run(career)
    found = run.reviews()
    assert not any(run.unread.values())
    caches("cache")
    return found


def test_a_second_run_goes_on_from_the_first_and_says_the_same(
    career: Career, caches: Callable[[str], None]
) -> None:
    first, second = Run(career), Run(career)

    assert first.reviews() == second.reviews() == fresh(career, caches)
    assert not any(first.unread.values())
    assert min(second.unread.values()) >= SESSIONS // 3 - 4 - 6
    assert [path.stem for path in carried()] == [
        f"{name}-{bike}" for name in ("before", "just-before") for bike in BIKES
    ]


def test_what_is_carried_is_for_the_user_alone_and_holds_no_words(career: Career) -> None:
    typed = ("quite a hurry today", "by my uncle's gauge", "nail, plugged at the van")
    for place, path in enumerate(sorted((career.root / "sessions").rglob("*.toml"))):
        text = path.read_text()
        text = re.sub(r'gauge = "[^"]*"', f'gauge = "{typed[1]}"', text)
        text = re.sub(r'why = "[^"]*"', f'why = "{typed[0]}"', text)
        if place % 7 == 0:
            text = f'notes = "{typed[0]}"\n{text}\n[symptoms.1]\nwhat = "weaves"\nfound = "{typed[2]}"\n'
        path.write_text(text)
    Run(career).reviews()

    assert len(carried()) == len(BIKES)
    for path in carried():
        assert path.stat().st_mode & 0o777 == 0o600
        assert path.parent.stat().st_mode & 0o777 == 0o700
        assert not path.is_relative_to(career.root)
        text = path.read_text()
        assert "weaves" in text
        assert not [words for words in typed if words in text]
    second = Run(career)
    second.reviews()
    assert all(second.unread.values())


def changed(career: Career, draw: random.Random, name: str) -> None:
    """Change one of the garage's files, an early one as often as a late one."""
    folder, change = EDITS[name]
    there = sorted(
        (career.root / folder).rglob("*.toml") if folder != "." else career.root.glob("garage.toml")
    )
    if there:
        change(draw.choice(there))


@pytest.mark.parametrize("folder", sorted({folder for folder, _ in EDITS.values()}))
def test_whatever_is_changed_counts_as_if_nothing_were_carried(
    career: Career, caches: Callable[[str], None], folder: str
) -> None:
    for _ in range(2):
        Run(career).reviews()
    for name in EDITS:
        if EDITS[name][0] == folder:
            changed(career, random.Random(name), name)
            assert Run(career).reviews() == fresh(career, caches), name


_RUNS = st.lists(st.lists(st.sampled_from(sorted(EDITS)), max_size=2), min_size=2, max_size=6)


@pytest.fixture
def anew(_written: Career, tmp_path: Path) -> Callable[[], Career]:
    """Lay out the career again, and forget what was carried."""

    def lay_out() -> Career:
        shutil.rmtree(tmp_path / "garage", ignore_errors=True)
        shutil.rmtree(cache_folder(), ignore_errors=True)
        return attrs.evolve(_written, root=Path(shutil.copytree(_written.root, tmp_path / "garage")))

    return lay_out


@settings(examples(2), suppress_health_check=FRESH)
@given(runs=_RUNS, seed=st.integers(0, 999))
def test_any_runs_of_changes_count_as_if_nothing_were_carried(
    anew: Callable[[], Career], caches: Callable[[str], None], runs: list[list[str]], seed: int
) -> None:
    career, draw = anew(), random.Random(seed)
    for names in runs:
        for name in names:
            changed(career, draw, name)
        assert Run(career).reviews() == fresh(career, caches)


@settings(examples(2), suppress_health_check=FRESH)
@given(runs=_RUNS, seed=st.integers(0, 999))
def test_changes_while_one_looks_count_as_well(
    anew: Callable[[], Career], caches: Callable[[str], None], runs: list[list[str]], seed: int
) -> None:
    career, draw = anew(), random.Random(seed)
    for _ in range(2):
        Run(career).reviews()
    run = Run(career)
    run.reviews()
    for names in runs:
        for name in names:
            changed(career, draw, name)
        run.looks.files.forget_listing()
        for _ in range(40):
            run.looks.files.changed()
        assert run.reviews() == fresh(career, caches)


@pytest.mark.parametrize("spoilt", ["", "{", "[]\n{}", "cut", "turned", "of another program", "a link"])
def test_a_spoilt_file_is_done_without(career: Career, monkeypatch: pytest.MonkeyPatch, spoilt: str) -> None:
    first = Run(career).reviews()
    for path in carried():
        text = path.read_text()
        if spoilt == "cut":
            path.write_text(text[: len(text) // 2])
        elif spoilt == "turned":
            path.write_text(text.replace("weaves", "nothing").replace('"ridden":"', '"ridden":"A'))
        elif spoilt == "of another program":
            monkeypatch.setattr(carried_files, "program", lambda *_: "another")
        elif spoilt == "a link":
            path.rename(path.with_suffix(".kept"))
            path.symlink_to(path.with_suffix(".kept"))
        else:
            path.write_text(spoilt)
    second = Run(career)

    assert second.reviews() == first
    assert not any(second.unread.values())


def test_states_of_unknown_making_are_done_without(career: Career) -> None:
    first = Run(career).reviews()
    for path in carried():
        _, body, *parts = path.read_bytes().split(b"\n")
        folds = {kept["state"] for kept in json.loads(body)["folds"].values()}
        strange = [
            b'["p","nobody"]' if place in folds else b'["c","os:system","echo"]'
            for place in range(len(parts))
        ]
        carried_files.write_carried(career.root.resolve(), path.stem, json.loads(body), strange)

    assert Run(career).reviews() == first


def test_the_program_is_told_from_one_that_was_edited(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    package = tmp_path / "package"
    (package / "facts" / "below").mkdir(parents=True)
    source = package / "facts" / "below" / "one.py"
    source.write_text("A = 1\n")
    monkeypatch.setattr("paddock_tui.__path__", [str(package)])
    program.cache_clear()
    first = program("facts")
    source.write_text("A = 12\n")
    program.cache_clear()
    second = program("facts")
    program.cache_clear()

    assert first != second


def test_earlier_sessions_read_later_are_what_they_are(career: Career) -> None:
    def past(run: Run) -> list[object]:
        last = of_bike(run.looks.files, "badger")[-1][1]
        return list(run.looks.assembled(last).situation.history.past)

    whole = past(Run(career))
    Run(career).reviews()
    run = Run(career)
    later = past(run)
    unread = [one for one in later if isinstance(one, UnreadSession)]
    assert len(unread) > 4
    for one, same in zip(later, whole, strict=True):
        for name in ("date", "rider", "tyres", "ridden", "venue"):
            assert getattr(one, name) == getattr(same, name)
    draw = random.Random(5)
    for at in draw.sample(range(len(later)), len(later)):
        for name in ("session", "entry", "day", "lap_km", "may_time", "altitude_m", "km"):
            assert getattr(later[at], name) == getattr(whole[at], name)


def test_going_through_all_reads_each_once(career: Career) -> None:
    Run(career).reviews()
    run = Run(career)
    history = run.looks.history_of(Ref("bike", "badger"))
    unread = [one for one in history.past if isinstance(one, UnreadSession)]
    assert run.looks.histories.read_later == 0

    dates = [one.session.date for one in history.past]

    assert dates == sorted(dates, key=str)
    assert run.looks.histories.read_later == len(unread) > 4


@pytest.mark.parametrize("name", ["a hit to the head", "a set taken out"])
def test_changes_of_what_was_carried_are_seen_in_the_review(
    career: Career, caches: Callable[[str], None], name: str
) -> None:
    """Of the last session that was carried, or of what it names: they say something by now."""
    first, run = Run(career).reviews(), Run(career)
    assert run.reviews() == first
    files = run.looks.files
    last = of_bike(files, "badger")[run.unread["badger"] - 1][1]
    folder, change = EDITS[name]
    path = files.path_of(last if folder == "sessions" else Ref("tyres", str(files.data(last)["tyres"])))
    assert path is not None
    change(path)
    found = Run(career).reviews()

    assert found == fresh(career, caches)
    assert found["badger"] != first["badger"]


def test_a_change_of_what_earlier_sessions_name_is_seen_in_what_was_learnt(career: Career) -> None:
    def kilometres() -> tuple[object, int]:
        run = Run(career)
        run.reviews()
        last = of_bike(run.looks.files, "badger")[-1][1]
        walk = walk_named("fillings")
        assert walk is not None
        return walk.of(run.looks.assembled(last).situation.history), run.unread["badger"]

    (first, _), (again, unread) = kilometres(), kilometres()
    assert again == first
    assert unread
    for path in (career.root / "venues").glob("*.toml"):
        EDITS["a longer lap"][1](path)
        assert "9.9 km" in path.read_text()
    now, unread = kilometres()

    assert now != first
    assert not unread


def test_what_others_judge_of_such_a_bike_meanwhile_is_not_kept_for_this_one(
    career: Career, caches: Callable[[str], None], tmp_path: Path
) -> None:
    Run(career).reviews()
    known = Run(career)
    known.reviews()
    last = of_bike(known.looks.files, "badger")[known.unread["badger"] - 1][1]
    for path in carried():
        path.unlink()
    other = attrs.evolve(career, root=Path(shutil.copytree(career.root, tmp_path / "other")))
    there = GarageFiles(other.root).path_of(last)
    assert there is not None
    EDITS["a hit to the head"][1](there)

    run, beside = Run(career), Run(other)
    first = run.judged()
    assert beside.judged() != first
    for keep in run.looks.histories.to_keep(run.looks.files):
        keep()
    again = Run(career)

    assert all(json.loads(path.read_text().split("\n")[1])["folds"] for path in carried())
    assert again.reviews() == first == fresh(career, caches)
    assert again.unread["badger"]
