"""`enter`: one line in, all of it kept as one step of one record, or nothing and every reason."""

from pathlib import Path

from tests.commands.running import FILE, NEXT, Runner, spoil
from tests.small import snapshot

NOW = "2026-06-20T13:45"


def test_a_line_is_kept_whole_and_each_value_is_said(run: Runner, garage: Path) -> None:
    before = (garage / FILE).read_text()

    line = "t4 sl+1 hot 2.38 2.05 ago 4 laps 1:42.3 1:44,310 out note rear slid"
    ran = run("enter", garage, line, "--at", NOW)

    assert (ran.status, ran.err) == (0, "")
    assert ran.out.splitlines() == [
        "traction control 3 -> 4 (more help)",
        "slide control 3 -> 4 (more help)",
        "hot front not known -> 2.38 bar",
        "hot rear not known -> 2.05 bar",
        "parked not known -> 13:41",
        "lap 1 not known -> 1:42.3",
        "lap 2 not known -> 1:44.310 out",
        "note 1 not known -> rear slid",
        "time of note 1 not known -> 13:45",
    ]
    after = (garage / FILE).read_text()
    assert "traction = 4                # as it was in the dry" in after
    assert after.endswith(
        '[pressures.hot]\nfront = "2.38 bar"\nrear = "2.05 bar"\n\n'
        '[laps]\n1 = "1:42.3"\n2 = "1:44.310 out"\n\n'
        '[notes.1]\ntext = "rear slid"\nat = 13:45:00\n'
    )
    assert len(after.splitlines()) == len(before.splitlines()) + 13


def test_what_stands_already_changes_nothing(run: Runner, garage: Path) -> None:
    before = snapshot(garage)

    ran = run("enter", garage, "t3 wet", "--at", NOW)

    assert (ran.status, ran.out, ran.err) == (0, "nothing to change\n", "")
    assert snapshot(garage) == before


def test_a_preview_says_the_same_and_changes_nothing(run: Runner, garage: Path) -> None:
    before = snapshot(garage)

    shown = run("enter", garage, "t4 damp", "--at", NOW, "--preview")

    said = "traction control 3 -> 4 (more help)\nsurface wet -> damp\n"
    assert (shown.status, shown.out, shown.err) == (0, said, "")
    assert snapshot(garage) == before
    assert run("enter", garage, "t4 damp", "--at", NOW).out == shown.out


def test_a_wrong_piece_and_a_question_are_marked_and_nothing_is_changed(run: Runner, garage: Path) -> None:
    before = snapshot(garage)

    ran = run("enter", garage, "t4 hott 2.38 2.05 comp 3", "--at", NOW)

    assert (ran.status, ran.out) == (3, "")
    assert ran.err.splitlines() == [
        "t4 hott 2.38 2.05 comp 3",
        "   ^^^^",
        'there is no short name "hott"',
        "  did you mean hot?",
        "t4 hott 2.38 2.05 comp 3",
        "                  ^^^^^^",
        "compression 3: front or rear?",
        "  front: t4 hott 2.38 2.05 comp 3 -",
        "  rear: t4 hott 2.38 2.05 comp - 3",
        "nothing was changed",
    ]
    assert snapshot(garage) == before


def test_a_pressure_far_from_the_one_before_on_this_bike_asks_for_its_unit(run: Runner, garage: Path) -> None:
    ran = run("enter", garage, "hot 3.1 2.31", "--at", NOW)

    assert ran.status == 3
    assert "hot front 3.1 bar, while the last was 2.46 bar?" in ran.err
    assert "  yes, 3.1 bar: hot 3.1 bar 2.31" in ran.err
    assert run("enter", garage, "hot 3.1 bar 2.31", "--at", NOW).status == 0


def test_another_record_is_named(run: Runner, garage: Path) -> None:
    profile = run("enter", garage, "made-for damp t2", "--session", "profile/magpie-ines-dry")
    rider = run("enter", garage, "weight 65,5", "--session", "rider/ines")

    assert (profile.status, profile.out) == (0, "made for dry -> damp\ntraction control 5 -> 2 (less help)\n")
    assert (rider.status, rider.out) == (0, "weight in kit 64 kg -> 65.5 kg\n")


def test_what_the_riding_mode_fixes_is_refused_with_why(run: Runner, garage: Path) -> None:
    ran = run("enter", garage, "mode homing fa3", "--at", NOW)

    assert ran.status == 3
    assert "front ABS is fixed at 4 by the riding mode homing" in ran.err
    assert ran.err.endswith("nothing was changed\n")


def test_what_the_desk_refuses_is_refused_here_too(run: Runner, garage: Path) -> None:
    ran = run("enter", garage, "went 1330 parked 1320", "--at", NOW)

    assert ran.status == 3
    assert ran.err.startswith("parked: ")
    assert ran.err.endswith("nothing was changed\n")


def test_an_empty_line_is_wrong_usage(run: Runner, garage: Path) -> None:
    ran = run("enter", garage, "  ")

    assert (ran.status, ran.out) == (64, "")
    assert ran.err.startswith("an empty line")


def test_a_record_that_is_not_there_or_cannot_be_read_is_said(run: Runner, garage: Path) -> None:
    assert run("enter", garage, "t4", "--session", "session/none").status == 3

    spoil(garage, "number = 4\n", "number = \n")
    ran = run("enter", garage, "t4", "--session", NEXT)

    assert (ran.status, ran.out) == (3, "")
    assert ran.err.endswith("nothing was changed\n")


def test_without_a_session_in_hand_it_says_so(run: Runner, tmp_path: Path) -> None:
    run("new", tmp_path / "empty")

    ran = run("enter", tmp_path / "empty", "t4")

    assert ran.status == 3
    assert "there is no session to enter it in" in ran.err


def test_a_call_of_the_bikes_file_that_clashes_is_said_and_the_built_in_one_is_read(
    run: Runner, garage: Path
) -> None:
    old = "[controls.slide]\n"
    spoil(garage, old, old + 'call = "t"\n', "bikes/magpie.toml")

    ran = run("enter", garage, "t4", "--at", NOW)

    assert (ran.status, ran.out) == (0, "traction control 3 -> 4 (more help)\n")
    assert 'the call "t": expected a word that nothing else has' in ran.err


def test_control_characters_of_a_line_never_reach_the_terminal(run: Runner, garage: Path) -> None:
    ran = run("enter", garage, "t4 \x1b[2Jzz\u202e", "--at", NOW)

    assert ran.status == 3
    assert "\x1b" not in ran.err
    assert "\u202e" not in ran.err


def test_what_the_screen_would_ask_of_laps_is_refused_with_the_question_and_yes_takes_it(
    run: Runner, garage: Path
) -> None:
    before = snapshot(garage)

    for line, asked in (
        ("laps 1:46.0 1:46.4", "session 4 has not gone out: are these its laps?"),
        ("ago 4 laps 1:46.0 1:46.4 2:14.9", "lap 3, 2:14.9, is far from the others, about 1:46.0"),
        ("ago 4 laps 423 45.1", "lap 2, 45.1, is far from the others, about 1:42.3"),
    ):
        ran = run("enter", garage, line, "--at", NOW)

        assert ran.status == 3
        assert asked in ran.err
        assert "--yes takes it" in ran.err
        assert snapshot(garage) == before
    ran = run("set", garage, str(NEXT), "laps.1=45.1")
    assert (ran.status, "lap 1, 45.1, is far from the usual" in ran.err) == (3, True)
    assert snapshot(garage) == before

    assert run("enter", garage, "ago 4 laps 423 45.1", "--at", NOW, "--yes").status == 0
    assert '2 = "45.1"' in (garage / FILE).read_text()


def test_the_short_names_can_be_listed_with_what_each_sets(run: Runner, garage: Path) -> None:
    before = snapshot(garage)

    ran = run("enter", str(garage), "--list")

    assert ran.status == 0
    said = ran.out.splitlines()
    assert "t                 traction control" in said
    assert "comp              compression (also compression)" in said
    assert not any(line.startswith("compression ") for line in said)
    assert snapshot(garage) == before
