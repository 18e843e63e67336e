"""The electronics of the wet package: the riding mode made for wet, aids, engine braking, launch off."""

from collections.abc import Iterator

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import OFF_HELP, HelpScale, Level, Scale
from paddock_tui.calc.starting_levels import Aid, starting_help
from paddock_tui.facts.controls import FRONT_ABS
from paddock_tui.facts.wet_values import Conditions, Part, WetValue, WetValues
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import FUNCTIONS, HELP_FUNCTIONS, Control, Mode, function_of
from paddock_tui.records.in_force import in_force_value
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.shapes_of_bike import can_be_off, is_off, label_of

_SAME = 1e-9


def wet_aids(setup: SetUp, bike: Bike, conditions: Conditions) -> WetValues:
    """Return what the electronics would be set to, in the bike's own numbers; never less help than now.

    Each aid goes to the start for group, surface and rear tyre, rounded toward more help, inside what the
    riding mode leaves. A control that is not written down, or whose direction is not known, is left.
    """
    chosen, words = _mode(setup, bike, conditions.damp)
    values: list[WetValue] = []
    switched = chosen is not None and chosen != setup.mode
    if chosen is not None and switched:
        values.append(WetValue("mode", ("setup", "mode"), "riding mode", setup.mode or "not known", chosen))
    before, after = bike.modes.get(setup.mode or ""), bike.modes.get(chosen or "") or Mode()
    for name, control in _in_order(bike):
        old = in_force_value(name, control, setup, before)
        fixed = None if control.outside_modes else after.fixes.get(name)
        if fixed is not None:
            values += _as_fixed(name, control, setup, fixed) if switched else ()
            continue
        found = _value(name, control, after, old, conditions)
        if isinstance(found, str):
            words.append(found)
        # Where nothing is proposed, what the mode so far fixed stands on: what is written may be barred.
        stands = _as_before(name, control, setup, old) if switched else None
        value = found if isinstance(found, WetValue) else stands
        if value is not None:
            values.append(value)
    return WetValues(tuple(values), tuple(words))


def _in_order(bike: Bike) -> list[tuple[str, Control]]:
    """List the controls by what they do, so that the order in a file changes nothing."""
    return sorted(bike.controls.items(), key=lambda one: (FUNCTIONS.index(function_of(*one)), one[0]))


def _mode(setup: SetUp, bike: Bike, damp: bool) -> tuple[str | None, list[str]]:
    """Name the riding mode of the package: one made for it that lowers nothing, else the one in use."""
    uses = ("damp", "wet") if damp else ("wet",)
    made = [name for use in uses for name in sorted(bike.modes) if bike.modes[name].use == use]
    if setup.mode in made:
        return setup.mode, []
    for name in made:
        if not _lowers(setup, bike, bike.modes[name]):
            return name, []
    return setup.mode, [
        f"riding mode {name} would lower help, or does not take what is set: choose it by hand or not"
        for name in made
    ]


def _lowers(setup: SetUp, bike: Bike, mode: Mode) -> bool:
    """Return whether a riding mode gives less help, or holds the rear more, than what is in force now.

    So does one that leaves a wheel without ABS that has it now; and one that does not allow what a control
    is set to is not for it either, where nobody knows which other value would help as much.
    """
    now = bike.modes.get(setup.mode or "")
    for name, control in bike.controls.items():
        scale, old = _scale(name, control), in_force_value(name, control, setup, now)
        if old is None or control.outside_modes:
            continue
        fixed, bounds = mode.fixes.get(name), mode.limits.get(name)
        if scale is None:
            if fixed is None and bounds is not None and not _allowed(name, control, old, mode, bounds):
                return True
            continue
        if fixed is not None and _leaves_a_wheel(name, control, fixed, old):
            return True
        left = [fixed] if fixed is not None else list(_left(name, control, scale, mode))
        if not left or max(_position(scale, one) for one in left) < _position(scale, old) - _SAME:
            return True
    return False


def _allowed(name: str, control: Control, value: Setting, mode: Mode, bounds: tuple[Setting, ...]) -> bool:
    if is_off(control, value):
        return name in (mode.off_allowed or ())
    return _inside(value, bounds)


def _as_fixed(name: str, control: Control, setup: SetUp, fixed: Setting) -> Iterator[WetValue]:
    """Write down what the new riding mode fixes, where something else is written."""
    held = setup.controls.get(name)
    if held is not None and held != fixed:
        yield WetValue(_part(name, control), ("setup", "controls", name), label_of(name), held, fixed)


def _as_before(name: str, control: Control, setup: SetUp, old: Setting | None) -> WetValue | None:
    """Write down what the riding mode so far fixed, where the new one leaves it to what is written."""
    held = setup.controls.get(name)
    if old is None or held == old:
        return None
    return WetValue(
        _part(name, control), ("setup", "controls", name), label_of(name), held or "not known", old
    )


def _value(
    name: str, control: Control, mode: Mode, old: Setting | None, conditions: Conditions
) -> WetValue | str | None:
    function, label = function_of(name, control), label_of(name)
    if function == "launch":
        return _launch(name, control, old)
    if function not in HELP_FUNCTIONS and function != "engine-braking":
        return None
    if old is None:
        return f"{label} is not written down"
    scale = _scale(name, control)
    if scale is None:
        which = "brakes least" if function == "engine-braking" else "helps most"
        return f"which end of {label} {which} is not known"
    wanted = starting_help(
        conditions.group, conditions.surface, conditions.tyre, Aid(function), conditions.rear
    )
    if wanted is None or not (scale.is_off(old) or old in scale.on):
        return None
    position = _start(scale, function, wanted)
    if conditions.first and function != "engine-braking":
        helps = HelpScale(scale.on, scale.off)
        position = helps.position_of(helps.more_help(helps.level_at_least(wanted)))
    new = _picked(scale, _left(name, control, scale, mode), old, position)
    if new is None or new == old:
        return None
    return WetValue(_part(name, control), ("setup", "controls", name), label, old, new)


def _launch(name: str, control: Control, old: Setting | None) -> WetValue | None:
    """Launch off is its safe state; a launch that is not written down is left to the dash card."""
    if old is None or is_off(control, old):
        return None
    word = next((one for one in control.choices or () if is_off(control, one)), None)
    if word is None and not can_be_off(control):
        return None
    off = word or (OFF if control.off is True or control.off is None else str(control.off))
    return WetValue("launch", ("setup", "controls", name), label_of(name), old, off)


def _start(scale: Scale, function: str, wanted: float) -> float:
    """Return the position to start at: an aid rounds toward more help, engine braking to the nearest."""
    if function == "engine-braking":
        return scale.position_of(scale.nearest(wanted))
    return wanted


def _picked(scale: Scale, left: tuple[Level, ...], old: Setting, wanted: float) -> Level | None:
    """Return the least level that is enough and not under the old one; else the most that is above it."""
    now = _position(scale, old)
    enough = [one for one in left if scale.position_of(one) >= max(now, wanted) - _SAME]
    if enough:
        return min(enough, key=scale.position_of)
    most = max(left, key=scale.position_of, default=None)
    return most if most is not None and scale.position_of(most) > now + _SAME else None


def _left(name: str, control: Control, scale: Scale, mode: Mode) -> tuple[Level, ...]:
    """List the levels that a riding mode leaves, without those that leave a wheel without ABS."""
    bounds = None if control.outside_modes else mode.limits.get(name)
    inside = tuple(one for one in scale.on if bounds is None or _inside(one, bounds))
    return tuple(one for one in inside if not _leaves_a_wheel(name, control, one)) or inside


def _inside(level: Setting, bounds: tuple[Setting, ...]) -> bool:
    if bounds and isinstance(bounds[0], int):
        low, high = sorted(int(one) for one in bounds)
        return isinstance(level, int) and low <= level <= high
    return level in bounds


def _leaves_a_wheel(name: str, control: Control, level: Setting, now: Setting | None = None) -> bool:
    """Return whether a level leaves a wheel without ABS, one that the level of now does not leave."""
    return bool(_left_wheels(name, control, level) - _left_wheels(name, control, now))


def _left_wheels(name: str, control: Control, level: Setting | None) -> frozenset[str]:
    function, effect = function_of(name, control), control.effects.get(str(level))
    if effect is None:
        return frozenset()
    watched = {"front": function in FRONT_ABS, "rear": function in ("abs", "rear-abs")}
    return frozenset(end for end, watches in watched.items() if watches and getattr(effect, end) == "off")


def _scale(name: str, control: Control) -> Scale | None:
    function = function_of(name, control)
    if function not in HELP_FUNCTIONS and function != "engine-braking":
        return None
    levels = levels_of(name, control)
    return levels.scale_if_known() if levels is not None else None


def _position(scale: Scale, level: Setting) -> float:
    """Return the position of a level; off, and what is no level of the bike, stand below the least."""
    try:
        return OFF_HELP if scale.is_off(level) else scale.position_of(level)
    except (Inconsistent, OutOfRange):
        return OFF_HELP


def _part(name: str, control: Control) -> Part:
    return "engine braking" if function_of(name, control) == "engine-braking" else "aid"
