"""Two set-ups compared: differences only, as in force, with what each side helps."""

from paddock_tui.pages.compare import Side, compare_page
from paddock_tui.records.bike import Bike
from paddock_tui.records.presets import PresetValues
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Damping, Offset
from tests.rules.situations import BIKE_DOWN, BIKE_UP, read

UP, DOWN = (read("bike", data, Bike) for data in (BIKE_UP, BIKE_DOWN))
OPEN = SetUp(mode="open", controls={"traction": 5, "wheelie": 3, "throttle": "even", "engine-braking": 2})


def rows(left: SetUp, right: SetUp, bike: Bike | None = UP) -> dict[str, tuple[str, str]]:
    page = compare_page(Side("this", left), Side("that", right), bike)
    return {row.label: (row.value, row.aside) for row in page.rows() if row.label not in ("", "this", "that")}


def test_what_is_the_same_is_not_shown() -> None:
    assert rows(OPEN, OPEN) == {}


def test_levels_are_compared_in_the_bikes_numbers_with_help_beside_them() -> None:
    other = SetUp(
        mode="open", controls={**OPEN.controls, "traction": 8, "wheelie": "off", "engine-braking": 4}
    )
    assert rows(OPEN, other) == {
        "traction control": ("5 | 8", "help 50 % | 80 %"),
        "wheelie control": ("3 | off", "help 40 % | off"),
        "engine braking": ("2 | 4", "strength 75 % | 25 %"),
    }
    assert rows(OPEN, other, DOWN)["wheelie control"] == ("3 | off", "help 60 % | off")


def test_a_riding_mode_is_compared_by_what_it_fixes_and_forbids() -> None:
    wet = SetUp(mode="showers", controls=OPEN.controls)
    assert rows(OPEN, wet) == {
        "traction control": ("5 | 5", "help 50 % | 50 %; showers allows 6 to 10"),
        "throttle response": ("even | soft", "help 50 % | 100 %"),
        "riding mode": ("open | showers", ""),
    }


def test_what_only_one_side_knows_and_what_the_bike_does_not_have_is_shown() -> None:
    odd = SetUp(mode="open", controls={**OPEN.controls, "rocket": 2}, adjusters={"front-rebound": 8})
    found = rows(OPEN, odd)
    assert found["rocket"] == ("not known | 2", "")
    assert found["front rebound"] == ("not known | 8 clicks out", "")
    assert rows(OPEN, odd, None)["rocket"] == ("not known | 2", "")


def test_how_far_each_side_has_moved_from_its_preset_is_compared() -> None:
    bike = Bike(
        damping={
            "live": Damping(
                presets=("calm",),
                offsets={"bumps": Offset((-3, 3))},
                preset_values={"calm": PresetValues(offsets={"bumps": -1})},
            )
        }
    )
    calm = SetUp(damping="live", preset="calm", offsets={"bumps": -1})
    found = rows(calm, SetUp(damping="live", preset="calm", offsets={"bumps": 1}), bike)
    assert found["from its preset"] == ("calm: as it is built | calm: bumps +2", "")
    assert "from its preset" not in rows(calm, calm, bike)
