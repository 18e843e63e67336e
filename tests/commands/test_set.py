"""`set`: values in, exactly those lines changed, or nothing and every reason."""

from pathlib import Path

import pytest

from paddock_tui.store import writing
from paddock_tui.store.errors import NotWritten
from tests.commands.running import FILE, NEXT, Runner, spoil
from tests.every import every
from tests.small import changed_lines, snapshot


def test_six_levels_four_adjusters_and_two_pressures_change_exactly_those_lines(
    run: Runner, garage: Path
) -> None:
    path = garage / FILE
    before = path.read_text()

    ran = run(
        "set",
        garage,
        NEXT,
        "setup.controls.traction=6",
        "setup.controls.slide=5",
        "setup.controls.front-abs=3",
        "setup.controls.rear-abs=2",
        "setup.controls.engine-braking=2",
        "setup.controls.throttle=gentle",
        "setup.adjusters.front-preload=7,25",
        "setup.adjusters.rear-preload=4.5",
        "setup.adjusters.front-rebound=11",
        "setup.offsets.kerbs=-1",
        "setup.front_start=30 psi",
        "setup.rear_start=28,5 psi",
    )

    assert (ran.status, ran.err) == (0, "")
    assert changed_lines(before, path.read_text()) == [
        ('front_start = "2.15 bar"', 'front_start = "30 psi"'),
        ('rear_start = "1.95 bar"', 'rear_start = "28.5 psi"'),
        (
            "traction = 3                # as it was in the dry",
            "traction = 6                # as it was in the dry",
        ),
        ("slide = 3", "slide = 5"),
        ("front-abs = 4", "front-abs = 3"),
        ("rear-abs = 3", "rear-abs = 2"),
        ("engine-braking = 3", "engine-braking = 2"),
        ('throttle = "even"', 'throttle = "gentle"'),
        ("front-preload = 6.5", "front-preload = 7.25"),
        ("rear-preload = 4", "rear-preload = 4.5"),
        (
            "front-rebound = 9           # for by-hand; live damping does its own",
            "front-rebound = 11           # for by-hand; live damping does its own",
        ),
        ("kerbs = 0", "kerbs = -1"),
    ]
    assert ran.out.splitlines()[0] == "traction control 3 -> 6 (more help)"
    assert "front start pressure 2.15 bar -> 30 psi" in ran.out
    assert len(ran.out.splitlines()) == 12


def test_a_value_that_was_not_there_is_one_line_more_and_clearing_it_one_less(
    run: Runner, garage: Path
) -> None:
    path = garage / FILE
    before = path.read_text()

    assert run("set", garage, NEXT, "track=12", "setup.controls.wheelie=4").out == (
        "track temperature not known -> 12 °C\nwheelie control not known -> 4\n"
    )
    added = set(path.read_text().splitlines()) - set(before.splitlines())
    assert added == {'track = "12 C"', "wheelie = 4"}
    assert run("set", garage, NEXT, "track=", "setup.controls.wheelie=").status == 0
    assert path.read_text() == before


def test_line_endings_mark_and_spacing_stay(run: Runner, garage: Path) -> None:
    path = garage / "riders" / "ines.toml"
    before = b'\xef\xbb\xbfname   =   "Ines"   # odd\r\n\r\n\r\nweight = "64 kg"'
    path.write_bytes(before)

    assert run("set", garage, "ines", "weight=65").status == 0

    assert path.read_bytes() == before.replace(b"64 kg", b"65 kg")


def test_bare_numbers_are_in_the_units_of_the_rider_in_hand(run: Runner, garage: Path) -> None:
    ran = run("set", garage, "2026-06-20-2-otter", "top_speed=120", "setup.front_start=27")

    assert ran.status == 0
    assert "-> 120 mph" in ran.out
    assert "-> 27 psi" in ran.out
    assert "-> 20 km/h" in run("set", garage, NEXT, "wind=20").out


def test_what_stands_there_already_is_nothing_to_change(run: Runner, garage: Path) -> None:
    before = snapshot(garage)

    ran = run("set", garage, NEXT, "setup.controls.traction=3")

    assert (ran.status, ran.out) == (0, "nothing to change\n")
    assert snapshot(garage) == before


def test_a_text_with_a_semicolon_is_said_in_one_piece(run: Runner, garage: Path) -> None:
    ran = run("set", garage, NEXT, "aim=smooth; late", "fatigue=3")

    assert ran.out.splitlines() == [
        "aim drive out of 7 on the line, leave 4 alone -> smooth; late",
        "fatigue 2 -> 3",
    ]


def test_what_can_be_read_is_kept_even_where_it_cannot_be_so(run: Runner, garage: Path) -> None:
    assert run("set", garage, NEXT, "setup.adjusters.front-rebound=99").status == 0
    assert run("set", garage, NEXT, "setup.controls.traction=99").status == 0
    assert run("check", garage).status == 2


def test_what_the_screen_would_ask_about_is_refused_until_yes(run: Runner, garage: Path) -> None:
    asked = run("set", garage, NEXT, "pressures.cold.front=31 bar")
    assert (asked.status, asked.out) == (3, "")
    assert "front cannot be 31 bar (psi or a decimal point?)" in asked.err
    units = run("set", garage, NEXT, "pressures.cold.front=2.1 bar", "pressures.cold.rear=28 psi")
    assert (units.status, "two units in one entry?" in units.err) == (3, True)
    assert run("set", garage, NEXT, "pressures.cold.front=31 bar", "--yes").status == 0
    assert run("set", garage, NEXT, "pressures.cold.front=2.4 bar").status == 0
    cold = run("set", garage, NEXT, "pressures.hot.front=2.2 bar")
    assert (cold.status, "2.2 bar hot is below 2.4 bar cold" in cold.err) == (3, True)


@every(
    ("assignment", "said"),
    [
        ("setup.controls.traction=x", '"x": expected a level from 0 to 10, or off'),
        ("setup.controls.traction=3.5", "expected a level from 0 to 10"),
        ("setup.controls.throttle=wild", "expected crisp, even or gentle"),
        ("setup.mode=gone", "homing, soaring, wading, wild"),
        ("setup.fork_height=9**9**9 mm", "not one number and one unit"),
        ("setup.fork_height=5 kg", '"5 kg", a mass: expected a length'),
        ("setup.fork_height=5 furlongs per", "expected a length with its unit"),
        ("setup.front_start=2.1 m", "write bar, psi or kPa"),
        ("setup.front_start=5", 'write "5 bar" or "5 psi" or "5 kPa"'),
        ("setup.front_start=3", 'write "3 bar" if that is meant'),
        ("surface=icy", "dry"),
        ("start=25:00", "expected"),
        ("date=2026-02-30", "expected"),
        ("bike=../../x", "an id has lower-case letters"),
        ("laps.1=fast", "expected"),
        ("confidence=9", "expected"),
        ("traction=4", "do you mean setup.controls.traction?"),
        ("nonsense=4", "--paths"),
        ("setup=4", "a path of a session"),
    ],
)
def test_what_cannot_be_read_is_refused_with_the_mend_and_nothing_is_changed(
    run: Runner, garage: Path, assignment: str, said: str
) -> None:
    before = snapshot(garage)

    ran = run("set", garage, NEXT, "fatigue=4", assignment)

    assert (ran.status, ran.out) == (3, "")
    assert said in ran.err
    assert assignment.partition("=")[0] in ran.err
    assert ran.err.endswith("nothing was changed\n")
    assert snapshot(garage) == before


def test_all_troubles_of_one_command_are_said(run: Runner, garage: Path) -> None:
    ran = run("set", garage, NEXT, "setup.controls.traction=x", "air=3 kg", "nonsense=1", "fatigue=4")

    assert ran.status == 3
    assert [line.partition(":")[0] for line in ran.err.splitlines() if line[0] != " "] == [
        "setup.controls.traction",
        "air",
        '"nonsense"',
        "nothing was changed",
    ]


@every("words", [["setup"], ["=3"], [" =3"], []])
def test_words_that_are_no_path_and_value_are_wrong_usage(
    run: Runner, garage: Path, words: list[str]
) -> None:
    ran = run("set", garage, NEXT, *words)

    assert (ran.status, ran.out) == (64, "")
    assert "PATH=VALUE" in ran.err


def test_a_file_without_its_write_bit_is_refused_by_name_with_the_mend(run: Runner, garage: Path) -> None:
    before = snapshot(garage)
    (garage / FILE).chmod(0o444)

    ran = run("set", garage, NEXT, "fatigue=4")

    assert ran.status == 3
    assert ran.err == (
        f"not saved: {FILE}: the file is marked read-only\n  make it writable (chmod u+w), and try again\n"
    )
    assert snapshot(garage) == before


def test_a_disk_that_is_full_is_said_and_the_file_is_whole(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = snapshot(garage)

    def full(*_: object, **__: object) -> None:
        raise NotWritten("no space left on the disk")

    monkeypatch.setattr(writing, "replace_durably", full)

    ran = run("set", garage, NEXT, "fatigue=4")

    assert ran.status == 3
    assert "no space left on the disk" in ran.err
    assert snapshot(garage) == before


def test_a_garage_of_a_newer_program_is_shown_and_not_written(run: Runner, garage: Path) -> None:
    spoil(garage, "schema = 1", "schema = 2", "garage.toml")
    before = snapshot(garage)

    ran = run("set", garage, NEXT, "fatigue=4")

    assert ran.status == 3
    assert "newer" in ran.err
    assert "update this program" in ran.err
    assert snapshot(garage) == before
    assert run("show", garage, NEXT).status == 0


def test_a_lost_file_is_refused_with_its_line(run: Runner, garage: Path) -> None:
    (garage / "riders" / "ines.toml").write_text('name = "Ines"\nweight = 64 kg\n')

    ran = run("set", garage, "ines", "weight=65")

    assert ran.status == 3
    assert "riders/ines.toml:2: " in ran.err
    assert "put a value with a unit in quotes" in ran.err
    assert ran.err.endswith("nothing was changed\n")


def test_a_bad_value_beside_good_ones_is_mended_and_the_good_ones_stay(run: Runner, garage: Path) -> None:
    before = (garage / FILE).read_text()
    path = spoil(garage, 'air = "17 C"', 'air = "17,5 C"')

    ran = run("set", garage, NEXT, "air=17,5")

    assert (ran.status, ran.out) == (0, "air 17,5 °C -> 17.5 °C\n")
    assert changed_lines(before, path.read_text()) == [('air = "17 C"', 'air = "17.5 C"')]
