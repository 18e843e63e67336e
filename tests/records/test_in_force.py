"""What a riding mode fixes, leaves or hides of a control, and what a damping mode closes: one answer."""

import pytest

from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.in_force import closed_by, control_in_force, value_in_force
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster, Damping
from tests.every import every

BIKE = Bike(
    controls={
        "traction": Control(levels=(1, 8), most_help=8),
        "power": Control(kind="choice", choices=("full", "soft")),
        "launch": Control(kind="state", outside_modes=True),
        "slide": Control(levels=(1, 3), most_help=3),
    },
    modes={
        "rain": Mode(fixes={"power": "soft"}, limits={"traction": (5, 8)}),
        "open": Mode(limits={"traction": (1, 8)}, off_allowed=("traction",)),
    },
    adjusters={"front-rebound": Adjuster(end="front", what="rebound")},
    damping={"auto": Damping(closes={"front-rebound": True})},
)


def test_what_a_mode_fixes_counts_and_not_what_was_set() -> None:
    here = control_in_force("power", SetUp(mode="rain", controls={"power": "full"}), BIKE)

    assert (here.value, here.fixed) == ("soft", "soft")
    assert here.words() == "the riding mode fixes it to soft"
    assert here.allows(BIKE.controls["power"], "soft")
    assert not here.allows(BIKE.controls["power"], "full")


@every(("mode", "level", "allowed"), [("rain", 4, False), ("rain", 5, True), ("open", 1, True)])
def test_what_a_mode_leaves_is_said_and_judged(mode: str, level: int, allowed: bool) -> None:
    here = control_in_force("traction", SetUp(mode=mode, controls={"traction": level}), BIKE)

    assert here.value == level
    assert here.allows(BIKE.controls["traction"], level) == allowed
    assert here.words() == f"the riding mode allows {5 if mode == 'rain' else 1} to 8"


def test_off_is_allowed_only_where_the_mode_says_so() -> None:
    for mode, allowed in (("rain", False), ("open", True)):
        here = control_in_force("traction", SetUp(mode=mode, controls={"traction": "off"}), BIKE)
        assert here.allows(BIKE.controls["traction"], "off") == allowed


@pytest.mark.parametrize("mode", [None, "gone"])
def test_a_mode_that_is_not_known_leaves_what_it_may_fix_unknown_and_nothing_else(mode: str | None) -> None:
    setup = SetUp(mode=mode, controls={"power": "full", "slide": 2, "launch": "armed"})

    here = control_in_force("power", setup, BIKE)

    assert here.value is None
    assert here.words() == "the riding mode is not known, and may fix it"
    assert value_in_force("slide", setup, BIKE) == 2
    assert value_in_force("launch", setup, BIKE) == "armed"


def test_a_damping_mode_closes_what_its_file_says_and_by_hand_closes_nothing() -> None:
    assert closed_by("front-rebound", SetUp(damping="auto"), BIKE) == "auto"
    assert [closed_by("front-rebound", SetUp(damping=one), BIKE) for one in (None, "by-hand", "gone")] == [
        ""
    ] * 3
