"""The situation of a session: its records by their references, what dangles, is lost, or was before."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.situations import assemble
from paddock_tui.facts.situation import Dangling
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store.garage import GarageFiles
from tests.desk.opened import BEFORE, NEXT
from tests.small import session, write

NOW = dt.datetime(2026, 5, 16, 12, 0)


def earlier(root: Path, ref: Ref) -> list[int | None]:
    return [one.number for one in assemble(GarageFiles(root), ref, NOW).situation.earlier]


def test_the_records_of_a_session_are_found_by_its_references(garage: Path) -> None:
    found = assemble(GarageFiles(garage), NEXT, BEFORE)

    assert (found.problems, found.notes, found.lost) == ((), (), ())
    assert found.situation.refs == {
        "session": NEXT,
        "garage": GARAGE,
        "bike": Ref("bike", "magpie"),
        "rider": Ref("rider", "ines"),
        "day": Ref("day", "2026-06-20-anvilfen"),
        "tyres": Ref("tyres", "magpie-trackday-2"),
        "source": Ref("session", "2026-06-20-2-magpie"),
        "venue": Ref("venue", "anvilfen"),
    }
    assert found.situation.venue is not None
    assert found.situation.venue.name == "Anvilfen"
    assert found.situation.now == BEFORE


def test_a_profile_has_a_bike_and_a_rider_and_no_session(garage: Path) -> None:
    found = assemble(GarageFiles(garage), Ref("profile", "otter-tobin-slick"), BEFORE)

    assert found.situation.session is None
    assert set(found.situation.refs) == {"profile", "garage", "bike", "rider"}


def test_earlier_sessions_are_of_the_same_bike_rider_and_day_oldest_first(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(3),
        sessions__b=session(1),
        sessions__c=session(2),
        sessions__d=session(4),
        sessions__other_day=session(1, date="2026-05-15"),
        sessions__another_year=session(1, date="2025-05-16"),
        sessions__other_rider=session(1, rider='"bob"'),
        sessions__other_bike=session(1, bike='"badger"'),
        sessions__hidden=session(1, retired="2026-05-16"),
        sessions__broken="number = = 1\n",
    )

    assert earlier(root, Ref("session", "a")) == [1, 2]
    assert earlier(root, Ref("session", "b")) == []


def test_a_session_without_a_date_has_none_before_it(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(3, date="None"), sessions__b=session(1))

    assert earlier(root, Ref("session", "a")) == []


def test_a_reference_that_finds_nothing_dangles_with_its_place(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(bike='"ghost"', tyres='"gone"', day='"2026-05-16-fen"'),
        days__d='venue = "nowhere"\n',
    )

    found = assemble(GarageFiles(root), Ref("session", "a"), NOW)

    assert found.situation.dangling == (
        Dangling("session", ("bike",), "bike", "ghost"),
        Dangling("session", ("day",), "day", "2026-05-16-fen"),
        Dangling("session", ("tyres",), "tyres", "gone"),
    )
    assert found.lost == ()
    assert found.situation.bike is None


def test_the_venue_of_the_day_dangles_at_the_day(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(day='"d"'), days__d='venue = "nowhere"\n')

    found = assemble(GarageFiles(root), Ref("session", "a"), NOW)

    assert found.situation.dangling == (Dangling("day", ("venue",), "venue", "nowhere"),)


def test_a_file_that_is_lost_is_named_and_its_record_is_not_known(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(), bikes__plain="name = = 1\n", riders__ann="shoes = 41\n")

    found = assemble(GarageFiles(root), Ref("session", "a"), NOW)

    assert found.lost == (Ref("bike", "plain"),)
    assert found.situation.bike is None
    assert found.situation.dangling == ()
    assert [(trouble.file, trouble.line) for trouble in found.problems] == [("bikes/plain.toml", 1)]
    assert [(note.file, note.path) for note in found.notes] == [("riders/ann.toml", ("shoes",))]


def test_a_reference_is_never_a_way_out_of_the_garage(tmp_path: Path) -> None:
    root = write(tmp_path / "inner", sessions__a=session(bike='"../../secret"'))
    (tmp_path / "secret.toml").write_text('name = "secret"\n')

    found = assemble(GarageFiles(root), Ref("session", "a"), NOW)

    assert found.situation.bike is None
    assert [trouble.path for trouble in found.problems] == [("bike",)]


def test_a_rider_has_the_sessions_of_the_day_on_any_bike_before_it(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(1, "09:00:00"),
        sessions__b=session(2, "09:20:00", bike='"other"'),
        sessions__c=session(3, "09:40:00", rider='"somebody"'),
        sessions__d=session(4, "10:00:00"),
        sessions__e=session(5, "10:20:00"),
    )
    found = assemble(GarageFiles(root), Ref("session", "d"), NOW).situation

    assert [one.id for one in found.rider_today] == ["a", "b"]
    assert earlier(root, Ref("session", "d")) == [1]
