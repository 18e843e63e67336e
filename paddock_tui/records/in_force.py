"""What is in force on a bike as it is set: what a riding mode fixes or leaves, what a damping mode closes."""

from collections.abc import Sequence

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import is_off
from paddock_tui.records.suspension import BY_HAND


@attrs.frozen
class ControlInForce:
    """One control as it is on the track.

    `value` is what it is at, None where that is not known; `fixed` what the riding mode fixes it to, `bounds`
    what the mode leaves of it, None where it leaves all; `may_be_off` whether it may be off within those.
    `mode_known` is false where some riding mode names it and which one is in use is not known.
    """

    value: Setting | None
    fixed: Setting | None = None
    bounds: Sequence[Setting] | None = None
    may_be_off: bool = False
    mode_known: bool = True

    def allows(self, control: Control, value: Setting) -> bool:
        """Return whether the riding mode lets a value be set."""
        if self.fixed is not None:
            return value == self.fixed
        return self.bounds is None or allows(control, self.bounds, value, self.may_be_off)

    def words(self) -> str:
        """Say what the riding mode does to it; empty where it leaves it alone."""
        if not self.mode_known:
            return "the riding mode is not known, and may fix it"
        if self.fixed is not None:
            return f"the riding mode fixes it to {self.fixed}"
        if self.bounds is None:
            return ""
        joined = " to " if isinstance(self.bounds[0], int) else ", "
        return f"the riding mode allows {joined.join(str(one) for one in self.bounds)}"


def control_in_force(name: str, setup: SetUp, bike: Bike) -> ControlInForce:
    """Return what a control is at on the track, riding mode included, and what the mode leaves; the one
    place.
    """
    control, value = bike.controls.get(name), setup.controls.get(name)
    if control is None:
        return ControlInForce(value)
    mode = mode_of(name, control, setup, bike)
    if mode is None:
        return ControlInForce(None, mode_known=False)
    fixed = mode.fixes.get(name)
    bounds = None if fixed is not None else mode.limits.get(name)
    off = name in (mode.off_allowed or ())
    return ControlInForce(value if fixed is None else fixed, fixed, bounds, off)


def value_in_force(name: str, setup: SetUp, bike: Bike) -> Setting | None:
    """Return what a control is at on the track.

    None where that is not known: not written down, or set by a riding mode that nobody named.
    """
    return control_in_force(name, setup, bike).value


def in_force_value(name: str, control: Control, setup: SetUp, mode: Mode | None) -> Setting | None:
    """Return what a control would be at in a given riding mode: what that fixes, else what was set."""
    if mode is not None and not control.outside_modes and name in mode.fixes:
        return mode.fixes[name]
    return setup.controls.get(name)


_FREE = Mode()


def mode_of(name: str, control: Control, setup: SetUp, bike: Bike) -> Mode | None:
    """Return the riding mode as one control sees it, a free one where no mode names it; None: not known."""
    named = any(name in mode.fixes or name in mode.limits for mode in bike.modes.values())
    if control.outside_modes or not named:
        return _FREE
    return bike.modes.get(setup.mode or "")


def allows(control: Control, bounds: Sequence[Setting], value: Setting, off: bool) -> bool:
    """Return whether what a riding mode leaves of a control holds a value; `off`: whether it may be off."""
    if is_off(control, value):
        return off
    if len(bounds) == 2 and all(isinstance(one, int) for one in bounds) and isinstance(value, int):
        low, high = sorted(int(one) for one in bounds)
        return low <= value <= high
    return value in bounds


def closed_by(name: str, setup: SetUp, bike: Bike) -> str:
    """Return the damping mode in use that leaves an adjuster without effect; empty where none does."""
    if setup.damping is None or setup.damping == BY_HAND:
        return ""
    mode = bike.damping.get(setup.damping)
    return setup.damping if mode is not None and mode.closes.get(name, False) else ""
