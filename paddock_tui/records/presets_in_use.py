"""Which presets a damping mode of a bike offers, and the one that a set-up names."""

from collections.abc import Iterator

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.presets import BY_HAND, PresetValues
from paddock_tui.records.setup import SetUp


@attrs.frozen
class Started:
    """A preset that a set-up names: its name, the damping mode it belongs to, and what it sets."""

    name: str
    mode: str
    values: PresetValues


def presets_offered(bike: Bike, damping: str | None) -> tuple[str, ...]:
    """List the presets that can be named in a damping mode.

    By hand those with clicks of any mode count too: the adjusters can be turned to them.
    """
    mode = bike.damping.get(damping or "")
    own = (mode.presets or ()) if mode is not None else ()
    if damping != BY_HAND:
        return own
    return tuple(dict.fromkeys((*own, *(one.name for one in _with_clicks(bike)))))


def preset_in_use(bike: Bike, setup: SetUp) -> Started | None:
    """Return the preset that a set-up names with what it sets; None without one, or while nobody wrote it."""
    name = setup.preset
    mode = bike.damping.get(setup.damping or "")
    if name is None:
        return None
    if mode is not None and name in mode.preset_values:
        return Started(name, setup.damping or "", mode.preset_values[name])
    if setup.damping != BY_HAND:
        return None
    return next((one for one in _with_clicks(bike) if one.name == name), None)


def _with_clicks(bike: Bike) -> Iterator[Started]:
    for mode_name, mode in bike.damping.items():
        for name in mode.presets or ():
            written = mode.preset_values.get(name)
            if written is not None and written.adjusters:
                yield Started(name, mode_name, written)
