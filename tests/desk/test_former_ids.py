"""A record that was renamed is still found under the id that it had before, wherever that is written."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.desk.edits.values import setting_value
from paddock_tui.desk.files.records import creating, duplicating, renaming
from paddock_tui.desk.lookup import find, of_bike
from paddock_tui.desk.sessions.numbers import free_session
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Reference
from paddock_tui.store.references import reference_fields
from tests.desk.opened import NEXT, at_desk
from tests.desk.test_records import done
from tests.small import session, snapshot, write


def renamed(garage: Path, *refs: tuple[Ref, str]) -> None:
    desk = at_desk(garage)
    for ref, name in refs:
        done(desk, renaming(desk.files, ref, name))
    desk.close()


def on_another_laptop(garage: Path) -> bytes:
    """Rename what the session in hand names, then give it the text that still names the old ids."""
    file = garage / "sessions" / "2026" / f"{NEXT.id}.toml"
    day = garage / "days" / "2026-06-20-anvilfen.toml"
    before, of_day = file.read_bytes(), day.read_bytes()
    renamed(
        garage,
        (Ref("bike", "magpie"), "jay"),
        (Ref("rider", "ines"), "ina"),
        (Ref("day", "2026-06-20-anvilfen"), "long-day"),
        (Ref("session", "2026-06-20-2-magpie"), "before-the-shower"),
    )
    file.write_bytes(before)
    (garage / "days" / "long-day.toml").write_bytes(b'was = ["2026-06-20-anvilfen"]\n' + of_day)
    return before


def test_the_table_of_references_is_what_the_records_declare() -> None:
    for kind, record in CLASSES.items():
        told = {(one.path, one.shape.kind) for one in declared(record) if isinstance(one.shape, Reference)}
        assert set(reference_fields(kind)) == told, kind


def test_a_session_that_names_old_ids_is_reviewed_as_before(garage: Path) -> None:
    was = at_desk(garage).assembled(NEXT)
    text = on_another_laptop(garage)
    desk = at_desk(garage)

    found = desk.assembled(NEXT)
    assert (found.situation.dangling, found.problems, found.notes) == ((), was.problems, was.notes)
    assert found.situation.bike is not None
    assert was.situation.bike is not None
    assert found.situation.bike.controls == was.situation.bike.controls
    assert found.situation.session is not None
    assert found.situation.session.bike == "jay"
    assert [one.id for one in found.situation.history.past] == [
        {"2026-06-20-2-magpie": "before-the-shower"}.get(one.id, one.id) for one in was.situation.history.past
    ]
    assert found.situation.day is not None
    assert was.situation.day is not None
    assert found.situation.day.entries["ina"]["jay"] == was.situation.day.entries["ines"]["magpie"]
    assert NEXT in [ref for _, ref in of_bike(desk.files, "jay")]
    assert find(desk.files, "magpie") == find(desk.files, "bike/magpie") == Ref("bike", "jay")
    assert (garage / "sessions" / "2026" / f"{NEXT.id}.toml").read_bytes() == text


def test_what_is_edited_there_stands_under_the_old_ids_and_is_undone_to_the_byte(garage: Path) -> None:
    on_another_laptop(garage)
    before = snapshot(garage)
    desk = at_desk(garage)

    done(desk, setting_value(desk.files, NEXT, ("bike",), "otter"))
    day = Ref("day", "long-day")
    done(desk, setting_value(desk.files, day, ("entries", "ina", "jay", "camera"), "bike"))
    done(desk, setting_value(desk.files, Ref("session", NEXT.id), ("rider",), MISSING))
    done(desk, renaming(desk.files, Ref("rider", "ina"), "zoe"))

    text = (garage / "days" / "long-day.toml").read_text()
    assert "[entries.ines.magpie" in text
    held = desk.files.read(day)
    assert held is not None
    assert isinstance(held.record, RidingDay)
    assert held.record.entries["zoe"]["jay"].camera == "bike"
    for _ in range(4):
        desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_renamed_again_and_back_every_earlier_name_leads_there(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(rider='"ann"'))
    before = snapshot(root)
    renamed(root, (Ref("rider", "ann"), "bea"), (Ref("rider", "bea"), "cat"))
    assert 'was = ["ann", "bea"]' in (root / "riders" / "cat.toml").read_text()
    files = at_desk(root).files
    assert {files.former.current(Ref("rider", one)).id for one in ("ann", "bea", "cat")} == {"cat"}

    renamed(root, (Ref("rider", "cat"), "ann"))
    assert 'was = ["bea", "cat"]' in (root / "riders" / "ann.toml").read_text()
    desk = at_desk(root)
    for _ in range(3):
        desk.undo()
        desk.settled()
    desk.close()
    assert snapshot(root) == before


def test_a_name_that_another_record_had_is_not_given_away_and_a_copy_takes_none_along(tmp_path: Path) -> None:
    root = write(tmp_path, riders__bob="")
    renamed(root, (Ref("rider", "ann"), "zoe"))
    desk = at_desk(root)

    for step in (
        creating(desk.files, Ref("rider", "ann"), {}),
        renaming(desk.files, Ref("rider", "bob"), "ann"),
        duplicating(desk.files, Ref("rider", "zoe"), "ann"),
    ):
        assert isinstance(step, InputError)
        assert step.found == "ann was the id of zoe, and may still mean it on another laptop"
    done(desk, duplicating(desk.files, Ref("rider", "zoe"), "eve"))
    assert "was" not in desk.files.data(Ref("rider", "eve"))
    desk.close()


def test_the_number_of_a_renamed_session_is_not_given_to_another(garage: Path) -> None:
    renamed(garage, (NEXT, "the-last-one"))

    assert free_session(at_desk(garage).files, dt.date(2026, 6, 20), 4, "magpie").id == f"{NEXT.id}-2"


def test_an_id_that_two_records_had_means_neither_and_is_said(
    garage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    on_another_laptop(garage)
    otter = garage / "bikes" / "otter.toml"
    otter.write_text('was = ["magpie"]\n' + otter.read_text())
    desk = at_desk(garage)

    assert [one.id for one in desk.assembled(NEXT).situation.dangling] == ["magpie"]
    assert main(["check", str(garage), "--all"]) == 3
    said = capsys.readouterr().out
    assert '"magpie" was the id of jay and of otter' in said
    assert "take it out of" in said


def test_an_id_that_is_there_is_meant_itself_and_that_another_had_it_is_said(tmp_path: Path) -> None:
    root = write(tmp_path, riders__bob='was = ["ann"]\n')
    files = at_desk(root).files

    assert files.former.current(Ref("rider", "ann")) == Ref("rider", "ann")
    said = [one.sentence() for one in files.former.troubles(files.name_of)]
    assert len(said) == 1
    assert '"ann" was the id of bob, and there is a rider ann' in said[0]


def test_what_is_no_list_of_ids_is_a_problem_of_the_record(tmp_path: Path) -> None:
    root = write(tmp_path, riders__bob='was = "ann"\n')
    loaded = at_desk(root).files.read(Ref("rider", "bob"))

    assert loaded is not None
    assert [(one.path, one.expected) for one in loaded.troubles] == [(("was",), "a list of ids")]


def test_a_rename_that_comes_in_while_a_garage_is_open_is_followed(garage: Path) -> None:
    desk = at_desk(garage)
    before = desk.assembled(NEXT).situation
    assert before.bike is not None
    (garage / "bikes" / "magpie.toml").rename(garage / "bikes" / "jay.toml")
    text = (garage / "bikes" / "jay.toml").read_text()
    (garage / "bikes" / "jay.toml").write_text(f'was = ["magpie"]\n{text}')
    desk.poll()

    after = desk.assembled(NEXT).situation
    assert after.session is not None
    assert (after.dangling, after.session.bike) == ((), "jay")
    assert len(after.history.past) == len(before.history.past)
