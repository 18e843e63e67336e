"""Help from a bike's number and back, whichever way the bike counts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import OFF_HELP, HelpScale, Level, Levels
from tests.every import every
from tests.examples import examples

few = examples(25)
shares = st.floats(0.0, 1.0)


def _help(levels: Levels) -> HelpScale:
    scale = levels.help_if_known()
    assert scale is not None
    return scale


@st.composite
def scales(draw: st.DrawFn) -> HelpScale:
    """A bike with 1 to 16 levels from any number, counting up or down, with any kind of off."""
    low = draw(st.integers(-3, 3))
    high = low + draw(st.integers(0, 15))
    most = draw(st.sampled_from([low, high]))
    off: bool | Level = draw(st.booleans())
    if high - low >= 2 and draw(st.booleans()):
        off = low if most == high else high
    return _help(Levels.span(low, high, most, off))


@every(
    ("levels", "level", "help_"),
    [
        (Levels.span(0, 10, 10, off=True), 0, 0.0),
        (Levels.span(0, 10, 10, off=True), 3, 0.3),
        (Levels.span(0, 10, 10, off=True), "off", OFF_HELP),
        (Levels.span(1, 6, 1), 1, 1.0),
        (Levels.span(1, 6, 1), 6, 0.0),
        (Levels.span(0, 8, 8, off=0), 0, OFF_HELP),
        (Levels.span(0, 8, 8, off=0), "off", OFF_HELP),
        (Levels.span(0, 8, 8, off=0), 1, 0.0),
        (Levels.span(0, 1, 1, off=0), 1, 1.0),
        (Levels.choices(["sharp", "even", "soft"], "soft"), "even", 0.5),
        (Levels.choices(["sharp", "even", "soft"], "sharp"), "soft", 0.0),
        (Levels.choices(["none", "low", "high"], "high", off="none"), "low", 0.0),
    ],
)
def test_help_of_a_level(levels: Levels, level: Level, help_: float) -> None:
    assert _help(levels).help_of(level) == pytest.approx(help_)


@few
@given(scales())
def test_level_and_help_are_inverse(scale: HelpScale) -> None:
    for level in scale.on:
        assert scale.level_at_least(scale.help_of(level)) == level
        assert scale.nearest(scale.help_of(level)) == level
        assert scale.snap(scale.help_of(level)) == scale.help_of(level)


@few
@given(scales(), shares, shares)
def test_more_help_wanted_never_gives_less(scale: HelpScale, first: float, second: float) -> None:
    low, high = sorted((first, second))

    assert scale.help_of(scale.level_at_least(low)) <= scale.help_of(scale.level_at_least(high))
    assert scale.snap(low) <= scale.snap(high)


@few
@given(scales(), shares)
def test_rounds_toward_more_help_by_less_than_a_step(scale: HelpScale, wanted: float) -> None:
    got = scale.help_of(scale.level_at_least(wanted))
    step = 1.0 / max(len(scale.on) - 1, 1)

    assert wanted - 1e-6 <= got
    assert len(scale.on) == 1 or got < wanted + step


@few
@given(scales(), shares)
def test_snap_is_never_further_than_half_a_step(scale: HelpScale, threshold: float) -> None:
    half = 0.5 / max(len(scale.on) - 1, 1)

    assert len(scale.on) == 1 or abs(scale.snap(threshold) - threshold) <= half + 1e-6


@few
@given(st.integers(1, 15), shares)
def test_counting_up_and_down_are_mirror_images(last: int, wanted: float) -> None:
    up, down = _help(Levels.span(0, last, last)), _help(Levels.span(0, last, 0))

    for level in range(last + 1):
        assert up.help_of(level) == pytest.approx(down.help_of(last - level))
    got_up, got_down = up.level_at_least(wanted), down.level_at_least(wanted)
    assert isinstance(got_up, int)
    assert got_down == last - got_up


@every(
    ("last", "threshold", "snapped"),
    [(2, 0.25, 0.5), (2, 0.24, 0.0), (10, 0.35, 0.4), (10, 0.55, 0.6), (4, 0.35, 0.25)],
)
def test_halfway_snaps_to_more_help(last: int, threshold: float, snapped: float) -> None:
    assert _help(Levels.span(0, last, last)).snap(threshold) == pytest.approx(snapped)


@few
@given(scales())
def test_a_step_of_help_there_and_back(scale: HelpScale) -> None:
    for lower, higher in zip(scale.on, scale.on[1:], strict=False):
        assert scale.more_help(lower) == higher
        assert scale.less_help(higher) == lower
    assert scale.more_help(scale.most) == scale.most
    assert scale.less_help(scale.least) == scale.least


def test_off_is_left_toward_the_least() -> None:
    scale = _help(Levels.span(1, 6, 1, off=True))

    assert scale.more_help("off") == 6
    assert scale.less_help("off") == "off"


def test_unknown_direction_has_no_scale() -> None:
    levels = Levels.span(1, 5)

    assert levels.help_if_known() is None
    assert levels.scale_if_known() is None
    assert levels.stepped(3, 1) == 4


def test_one_level_needs_no_direction() -> None:
    assert _help(Levels.span(0, 1, off=0)).help_of(1) == 1.0


@every(
    ("levels", "level", "steps", "after"),
    [
        (Levels.span(0, 10, 10), 10, 1, 10),
        (Levels.span(0, 10, 10), 0, -1, 0),
        (Levels.span(6, 1, 1), 6, 1, 5),
        (Levels.span(0, 8, 8, off=0), "off", 1, 1),
        (Levels.span(1, 6, 1, off=True), "off", 1, 6),
        (Levels.span(1, 6, off=True), "off", 1, 1),
        (Levels.choices(["sharp", "even", "soft"]), "sharp", 1, "even"),
    ],
)
def test_the_bikes_own_number_steps_without_direction(
    levels: Levels, level: Level, steps: int, after: Level
) -> None:
    assert levels.stepped(level, steps) == after


@every(
    ("values", "most", "off"),
    [((), None, False), ((1,), None, 1), ((1, 2, 3), 2, False), ((1, 2), 2, 9), ((1, 1), None, False)],
)
def test_what_cannot_be_a_list_of_levels(
    values: tuple[Level, ...], most: Level | None, off: bool | Level
) -> None:
    with pytest.raises(Inconsistent):
        Levels(values, most, off)


@every("level", [11, -1, "soft", "off", True])
def test_what_is_no_level_is_refused(level: Level) -> None:
    levels = Levels.span(0, 10, 10)

    assert not levels.offers(level)
    with pytest.raises(Inconsistent):
        _help(levels).help_of(level)


@pytest.mark.parametrize("wanted", [-0.01, 1.01])
def test_help_outside_none_to_all_is_refused(wanted: float) -> None:
    with pytest.raises(OutOfRange):
        _help(Levels.span(0, 10, 10)).level_at_least(wanted)


def test_two_ended_scale_has_a_position_but_no_help() -> None:
    scale = Levels.span(1, 5, 5).scale_if_known()

    assert scale is not None
    assert scale.position_of(2) == 0.25
    assert scale.nearest(0.5) == 3
    assert not hasattr(scale, "help_of")
