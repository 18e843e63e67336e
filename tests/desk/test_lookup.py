"""Which record is meant, and which session is in hand."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk.lookup import NoSuchRecord, find, session_in_hand, unplaced
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store.garage import GarageFiles
from tests.desk.opened import names
from tests.every import every
from tests.small import session, write

NOON = dt.datetime(2026, 5, 16, 12, 0)
RIDDEN = {"parked": "10:20:00"}


@every(
    ("text", "ref"),
    [
        ("garage", GARAGE),
        ("bike/otter", Ref("bike", "otter")),
        ("otter", Ref("bike", "otter")),
        ("quern", Ref("venue", "quernstone")),
        ("2026-06-20-4", Ref("session", "2026-06-20-4-magpie")),
        ("magpie-w", Ref("tyres", "magpie-wet")),
        ("grid", Ref("checklist", "grid")),
    ],
)
def test_a_record_is_found_by_kind_and_id_by_id_or_by_a_unique_start(
    garage: Path, text: str, ref: Ref
) -> None:
    assert find(GarageFiles(garage), text) == ref


@every(
    ("text", "said"),
    [
        ("nothing", 'there is no record "nothing"'),
        ("", 'there is no record ""'),
        ("ot", 'there is no record "ot"'),
        ("bike/nothing", "badger, magpie, otter, shrew"),
        ("bike/", "badger, magpie, otter, shrew"),
        ("bikes/otter", "a kind out of bike, rider"),
        ("../bikes/otter", "a kind out of bike, rider"),
        ("magpie-", "profile/magpie-ines-2025"),
        ("2026-06-20-2", "session/2026-06-20-2-magpie"),
    ],
)
def test_what_names_no_record_or_several_is_said_with_those_that_there_are(
    garage: Path, text: str, said: str
) -> None:
    with pytest.raises(NoSuchRecord) as caught:
        find(GarageFiles(garage), text)

    assert said in caught.value.trouble.sentence()


def test_an_id_of_two_kinds_is_asked_about(tmp_path: Path) -> None:
    files = GarageFiles(write(tmp_path, riders__plain=""))

    with pytest.raises(NoSuchRecord, match="may be bike/plain, rider/plain"):
        find(files, "plain")
    assert find(files, "rider/plain") == Ref("rider", "plain")
    assert find(files, "plain", ("rider",)) == Ref("rider", "plain")


def in_hand(tmp_path: Path, sessions: dict[str, str]) -> str | None:
    files = GarageFiles(
        write(tmp_path, **{f"sessions__2026__{name}": text for name, text in sessions.items()})
    )
    found = session_in_hand(files, NOON)
    return found.id if found is not None else None


YESTERDAY, TOMORROW = "2026-05-15", "2026-05-17"


@every(
    ("sessions", "wanted"),
    [
        ({}, None),
        ({"a": session(1)}, "a"),
        ({"a": session(1, **RIDDEN), "b": session(2), "c": session(3)}, "b"),
        ({"b": session(2), "a": session(2, start="09:00:00")}, "a"),
        ({"a": session(1, date=TOMORROW), "b": session(2)}, "b"),
        ({"a": session(1, date=TOMORROW), "b": session(2, date=YESTERDAY)}, "a"),
        ({"a": session(1, date=YESTERDAY), "b": session(2, date="2026-05-14")}, "a"),
        ({"a": session(1, date=YESTERDAY, **RIDDEN), "b": session(2, date=YESTERDAY)}, "b"),
        ({"a": session(1, date=YESTERDAY, **RIDDEN), "b": session(2, date="2026-05-14")}, "a"),
        ({"a": session(1, **RIDDEN), "b": session(2, **RIDDEN)}, "b"),
        ({"a": session(1, **RIDDEN), "b": session(2, retired="2026-05-16")}, "a"),
        ({"a": session(1, **RIDDEN), "b": session(2, date="None")}, "a"),
        ({"a": session(1, **RIDDEN), "b": "date = = 3\n"}, "a"),
        ({"a": session(1, **RIDDEN), "b": session(2, date='"16 May"')}, "a"),
    ],
    ids=[
        "no session",
        "the only one",
        "the first not ridden of today",
        "of one number the earlier start",
        "today before tomorrow",
        "tomorrow, not what was left yesterday",
        "left over of the latest day",
        "the one left of the latest day",
        "the last ridden when the latest day has none left",
        "the last ridden",
        "never a retired one",
        "never one without a date",
        "never one that cannot be read",
        "never one whose date cannot be read",
    ],
)
def test_the_session_in_hand(tmp_path: Path, sessions: dict[str, str], wanted: str | None) -> None:
    assert in_hand(tmp_path, sessions) == wanted


@every(
    ("more", "ridden"),
    [
        ("parked = 10:20:00\n", True),
        ("[laps]\n1 = '1:44.310'\n", True),
        ("went_out = 10:01:00\n[pressures.hot]\nfront = '2.3 bar'\n", True),
        ("[pressures.hot]\nfront = '2.3 bar'\n", False),
        ("[pressures.hot]\nat = 10:21:00\n", False),
        ("[pressures.cold]\nfront = '2.1 bar'\n", False),
        ("went_out = 10:01:00\n", False),
        ("[laps]\n", False),
        ("pressures = 3\n", False),
    ],
)
def test_a_session_is_ridden_once_parked_or_with_a_lap_or_hot_after_it_went_out(
    tmp_path: Path, more: str, ridden: bool
) -> None:
    first = "date = 2026-05-16\nnumber = 1\n" + more

    assert in_hand(tmp_path, {"first": first, "second": session(2)}) == ("second" if ridden else "first")


def test_a_session_planned_for_next_year_hides_none_of_this_year(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        **{
            "sessions__2026__2026-05-16-2-plain": session(2),
            "sessions__2027__2027-03-01-1-plain": session(1, date="2027-03-01"),
        },
    )

    assert session_in_hand(GarageFiles(root), NOON) == Ref("session", "2026-05-16-2-plain")


def test_a_garage_reads_the_same_in_any_later_year(tmp_path: Path) -> None:
    root = write(tmp_path, **{"sessions__2026__2026-05-16-2-plain": session(2)})

    for year in (2026, 2030, 2099):
        found = session_in_hand(GarageFiles(root), NOON.replace(year=year))
        assert found == Ref("session", "2026-05-16-2-plain")


def test_years_that_are_over_are_not_read(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        **{
            "sessions__2025__2025-05-16-1-plain": session(1, date="2025-05-16"),
            "sessions__2026__2026-05-16-1-plain": session(1),
        },
    )
    files = GarageFiles(root)
    session_in_hand(files, NOON)
    (root / "sessions" / "2025" / "2025-05-16-1-plain.toml").write_text("never looked at\n")
    (root / "sessions" / "2026" / "2026-05-16-1-plain.toml").write_text("looked at before\n")

    assert names(files.changed()) == ["2026-05-16-1-plain"]


def test_a_session_whose_date_cannot_be_read_may_be_the_one_in_hand(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(1),
        sessions__b="date = = 3\n",
        sessions__c=session(2, date='"16 May"'),
        sessions__d=session(2, date="None"),
        sessions__e=session(2, date='"16 May"', retired="2026-05-16"),
    )

    assert names(unplaced(GarageFiles(root), NOON)) == ["b", "c"]
