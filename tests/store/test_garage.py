"""What a folder holds: what is listed, read once until it changes, and said of files that are no records."""

import os
import shutil
from pathlib import Path

import pytest

from paddock_tui.records.paths import FOLDERS, GARAGE, Ref
from paddock_tui.records.session import Session
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.mentions import mentioning
from paddock_tui.store.saving import is_newer
from tests.every import every
from tests.small import session, snapshot, write

ONE = "sessions__2026__2026-05-16-1-plain"


def test_listing_names_records_by_their_file_stems_in_order(garage: Path) -> None:
    files = GarageFiles(garage)

    assert [ref.id for ref in files.listing("bike")] == ["badger", "magpie", "otter", "shrew"]
    assert Ref("session", "2026-06-20-4-magpie") in files.listing("session")
    assert next(iter(files.all())) == GARAGE


def test_templates_hidden_files_and_odd_names_are_not_records(tmp_path: Path) -> None:
    root = write(tmp_path)
    for name in ("new.toml.example", ".plain.toml.swp", ".hidden.toml", "Two Words.toml", "notes.txt"):
        (root / "bikes" / name).write_text('name = "x"\n')
    (root / "bikes" / ".git").mkdir()
    (root / "bikes" / ".git" / "deep.toml").write_text("")

    assert GarageFiles(root).listing("bike") == (Ref("bike", "plain"),)


def test_sessions_are_found_in_folders_of_any_name(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__2026__one=session(1), sessions__old__two=session(2), sessions__three="")

    assert [ref.id for ref in GarageFiles(root).listing("session")] == ["one", "three", "two"]


def test_reading_is_remembered_until_the_file_changes(tmp_path: Path) -> None:
    root = write(tmp_path)
    files = GarageFiles(root)
    first = files.read(Ref("bike", "plain"))

    assert files.read(Ref("bike", "plain")) is first
    path = root / "bikes" / "plain.toml"
    path.write_text(path.read_text() + "\n# more\n")

    assert files.changed() == (Ref("bike", "plain"),)
    again = files.read(Ref("bike", "plain"))
    assert again is not first
    assert again is not None
    assert again.text.endswith("# more\n")
    assert files.changed() == ()


def test_what_is_made_of_many_files_looks_at_each_once(tmp_path: Path) -> None:
    """What is staged shows at once all the same, and what others wrote as soon as it is looked for."""
    root = write(tmp_path, **{ONE: session(1, aim='"one"')})
    files = GarageFiles(root)
    ref, path = Ref("session", "2026-05-16-1-plain"), root / "sessions/2026/2026-05-16-1-plain.toml"
    first = files.read(ref)
    with files.once.each():
        assert files.read(ref) is first
        path.write_text(session(1, aim='"another"'))
        with files.once.each():
            assert files.read(ref) is first
        assert files.data(ref)["aim"] == files.written(ref)["aim"] == "one"

        files.stage(ref, {**files.data(ref), "aim": "staged"})
        assert files.data(ref)["aim"] == "staged"
        files.unstage(ref)
        assert files.data(ref)["aim"] == "another"

        path.write_text(session(1, aim='"a third one"'))
        assert files.data(ref)["aim"] == "another"
        assert files.changed() == (ref,)
        assert files.data(ref)["aim"] == "a third one"
        path.unlink()
        assert files.read(ref) is not None
    assert files.read(ref) is None


def test_a_removed_file_is_seen_as_changed_and_is_not_read_any_more(tmp_path: Path) -> None:
    root = write(tmp_path)
    files = GarageFiles(root)
    assert files.read(Ref("rider", "ann")) is not None

    (root / "riders" / "ann.toml").unlink()

    assert files.changed() == (Ref("rider", "ann"),)
    assert files.read(Ref("rider", "ann")) is None
    files.forget_listing()
    assert files.listing("rider") == ()


def test_a_bike_that_changes_changes_how_its_sessions_are_read(tmp_path: Path) -> None:
    root = write(tmp_path, **{ONE: session()})
    files = GarageFiles(root)
    ref = Ref("session", "2026-05-16-1-plain")
    before = files.read(ref)
    assert before is not None
    assert before.troubles == ()

    bike = root / "bikes" / "plain.toml"
    bike.write_text(
        bike.read_text().replace('kind = "level"\nlevels = [0, 10]\nmost_help = 10', 'kind = "switch"')
    )
    loaded = files.read(ref)

    assert loaded is not None
    assert [trouble.path for trouble in loaded.troubles] == [("setup", "controls", "traction")]


def test_a_session_of_a_bike_that_is_not_there_is_read_without_it(tmp_path: Path) -> None:
    root = write(tmp_path, **{ONE: session(bike='"ghost"')})

    loaded = GarageFiles(root).read(Ref("session", "2026-05-16-1-plain"))

    assert loaded is not None
    assert isinstance(loaded.record, Session)
    assert loaded.record.setup.controls["traction"] == 5


@every(
    ("content", "line", "said"),
    [
        (b"name = 'x'\nwet_mass == 3\n", 2, "TOML"),
        (b"name = 'x'\nnote = '\xff'\n", 2, "UTF-8"),
        (b"a = 1\na = 2\n", 2, "TOML"),
        (b"\x00\x01\x02", 1, "TOML"),
    ],
)
def test_a_file_that_cannot_be_parsed_is_lost_with_its_line(
    tmp_path: Path, content: bytes, line: int, said: str
) -> None:
    root = write(tmp_path)
    (root / "bikes" / "plain.toml").write_bytes(content)

    loaded = GarageFiles(root).read(Ref("bike", "plain"))

    assert loaded is not None
    assert loaded.record is None
    assert loaded.data == {}
    (trouble,) = loaded.troubles
    assert (trouble.file, trouble.line) == ("bikes/plain.toml", line)
    assert said in trouble.expected
    assert (root / "bikes" / "plain.toml").read_bytes() == content


def test_a_record_that_is_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    root = write(tmp_path)
    os.mkfifo(root / "bikes" / "pipe.toml")

    loaded = GarageFiles(root).read(Ref("bike", "pipe"))

    assert loaded is not None
    assert loaded.troubles[0].found == "not a plain file"


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to root")
def test_a_file_that_may_not_be_read_is_lost_and_said(tmp_path: Path) -> None:
    root = write(tmp_path)
    (root / "bikes" / "plain.toml").chmod(0)

    loaded = GarageFiles(root).read(Ref("bike", "plain"))

    assert loaded is not None
    assert loaded.troubles[0].found == "no permission"


def test_a_folder_with_the_name_of_a_record_is_no_record(tmp_path: Path) -> None:
    root = write(tmp_path)
    (root / "bikes" / "folder.toml").mkdir()

    files = GarageFiles(root)

    assert files.listing("bike") == (Ref("bike", "plain"),)
    assert files.read(Ref("bike", "folder")) is None


def test_a_bad_value_loses_only_itself_and_is_said_with_place_and_mend(tmp_path: Path) -> None:
    text = session().replace("[setup", 'air = "14,5 C"\nfuel_added = 4\n\n[setup')
    root = write(tmp_path, **{ONE: text})

    loaded = GarageFiles(root).read(Ref("session", "2026-05-16-1-plain"))

    assert loaded is not None
    assert isinstance(loaded.record, Session)
    assert loaded.record.air is None
    assert loaded.record.setup.controls["traction"] == 5
    air, fuel = loaded.troubles
    name = "sessions/2026/2026-05-16-1-plain.toml"
    assert (air.file, air.line, air.path) == (name, 8, ("air",))
    assert "14,5 C" in air.found
    assert "temperature" in air.expected
    assert air.mend == 'write "14.5 C"'
    assert (fuel.line, fuel.path, fuel.found) == (9, ("fuel_added",), "4")
    assert '"4 l"' in fuel.mend


def test_an_unknown_key_is_kept_and_noted_with_its_line(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann='name = "Ann"\nshoe_size = 41\n\n[pets.dog]\nname = "Rex"\n')

    loaded = GarageFiles(root).read(Ref("rider", "ann"))

    assert loaded is not None
    assert loaded.troubles == ()
    assert [(note.line, note.path) for note in loaded.unknown] == [(2, ("shoe_size",)), (4, ("pets",))]
    assert loaded.unknown[0].found.startswith("shoe_size,")
    assert loaded.data["shoe_size"] == 41


@every(
    ("text", "newer"),
    [
        ("schema = 1\n", False),
        ("schema = 2\n", True),
        ("", False),
        ('schema = "x"\n', False),
        ("schema = 2 # from a friend\n[units\n", True),
        ("schema = 1\n[units\n", False),
        ("[units\n", False),
    ],
)
def test_a_newer_format_is_known_also_where_the_garages_own_file_is_lost(
    tmp_path: Path, text: str, newer: bool
) -> None:
    assert is_newer(GarageFiles(write(tmp_path, garage=text))) is newer


@every("kind", ["absent", "file", "empty", "folder in its place"])
def test_what_is_no_garage_is_said_with_what_to_do(tmp_path: Path, kind: str) -> None:
    root = tmp_path / "place"
    if kind == "file":
        root.write_text("")
    elif kind != "absent":
        root.mkdir()
    if kind == "folder in its place":
        (root / "garage.toml").mkdir()

    problem = GarageFiles(root).problem()

    assert problem is not None
    assert str(root) in problem.found
    assert "paddock-tui new" in problem.mend
    assert list(GarageFiles(root).all()) == [GARAGE]
    assert GarageFiles(root).garage().name is None


def test_a_garage_is_one_and_its_own_record_is_read(garage: Path) -> None:
    files = GarageFiles(garage)

    assert files.problem() is None
    assert files.garage().name == "The shed by the allotments"


def test_reading_everything_writes_nothing(garage: Path) -> None:
    before = snapshot(garage)
    files = GarageFiles(garage)

    assert all(files.read(ref) is not None for ref in files.all())
    assert snapshot(garage) == before
    assert not (garage / ".paddock").exists()


def test_mentioning_finds_the_records_whose_text_holds_a_name(garage: Path) -> None:
    found = set(mentioning(GarageFiles(garage), "magpie-wet"))

    assert Ref("session", "2026-05-16-5-magpie") in found
    assert Ref("profile", "badger-ines-dry") not in found


def test_mentioning_survives_a_file_that_goes(garage: Path) -> None:
    files = GarageFiles(garage)
    files.listing("bike")
    shutil.rmtree(garage / "bikes")

    assert Ref("session", "2026-05-16-5-magpie") in set(mentioning(files, "magpie"))


def test_a_new_session_goes_into_the_folder_of_its_year(tmp_path: Path) -> None:
    files = GarageFiles(tmp_path)

    assert files.path_for(Ref("session", "2026-05-16-1-plain")) == (
        tmp_path / "sessions" / "2026" / "2026-05-16-1-plain.toml"
    )
    assert files.path_for(Ref("session", "tryout")) == tmp_path / "sessions" / "other" / "tryout.toml"
    assert files.path_for(Ref("tyres", "x")) == tmp_path / FOLDERS["tyres"] / "x.toml"
