"""What others change is found at the next look where it is new or shown, and in its turn where it is old."""

import os
from pathlib import Path

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.turns import LATEST, SHARE, TURNS, Turns

MANY = LATEST + 2 * SHARE
REFS = [Ref("rider", f"r{number:04}") for number in range(MANY)]
OLD, EDITED, OTHER = REFS[5], REFS[6], REFS[7]


def test_every_record_has_its_turn_and_what_is_shown_each() -> None:
    turns = Turns()
    turns.watched = frozenset({OLD, Ref("rider", "gone")})
    turns.edited.add(EDITED)
    looks = [turns.next(REFS) for _ in range(2)]

    assert {ref for look in looks for ref in look} == set(REFS)
    assert all(OLD in look and EDITED in look for look in looks)
    assert all(set(REFS[-LATEST:]) <= set(look) for look in looks)
    assert sum(OTHER in look for look in looks) == 1


def test_a_great_many_take_more_looks_and_never_more_than_so_many() -> None:
    turns, refs = Turns(), [Ref("session", f"s{number:05}") for number in range(LATEST + 2 * TURNS * SHARE)]
    looks = [turns.next(refs) for _ in range(TURNS)]

    assert {ref for look in looks for ref in look} == set(refs)
    assert max(map(len, looks)) == LATEST + 2 * SHARE


def test_an_old_record_that_is_shown_is_found_at_the_next_look(tmp_path: Path) -> None:
    (tmp_path / "riders").mkdir()
    for ref in REFS:
        (tmp_path / "riders" / f"{ref.id}.toml").write_text('name = "a"\n', encoding="utf-8")
    files = GarageFiles(tmp_path)
    for ref in REFS:
        files.read(ref)
    files.watch([OLD])
    for ref in (OLD, OTHER):
        (tmp_path / "riders" / f"{ref.id}.toml").write_text('name = "another"\n', encoding="utf-8")

    looks = [files.changed() for _ in range(2)]

    assert OLD in looks[0]
    assert sum(OTHER in look for look in looks) == 1


def test_an_old_record_whose_file_is_replaced_is_found_at_the_next_look(tmp_path: Path) -> None:
    (tmp_path / "riders").mkdir()
    (tmp_path / "venues").mkdir()
    there = [*REFS, Ref("venue", "v")]
    for ref in there:
        (tmp_path / f"{ref.kind}s" / f"{ref.id}.toml").write_text('name = "a"\n', encoding="utf-8")
    files = GarageFiles(tmp_path)
    for ref in there:
        files.read(ref)
    files.changed()
    before = files.listing("rider")
    for at in range(5):
        (tmp_path / "beside").write_text(f'name = "b{at}"\n', encoding="utf-8")
        (tmp_path / "beside").replace(tmp_path / "riders" / f"{OLD.id}.toml")
        # Clocks of file systems are coarse: this look is in no case of the same tick as the one before.
        os.utime(tmp_path / "riders", ns=(at, at))

        assert files.changed() == (OLD,)
        assert files.data(OLD) == {"name": f"b{at}"}
    assert files.listing("rider") == before


def test_an_old_record_that_was_edited_here_is_found_at_the_next_look(tmp_path: Path) -> None:
    (tmp_path / "riders").mkdir()
    for ref in REFS:
        (tmp_path / "riders" / f"{ref.id}.toml").write_text('name = "a"\n', encoding="utf-8")
    files = GarageFiles(tmp_path)
    files.stage(OLD, {"name": "b"})
    files.unstage(OLD)
    for ref in REFS:
        files.read(ref)
    files.changed()
    for _ in range(2):
        (tmp_path / "riders" / f"{OLD.id}.toml").write_text('name = "another"\n', encoding="utf-8")
        assert OLD in files.changed()
        files.read(OLD)
        (tmp_path / "riders" / f"{OLD.id}.toml").write_text('name = "yet another"\n', encoding="utf-8")
        assert OLD in files.changed()
        files.read(OLD)
