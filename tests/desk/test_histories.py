"""The history of a subject: this bike's sessions before it, in order, the same one while nothing changes."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.advice.about import History
from paddock_tui.desk import Desk
from paddock_tui.desk.histories import Histories
from paddock_tui.desk.situations import assemble
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.small import BIKE, session, write

NOON = dt.datetime(2026, 6, 20, 12, 40)
NEXT = Ref("session", "2026-06-20-4-magpie")


def history(files: GarageFiles, histories: Histories, ref: Ref) -> History:
    return histories.of(files, ref, assemble(files, ref, NOON).situation)


def ids(found: History) -> list[str]:
    return [one.id for one in found.past]


def test_a_session_has_its_bikes_earlier_ones_oldest_first_with_venue_and_lap(garage: Path) -> None:
    found = history(GarageFiles(garage), Histories(), Ref("session", "2026-05-16-5-magpie"))

    assert ids(found) == ["2026-05-16-1-magpie", "2026-05-16-2-magpie", "2026-05-16-3-magpie"]
    assert {one.venue for one in found.past} == {"anvilfen"}
    assert found.past[0].lap_km == 3.85
    assert found.past[0].km == 38.5
    assert found.riders["ines"].initials == "IS"


def test_tyre_sets_come_with_those_that_they_go_on_from(garage: Path) -> None:
    found = history(GarageFiles(garage), Histories(), Ref("session", "2026-04-18-1-badger"))

    assert ids(found) == []
    assert set(found.tyre_sets) == {"badger-road", "badger-road-old"}


def test_a_profile_has_all_sessions_of_its_bike(garage: Path) -> None:
    found = history(GarageFiles(garage), Histories(), Ref("profile", "magpie-ines-wet"))

    assert len(found.past) == 7


def test_the_same_history_is_given_again_until_a_file_of_it_changes(garage: Path) -> None:
    files, histories = GarageFiles(garage), Histories()
    first = history(files, histories, NEXT)

    assert history(files, histories, NEXT) is first

    other = garage / "sessions/2026/2026-05-16-1-otter.toml"
    other.write_text(other.read_text() + "\n# of another bike\n")
    assert history(files, histories, NEXT) is first

    own = garage / "sessions/2026/2026-05-16-1-magpie.toml"
    own.write_text(own.read_text().replace("ridden_laps", "# ridden_laps") + "\n# looked at again\n")
    assert history(files, histories, NEXT) is not first


def test_a_new_session_and_one_that_was_retired_come_and_go(garage: Path) -> None:
    files, histories = GarageFiles(garage), Histories()
    before = ids(history(files, histories, NEXT))
    folder = garage / "sessions/2026"
    text = (folder / "2026-06-20-2-magpie.toml").read_text()

    (folder / "2026-06-20-3-magpie.toml").write_text(text.replace("number = 2", "number = 3"))
    first = folder / "2026-05-16-1-magpie.toml"
    first.write_text("retired = 2026-06-01\n" + first.read_text())
    files.forget_listing()

    assert ids(history(files, histories, NEXT)) == [*before[1:], "2026-06-20-3-magpie"]


def test_a_bike_that_only_shares_letters_is_not_taken_for_this_one(tmp_path: Path) -> None:
    files = GarageFiles(
        write(
            tmp_path,
            bikes__plainer=BIKE,
            sessions__a=session(1),
            sessions__b=session(2, bike='"plainer"'),
            sessions__c=session(3),
        )
    )

    assert ids(history(files, Histories(), Ref("session", "c"))) == ["a"]


def test_a_session_that_cannot_be_read_and_a_bike_that_is_not_known_are_left_out(tmp_path: Path) -> None:
    lost, other = "bike = plain", session(3, bike="None")
    files = GarageFiles(write(tmp_path, sessions__a=lost, sessions__b=session(2), sessions__c=other))

    assert ids(history(files, Histories(), Ref("session", "b"))) == []
    assert ids(history(files, Histories(), Ref("session", "c"))) == []


def test_the_desk_knows_the_riders_units(garage: Path) -> None:
    desk = Desk(garage, lambda: NOON)

    assert desk.about(Ref("session", "2026-06-20-2-otter")).units.pressure == "psi"
    assert desk.about(None).units.pressure == "bar"
    desk.close()


def test_earlier_sessions_are_not_held_as_files_and_their_changes_are_seen_all_the_same(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paddock_tui.desk.bike_past.HELD", 1)
    files, histories = GarageFiles(garage), Histories()
    first = history(files, histories, NEXT)
    early, last = (Ref("session", first.past[at].id) for at in (0, -1))
    path = files.path_of(early)
    assert path is not None
    assert (files.is_in_memory(early), files.is_in_memory(last)) == (False, True)

    # Read again, or written again as it was, it is what it was.
    files.read(early)
    assert history(files, histories, NEXT) is first
    files.let_go(early)
    path.write_text(path.read_text(), encoding="utf-8")
    assert early not in files.changed()
    assert history(files, histories, NEXT) is first

    path.write_text(path.read_text().replace('kind = "track day"', 'kind = "practice"'), encoding="utf-8")
    assert files.changed() == (early,)
    again = history(files, histories, NEXT)
    assert (first.past[0].session.kind, again.past[0].session.kind) == ("track day", "practice")
    assert again.past == history(GarageFiles(garage), Histories(), NEXT).past


def test_an_earlier_session_is_read_again_once_what_it_names_is_called_otherwise(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paddock_tui.desk.bike_past.HELD", 0)
    files, histories = GarageFiles(garage), Histories()
    first = history(files, histories, NEXT)
    tyres = first.past[0].session.tyres
    old = garage / "tyres" / f"{tyres}.toml"
    old.with_name("called-otherwise.toml").write_text(
        f'was = ["{tyres}"]\n{old.read_text()}', encoding="utf-8"
    )
    old.unlink()
    files.changed()

    again = history(files, histories, NEXT)

    assert again.past[0].session.tyres == "called-otherwise"
    assert again.past == history(GarageFiles(garage), Histories(), NEXT).past


def test_sessions_touched_one_after_the_other_are_each_read_again(garage: Path) -> None:
    """What was forgotten with an earlier one has no place any more when it is touched itself."""
    files, histories = GarageFiles(garage), Histories()
    before = ids(history(files, histories, NEXT))
    for name in (before[0], before[-1]):
        path = files.path_of(Ref("session", name))
        assert path is not None
        path.write_text(path.read_text() + "\n# looked at again\n")
        assert files.changed() == (Ref("session", name),)
        assert ids(history(files, histories, Ref("session", before[0]))) == []

    assert ids(history(files, histories, NEXT)) == before
