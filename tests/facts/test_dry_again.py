"""Back to the dry: what the weather asked for comes back, what it did not ask for stays."""

from decimal import Decimal

import attrs

from paddock_tui.facts.dry_again import dry_values
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster, Damping

BIKE = Bike(
    controls={name: Control() for name in ("traction", "throttle", "pit-limiter", "launch")},
    modes={"open": Mode(), "rain": Mode(use="wet", fixes={"throttle": "soft"})},
    adjusters={"front-rebound": Adjuster()},
    damping={"live": Damping()},
)
DRY = SetUp(
    mode="open",
    damping="live",
    preset="firm",
    rear_sprocket=43,
    front_start=Quantity(Decimal("2.10"), "bar"),
    controls={"traction": 4, "throttle": "sharp", "pit-limiter": "60 km/h", "launch": "armed"},
    adjusters={"front-rebound": 9.0, "gone": 3.0},
    offsets={"front-trim": 1.0},
)
WET = SetUp(
    mode="rain",
    damping="live",
    preset="calm",
    rear_sprocket=44,
    front_start=Quantity(Decimal("2.20"), "bar"),
    controls={"traction": 8, "throttle": "soft", "pit-limiter": "40 km/h", "launch": "off"},
    adjusters={"front-rebound": 12.0},
    offsets={"front-trim": -1.0},
)


def back(setup: SetUp, dry: SetUp = DRY) -> dict[str, str]:
    """Give what would be set, by its last key, in words."""
    return {one.key: str(one.new) for one in dry_values(setup, BIKE, dry)}


def test_mode_aids_damping_and_pressures_come_back_and_gearing_limiter_and_launch_stay() -> None:
    assert back(WET) == {
        "mode": "open",
        "preset": "firm",
        "front_start": "2.10 bar",
        "traction": "4",
        "throttle": "sharp",
        "front-rebound": "9.0",
        "front-trim": "1.0",
    }
    assert dry_values(WET, BIKE, DRY)[0].key == "mode"


def test_nothing_comes_back_where_it_stands_so_or_was_not_known() -> None:
    assert back(DRY) == {}
    assert back(WET, SetUp()) == {}


def test_what_the_bike_does_not_have_any_more_is_left() -> None:
    assert "mode" not in back(WET, attrs.evolve(DRY, mode="sold"))
    assert "damping" not in back(WET, attrs.evolve(DRY, damping="sold"))


def test_what_the_mode_of_then_fixes_is_not_written_beside_it() -> None:
    dry = attrs.evolve(DRY, mode="rain", controls={"throttle": "sharp"})

    assert "throttle" not in back(WET, dry)
