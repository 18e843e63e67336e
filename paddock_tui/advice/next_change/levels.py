"""Other things that one change can be: a level, a height, a sprocket, a starting pressure."""

from decimal import Decimal
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.about import End
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.words import CannotChange, Move
from paddock_tui.facts.tyre_targets import cold_target_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import old_to_new
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import SetValue
from paddock_tui.trade.levels import HelpScale, Level

ONE_PSI_KPA: Final = 6.894757
"""What a starting pressure is moved by at a time. Common practice, no source."""

NEAR_TARGET_KPA: Final = 3.0
"""A hot reading this near its target counts as on it."""


def freer_rear(case: Case) -> Move | CannotChange:
    """Set engine braking one step toward the end that frees the rear."""
    found = _control(case, "engine-braking")
    if found is None:
        return CannotChange("the bike has no engine-brake control")
    name, control = found
    levels, value = levels_of(name, control), _set_to(case, name)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is None:
        return CannotChange(f"it is not known which end of {label_of(name)} brakes least", own=True)
    if value is None or isinstance(value, CannotChange):
        return value or CannotChange(f"{label_of(name)} is not written down", own=True)
    if scale.is_off(value) or value not in scale.on:
        return CannotChange(f"{label_of(name)} is not at one of its levels")
    return _moved(name, value, scale.toward_most(value))


def less_help(case: Case, *functions: str) -> Move | CannotChange:
    """Set the first of these aids that the bike has one step toward less help; never off."""
    for function in functions:
        found = _control(case, function)
        if found is None:
            continue
        name, control = found
        levels, value = levels_of(name, control), _set_to(case, name)
        scale = levels.help_if_known() if levels is not None else None
        if scale is None:
            return CannotChange(f"it is not known which end of {label_of(name)} helps most", own=True)
        if value is None or isinstance(value, CannotChange):
            return value or CannotChange(f"{label_of(name)} is not written down", own=True)
        return _less(name, scale, value)
    return CannotChange(f"the bike has no {label_of(functions[0])} control")


def _less(name: str, scale: HelpScale, value: Level) -> Move | CannotChange:
    if scale.is_off(value) or value not in scale.on:
        return CannotChange(f"{label_of(name)} is off already")
    return _moved(name, value, scale.less_help(value))


def height(case: Case, key: str, by_mm: float) -> Move | CannotChange:
    """Move the fork in its yokes, or the rear height; a height above what was checked clear is refused."""
    old = case.setup.fork_height if key == "fork_height" else case.setup.rear_height
    label = "fork height" if key == "fork_height" else "rear height"
    if old is None:
        return CannotChange(f"{label} is not written down: measure it first", own=True)
    new = old.to("mm") + by_mm
    end: End = "front" if key == "fork_height" else "rear"
    clear = case.bike_end(end).highest_clear
    if new < 0:
        return CannotChange(f"{label} has no more range that way")
    if by_mm > 0 and (clear is None or new > clear.to("mm")):
        return CannotChange(
            f"{label} is not checked clear beyond {clear or 'where it stands'}: check full bottoming"
        )
    written = Quantity(Decimal(f"{new:g}"), "mm")
    return Move(
        f"{label} {old_to_new(str(old), str(written))}",
        (SetValue(("setup", key), str(written)),),
        (("setup", key),),
    )


def rear_sprocket(case: Case, teeth: int) -> Move | CannotChange:
    """Change the rear sprocket; more teeth give more revs."""
    old = case.setup.rear_sprocket
    if old is None:
        return CannotChange("the rear sprocket is not written down")
    new = old + teeth
    return Move(
        f"rear sprocket {old_to_new(str(old), str(new), 'teeth')}; chain slack and axle anew",
        (SetValue(("setup", "rear_sprocket"), new),),
        (("setup", "rear_sprocket"),),
    )


def toward_target(case: Case, end: End, wanted: int = 0) -> Move | CannotChange:
    """Move the starting pressure toward the hot target: by one psi, by two where it is further off.

    `wanted` +1 or -1 allows only that way.
    """
    over = case.over_target_kpa(end)
    start = cold_target_of(case.setup, end)
    if over is None:
        why = case.no_target(end) or "no hot reading"
        return CannotChange(f"{end} tyre: {why}: pressure moves only toward the hot target")
    if abs(over) <= NEAR_TARGET_KPA:
        return CannotChange(f"the {end} tyre is on its hot target")
    way = -1 if over > 0 else 1
    if wanted and way != wanted:
        said = "under" if wanted < 0 else "over"
        return CannotChange(f"the {end} tyre stands {said} its hot target already")
    if start is None:
        return CannotChange(f"the {end} starting pressure is not written down")
    new = figures.pressure(start.to("kPa") + way * _step_kpa(over), case.about.units)
    if figures.quantity(new) is None:
        return CannotChange(f"the {end} starting pressure cannot be written")
    key = f"{end}_start"
    old = figures.pressure(start.to("kPa"), case.about.units)
    return Move(
        f"{end} starting pressure {old_to_new(old, new)}", (SetValue(("setup", key), new),), (("setup", key),)
    )


def _step_kpa(over_kpa: float) -> float:
    """Return one psi, two where the reading is more than two off; never beyond the target."""
    step = ONE_PSI_KPA if abs(over_kpa) <= 2 * ONE_PSI_KPA else 2 * ONE_PSI_KPA
    return min(step, abs(over_kpa))


def _control(case: Case, function: str) -> tuple[str, Control] | None:
    for name, control in case.bike.controls.items():
        if function_of(name, control) == function:
            return name, control
    return None


def _set_to(case: Case, name: str) -> Level | CannotChange | None:
    """Return the level in force; what the riding mode fixes cannot be changed by itself."""
    here = control_in_force(name, case.setup, case.bike)
    if here.fixed is not None:
        return CannotChange(f"the riding mode fixes {label_of(name)}", own=True)
    return None if isinstance(here.value, bool) else here.value


def _moved(name: str, old: Level, new: Level) -> Move | CannotChange:
    if new == old:
        return CannotChange(f"{label_of(name)} has no further step that way")
    return Move(
        f"{label_of(name)} {old_to_new(str(old), str(new))}",
        (SetValue(("setup", "controls", name), new),),
        (("controls", name),),
    )
