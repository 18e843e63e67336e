"""One key on a value: more or less help whichever way a bike counts, the ends, off and back, a digit."""

from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.keys import Last, stepping, toggling
from paddock_tui.desk.edits.values import field_of
from paddock_tui.entry.typing_kinds import typing_kind
from paddock_tui.records.edits import MISSING, Change, Step, Value
from paddock_tui.records.paths import Path as Keys
from paddock_tui.records.paths import Ref, parse
from paddock_tui.store.data import lookup
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import BIKE, session, write

A = Ref("session", "a")

ALL = (
    BIKE
    + """
[controls.slide]
kind = "level"
levels = [1, 7]

[controls.front-abs]
kind = "level"
levels = [0, 3]
most_help = 3
off = 0

[controls.rear-abs]
kind = "level"
levels = [1, 4]
most_help = 1
off = 4

[controls.engine-braking]
kind = "level"
levels = [1, 5]
frees_most = 1

[controls.throttle]
kind = "choice"
choices = ["sharp", "even", "soft"]
most_help = "soft"

[controls.power]
kind = "choice"
choices = ["none", "some", "all"]
off = "none"

[controls.launch]
kind = "state"
choices = ["off", "armed", "armed 2"]
off = false

[controls.shifter]
kind = "switch"
off = false

[controls.pit-limiter]
kind = "speed"
speeds = ["40 km/h", "60 km/h"]
off = true

[controls.horn]
off = true

[adjusters.front-rebound]
unit = "click"
range = [0, 9]

[adjusters.front-preload]
unit = "turn"
step = 0.25
range = [0, 8]

[adjusters.rear-preload]
unit = "mm"
range = [0, 10]

[adjusters.damper]
unit = "click"
range = [-3, 3]
"""
)


def desk_at(root: Path, control: str = "", value: str = "") -> Desk:
    """Open a session in which one value of the set-up is set; `value` as TOML."""
    table = "adjusters" if control.endswith(("rebound", "preload", "damper")) else "controls"
    lines = f"\n[setup.{table}]\n{control} = {value}\n" if value else ""
    return at_desk(write(root, bikes__plain=ALL, sessions__a=session().split("\n\n")[0] + "\n" + lines))


def place(control: str) -> Keys:
    table = "adjusters" if control.endswith(("rebound", "preload", "damper")) else "controls"
    return ("setup", table, control)


def bare(value: str) -> str:
    """Write a value as TOML has it the way the screen says it."""
    return value.strip('"')


def put(found: Step | str) -> Value:
    """Give the value that a step sets; it must set one."""
    assert isinstance(found, Step), found
    (change,) = found.changes
    assert isinstance(change, Change)
    (edit,) = change.edits
    assert edit.new is not MISSING
    return edit.new


def stepped(desk: Desk, control: str, by: int, more_help: bool | None = None) -> Step | str:
    return stepping(desk.files, A, place(control), by, more_help)


# ---- left and right: help ------------------------------------------------------------------------------


@every(
    ("control", "old", "more", "less"),
    [
        ("traction", "5", 6, 4),
        ("wheelie", "3", 2, 4),
        ("front-abs", "2", 3, 1),
        ("rear-abs", "2", 1, 3),
        ("throttle", '"even"', "soft", "sharp"),
        ("engine-braking", "3", 2, 4),
        ("traction", '"off"', 0, None),
        ("front-abs", "0", 1, None),
        ("rear-abs", "4", 3, None),
    ],
)
def test_toward_more_help_whichever_way_the_bike_counts(
    tmp_path: Path, control: str, old: str, more: Value, less: Value | None
) -> None:
    desk = desk_at(tmp_path, control, old)

    assert put(stepped(desk, control, 1, True)) == more
    if less is None:
        assert stepped(desk, control, -1, False) == f"{label(desk, control)} is at its end: {bare(old)}"
    else:
        assert put(stepped(desk, control, -1, False)) == less


def label(desk: Desk, control: str) -> str:
    field = field_of(desk.files, A, place(control))
    assert field is not None
    return field.label


@every(
    ("control", "most", "least"),
    [
        ("traction", "10", "0"),
        ("wheelie", "1", "6"),
        ("front-abs", "3", "1"),
        ("rear-abs", "1", "3"),
        ("throttle", '"soft"', '"sharp"'),
        ("engine-braking", "1", "5"),
    ],
)
def test_help_stops_at_its_ends_and_never_steps_to_off(
    tmp_path: Path, control: str, most: str, least: str
) -> None:
    upper, lower = desk_at(tmp_path / "most", control, most), desk_at(tmp_path / "least", control, least)
    said = label(upper, control)

    assert stepped(upper, control, 1, True) == f"{said} is at its end: {bare(most)}"
    assert stepped(lower, control, -1, False) == f"{said} is at its end: {bare(least)}"


@every(("by", "more_help", "expected"), [(1, True, 4), (-1, False, 2), (1, None, 4)])
def test_where_the_direction_is_not_known_the_number_is_stepped(
    tmp_path: Path, by: int, more_help: bool | None, expected: int
) -> None:
    assert put(stepped(desk_at(tmp_path, "slide", "3"), "slide", by, more_help)) == expected


def test_a_level_that_the_bike_has_not_is_stepped_back_into_its_range(tmp_path: Path) -> None:
    assert put(stepped(desk_at(tmp_path, "traction", "99"), "traction", -1, False)) == 10


# ---- minus and plus: the bike's own number --------------------------------------------------------------


@every(
    ("control", "old", "up", "down"),
    [
        ("wheelie", "3", 4, 2),
        ("throttle", '"even"', "soft", "sharp"),
        ("launch", '"armed"', "armed 2", "off"),
        ("pit-limiter", '"40 km/h"', "60 km/h", "off"),
        ("front-rebound", "8", 9, 7),
        ("front-preload", "6.5", 6.75, 6.25),
        ("front-preload", "6.3", 6.5, 6.25),
        ("rear-preload", "9.5", 10, 9),
        ("damper", "0", 1, -1),
    ],
)
def test_minus_and_plus_step_the_number(
    tmp_path: Path, control: str, old: str, up: Value, down: Value
) -> None:
    desk = desk_at(tmp_path, control, old)

    assert put(stepped(desk, control, 1)) == up
    assert put(stepped(desk, control, -1)) == down


@every(
    ("control", "low", "high"),
    [
        ("wheelie", "1", "6"),
        ("throttle", '"sharp"', '"soft"'),
        ("front-rebound", "0", "9"),
        ("front-preload", "0", "8"),
        ("damper", "-3", "3"),
    ],
)
def test_the_number_stops_at_the_ends_and_says_so(tmp_path: Path, control: str, low: str, high: str) -> None:
    for old, by in ((low, -1), (high, 1)):
        desk = desk_at(tmp_path / str(by), control, old)
        assert stepped(desk, control, by) == f"{label(desk, control)} is at its end: {bare(old)}"


def test_what_is_not_known_cannot_be_read_or_has_no_steps_says_so(tmp_path: Path) -> None:
    desk = desk_at(tmp_path, "traction", '"five"')

    assert stepped(desk, "traction", 1, True) == "traction control is not known: type it"
    assert stepped(desk, "wheelie", 1) == "wheelie control is not known: type it"
    assert stepped(desk, "wheelie", 1, True) == "wheelie control is not known: type it"
    assert stepping(desk.files, A, ("rider",), 1, None) == "rider has no steps: enter edits it"
    assert stepping(desk.files, A, ("nothing",), 1, None) == "nothing can be set here: w says what the row is"


def test_an_amount_is_stepped_in_its_rows_unit_only(garage: Path) -> None:
    desk = at_desk(garage)

    assert put(stepping(desk.files, NEXT, ("setup", "rear_start"), -1, None)) == "1.90 bar"
    assert put(stepping(desk.files, NEXT, ("start",), 1, None)).isoformat() == "13:21:00"  # type: ignore[union-attr]
    found = stepping(desk.files, Ref("bike", "otter"), ("front", "road_pressure"), 1, None)
    assert found == "road pressure, cold has no steps: enter edits it"


# ---- space: off and back ---------------------------------------------------------------------------------


def toggled(desk: Desk, control: str, last: Last | None = None) -> Step | str:
    return toggling(desk.files, A, place(control), last or {})


@every(
    ("control", "old", "off"),
    [
        ("traction", "5", "off"),
        ("traction", "", "off"),
        ("front-abs", "3", 0),
        ("rear-abs", "1", 4),
        ("power", '"all"', "none"),
        ("launch", '"armed 2"', "off"),
        ("shifter", '"on"', "off"),
        ("pit-limiter", '"60 km/h"', "off"),
        ("horn", '"loud"', "off"),
    ],
)
def test_space_switches_off_by_what_means_off_on_the_bike(
    tmp_path: Path, control: str, old: str, off: Value
) -> None:
    assert put(toggled(desk_at(tmp_path, control, old), control)) == off


@every(
    ("control", "old", "on"),
    [
        ("traction", '"off"', 10),
        ("front-abs", "0", 3),
        ("front-abs", '"off"', 3),
        ("rear-abs", "4", 1),
        ("power", '"none"', "some"),
        ("launch", '"off"', "armed"),
        ("shifter", '"off"', "on"),
        ("pit-limiter", '"off"', "40 km/h"),
    ],
)
def test_space_switches_on_at_the_most_help_where_that_is_known_else_at_the_first(
    tmp_path: Path, control: str, old: str, on: Value
) -> None:
    assert put(toggled(desk_at(tmp_path, control, old), control)) == on


def test_space_goes_back_to_the_level_it_had_unless_that_was_off_too(tmp_path: Path) -> None:
    desk = desk_at(tmp_path, "front-abs", "0")

    assert put(toggled(desk, "front-abs", {(A, place("front-abs")): 2})) == 2
    assert put(toggled(desk, "front-abs", {(A, place("front-abs")): 0})) == 3
    assert put(toggled(desk, "front-abs", {(A, place("traction")): 1})) == 3


def test_space_there_and_back_again_is_two_steps_with_one_undo_each(garage: Path) -> None:
    desk = at_desk(garage)
    path = ("setup", "controls", "rear-abs")
    there = toggling(desk.files, NEXT, path, {})
    assert put(there) == 0
    assert isinstance(there, Step)
    desk.do(there)
    back = toggling(desk.files, NEXT, path, {(NEXT, path): 3})
    assert isinstance(back, Step)

    desk.do(back)

    assert lookup(desk.files.data(NEXT), path) == 3
    assert [desk.undo(), desk.undo(), desk.undo()] == [
        "rear ABS 0 -> 3 (more help)",
        "rear ABS 3 -> 0 (less help)",
        None,
    ]
    desk.close()


def test_what_cannot_be_off_says_so(tmp_path: Path) -> None:
    desk = desk_at(tmp_path, "wheelie", "2")

    assert toggled(desk, "wheelie") == "wheelie control cannot be off on this bike: type a level"
    assert toggled(desk, "throttle") == "throttle response cannot be off on this bike: type a level"
    assert toggled(desk, "front-rebound") == "front rebound is neither on nor off: enter edits it"
    assert toggling(desk.files, A, ("aim",), {}) == "aim is neither on nor off: enter edits it"
    assert toggling(desk.files, A, ("nothing",), {}) == "nothing can be set here: w says what the row is"


def test_what_is_off_and_lists_no_levels_is_typed(tmp_path: Path) -> None:
    assert toggled(desk_at(tmp_path, "horn", '"off"'), "horn") == "horn has no level that is known: type it"


@every(("old", "new"), [("true", False), ("false", True), ("", True), ('"yes"', True)])
def test_space_turns_yes_to_no_and_all_else_to_yes(tmp_path: Path, old: str, new: bool) -> None:
    text = session() if not old else session(filled_to_brim=old)
    desk = at_desk(write(tmp_path, sessions__a=text))

    assert put(toggling(desk.files, A, ("filled_to_brim",), {})) is new


# ---- digits ----------------------------------------------------------------------------------------------


@every(
    ("path", "at_once"),
    [
        ("setup.controls.wheelie", True),
        ("setup.controls.front-abs", True),
        ("setup.controls.traction", False),
        ("setup.controls.throttle", False),
        ("setup.controls.pit-limiter", False),
        ("setup.adjusters.front-rebound", True),
        ("setup.adjusters.front-preload", False),
        ("setup.adjusters.rear-preload", False),
        ("setup.adjusters.damper", False),
        ("feel.braking", True),
        ("fatigue", True),
        ("number", False),
        ("setup.rear_sprocket", False),
        ("setup.front_start", False),
        ("start", False),
    ],
)
def test_a_digit_is_the_whole_answer_where_the_range_has_one_and_none_below_zero(
    tmp_path: Path, path: str, at_once: bool
) -> None:
    keys = parse(path)
    assert keys is not None
    field = field_of(desk_at(tmp_path).files, A, keys)
    assert field is not None

    assert (typing_kind(field.shape) in ("score", "one digit")) is at_once
