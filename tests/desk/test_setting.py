"""What is typed at a path becomes one step, or all its troubles at once."""

from pathlib import Path

from paddock_tui.desk.edits.values import clearing, setting_value
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Edit
from paddock_tui.records.paths import Ref, spell
from tests.desk.opened import NEXT, at_desk, refused, typed
from tests.every import every
from tests.small import session, snapshot, write

ONE = Ref("session", "one")
FOREIGN = Units(pressure="psi", speed="mph", temperature="F", mass="lb", distance="mi", volume="US gal")


def value(root: Path, path: str, text: str, units: Units | None = None) -> object:
    """Give what a text typed at a path of a session would store."""
    desk = at_desk(write(root, sessions__one=session()))
    (change,) = typed(desk, ONE, (path, text), units=units).changes
    assert isinstance(change, Change)
    return change.edits[0].new


def test_several_values_are_one_step_with_one_label(garage: Path) -> None:
    desk = at_desk(garage)

    step = typed(desk, NEXT, ("setup.controls.traction", "6"), ("surface", "dry"), ("fatigue", "2"))

    assert step.changes == (
        Change(NEXT, (Edit(("setup", "controls", "traction"), 3, 6), Edit(("surface",), "wet", "dry"))),
    )
    assert step.label == "traction control 3 -> 6 (more help); surface wet -> dry"


def test_all_troubles_are_said_at_once_and_nothing_is_half_done(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)

    said = refused(
        desk,
        NEXT,
        ("setup.controls.traction", "x"),
        ("fatigue", "4"),
        ("setup.fork_height", "9**9**9 mm"),
        ("air", "3 kg"),
        ("nonsense", "1"),
        ("setup", "1"),
        ("", "1"),
        ("a..b", "1"),
        ("fatigue", "5"),
    )

    assert len(said) == 8
    assert said[0] == '"x": expected a level from 0 to 10, or off'
    assert "not one number and one unit" in said[1]
    assert said[1].endswith(' mm"')
    assert "3 kg" in said[2]
    assert all("a path of a session" in one for one in said[3:7])
    assert said[7] == "a second value for it: expected each value once"
    desk.close()
    assert snapshot(garage) == before


def test_a_path_that_leaves_out_the_tables_before_it_is_helped_with(garage: Path) -> None:
    desk = at_desk(garage)

    (said,) = refused(desk, NEXT, ("front-preload", "5"))

    assert "do you mean setup.adjusters.front-preload?" in said


def test_an_empty_text_clears_to_not_known(garage: Path) -> None:
    desk = at_desk(garage)

    assert typed(desk, NEXT, ("air", "")) == clearing(desk.files, NEXT, ("air",))
    step = typed(desk, NEXT, ("air", "  "), ("track", ""))

    assert step.changes == (Change(NEXT, (Edit(("air",), "17 C", MISSING),)),)
    assert step.label == "air 17 C -> not known"


def test_what_stands_there_already_is_no_change(garage: Path) -> None:
    desk = at_desk(garage)

    step = typed(desk, NEXT, ("air", "17 C"), ("setup.controls.traction", "3"))

    assert step.changes == ()
    assert step.label == "nothing to change"


@every(
    ("path", "text", "units", "stored"),
    [
        ("air", "20", None, "20 C"),
        ("air", "68", FOREIGN, "68 F"),
        ("air", "20 C", FOREIGN, "20 C"),
        ("air", "hot", FOREIGN, "hot"),
        ("track", "-2,5", None, "-2.5 C"),
        ("wind", "7", FOREIGN, "7 mph"),
        ("wind", "7", None, "7 km/h"),
        ("fuel_added", "2", FOREIGN, "2 US gal"),
        ("distance", "12,5", FOREIGN, "12.5 mi"),
        ("setup.fork_height", "5", FOREIGN, "5 mm"),
        ("planned_time", "20", FOREIGN, "20 min"),
        ("setup.front_start", "2,10", None, "2.10 bar"),
        ("setup.front_start", "2.1", FOREIGN, "2.1 bar"),
        ("setup.front_start", "30", None, "30 psi"),
        ("setup.front_start", "210", None, "210 kPa"),
        ("setup.front_start", "30,5 psi", None, "30.5 psi"),
        ("pressures.hot.front", "35", None, "35 psi"),
        ("setup.controls.traction", "off", None, "off"),
        ("setup.controls.wheelie", "2", None, 2),
        ("setup.rear_sprocket", "43", None, 43),
        ("number", "2", None, 2),
        ("filled_to_brim", "yes", None, True),
    ],
)
def test_what_is_typed_is_stored_with_its_unit(
    tmp_path: Path, path: str, text: str, units: Units | None, stored: object
) -> None:
    assert value(tmp_path, path, text, units) == stored


@every("text", ["5", "0", "600", "9**9**9", "2.1 m", "2.1.3", "1e3", "nan", "inf bar"])
def test_a_pressure_that_fits_no_band_or_is_none_is_refused_with_the_mend(tmp_path: Path, text: str) -> None:
    desk = at_desk(write(tmp_path, sessions__one=session()))

    (said,) = refused(desk, ONE, ("setup.front_start", text))

    assert "a pressure with its unit" in said


@every(("text", "ask"), [("2.5", False), ("2.6", True), ("31", False), ("45", True), ("2.6 bar", False)])
def test_a_bare_pressure_far_from_the_last_one_is_asked_about(tmp_path: Path, text: str, ask: bool) -> None:
    text_of = session() + '\n[setup]\nfront_start = "2.1 bar"\n'
    desk = at_desk(write(tmp_path, sessions__one=text_of.replace("[setup.controls]", "[because]")))

    if ask:
        (said,) = refused(desk, ONE, ("setup.front_start", text))
        meant = {"2.6": "2.6 bar", "45": "45 psi"}[text]
        assert said == (
            f'"{text}" would be {meant}, far from the last 2.1 bar:'
            f' expected a pressure with its unit; write "{meant}" if that is meant'
        )
    else:
        assert typed(desk, ONE, ("setup.front_start", text)).changes


def test_a_value_in_the_place_of_a_table_is_said_and_left(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__one="number = 1\nsetup = 3\n"))

    (said,) = refused(desk, ONE, ("setup.mode", "wet"))

    assert said == "3 stands where a table would have to be: expected a table; edit the file"


def test_a_value_that_cannot_be_read_is_mended_by_setting_another(garage: Path) -> None:
    path = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    path.write_text(path.read_text().replace('air = "17 C"', 'air = "17,5 C"  # felt cold'))
    desk = at_desk(garage)

    step = typed(desk, NEXT, ("air", "17,5"))
    desk.do(step)
    desk.close()

    assert 'air = "17.5 C"  # felt cold\n' in path.read_text()
    assert step.label == "air 17,5 C -> 17.5 C"


def test_plain_values_are_set_as_they_are(garage: Path) -> None:
    desk = at_desk(garage)

    step = setting_value(desk.files, NEXT, ("setup", "controls", "traction"), 99)

    assert step.label == "traction control 3 -> 99"
    assert setting_value(desk.files, NEXT, ("setup", "controls", "traction"), 3).changes == ()


TIRED = """date = 2026-06-20
fatigue = 5
lever = "spongy hot"
rider = "ines"
bike = "kestrel"
day = "today"
[checks.rider-fit]
status = "ok"
[checks.walked-round]
status = "ok"
[checks.gloves]
status = "ok"
"""
TICKED = """date = 2026-06-20
[entries.ines.kestrel.checks.fit-to-ride]
status = "ok"
[entries.ines.kestrel.checks.lever-firm]
status = "ok"
"""


def test_a_value_taken_out_takes_out_the_ticks_that_say_the_same(tmp_path: Path) -> None:
    """Else what was found of it would be gone under an answer that was given before it."""
    desk = at_desk(write(tmp_path, sessions__one=TIRED, days__today=TICKED))

    step = clearing(desk.files, ONE, ("fatigue",))
    both = typed(desk, ONE, ("lever", ""))

    made = [change for change in step.changes if isinstance(change, Change)]
    where = [(change.ref.kind, [spell(edit.path) for edit in change.edits]) for change in made]
    assert where == [
        ("session", ["fatigue", "checks.rider-fit"]),
        ("day", ["entries.ines.kestrel.checks.fit-to-ride"]),
    ]
    assert step.label == "fatigue 5 -> not known; asked again: rider fit, fit to ride"
    assert both.label.endswith("; asked again: walked round, lever firm")
    assert typed(desk, ONE, ("fatigue", "2")).label == "fatigue 5 -> 2"
