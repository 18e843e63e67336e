"""Profiles and sessions: a set-up is taken over value by value, and saved with what it was made for."""

import tomllib
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.sessions.profiles import profiles_for, saving_as, taking
from paddock_tui.records.edits import Create, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Saved
from tests.desk.opened import NEXT, at_desk, names
from tests.every import every
from tests.small import changed_lines, session, snapshot, write

WET = Ref("profile", "magpie-ines-wet")
FILE = "sessions/2026/2026-06-20-4-magpie.toml"
A, P = Ref("session", "a"), Ref("profile", "p")

SET_UP = """
[setup]
mode = "open"    # the one we know
damping = "by-hand"

[setup.controls]
traction = 5     # as before
wheelie = 2

# counted at the gate
[setup.adjusters]
front-rebound = 12
"""


def taken(desk: Desk, session_: Ref, profile: Ref) -> Step:
    step = taking(desk.files, session_, profile)
    assert isinstance(step, Step), step
    desk.do(step)
    outcomes = desk.settled()
    assert all(isinstance(outcome, Saved) for outcome in outcomes), outcomes
    return step


def small(root: Path, profile: str, mine: str = SET_UP) -> Path:
    text = session().split("\n\n")[0] + "\n" + mine
    return write(root, sessions__a=text, profiles__p=profile)


def test_the_profiles_of_the_bike_are_offered_the_riders_own_first_and_no_retired_ones(
    garage: Path,
) -> None:
    files = at_desk(garage).files

    assert names(profiles_for(files, NEXT)) == ["magpie-ines-dry", "magpie-ines-wet"]
    (garage / "profiles" / "magpie-all.toml").write_text('bike = "magpie"\nrider = "tobin"\n')
    files.forget_listing()
    assert names(profiles_for(files, NEXT))[-1] == "magpie-all"


def test_taking_makes_the_set_ups_the_same_and_notes_where_it_is_from(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)

    step = taken(desk, NEXT, WET)

    assert step.label == "took over profile magpie-ines-wet"
    mine, other = desk.files.data(NEXT), desk.files.data(WET)
    assert mine["setup"] == other["setup"]
    assert mine["taken_from"] == "magpie-ines-wet"
    assert set(mine) - set(tomllib.loads(before[FILE].decode())) == {"taken_from"}
    assert {name for name, text in snapshot(garage).items() if text != before[name]} == {FILE}
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_only_lines_that_differ_change_and_comments_stay(tmp_path: Path) -> None:
    other = SET_UP.replace("traction = 5     # as before", "traction = 8")
    root = small(tmp_path, 'bike = "plain"\n' + other)
    before = (root / "sessions" / "a.toml").read_text()
    desk = at_desk(root)

    taken(desk, A, P)
    desk.close()

    after = (root / "sessions" / "a.toml").read_text().replace('taken_from = "p"\n', "")
    assert changed_lines(before, after) == [("traction = 5     # as before", "traction = 8     # as before")]


def test_what_the_profile_does_not_say_is_not_known_afterwards_and_what_it_adds_is(tmp_path: Path) -> None:
    other = (
        'bike = "plain"\n[setup]\npreset = "calm"\n[setup.controls]\ntraction = 5\n[setup.offsets]\nx = 1\n'
    )
    root = small(tmp_path, other)
    before = snapshot(root)
    desk = at_desk(root)

    taken(desk, A, P)

    assert desk.files.data(A)["setup"] == tomllib.loads(other)["setup"]
    assert b"# as before" in snapshot(root)["sessions/a.toml"]
    desk.undo()
    desk.close()
    assert snapshot(root) == before


def test_a_whole_number_and_a_fraction_are_two_values(tmp_path: Path) -> None:
    root = small(tmp_path, 'bike = "plain"\n' + SET_UP.replace("= 12", "= 12.0"))
    desk = at_desk(root)

    taken(desk, A, P)
    desk.close()

    assert "front-rebound = 12.0\n" in (root / "sessions" / "a.toml").read_text()


def test_taking_the_same_profile_again_changes_nothing(tmp_path: Path) -> None:
    desk = at_desk(small(tmp_path, 'bike = "plain"\n' + SET_UP))
    taken(desk, A, P)

    assert taking(desk.files, A, P) == Step("took over profile p", ())
    desk.close()


@every(
    ("profile", "found"),
    [
        ('bike = "badger"\n[setup]\nlinks = 110\n', "p is for badger"),
        ("[setup]\nlinks = 110\n", "p is for no bike yet"),
        ('bike = "plain"\n', "p has no set-up that can be read"),
        ('bike = "plain"\n[setup]\n', "p has no set-up that can be read"),
        ('bike = "plain"\nsetup = 3\n', "p has no set-up that can be read"),
        ("bike = = 1\n", "p is for no bike yet"),
    ],
)
def test_a_profile_of_another_bike_or_without_a_set_up_is_refused(
    tmp_path: Path, profile: str, found: str
) -> None:
    root = small(tmp_path, profile)
    before = snapshot(root)

    trouble = taking(at_desk(root).files, A, P)

    assert isinstance(trouble, InputError)
    assert trouble.found == found
    assert trouble.mend
    assert snapshot(root) == before


def test_a_session_whose_set_up_cannot_be_read_or_that_has_no_bike_is_refused(tmp_path: Path) -> None:
    root = small(tmp_path / "1", 'bike = "plain"\n' + SET_UP, "setup = 3\n")
    trouble = taking(at_desk(root).files, A, P)
    assert isinstance(trouble, InputError)
    assert trouble.found.startswith("a has no set-up")

    root = write(tmp_path / "2", sessions__a="number = 1\n", profiles__p='name = "P"\n[setup]\nlinks = 110\n')
    assert isinstance(taking(at_desk(root).files, A, P), InputError)


def test_a_session_is_saved_with_its_set_up_its_rider_and_the_surface_it_was_made_for(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    step = saving_as(desk.files, NEXT, "rain-at-noon", "Rain at noon")
    assert isinstance(step, Step)

    desk.do(step)
    assert [type(outcome) for outcome in desk.settled()] == [Saved]

    ref = Ref("profile", "rain-at-noon")
    loaded = desk.files.read(ref)
    assert loaded is not None
    assert (loaded.troubles, loaded.unknown) == ((), ())
    data = dict(desk.files.data(ref))
    assert data.pop("setup") == desk.files.data(NEXT)["setup"]
    assert data == {
        "name": "Rain at noon",
        "bike": "magpie",
        "rider": "ines",
        "made_for": "wet",
        "taken_from": NEXT.id,
    }
    # Taken back into the session it changes nothing but the note of where it is from.
    (change,) = taken(desk, NEXT, ref).changes
    assert [edit.path for edit in change.edits] == [("taken_from",)]  # type: ignore[union-attr]
    desk.undo()
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_what_is_not_known_of_a_session_is_left_out_of_its_profile(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__a='bike = "plain"\nsurface = 3\n'))

    step = saving_as(desk.files, A, "q", "Q")

    assert isinstance(step, Step)
    assert step.changes == (Create(Ref("profile", "q"), 'name = "Q"\nbike = "plain"\ntaken_from = "a"\n'),)


@every("name", ["", "magpie-ines-wet", "Wet", "../x", "a b"])
def test_a_bad_or_taken_name_saves_nothing(garage: Path, name: str) -> None:
    before = snapshot(garage)

    trouble = saving_as(at_desk(garage).files, NEXT, name, name)

    assert isinstance(trouble, InputError)
    assert trouble.expected
    assert snapshot(garage) == before
