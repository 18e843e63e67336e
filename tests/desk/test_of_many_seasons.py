"""What is looked for among the sessions of many seasons: the same as in a look at all of them, without it."""

import datetime as dt
import random
from pathlib import Path

import pytest

from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import glances, on_dates, session_in_hand
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.came_from import comes_from
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.counted_calls import calls_of
from tests.screens.rider import Rider
from tests.small import write
from tests.store.parsed_files import count_parsed
from tests.store.test_index import indexes, rest

NOON = dt.datetime(2026, 6, 20, 12, 0)
RIDERS, BIKES = ("ann", "bob", ""), ("plain", "other", "third")


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def _season(root: Path, count: int, draw: random.Random, latest: dt.date) -> Path:
    """Write sessions of three riders on three bikes, some of a day, most of them ridden."""
    profiles = {"profiles__one": 'bike = "other"\nrider = "ann"\n', "profiles__two": 'bike = "plain"\n'}
    bikes = {f"bikes__{bike}": f'name = "{bike}"\n' for bike in BIKES}
    write(root, **bikes, **profiles)
    for at in range(count):
        date = latest - dt.timedelta(days=(count - 1 - at) // 3)
        rider = draw.choice(RIDERS)
        lines = [f"date = {date}", f"number = {at % 3 + 1}", f'bike = "{draw.choice(BIKES)}"']
        lines += [f'rider = "{rider}"'] if rider else []
        lines += ["start = 13:00:00", *(["ridden_laps = 5"] if draw.random() < 0.7 else [])]
        path = root / "sessions" / f"{date.year}" / f"{date}-{at % 3 + 1}.toml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return root


@pytest.mark.parametrize("first", [NOON.date() - dt.timedelta(days=3), dt.date(2025, 12, 30), dt.date.max])
def test_the_sessions_of_some_dates_are_those_of_these_dates(tmp_path: Path, first: dt.date) -> None:
    latest = dt.date.max if first == dt.date.max else NOON.date()
    files = GarageFiles(_season(tmp_path / "garage", 12, random.Random(1), latest))
    for count in range(6):
        dates = {
            dt.date.fromordinal(min(first.toordinal() + days, dt.date.max.toordinal()))
            for days in range(count)
        }
        found = on_dates(files, first, count)
        assert sorted(one.ref for one in found) == sorted(
            one.ref for one in glances(files, first.year) if one.date in dates
        )


def test_one_that_was_edited_stands_under_its_new_date(tmp_path: Path) -> None:
    files = GarageFiles(_season(tmp_path / "garage", 12, random.Random(2), NOON.date()))
    ref = on_dates(files, NOON.date(), 1)[0].ref
    files.stage(ref, {**files.data(ref), "date": NOON.date() + dt.timedelta(days=1)})

    assert ref not in [one.ref for one in on_dates(files, NOON.date(), 1)]
    assert ref in [one.ref for one in on_dates(files, NOON.date() + dt.timedelta(days=1), 1)]


def test_the_clock_of_now_does_not_look_at_all_of_a_year(tmp_path: Path) -> None:
    def calls(count: int) -> int:
        files = GarageFiles(_season(tmp_path / f"{count}", count, random.Random(3), NOON.date()))
        hand = session_in_hand(files, NOON)
        clock_of(files, hand, NOON)
        return calls_of(lambda: clock_of(files, hand, NOON))

    assert calls(240) <= calls(12) + 40


def _comes_from_all(files: GarageFiles, subject: Ref) -> list[Ref]:
    """List the sessions that a subject may come from, by a look at all."""
    data = files.data(subject)
    seen = sorted(glances(files), key=lambda one: (one.date, one.number, one.start, one.ref.id))
    places = [one.ref for one in seen]
    before = seen[: places.index(subject)] if subject in places else seen
    ridden = [one.ref for one in before if one.ridden]
    own = [ref for ref in ridden if data.get("rider") and files.data(ref).get("rider") == data.get("rider")]
    last = {files.data(ref).get("bike"): ref for ref in ridden}
    others = [ref for bike, ref in last.items() if bike != data.get("bike")]
    return list(dict.fromkeys([*own[-1:], *others]))


@pytest.mark.parametrize("seed", range(5))
def test_a_rider_comes_from_the_sessions_that_a_look_at_all_finds(tmp_path: Path, seed: int) -> None:
    files = GarageFiles(_season(tmp_path / "garage", 24, random.Random(seed), NOON.date()))
    for subject in (*files.listing("session"), *files.listing("profile")):
        found = [ref for ref in comes_from(files, subject) if ref.kind == "session"]
        assert found == _comes_from_all(files, subject), subject


def test_what_a_rider_comes_from_is_looked_for_from_the_last_session_back(tmp_path: Path) -> None:
    def calls(count: int) -> int:
        files = GarageFiles(_season(tmp_path / f"{count}", count, random.Random(4), NOON.date()))
        comes_from(files, Ref("profile", "one"))
        return calls_of(lambda: comes_from(files, Ref("profile", "one")))

    assert calls(240) <= calls(24) + 60


def test_a_set_up_that_is_named_whole_is_compared_without_a_look_at_all(tmp_path: Path) -> None:
    from paddock_tui.screens.rooms.compare import _sides

    def calls(count: int) -> int:
        desk = Rider(_season(tmp_path / f"{count}", count, random.Random(5), NOON.date())).desk
        bike = desk.files.data(desk.files.listing("session")[-1]).get("bike")
        *_, other, subject = (
            ref for ref in desk.files.listing("session") if desk.files.data(ref).get("bike") == bike
        )
        assert not isinstance(_sides(desk, subject, other.id), str)
        return calls_of(lambda: _sides(desk, subject, other.id))

    assert calls(240) <= calls(24) + 40


def test_a_season_reads_the_sessions_of_its_year_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = _season(tmp_path / "garage", 60, random.Random(6), dt.date(2026, 1, 10))
    of_2025 = {f"sessions/2025/{path.name}" for path in (root / "sessions" / "2025").iterdir()}
    list(glances(GarageFiles(root)))
    rest(indexes())
    looks = LooksAt(GarageFiles(root), lambda: NOON)
    parsed = count_parsed(monkeypatch)

    found = season(looks, 2025)
    assert found.years == (2025, 2026)
    assert {name for name in parsed if name.startswith("sessions")} == of_2025
    ridden = [one for one in glances(looks.files) if one.ridden and one.date.year == 2025]
    assert found.whole.sessions == len(ridden)
    assert season(looks, 2025) == found
    assert len([name for name in parsed if name.startswith("sessions")]) == len(of_2025)


def test_a_season_tells_a_session_that_was_edited_or_moved_to_another_year(tmp_path: Path) -> None:
    looks = LooksAt(
        GarageFiles(_season(tmp_path / "garage", 12, random.Random(8), NOON.date())), lambda: NOON
    )
    files, before = looks.files, season(looks, 2026).whole
    first, *_, last = (one.ref for one in glances(files) if one.ridden)
    files.stage(first, {**files.data(first), "ridden_laps": 9})
    assert season(looks, 2026).whole.laps == before.laps + 4
    files.stage(last, {**files.data(last), "date": dt.date(2025, 5, 1)})

    assert season(looks, 2026).whole.sessions == before.sessions - 1
    assert season(looks, 2025).whole.sessions == 1
    assert season(looks).years == (2025, 2026)
