"""Taking a riding mode: what it fixes is written down, and what it does not allow goes to the nearest."""

from collections.abc import Iterator

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.in_force import allows
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.rules.core import SetValue


def with_mode(mode: str, setup: SetUp, bike: Bike) -> SetUp:
    """Return the set-up as it is once a riding mode was taken."""
    controls = {**setup.controls, **dict(_controls(bike.modes[mode], setup, bike))}
    return attrs.evolve(setup, mode=mode, controls=controls)


def mode_values(mode: str, setup: SetUp, bike: Bike) -> tuple[SetValue, ...]:
    """Return what taking a riding mode sets: itself, and every control that it moves."""
    moved = _controls(bike.modes[mode], setup, bike)
    controls = (SetValue(("setup", "controls", name), value) for name, value in moved)
    return (SetValue(("setup", "mode"), mode), *controls)


def _controls(mode: Mode, setup: SetUp, bike: Bike) -> Iterator[tuple[str, Setting]]:
    """List the controls that were set to something which the mode fixes otherwise or does not allow."""
    for name, control in bike.controls.items():
        value = setup.controls.get(name)
        if control.outside_modes or value is None:
            continue
        new = mode.fixes[name] if name in mode.fixes else _nearest(control, mode, name, value)
        if new != value:
            yield name, new


def _nearest(control: Control, mode: Mode, name: str, value: Setting) -> Setting:
    """Return the value that a mode allows nearest to one that it does not; off becomes its least help.

    Of two as near the one toward the named end of the scale is taken; the first where no end is known.
    """
    bounds = mode.limits.get(name)
    if bounds is None or allows(control, bounds, value, name in (mode.off_allowed or ())):
        return value
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    order = scale.on if scale is not None else levels.values if levels is not None else ()
    allowed = [one for one in order if allows(control, bounds, one, off=False)]
    place = order.index(value) if value in order else -1
    return min(reversed(allowed), key=lambda one: abs(order.index(one) - place), default=bounds[0])
