"""Other things that one change can be: a level, a height, a sprocket."""

from collections.abc import Callable
from decimal import Decimal

from paddock_tui.advice.about import End
from paddock_tui.advice.in_force import modes_that_free
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.words import Move, Refusal
from paddock_tui.calc.levels import HelpScale, Level
from paddock_tui.quantities import Quantity
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import control_difference, height_difference, old_to_new
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import SetValue


def freer_rear(case: Case) -> Move | Refusal:
    """Set engine braking one step toward the end that frees the rear."""
    found = _control(case, "engine-braking")
    if found is None:
        return Refusal("the bike has no engine-brake control")
    name, control = found
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is None:
        return Refusal(f"it is not known which end of {label_of(name)} brakes least", own=True)
    value = _set_to(case, name, scale.toward_most)
    if value is None or isinstance(value, Refusal):
        return value or Refusal(f"{label_of(name)} is not written down", own=True)
    if scale.is_off(value) or value not in scale.on:
        return Refusal(f"{label_of(name)} is not at one of its levels")
    return _moved(case, name, value, scale.toward_most(value))


def less_help(case: Case, *functions: str) -> Move | Refusal:
    """Set the first of these aids that the bike has one step toward less help; never off, never in danger."""
    if case.danger:
        return Refusal("no help is taken away while a shake, weave, tuck or lock is open", own=True)
    for function in functions:
        found = _control(case, function)
        if found is None:
            continue
        name, control = found
        levels = levels_of(name, control)
        scale = levels.help_if_known() if levels is not None else None
        if scale is None:
            return Refusal(f"it is not known which end of {label_of(name)} helps most", own=True)
        value = _set_to(case, name, scale.less_help)
        if value is None or isinstance(value, Refusal):
            return value or Refusal(f"{label_of(name)} is not written down", own=True)
        return _less(case, name, scale, value)
    return Refusal(f"the bike has no {label_of(functions[0])}")


def _less(case: Case, name: str, scale: HelpScale, value: Level) -> Move | Refusal:
    if scale.is_off(value) or value not in scale.on:
        return Refusal(f"{label_of(name)} is off already")
    return _moved(case, name, value, scale.less_help(value))


def height(case: Case, key: str, by_mm: float) -> Move | Refusal:
    """Move the fork in its yokes, or the rear height; a height above what was checked clear is refused."""
    old = case.setup.fork_height if key == "fork_height" else case.setup.rear_height
    label = "fork protrusion" if key == "fork_height" else "rear ride height"
    if old is None:
        return Refusal(f"{label} is not written down: measure it first", own=True)
    new = old.to("mm") + by_mm
    end: End = "front" if key == "fork_height" else "rear"
    clear = case.bike_end(end).highest_clear
    if new < 0:
        return Refusal(f"{label} has no more range that way")
    if by_mm > 0 and (clear is None or new > clear.to("mm")):
        return Refusal(
            f"{label} is not checked clear beyond {clear or 'where it stands'}: check full bottoming"
        )
    written = Quantity(Decimal(f"{new:g}"), "mm")
    return Move(
        str(height_difference(key, old, written)),
        (SetValue(("setup", key), str(written)),),
        (("setup", key),),
    )


def rear_sprocket(case: Case, teeth: int) -> Move | Refusal:
    """Change the rear sprocket; more teeth give more revs."""
    old = case.setup.rear_sprocket
    if old is None:
        return Refusal("the rear sprocket is not written down")
    new = old + teeth
    return Move(
        f"rear sprocket {old_to_new(str(old), str(new), 'teeth')}; then chain slack and axle",
        (SetValue(("setup", "rear_sprocket"), new),),
        (("setup", "rear_sprocket"),),
    )


def _control(case: Case, function: str) -> tuple[str, Control] | None:
    for name, control in case.bike.controls.items():
        if function_of(name, control) == function:
            return name, control
    return None


def more_help(case: Case, name: str) -> Move | Refusal:
    """Set one aid one step toward more help; one that is off goes to its least."""
    control = case.bike.controls[name]
    levels = levels_of(name, control)
    scale = levels.help_if_known() if levels is not None else None
    if scale is None:
        return Refusal(f"it is not known which end of {label_of(name)} helps most", own=True)
    value = _set_to(case, name, scale.more_help)
    if value is None or isinstance(value, Refusal):
        return value or Refusal(f"{label_of(name)} is not written down", own=True)
    return _moved(case, name, value, scale.least if scale.is_off(value) else scale.more_help(value))


def _set_to(case: Case, name: str, step: Callable[[Level], Level]) -> Level | Refusal | None:
    """Return the level in force; what the riding mode fixes can only be changed in a mode that frees it.

    Then the level that is one step from what really ran is named.
    """
    here = control_in_force(name, case.setup, case.bike)
    fixed = here.fixed
    if fixed is not None and not isinstance(fixed, bool):
        free = " or ".join(modes_that_free(name, case.bike))
        at = f", {step(fixed)} there" if fixed in _levels(case, name) else ""
        frees = f"riding mode {free} frees it{at}" if free else "no riding mode frees it"
        return Refusal(f"riding mode {case.setup.mode} fixes {label_of(name)} at {fixed}: {frees}", own=True)
    return None if isinstance(here.value, bool) else here.value


def _levels(case: Case, name: str) -> tuple[Level, ...]:
    """Return the levels of a control that are on; none where its file does not tell them in order."""
    levels = levels_of(name, case.bike.controls[name])
    scale = levels.scale_if_known() if levels is not None else None
    return scale.on if scale is not None else ()


def _moved(case: Case, name: str, old: Level, new: Level) -> Move | Refusal:
    if new == old:
        return Refusal(f"{label_of(name)} has no further step that way")
    return Move(
        str(control_difference(name, old, new, case.bike)),
        (SetValue(("setup", "controls", name), new),),
        (("controls", name),),
    )
