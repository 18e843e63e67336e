"""Presets of damping: what choosing one brings, and how far a set-up has moved from its own."""

from paddock_tui.advice.presets import moved_from_preset, moved_words, preset_brings
from paddock_tui.records.bike import Bike
from paddock_tui.records.presets import PresetValues
from paddock_tui.records.presets_in_use import presets_offered
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster, Damping, Offset
from paddock_tui.rules.core import SetValue

BIKE = Bike(
    adjusters={"front-rebound": Adjuster("front", "rebound"), "rear-rebound": Adjuster("rear", "rebound")},
    damping={
        "live": Damping(
            kind="semi-active",
            presets=("calm", "keen"),
            offsets={"bumps": Offset((-3, 3))},
            preset_values={"calm": PresetValues(offsets={"bumps": -1.0})},
        ),
        "motors": Damping(
            kind="powered presets",
            presets=("smooth", "unwritten"),
            preset_values={"smooth": PresetValues(adjusters={"front-rebound": 8.0, "rear-rebound": 9.0})},
        ),
        "by-hand": Damping(
            presets=("school",), preset_values={"school": PresetValues(adjusters={"front-rebound": 12.0})}
        ),
    },
)


def test_by_hand_every_preset_with_clicks_can_be_started_from() -> None:
    assert presets_offered(BIKE, "by-hand") == ("school", "smooth")
    assert presets_offered(BIKE, "live") == ("calm", "keen")
    assert presets_offered(BIKE, None) == ()


def test_choosing_a_preset_brings_the_values_that_differ() -> None:
    live = SetUp(damping="live", preset="calm", offsets={"bumps": 1.0})
    assert preset_brings(BIKE, live) == (SetValue(("setup", "offsets", "bumps"), -1),)
    hand = SetUp(damping="by-hand", preset="smooth", adjusters={"front-rebound": 8.0})
    assert preset_brings(BIKE, hand) == (SetValue(("setup", "adjusters", "rear-rebound"), 9),)


def test_a_preset_that_a_motor_goes_to_is_gone_on_from_by_hand() -> None:
    assert preset_brings(BIKE, SetUp(damping="motors", preset="smooth")) == (
        SetValue(("setup", "damping"), "by-hand"),
        SetValue(("setup", "adjusters", "front-rebound"), 8),
        SetValue(("setup", "adjusters", "rear-rebound"), 9),
    )


def test_a_preset_that_nobody_wrote_down_brings_nothing_and_is_not_said_to_be_as_built() -> None:
    unwritten = SetUp(damping="motors", preset="unwritten")
    assert (preset_brings(BIKE, unwritten), moved_words(BIKE, unwritten)) == ((), "")
    assert preset_brings(BIKE, SetUp(damping="live")) == ()


def test_how_far_a_set_up_has_moved_is_counted_where_its_value_is_known() -> None:
    hand = SetUp(damping="by-hand", preset="smooth", adjusters={"front-rebound": 10.0})
    assert moved_words(BIKE, hand) == "smooth: front rebound +2"
    live = SetUp(damping="live", preset="calm", offsets={"bumps": -1.0})
    assert moved_from_preset(BIKE, live) == ()
    assert moved_words(BIKE, live) == "calm: as it is built"
    # In a powered mode the adjusters are the motor's: what is written for them is not in force.
    powered = SetUp(damping="motors", preset="smooth", adjusters={"front-rebound": 10.0})
    assert moved_words(BIKE, powered) == ""
