"""The wet package: never less help, never out of range or in the last clicks, and nothing open once taken."""

import functools
from decimal import Decimal
from typing import Any

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.levels import OFF_HELP
from paddock_tui.facts import wet_package
from paddock_tui.facts.wet_package import WetPackage
from paddock_tui.facts.wet_values import WetValue, conditions_of
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, Effect, Mode, function_of
from paddock_tui.records.in_force import in_force_value
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster, Damping
from paddock_tui.records.tyres import Tyre, TyreSet
from tests.every import every
from tests.examples import examples

package_of = functools.partial(wet_package.package_of, limits=Limits())
HELPS = ("traction", "wheelie", "slide", "front-abs", "rear-abs", "throttle", "power")
GROUPS = ("novice", "intermediate", "advanced", "race")
SURFACES = ("damp", "drying", "wet", "standing water")
TYRES = ("road", "track-day", "race-treaded", "slick", "intermediate", "wet")
WET, DAMP = (conditions_of("intermediate", surface, "track-day") for surface in ("wet", "damp"))

TEN = Control(kind="level", levels=(0, 10), most_help=10, off=True)
TEN_DOWN = Control(kind="level", levels=(1, 11), most_help=1, off=True)
THREE = Control(kind="level", levels=(1, 3), most_help=3, off=True)
REBOUND = Adjuster(end="front", what="rebound", unit="click", range=(0, 24), counted_from="closed")
PRELOAD = Adjuster(end="front", what="preload", unit="turn", step=0.25, range=(0, 14), counted_from="open")
PER_TURN = BikeEnd(preload_per_turn=Quantity(Decimal("1.2"), "mm"))


def taken(setup: SetUp, package: WetPackage) -> SetUp:
    """Take the package: the set-up as it is then."""
    controls, adjusters, mode = dict(setup.controls), dict(setup.adjusters), setup.mode
    for one in package.values:
        if one.path[1] == "mode":
            mode = str(one.new)
        elif one.path[1] == "controls":
            assert not isinstance(one.new, float)
            controls[one.path[2]] = one.new
        else:
            assert not isinstance(one.new, str)
            adjusters[one.path[2]] = one.new
    return attrs.evolve(setup, mode=mode, controls=controls, adjusters=adjusters)


def of(package: WetPackage) -> dict[str, Any]:
    """Give what the package sets, by the last key."""
    return {one.path[-1]: one.new for one in package.values}


def position(name: str, setup: SetUp, bike: Bike) -> float | None:
    """Help in force of an aid, or how far engine braking frees the rear; None where it cannot be told."""
    control = bike.controls[name]
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    value = in_force_value(name, control, setup, bike.modes.get(setup.mode or ""))
    if scale is None or value is None:
        return None
    return OFF_HELP if scale.is_off(value) else scale.position_of(value)


@st.composite
def controls(draw: st.DrawFn) -> tuple[dict[str, Control], dict[str, Any]]:
    """Controls that count up or down, few levels or many, some of unknown direction, and how they are set."""
    made: dict[str, Control] = {}
    held: dict[str, Any] = {}
    for name in draw(st.lists(st.sampled_from([*HELPS, "engine-braking"]), unique=True, min_size=1)):
        low = draw(st.integers(0, 2))
        high = low + draw(st.integers(1, 10))
        most = draw(st.sampled_from([low, high, None]))
        freeing = name == "engine-braking"
        off = not freeing and draw(st.booleans())
        made[name] = Control(
            kind="level",
            levels=(low, high),
            most_help=None if freeing else most,
            frees_most=most if freeing else None,
            off=off,
        )
        value = draw(st.sampled_from([*range(low, high + 1), None, *(["off"] if off else [])]))
        if value is not None:
            held[name] = value
    return made, held


@st.composite
def modes(draw: st.DrawFn, made: dict[str, Control]) -> dict[str, Mode]:
    """A mode that leaves everything, and one made for wet that fixes or limits some of it, or none."""
    found = {"open": Mode(use="any")}
    if draw(st.booleans()):
        fixes: dict[str, Any] = {}
        limits: dict[str, Any] = {}
        for name, control in made.items():
            low, high = (int(one) for one in control.levels or (0, 0))
            kind = draw(st.sampled_from(["free", "free", "fixed", "limited"]))
            if kind == "fixed":
                fixes[name] = draw(st.integers(low, high))
            elif kind == "limited":
                limits[name] = tuple(sorted(draw(st.tuples(st.integers(low, high), st.integers(low, high)))))
        found["rain"] = Mode(use=draw(st.sampled_from(["wet", "damp"])), fixes=fixes, limits=limits)
    return found


@st.composite
def adjusters(draw: st.DrawFn) -> tuple[dict[str, Adjuster], dict[str, float], dict[str, float]]:
    """Rebound, compression and preload, counted either way, and where they stand now and stood in the dry."""
    made: dict[str, Adjuster] = {}
    now: dict[str, float] = {}
    dry: dict[str, float] = {}
    for end in ("front", "rear"):
        for what in ("rebound", "compression", "preload"):
            step = draw(st.sampled_from([0.25, 0.5, 1.0]))
            steps = draw(st.integers(4, 40))
            made[f"{end}-{what}"] = Adjuster(
                end=end,
                what=what,
                unit=draw(st.sampled_from(["click", "turn", "mm"])),
                step=step,
                range=(0.0, steps * step),
                counted_from=draw(st.sampled_from(["closed", "open", None])),
            )
            then = draw(st.integers(0, steps))
            moved = draw(st.sampled_from([0, 0, 0, 1, -1, 3, -3, 5]))
            dry[f"{end}-{what}"] = then * step
            now[f"{end}-{what}"] = min(max(then + moved, 0), steps) * step
    return made, now, dry


@attrs.frozen
class Given:
    """A bike, how it is set, and how it was in the dry."""

    bike: Bike
    setup: SetUp
    dry: SetUp


@st.composite
def bikes(draw: st.DrawFn) -> Given:
    made, held = draw(controls())
    turned, now, then = draw(adjusters())
    ends = BikeEnd(
        preload_per_turn=draw(
            st.sampled_from([None, Quantity(Decimal("1"), "mm"), Quantity(Decimal("1.5"), "mm")])
        )
    )
    offered = draw(modes(made))
    bike = Bike(controls=made, modes=offered, adjusters=turned, front=ends, rear=ends)
    mode = draw(st.sampled_from(sorted(offered)))
    setup = SetUp(mode=mode, damping="by-hand", controls=held, adjusters=now)
    return Given(bike, setup, SetUp(damping="by-hand", adjusters=then))


CONDITIONS = st.builds(
    conditions_of, st.sampled_from(GROUPS), st.sampled_from(SURFACES), st.sampled_from(TYRES)
)


@examples(25)
@given(bikes(), CONDITIONS)
def test_it_never_gives_less_help_and_never_holds_the_rear_more(given_: Given, conditions: Any) -> None:
    package = package_of(given_.setup, given_.bike, conditions, given_.dry)
    after = taken(given_.setup, package)
    for name in given_.bike.controls:
        old, new = (position(name, one, given_.bike) for one in (given_.setup, after))
        if old is not None:
            assert new is not None
            assert new >= old, (name, package.values)


@examples(25)
@given(bikes(), CONDITIONS)
def test_it_never_leaves_a_range_what_a_mode_leaves_or_the_last_clicks(
    given_: Given, conditions: Any
) -> None:
    package = package_of(given_.setup, given_.bike, conditions, given_.dry)
    after = taken(given_.setup, package)
    mode = given_.bike.modes[after.mode or ""]
    for one in package.values:
        if one.part in ("damping", "preload"):
            _inside(one, given_.bike)
        elif one.part in ("aid", "engine braking"):
            low, high = given_.bike.controls[one.path[2]].levels or (0, 0)
            assert isinstance(one.new, int)
            assert low <= one.new <= high
            bounds = mode.limits.get(one.path[2])
            assert bounds is None or int(bounds[0]) <= one.new <= int(bounds[1])


def _inside(one: WetValue, bike: Bike) -> None:
    adjuster = bike.adjusters[one.path[2]]
    low, high = adjuster.range or (0.0, 0.0)
    assert isinstance(one.new, int | float)
    assert low <= one.new <= high
    assert (one.new / (adjuster.step or 1.0)).is_integer()
    if one.part == "damping":
        left = high - one.new if adjuster.counted_from == "closed" else one.new - low
        assert left > max(adjuster.step or 1.0, 0.1 * (high - low))


@examples(25)
@given(bikes(), CONDITIONS)
def test_once_taken_nothing_of_it_is_open(given_: Given, conditions: Any) -> None:
    package = package_of(given_.setup, given_.bike, conditions, given_.dry)
    again = package_of(taken(given_.setup, package), given_.bike, conditions, given_.dry)
    assert again.values == ()


@examples(25)
@given(bikes(), CONDITIONS)
def test_damping_only_opens_and_preload_only_comes_off(given_: Given, conditions: Any) -> None:
    package = package_of(given_.setup, given_.bike, conditions, given_.dry)
    for one in package.values:
        if one.part in ("damping", "preload"):
            assert not isinstance(one.old, str)
            assert not isinstance(one.new, str)
            out = given_.bike.adjusters[one.path[2]].counted_from == "closed"
            assert (one.new > one.old) is out


@every(
    ("control", "old", "new"),
    [(TEN, 3, 8), (TEN_DOWN, 8, 3), (THREE, 2, 3), (TEN, "off", 8), (TEN, 9, None), (TEN_DOWN, 2, None)],
)
def test_traction_of_an_intermediate_rider_in_the_wet_is_help_of_0_80(
    control: Control, old: int | str, new: int | None
) -> None:
    bike = Bike(controls={"traction": control})
    found = package_of(SetUp(controls={"traction": old}), bike, WET)
    assert of(found) == ({} if new is None else {"traction": new})


@every(("frees_most", "old", "new"), [(5, 3, 4), (1, 3, 2), (5, 5, None), (None, 3, None)])
def test_engine_braking_goes_toward_the_end_that_frees(
    frees_most: int | None, old: int, new: int | None
) -> None:
    control = Control(kind="level", levels=(1, 5), frees_most=frees_most)
    found = package_of(
        SetUp(controls={"engine-braking": old}), Bike(controls={"engine-braking": control}), WET
    )
    assert of(found) == ({} if new is None else {"engine-braking": new})
    assert ("which end of engine braking brakes least is not known" in found.not_set) is (frees_most is None)


def test_the_mode_made_for_wet_is_taken_with_what_it_fixes_and_limits() -> None:
    throttle = Control(kind="choice", choices=("sharp", "even", "soft"), most_help="soft")
    rain = Mode(use="wet", fixes={"throttle": "soft"}, limits={"traction": (3, 7)})
    bike = Bike(controls={"throttle": throttle, "traction": TEN}, modes={"open": Mode(), "rain": rain})
    found = package_of(SetUp(mode="open", controls={"throttle": "even", "traction": 3}), bike, WET)
    assert of(found) == {"mode": "rain", "throttle": "soft", "traction": 7}


def test_a_mode_that_would_lower_help_is_left_and_named() -> None:
    rain = Mode(use="wet", fixes={"traction": 6})
    bike = Bike(controls={"traction": TEN}, modes={"open": Mode(), "rain": rain})
    found = package_of(SetUp(mode="open", controls={"traction": 9}), bike, WET)
    assert found.values == ()
    assert any("rain would lower help" in one for one in found.not_set)


def test_a_mode_for_the_damp_comes_first_in_the_damp_and_not_at_all_in_the_wet() -> None:
    bike = Bike(modes={"open": Mode(), "rain": Mode(use="wet"), "patchy": Mode(use="damp")})
    assert of(package_of(SetUp(mode="open"), bike, DAMP)) == {"mode": "patchy"}
    assert of(package_of(SetUp(mode="open"), bike, WET)) == {"mode": "rain"}
    assert of(package_of(SetUp(mode="rain"), bike, DAMP)) == {}


def test_abs_that_leaves_a_wheel_is_raised_to_a_level_that_does_not() -> None:
    abs_ = Control(
        kind="level", levels=(1, 3), most_help=3, effects={"1": Effect(front="off"), "2": Effect(rear="off")}
    )
    found = package_of(SetUp(controls={"abs": 1}), Bike(controls={"abs": abs_}), WET)
    assert of(found) == {"abs": 3}


@every(
    ("control", "off"),
    [
        (Control(kind="state", choices=("off", "armed")), "off"),
        (Control(kind="state", choices=("none", "armed"), off="none"), "none"),
        (Control(kind="state", choices=("armed", "armed 2"), off=True), "off"),
        (Control(kind="state", choices=("armed", "armed 2")), None),
    ],
)
def test_launch_goes_off_by_the_bikes_own_word(control: Control, off: str | None) -> None:
    found = package_of(SetUp(controls={"launch": "armed"}), Bike(controls={"launch": control}), WET)
    assert of(found) == ({} if off is None else {"launch": off})


@every(
    ("counted", "conditions", "dry", "now", "new"),
    [
        ("closed", WET, 12, 12, 15),
        ("closed", DAMP, 12, 12, 14),
        ("open", WET, 12, 12, 9),
        ("closed", WET, 12, 13, 15),
        ("closed", WET, 12, 14, None),
        ("closed", WET, 12, 9, 15),
        ("closed", WET, 20, 20, 21),
        ("closed", WET, 21, 21, None),
        ("open", WET, 4, 4, 3),
    ],
)
def test_rebound_opens_three_clicks_in_the_wet_two_in_the_damp_off_the_last_ones(
    counted: str, conditions: Any, dry: float, now: float, new: float | None
) -> None:
    bike = Bike(adjusters={"front-rebound": attrs.evolve(REBOUND, counted_from=counted)})
    found = package_of(
        SetUp(adjusters={"front-rebound": now}), bike, conditions, SetUp(adjusters={"front-rebound": dry})
    )
    assert of(found) == ({} if new is None else {"front-rebound": new})


@every(
    ("changes", "new"),
    [
        ({}, 4),
        ({"counted_from": "closed"}, 9),
        ({"unit": "mm", "step": 0.5}, 3.5),
        ({"unit": "click"}, None),
        ({"counted_from": None}, None),
        ({"range": (5, 14)}, 5),
    ],
)
def test_preload_comes_off_by_3_mm_in_the_adjusters_own_unit(
    changes: dict[str, Any], new: float | None
) -> None:
    bike = Bike(adjusters={"front-preload": attrs.evolve(PRELOAD, **changes)}, front=PER_TURN)
    setup = SetUp(adjusters={"front-preload": 6.5})
    found = package_of(setup, bike, WET, setup)
    assert of(found) == ({} if new is None else {"front-preload": new})
    assert any("3 mm less by hand" in one for one in found.not_set) is (new is None)


def test_automatic_damping_is_left_alone_and_preload_by_hand_is_not() -> None:
    bike = Bike(
        adjusters={"front-rebound": REBOUND, "front-preload": PRELOAD},
        damping={"live": Damping(kind="semi-active", closes={"front-rebound": True})},
        front=PER_TURN,
    )
    setup = SetUp(damping="live", adjusters={"front-rebound": 12, "front-preload": 6.5})
    found = package_of(setup, bike, WET, setup)
    assert of(found) == {"front-preload": 4}
    assert any(one.startswith("automatic damping") for one in found.not_set)


def test_both_legs_are_set_alike_from_the_more_open_one() -> None:
    legs = {f"front-rebound-{leg}": attrs.evolve(REBOUND, leg=leg) for leg in ("left", "right")}
    setup = SetUp(adjusters={"front-rebound-left": 11, "front-rebound-right": 12})
    assert of(package_of(setup, Bike(adjusters=legs), WET, setup)) == {
        "front-rebound-left": 15,
        "front-rebound-right": 15,
    }


def test_legs_that_split_their_duties_open_each_from_its_own() -> None:
    split = {
        "left": attrs.evolve(REBOUND, leg="left"),
        "right": attrs.evolve(REBOUND, what="compression", leg="right"),
    }
    setup = SetUp(adjusters={"left": 8, "right": 12})
    assert of(package_of(setup, Bike(adjusters=split), WET, setup)) == {"left": 11, "right": 15}


def test_without_a_dry_set_up_no_count_is_called_dry_and_it_is_said() -> None:
    setup = SetUp(adjusters={"front-rebound": 12})
    found = package_of(setup, Bike(adjusters={"front-rebound": REBOUND}), WET)
    assert found.values == ()
    assert any("no dry session on record" in one for one in found.not_set)


def test_pressures_are_the_tyre_makers_or_left() -> None:
    front, rear = (Tyre(kind="wet", hot_wet=Quantity(Decimal(bar), "bar")) for bar in ("2.35", "2.10"))
    wet = TyreSet(front=front, rear=rear)
    words = package_of(SetUp(), Bike(), WET, None, wet).not_set
    assert words == ("pressures toward the wet target, hot 2.35 bar front, 2.10 bar rear",)
    dry = TyreSet(front=Tyre(kind="slick"), rear=Tyre(kind="slick"))
    words = package_of(SetUp(), Bike(), WET, None, dry).not_set
    assert words == (
        "wet tyres on, if there are any",
        "pressures to the tyre maker's wet figure, else leave them",
    )


def test_a_function_of_its_own_name_counts_as_what_it_is() -> None:
    slip = attrs.evolve(TEN, function="traction")
    assert function_of("slip", slip) == "traction"
    assert of(package_of(SetUp(controls={"slip": 3}), Bike(controls={"slip": slip}), WET)) == {"slip": 8}
