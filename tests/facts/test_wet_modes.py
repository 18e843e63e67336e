"""The wet package from one riding mode to another: what the old one fixed is not lost, nor a hold made."""

import functools
from typing import Any

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.levels import OFF_HELP
from paddock_tui.facts import wet_package
from paddock_tui.facts.wet_values import conditions_of
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, Effect, Mode
from paddock_tui.records.in_force import in_force_value
from paddock_tui.records.setup import SetUp
from tests.examples import examples

package_of = functools.partial(wet_package.package_of, limits=Limits())
WET = conditions_of("advanced", "wet", "track-day")
TEN = Control(kind="level", levels=(0, 10), most_help=10)
UNSAID = Control(kind="level", levels=(0, 10))


def taken(setup: SetUp, bike: Bike) -> SetUp:
    """Take the package: the set-up as it is then."""
    values = {one.path[1:]: one.new for one in package_of(setup, bike, WET).values}
    controls: dict[str, Any] = {
        **setup.controls,
        **{path[1]: new for path, new in values.items() if path[1:]},
    }
    mode = values.get(("mode",), setup.mode)
    return attrs.evolve(setup, mode=None if mode is None else str(mode), controls=controls)


def test_what_the_mode_so_far_fixed_is_written_where_the_new_one_leaves_it() -> None:
    """Front ABS stands at the road mode's 10; the rain mode leaves it to what is written, which is 2."""
    bike = Bike(
        controls={"front-abs": TEN},
        modes={"street": Mode(use="road", fixes={"front-abs": 10}), "rain": Mode(use="wet")},
    )
    after = taken(SetUp(mode="street", controls={"front-abs": 2}), bike)

    assert (after.mode, after.controls["front-abs"]) == ("rain", 10)


def test_so_it_is_where_nothing_was_written() -> None:
    bike = Bike(
        controls={"front-abs": TEN},
        modes={"street": Mode(use="road", fixes={"front-abs": 10}), "rain": Mode(use="wet")},
    )
    package = package_of(SetUp(mode="street"), bike, WET)

    assert [str(one) for one in package.values] == [
        "riding mode street -> rain",
        "front ABS not known -> 10",
    ]


def test_what_the_new_mode_does_not_allow_is_not_left_written() -> None:
    """Slide 9 was no matter while the street mode fixed it to 6; the rain mode allows 5 to 8."""
    bike = Bike(
        controls={"slide": TEN},
        modes={
            "street": Mode(use="road", fixes={"slide": 6}),
            "rain": Mode(use="wet", limits={"slide": (5, 8)}),
        },
    )
    after = taken(SetUp(mode="street", controls={"slide": 9}), bike)

    assert after.mode == "rain"
    assert 6 <= int(after.controls["slide"]) <= 8


def test_a_mode_that_does_not_take_a_value_of_unknown_direction_is_left_to_the_rider() -> None:
    modes = {"open": Mode(use="any"), "rain": Mode(use="wet", limits={"power": (0, 3)})}
    bike = Bike(controls={"power": UNSAID}, modes=modes)
    package = package_of(SetUp(mode="open", controls={"power": 7}), bike, WET)

    assert package.values == ()
    assert any("riding mode rain" in words for words in package.not_set)
    assert taken(SetUp(mode="open", controls={"power": 2}), bike).mode == "rain"


def test_what_a_mode_fixed_stands_on_where_nobody_knows_which_way_it_counts() -> None:
    """Power 0 was no matter while the dry mode fixed it to 1; the rain mode allows 1 alone."""
    modes = {"dry": Mode(use="dry", fixes={"power": 1}), "rain": Mode(use="wet", limits={"power": (1, 1)})}
    bike = Bike(controls={"power": UNSAID}, modes=modes)
    package = package_of(SetUp(mode="dry", controls={"power": 0}), bike, WET)
    after = taken(SetUp(mode="dry", controls={"power": 0}), bike)

    assert (after.mode, after.controls["power"]) == ("rain", 1)
    assert any("which end of power" in words for words in package.not_set)


def test_a_mode_that_takes_a_wheel_off_its_abs_is_not_chosen() -> None:
    abs_ = attrs.evolve(TEN, effects={"10": Effect(rear="off")})
    bike = Bike(controls={"abs": abs_}, modes={"open": Mode(), "rain": Mode(use="wet", fixes={"abs": 10})})

    assert taken(SetUp(mode="open", controls={"abs": 9}), bike).mode == "open"
    assert taken(SetUp(mode="open", controls={"abs": 10}), bike).mode == "rain"


NAMES = ("traction", "wheelie", "power")


@st.composite
def modes(draw: st.DrawFn) -> Mode:
    """A riding mode that fixes or limits some of the controls."""
    fixes: dict[str, Any] = {}
    limits: dict[str, Any] = {}
    for name in NAMES:
        kind = draw(st.sampled_from(["free", "fixed", "limited"]))
        if kind == "fixed":
            fixes[name] = draw(st.integers(0, 10))
        elif kind == "limited":
            limits[name] = tuple(sorted(draw(st.tuples(st.integers(0, 10), st.integers(0, 10)))))
    use = draw(st.sampled_from(["dry", "wet", "wet", "any"]))
    return Mode(use=use, fixes=fixes, limits=limits)


@examples(25)
@given(st.lists(modes(), min_size=2, max_size=3), st.data())
def test_from_any_mode_no_help_is_lost_and_what_is_written_is_allowed(
    made: list[Mode], data: st.DataObject
) -> None:
    unsaid = data.draw(st.booleans())
    controls = {name: UNSAID if unsaid and name == "power" else TEN for name in NAMES}
    bike = Bike(controls=controls, modes={f"mode {at}": one for at, one in enumerate(made)})
    held = {name: data.draw(st.integers(0, 10)) for name in NAMES}
    before = SetUp(mode="mode 0", controls=held)
    after = taken(before, bike)

    assert package_of(after, bike, WET).values == ()
    for name in NAMES:
        assert _help(name, after, bike) >= _help(name, before, bike)
        bounds = bike.modes[after.mode or ""].limits.get(name)
        if after.mode != before.mode and bounds is not None:
            assert int(bounds[0]) <= int(after.controls[name]) <= int(bounds[1])


def _help(name: str, setup: SetUp, bike: Bike) -> float:
    """Give the help in force; of an aid that does not say which end helps nothing is asked."""
    levels = levels_of(name, bike.controls[name])
    scale = levels.help_if_known() if levels is not None else None
    value = in_force_value(name, bike.controls[name], setup, bike.modes[setup.mode or ""])
    return OFF_HELP if scale is None or value is None else scale.help_of(value)
