"""The set-up page: bikes that count up, down, without electronics, or with an end that nobody knows."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Bar, Page, Row
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from tests.every import every
from tests.pages.opened import SAMPLE, page_of, rows_of
from tests.small import BIKE, session, write

FILES = GarageFiles(SAMPLE)
UP = rows_of(page_of(FILES, Ref("session", "2026-06-20-4-magpie")))
DOWN = rows_of(page_of(FILES, Ref("session", "2026-06-20-2-otter")))
NONE = page_of(FILES, Ref("session", "2026-04-18-2-badger"))
WET = rows_of(page_of(FILES, Ref("profile", "magpie-ines-wet")))


def control(rows: dict[str, Row], name: str) -> Row:
    return rows[f"setup.controls.{name}"]


def adjuster(rows: dict[str, Row], name: str) -> Row:
    return rows[f"setup.adjusters.{name}"]


def page(root: Path, setup: str, bike: str = BIKE) -> Page:
    text = session().split("[setup")[0] + setup
    return page_of(GarageFiles(write(root, sessions__a=text, bikes__plain=bike)), Ref("session", "a"))


def at(row: Row) -> float | None:
    assert row.bar is not None
    return row.bar.at


def test_a_bike_that_counts_up_has_its_mark_where_the_help_is() -> None:
    traction, abs_ = control(UP, "traction"), control(UP, "front-abs")

    assert (traction.label, traction.value, traction.range) == ("traction control", "3", "range 0-10")
    assert traction.bar == Bar(0.3, ("least help", "most help"), False, 11)
    assert (abs_.label, abs_.range, at(abs_)) == ("front ABS", "range 1-4", 1.0)


def test_a_level_that_means_off_is_not_counted_in_the_scale() -> None:
    rear = control(UP, "rear-abs")

    assert (rear.value, at(rear)) == ("3", 1.0)
    assert rear.bar is not None
    assert rear.bar.steps == 3


def test_a_bike_that_counts_down_has_its_range_turned_and_its_mark_where_the_help_is() -> None:
    grip, wheelie = control(DOWN, "rear-grip"), control(DOWN, "wheelie")

    assert grip.range == "(1 = most)"
    assert at(grip) == pytest.approx((7 - int(grip.value)) / 6)
    assert at(wheelie) == pytest.approx((4 - int(wheelie.value)) / 3)


def test_a_choice_stands_at_its_place_among_the_words() -> None:
    assert at(control(UP, "throttle")) == 0.5
    assert control(UP, "throttle").range == ""


def test_engine_braking_has_two_named_ends_and_no_help() -> None:
    row = control(UP, "engine-braking")

    assert row.bar is not None
    assert (row.bar.ends, row.bar.two_ended, row.bar.steps) == (("more", "less"), True, 6)
    assert row.bar.at == pytest.approx(0.6)


def test_an_end_that_is_not_known_is_asked_and_draws_no_scale() -> None:
    row = control(DOWN, "engine-braking")

    assert row.bar is None
    assert "which end brakes least? not known" in row.aside


def test_help_of_an_unknown_direction_is_asked_too(tmp_path: Path) -> None:
    rows = rows_of(page(tmp_path, "[setup.controls]\ntraction = 5\n", BIKE.replace("most_help = 10\n", "")))

    assert control(rows, "traction").bar is None
    assert control(rows, "traction").aside == "which end helps most? not known"


def test_off_and_not_known_draw_a_scale_without_a_mark(tmp_path: Path) -> None:
    rows = rows_of(page(tmp_path, '[setup.controls]\ntraction = "off"\n'))

    assert (control(rows, "traction").value, at(control(rows, "traction"))) == ("off", None)
    wheelie = control(rows, "wheelie")
    assert (wheelie.value, wheelie.known, at(wheelie), wheelie.range) == (
        "not known",
        False,
        None,
        "(1 = most)",
    )


def test_a_level_that_the_bike_has_not_draws_no_mark_and_is_shown(tmp_path: Path) -> None:
    rows = rows_of(page(tmp_path, "[setup.controls]\ntraction = 99\n"))

    assert (control(rows, "traction").value, at(control(rows, "traction"))) == ("99", None)


def test_what_the_riding_mode_fixes_shows_its_value_takes_no_key_and_says_why() -> None:
    throttle = control(WET, "throttle")

    assert throttle.value == "gentle"
    assert throttle.shut == "fixed by the riding mode wading"
    assert throttle.aside == "fixed by mode"
    assert throttle.edit == ""


def test_what_the_riding_mode_limits_says_to_what() -> None:
    assert "mode 6-10" in control(WET, "traction").aside
    assert control(WET, "traction").shut == ""
    assert control(WET, "pit-limiter").aside == "resets at ignition off"


def test_the_riding_mode_says_what_it_is_for_and_what_it_does() -> None:
    assert WET["setup.mode"].value == "wading"
    assert WET["setup.mode"].aside == (
        "made for wet; fixes throttle response, power mode, engine braking; "
        "limits traction control, wheelie control, front ABS, rear ABS"
    )
    assert UP["setup.mode"].aside == "made for any surface"


def test_a_riding_mode_that_the_bike_has_not_is_said(tmp_path: Path) -> None:
    bike = BIKE + '\n[modes.open]\nuse = "any"\n'

    rows = rows_of(page(tmp_path, '[setup]\nmode = "gone"\n', bike))
    free = rows_of(page(tmp_path, "", bike))

    assert (rows["setup.mode"].value, rows["setup.mode"].aside) == ("gone", "not one of this bike's")
    assert (free["setup.mode"].value, free["setup.mode"].choices) == ("not known", ("open",))


def test_what_a_level_switches_off_is_said_beside_it(tmp_path: Path) -> None:
    bike = BIKE + (
        "\n[controls.abs]\nkind = 'level'\nlevels = [1, 3]\nmost_help = 3\n"
        "[controls.abs.effects.1]\nfront = 'off'\nrear = 'off'\n[controls.abs.effects.2]\nrear = 'off'\n"
    )

    asides = [
        control(rows_of(page(tmp_path, f"[setup.controls]\nabs = {level}\n", bike)), "abs").aside
        for level in (1, 2, 3)
    ]

    assert asides == ["front and rear off at this level", "rear off at this level", ""]


def test_a_bike_without_electronics_says_so_and_one_that_does_not_say_has_no_such_section(
    tmp_path: Path,
) -> None:
    (said,) = [section for section in NONE.sections if section.title == "electronics"]
    assert (said.rows, said.note) == ((), "none on this bike")

    silent = page(tmp_path, "", 'name = "Old"\n')
    assert "electronics" not in [section.title for section in silent.sections]


def test_an_adjuster_says_its_unit_its_range_and_whether_it_was_counted(tmp_path: Path) -> None:
    none = rows_of(NONE)

    left = adjuster(none, "front-rebound-left")
    assert (left.value, left.range, left.aside) == ("1.75", "turns out, of 3", "counted 18 Apr")
    assert adjuster(none, "rear-preload").aside == "assumed"
    bike = BIKE + '\n[adjusters.rear-rebound]\nunit = "click"\nrange = [0, 20]\n'
    rows = rows_of(page(tmp_path, "[setup.adjusters]\nrear-rebound = 1\n", bike))
    assert adjuster(rows, "rear-rebound").range == "click of 20"
    rows = rows_of(page(tmp_path, "", bike))
    assert (adjuster(rows, "rear-rebound").value, adjuster(rows, "rear-rebound").aside) == ("not known", "")


def test_an_adjuster_that_the_damping_mode_closes_says_so_and_still_takes_keys() -> None:
    row = adjuster(UP, "front-rebound")

    assert (row.value, row.range, row.aside) == ("9", "clicks out, of 18", "not used in live damping")
    assert row.shut == ""
    assert adjuster(UP, "rear-preload").aside == "assumed"


@every(
    ("counted_from", "value", "firm"),
    [("closed", 0, 1.0), ("closed", 18, 0.0), ("open", 18, 1.0), ("open", 9, 0.5)],
)
def test_a_steering_damper_is_a_scale_from_light_to_firm(
    tmp_path: Path, counted_from: str, value: int, firm: float
) -> None:
    bike = BIKE + (
        '\n[adjusters.steering-damper]\nwhat = "damper"\nunit = "click"\nrange = [0, 18]\n'
        f'counted_from = "{counted_from}"\n'
    )

    rows = rows_of(page(tmp_path, f"[setup.adjusters]\nsteering-damper = {value}\n", bike))

    assert adjuster(rows, "steering-damper").bar == Bar(firm, ("light", "firm"), True, 0)


def test_offsets_stand_there_while_their_damping_mode_is_in_use() -> None:
    assert UP["setup.offsets.front-trim"].value == "+1"
    assert UP["setup.offsets.front-trim"].range == "of -2 to 4"
    assert not any(path.startswith("setup.offsets") for path in rows_of(NONE))


def test_the_sections_come_in_the_order_in_which_a_bike_is_set_up() -> None:
    titles = [section.title for section in page_of(FILES, Ref("session", "2026-06-20-4-magpie")).sections]

    assert titles[1:5] == ["electronics", "suspension, live", "drive", "starting pressures, cold"]


def test_a_short_date_is_english_whatever_the_locale() -> None:
    assert [short_date(dt.date(2026, month, 3)) for month in (1, 5, 12)] == ["3 Jan", "3 May", "3 Dec"]


def test_the_preset_says_what_it_brings_and_how_far_the_set_up_has_moved_from_it() -> None:
    preset = UP["setup.preset"]

    assert preset.aside == (
        "moved: mid corner -1; is made for any surface; sets front firm, rear firm, damper firm, "
        "front trim +1, mid corner +1, kerbs 0; v takes its values"
    )
    assert [(put.path[-1], put.value) for put in preset.offer] == [("mid-corner", 1)]
    assert UP["setup.offsets.mid-corner"].aside.startswith("preset +1;")
    assert "preset" not in UP["setup.offsets.kerbs"].aside


PRESETS = """
[adjusters.front-rebound]
end = "front"
what = "rebound"
unit = "click"
range = [0, 18]

[damping.motors]
kind = "powered presets"
presets = ["smooth track", "odd"]

[damping.motors.closes]
front-rebound = true

[damping.motors.preset_values."smooth track".adjusters]
front-rebound = 8
"""


def test_what_a_motor_sets_stands_beside_the_adjuster_that_it_closes(tmp_path: Path) -> None:
    held = '[setup]\ndamping = "motors"\npreset = "smooth track"\n\n[setup.adjusters]\nfront-rebound = 10\n'
    rows = rows_of(page(tmp_path, held, BIKE + PRESETS))

    assert adjuster(rows, "front-rebound").aside == "the preset sets 8; not used in motors damping"
    assert rows["setup.preset"].aside == "sets front rebound 8; v goes on by hand from its clicks"


def test_by_hand_an_adjuster_says_what_its_preset_has(tmp_path: Path) -> None:
    held = '[setup]\ndamping = "by-hand"\npreset = "smooth track"\n\n[setup.adjusters]\nfront-rebound = 10\n'
    rows = rows_of(page(tmp_path, held, BIKE + PRESETS))

    assert adjuster(rows, "front-rebound").aside == "preset 8; assumed"
    assert rows["setup.preset"].aside == "moved: front rebound +2; sets front rebound 8; v takes its values"
