"""A link that leaves the garage is not read or written until it was allowed; one that stays is followed."""

import os
from pathlib import Path

import pytest

from paddock_tui.records.edits import Change, Create, Edit, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.outcomes import NotSaved, Saved
from paddock_tui.store.saving import save
from tests.attacks.trap import Trap, trap

OUT = Ref("rider", "out")


@pytest.fixture
def attack(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Trap:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return trap(tmp_path)


def renaming(name: str) -> Step:
    return Step("", (Change(OUT, (Edit(("name",), "Out", name),)),))


def test_a_record_that_is_a_link_out_is_a_problem_till_its_target_is_allowed(attack: Trap) -> None:
    attack.victim.write_text('name = "Out"\n')
    (attack.root / "riders" / "out.toml").symlink_to(attack.victim)
    files = attack.files()

    (stray,) = files.strays()
    assert stray.file == "riders/out.toml"
    assert stray.found == f"a link that leads out of the garage, to {attack.victim}"
    assert files.read(OUT) is None
    assert isinstance(save(files, renaming("evil")), NotSaved)
    assert attack.victim.read_text() == 'name = "Out"\n'

    assert files.leads_out("riders/out.toml") == attack.victim
    files.allow(attack.victim)

    again = attack.files()
    assert again.strays() == ()
    assert again.data(OUT)["name"] == "Out"
    assert isinstance(save(again, renaming("mine")), Saved)
    assert attack.victim.read_text() == 'name = "mine"\n'
    assert (attack.root / "riders" / "out.toml").is_symlink()
    assert not list(attack.root.rglob("*links*"))


def test_what_was_allowed_for_one_garage_or_target_is_not_for_another(attack: Trap, tmp_path: Path) -> None:
    (attack.root / "riders" / "out.toml").symlink_to(attack.victim)
    attack.files().allow(attack.victim.with_name("other"))

    assert len(attack.files().strays()) == 1

    other = trap(tmp_path / "second")
    attack.files().allow(attack.victim)
    (other.root / "riders" / "out.toml").symlink_to(attack.victim)
    assert attack.files().strays() == ()
    assert len(other.files().strays()) == 1


@pytest.mark.parametrize("folder", ["riders", "sessions/2027"])
def test_nothing_is_made_through_a_folder_that_is_a_link_out(attack: Trap, folder: str) -> None:
    place = attack.root / folder
    if place.exists():
        for one in place.iterdir():
            one.unlink()
        place.rmdir()
    place.symlink_to(attack.victim.parent)
    files = attack.files()

    kind, name = ("rider", "bo") if folder == "riders" else ("session", "2027-01-01-1-plain")
    outcome = save(files, Step("", (Create(Ref(kind, name), 'name = "B"\n'),)))

    assert isinstance(outcome, NotSaved)
    assert "leads out of the garage" in outcome.reason
    assert attack.unharmed()
    assert [one.file for one in files.strays()] == [folder]


def test_a_link_inside_the_garage_is_followed(attack: Trap) -> None:
    (attack.root / "shared").mkdir()
    (attack.root / "shared" / "person.toml").write_text('name = "Out"\n')
    (attack.root / "riders" / "out.toml").symlink_to("../shared/person.toml")
    files = attack.files()

    assert isinstance(save(files, renaming("In")), Saved)

    assert (attack.root / "shared" / "person.toml").read_text() == 'name = "In"\n'
    assert (attack.root / "riders" / "out.toml").is_symlink()


def test_a_link_into_the_private_folder_is_no_record(attack: Trap) -> None:
    (attack.private / "x.toml").write_text('name = "x"\n')
    (attack.root / "riders" / "out.toml").symlink_to("../.paddock/x.toml")

    assert attack.files().read(OUT) is None
    assert [one.found for one in attack.files().strays()] == ["a link into the tool's own folder"]


def test_a_garage_behind_a_link_is_used_as_it_is(attack: Trap, tmp_path: Path) -> None:
    (tmp_path / "way").symlink_to(attack.root)
    here = Trap(tmp_path / "way", attack.private, attack.victim)

    assert isinstance(here.save("Plain", "x"), Saved)
    assert 'name = "x"' in (attack.root / "bikes" / "plain.toml").read_text()


def test_a_folder_swapped_for_a_link_between_look_and_write_is_not_written_through(
    attack: Trap, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The swap comes after the file was read and checked, right before the new one takes its place."""
    from paddock_tui.store import system_calls

    (attack.victim.parent / "plain.toml").write_text("theirs")
    real = system_calls.sync
    done = [False]

    def swapping(file: int) -> None:
        real(file)
        if not done[0] and not os.path.isdir(f"/proc/self/fd/{file}"):  # noqa: PTH112
            done[0] = True
            (attack.root / "bikes").rename(attack.root / "moved")
            (attack.root / "bikes").symlink_to(attack.victim.parent)

    monkeypatch.setattr(system_calls, "sync", swapping)

    attack.save("Plain", "x")

    assert done[0]
    assert (attack.victim.parent / "plain.toml").read_text() == "theirs"


def test_a_rename_goes_nowhere_else(attack: Trap) -> None:
    outcome = save(attack.files(), Step("", (Rename(Ref("bike", "plain"), "other"),)))

    assert isinstance(outcome, Saved)
    assert attack.unharmed()
    assert (attack.root / "bikes" / "other.toml").exists()
