"""Back from the wet to the dry: what of a set-up differs from the one that a rider last had in the dry.

What the weather does not ask for is left: gearing, springs and heights, the pit limiter, which is the
venue's, and launch control, which stays off.
"""

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference, differences
from paddock_tui.records.electronics import Mode, function_of
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import BY_HAND

_PLAIN = ("mode", "damping", "preset", "front_start", "rear_start")
_LEFT = ("pit-limiter", "launch")


def dry_values(setup: SetUp, bike: Bike, dry: SetUp) -> tuple[SetUpDifference, ...]:
    """List what would be set as it was in the dry, mode first; only what was known then and is on the bike.

    What the riding mode of then fixes is not written beside it.
    """
    after = attrs.evolve(setup, mode=dry.mode if dry.mode in bike.modes else setup.mode)
    mode = bike.modes.get(after.mode or "", Mode())
    found = [
        one for one in differences(setup, dry, bike) if one.new is not None and _of_weather(one, bike, mode)
    ]
    return tuple(sorted(found, key=lambda one: one.key != "mode"))


def _of_weather(one: SetUpDifference, bike: Bike, mode: Mode) -> bool:
    if one.kind == "controls":
        control = bike.controls.get(one.key)
        if control is None or function_of(one.key, control) in _LEFT:
            return False
        fixed = None if control.outside_modes else mode.fixes.get(one.key)
        return fixed is None or fixed == one.new
    if one.kind == "adjusters":
        return one.key in bike.adjusters
    if one.kind == "offsets":
        return True
    if one.key in ("mode", "damping"):
        return one.new in (bike.modes if one.key == "mode" else (BY_HAND, *bike.damping))
    return one.key in _PLAIN
