"""The next session: what comes over from the last one, and what never does."""

import datetime as dt
import tomllib
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.records.edits import Create, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.paths import Ref
from paddock_tui.records.reading import read_record
from paddock_tui.records.session import Session
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Saved
from tests.desk.opened import BEFORE, NEXT, at_desk
from tests.every import every
from tests.small import session, snapshot, write

NOW = dt.datetime(2026, 5, 16, 11, 0)
A = Ref("session", "a")

DAY = """date = 2026-05-16
venue = "fen"
group = "slow"

[timetable.slow.1]
from = 09:00:00
to = 09:20:00

[timetable.slow.2]
from = 12:00:00
to = 12:20:00

[timetable.slow.3]
from = 10:30:00
to = 10:50:00

[timetable.quick.1]
from = 10:10:00
to = 10:25:00
"""


def made(root: Path, source: Ref = A, now: dt.datetime = NOW) -> tuple[Ref, dict[str, Any]]:
    """Give the id and the data of the next session; it must be possible."""
    ref, step = next_session(GarageFiles(root), source, now)
    assert isinstance(step, Step), step
    (create,) = step.changes
    assert isinstance(create, Create)
    assert create.ref == ref
    data = tomllib.loads(create.text)
    found = read_record("session", data)
    assert (found.troubles, found.unknown) == ((), ())
    return ref, data


def one(root: Path, **more: str) -> Path:
    """Write a garage with one session, `more` being its root values; the word None leaves one out."""
    lines = [line for line in session().splitlines() if line.split(" = ")[0] not in more]
    said = [f"{key} = {value}" for key, value in more.items() if value != "None"]
    return write(root, sessions__a="\n".join([*said, *lines]) + "\n")


def test_set_up_rider_tyres_kind_and_plan_come_over_and_nothing_that_was_measured(garage: Path) -> None:
    source = tomllib.loads((garage / "sessions/2026/2026-06-20-4-magpie.toml").read_text())

    ref, data = made(garage, NEXT, BEFORE)

    assert ref == Ref("session", "2026-06-20-5-magpie")
    assert data == {
        "date": dt.date(2026, 6, 20),
        "number": 5,
        "kind": "track day",
        "day": "2026-06-20-anvilfen",
        "bike": "magpie",
        "rider": "ines",
        "tyres": "magpie-trackday-2",
        "copied_from": "2026-06-20-4-magpie",
        "planned_time": "20 min",
        "start": dt.time(14, 20),
        "aim": source["aim"],
        "setup": source["setup"],
    }
    assert {"surface", "air", "because", "checks", "fuel_added", "warmers"} < set(source)


def test_from_a_session_in_which_all_is_known_only_what_is_declared_to_carry_comes_over(
    garage: Path,
) -> None:
    carried = {one.path[0] for one in declared(Session) if one.carry}
    # An aim goes on until it is met, and whose the jobs of the day are.
    allowed = carried | {"date", "number", "start", "copied_from", "aim", "aim_by", "jobs"}
    held: set[str] = set()

    for path in sorted((garage / "sessions").rglob("*.toml")):
        held |= set(tomllib.loads(path.read_text()))
        _, data = made(garage, Ref("session", path.stem), BEFORE)
        assert set(data) <= allowed
    never = {"surface", "air", "track", "pressures", "laps", "counted", "accepted", "dash", "parked", "feel"}
    assert never <= held
    assert not never & allowed


def test_an_aim_goes_on_until_it_is_met_and_a_job_stays_whose_it_is(tmp_path: Path) -> None:
    jobs = '\n[jobs.fuel]\nwho = "TO"\ndone_by = "TO"\nat = 10:00:00\n'
    aims = {"aim": '"late apex in 4"', "aim_by": '"JM"'}
    for met, carried in (("None", True), ('"no"', True), ('"partly"', True), ('"yes"', False)):
        root = one(tmp_path / met.strip('"'), **aims, aim_met=met)
        file = root / "sessions/a.toml"
        file.write_text(file.read_text() + jobs)
        _, data = made(root)
        kept = {key: data[key] for key in ("aim", "aim_by") if key in data}
        assert kept == ({"aim": "late apex in 4", "aim_by": "JM"} if carried else {})
        assert data["jobs"] == {"fuel": {"who": "TO"}}
        assert "aim_met" not in data


@every(
    ("parked", "kind", "date", "day"),
    [
        ("10:00:00", '"track day"', dt.date(2026, 5, 23), "may-23"),
        ("None", '"track day"', dt.date(2026, 5, 23), "may-23"),
        ("10:00:00", '"road"', dt.date(2026, 5, 22), None),
        ("None", '"road"', dt.date(2026, 5, 16), None),
    ],
)
def test_the_evening_before_it_belongs_to_the_first_day_that_is_to_come(
    tmp_path: Path, parked: str, kind: str, date: dt.date, day: str | None
) -> None:
    one(tmp_path, parked=parked, kind=kind, date="2026-05-16", day="None")
    for name, on in (("may-16", 16), ("may-23", 23), ("may-30", 30)):
        write(tmp_path, **{f"days__{name}": f"date = 2026-05-{on}\n"})

    _, data = made(tmp_path, now=dt.datetime(2026, 5, 22, 20, 30))

    assert (data["date"], data.get("day")) == (date, day)


def test_it_is_kept_and_one_undo_takes_it_back(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    ref, step = next_session(desk.files, NEXT, BEFORE)
    assert isinstance(step, Step)

    desk.do(step)

    assert [type(outcome) for outcome in desk.settled()] == [Saved]
    name = "sessions/2026/2026-06-20-5-magpie.toml"
    assert set(snapshot(garage)) - set(before) == {name}
    assert snapshot(garage)[name].startswith(b'date = 2026-06-20\nnumber = 5\nkind = "track day"\nday = ')
    loaded = desk.files.read(ref)
    assert loaded is not None
    assert (loaded.troubles, loaded.unknown) == ((), ())
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


# ---- number and id ---------------------------------------------------------------------------------------


def test_the_number_follows_the_highest_of_the_day_on_that_bike_whatever_the_files_are_called(
    tmp_path: Path,
) -> None:
    root = write(
        tmp_path,
        sessions__a=session(2),
        sessions__later=session(6),
        sessions__hidden=session(7, retired="2026-05-16"),
        sessions__yesterday=session(9, date="2026-05-15"),
        sessions__other=session(8, bike='"badger"'),
    )

    ref, data = made(root)

    assert (ref.id, data["number"]) == ("2026-05-16-8-plain", 8)


def test_a_session_without_a_number_is_followed_by_the_first(tmp_path: Path) -> None:
    assert made(one(tmp_path, number="None"))[1]["number"] == 1


def test_an_id_that_is_taken_gets_another_ending_and_the_number_stays(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(1),
        **{
            "sessions__2026-05-16-2-plain": session(1, bike='"badger"'),
            "sessions__2026-05-16-2-plain-2": 'date = "?"\n',
        },
    )

    ref, data = made(root)

    assert (ref.id, data["number"]) == ("2026-05-16-2-plain-3", 2)


def test_the_name_of_a_bike_that_is_very_long_still_makes_an_id(tmp_path: Path) -> None:
    name = "b" * 79
    root = write(tmp_path, sessions__a=session(bike=f'"{name}"'), **{f"bikes__{name}": 'name = "B"\n'})

    ref, data = made(root)

    assert ref.id.startswith("2026-05-16-2-bbb")
    assert data["bike"] == name


# ---- the day ---------------------------------------------------------------------------------------------


@every(
    ("now", "ridden", "date"),
    [
        ("2026-05-16", True, "2026-05-16"),
        ("2026-05-14", True, "2026-05-16"),
        ("2026-05-17", True, "2026-05-17"),
        ("2026-05-17", False, "2026-05-16"),
    ],
)
def test_it_belongs_to_the_sources_day_until_that_is_over_and_ridden(
    tmp_path: Path, now: str, ridden: bool, date: str
) -> None:
    root = one(tmp_path, **({"parked": "10:20:00"} if ridden else {}))

    _, data = made(root, now=dt.datetime.fromisoformat(f"{now}T11:00"))

    assert data["date"].isoformat() == date
    assert data["number"] == (2 if date == "2026-05-16" else 1)


def test_a_session_counts_as_ridden_with_a_lap_and_not_with_a_hot_pressure_alone(
    tmp_path: Path,
) -> None:
    tomorrow = dt.datetime(2026, 5, 17, 8, 0)
    dates = []
    for number, text in enumerate(
        ('[laps]\n1 = "1:50"', '[pressures.hot]\nrear = "2 bar"', "[pressures.hot]")
    ):
        root = write(tmp_path / str(number), sessions__a=f"{session()}\n{text}\n")
        dates.append(made(root, now=tomorrow)[1]["date"].day)

    assert dates == [17, 16, 16]


def test_without_a_date_it_is_todays(tmp_path: Path) -> None:
    assert made(one(tmp_path, date="None"))[1]["date"] == NOW.date()
    assert made(one(tmp_path, date="2026-05-16T10:00:00"))[1]["date"] == NOW.date()


def with_days(root: Path, days: dict[str, str], **more: str) -> Path:
    one(root, **more)
    return write(root, **{f"days__{name}": text for name, text in days.items()})


def test_the_day_is_the_sources_where_it_is_of_that_date(tmp_path: Path) -> None:
    root = with_days(tmp_path, {"d": DAY, "other": "date = 2026-05-16\n"}, day='"d"')

    assert made(root)[1]["day"] == "d"


@every(
    ("days", "expected"),
    [
        ({"d": "date = 2026-05-17\n"}, "d"),
        ({"d": "date = 2026-05-17\n", "e": "date = 2026-05-17\n"}, None),
        ({"d": "date = 2026-05-17\nretired = 2026-05-01\n"}, None),
        ({"d": "date = 2026-05-17\n", "e": "date = 2026-05-17\nretired = 2026-05-01\n"}, "d"),
        ({"d": "date = 2026-05-16\n"}, None),
        ({}, None),
    ],
)
def test_on_a_later_date_the_day_is_the_only_one_of_that_date_that_was_not_called_off(
    tmp_path: Path, days: dict[str, str], expected: str | None
) -> None:
    root = with_days(tmp_path, days | {"past": DAY}, day='"past"', start="16:00:00", parked="16:20:00")

    _, data = made(root, now=dt.datetime(2026, 5, 17, 8, 0))

    assert data.get("day") == expected


def test_a_day_typed_in_afterwards_goes_on_while_its_timetable_does(tmp_path: Path) -> None:
    root = with_days(tmp_path, {"past": DAY}, day='"past"', start="10:00:00", parked="10:20:00")

    _, data = made(root, now=dt.datetime(2026, 5, 17, 8, 0))

    assert (data["date"], data["day"], data["start"]) == (dt.date(2026, 5, 16), "past", dt.time(10, 30))


def test_a_ride_on_the_road_is_given_no_day(tmp_path: Path) -> None:
    root = with_days(tmp_path, {"d": DAY}, kind='"road"')

    assert "day" not in made(root)[1]


# ---- the start -------------------------------------------------------------------------------------------


@every(
    ("start", "expected"),
    [
        ("09:00:00", dt.time(10, 30)),
        ("10:30:00", dt.time(12, 0)),
        ("12:00:00", None),
        ("None", dt.time(9, 0)),
    ],
)
def test_the_start_is_the_next_one_of_the_group_by_the_clock(
    tmp_path: Path, start: str, expected: dt.time | None
) -> None:
    root = with_days(tmp_path, {"d": DAY}, day='"d"', start=start)

    assert made(root)[1].get("start") == expected


def test_the_riders_own_group_of_that_day_counts_more(tmp_path: Path) -> None:
    day = DAY + '\n[entries.ann.plain]\ngroup = "Quick"\n'
    root = with_days(tmp_path, {"d": day}, day='"d"', start="09:00:00")

    assert made(root)[1]["start"] == dt.time(10, 10)


@every("day", ["group = 3\n", 'group = "none"\n', "x = = 1\n", "timetable = 3\n"])
def test_a_day_whose_timetable_says_nothing_gives_no_start(tmp_path: Path, day: str) -> None:
    root = with_days(tmp_path, {"d": f"date = 2026-05-16\n{day}"}, day='"d"')

    assert "start" not in made(root)[1]


def test_the_first_start_of_another_day_is_taken_whenever_the_source_started(tmp_path: Path) -> None:
    day = DAY.replace("2026-05-16", "2026-05-17")
    root = with_days(tmp_path, {"d": day}, start="16:00:00", parked="16:20:00")

    assert made(root, now=dt.datetime(2026, 5, 17, 7, 0))[1]["start"] == dt.time(9, 0)


# ---- what is missing -------------------------------------------------------------------------------------


def test_a_tyre_set_that_is_retired_or_gone_is_left_out(tmp_path: Path) -> None:
    sets = {"tyres__good": 'name = "G"\n', "tyres__worn": "retired = 2026-05-16\n"}
    found = [
        made(write(tmp_path / name, sessions__a=session(tyres=f'"{name}"'), **sets))[1].get("tyres")
        for name in ("good", "worn", "lost")
    ]

    assert found == ["good", None, None]


def test_a_rider_that_is_retired_is_left_out_and_a_bike_stays(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(),
        riders__ann="retired = 2026-05-01\n",
        bikes__plain="retired = 2026-05-01\n",
    )

    _, data = made(root)

    assert "rider" not in data
    assert data["bike"] == "plain"


def test_what_cannot_be_read_is_left_out_and_the_rest_comes_over(tmp_path: Path) -> None:
    text = session(kind='"parade"', rider="3", planned_time='"long"').replace(
        "traction = 5", 'traction = "5"'
    )
    root = write(tmp_path, sessions__a=text + "wheelie = 2\n")

    _, data = made(root)

    assert {"kind", "rider", "planned_time"} & set(data) == set()
    assert data["setup"] == {"controls": {"wheelie": 2}}


def test_a_session_with_hardly_anything_in_it_is_followed_by_one_with_as_little(tmp_path: Path) -> None:
    ref, data = made(write(tmp_path, sessions__a="date = 2026-05-16\npressures = 3\nsetup = 4\n"))

    assert ref.id == "2026-05-16-1-bike"
    assert data == {"date": dt.date(2026, 5, 16), "number": 1, "copied_from": "a"}


@pytest.mark.parametrize("source", [A, Ref("session", "nowhere")])
def test_a_session_that_is_lost_or_not_there_is_followed_by_none(tmp_path: Path, source: Ref) -> None:
    files = GarageFiles(write(tmp_path, sessions__a="number = = 1\n"))

    _, step = next_session(files, source, NOW)

    assert isinstance(step, InputError)
    assert step.mend == "correct its file first"
