"""What a bike makes of a set-up: the shape of each control, adjuster and offset."""

from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.calls import adjuster_call, control_call
from paddock_tui.records.electronics import Control
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path
from paddock_tui.records.presets_in_use import presets_offered
from paddock_tui.records.shapes import (
    AnySetting,
    LevelSetting,
    Named,
    Number,
    Setting,
    Shape,
    Signed,
    SpeedSetting,
    WordSetting,
)
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.suspension import BY_HAND, Adjuster


def can_be_off(control: Control) -> bool:
    """Return whether a control has a state 'off' of its own."""
    return control.off is not None and control.off is not False


def is_off(control: Control, setting: Setting) -> bool:
    """Return whether a value means off on this bike."""
    if setting == OFF:
        return True
    return not isinstance(control.off, bool) and control.off is not None and setting == control.off


def setting_shape(control: Control) -> Shape[Setting]:
    """Return the shape of a control's value."""
    off = control.off is True or control.off == OFF
    if control.kind == "level" and control.levels is not None:
        low, high = sorted(int(level) for level in control.levels)
        return LevelSetting(low, high, can_be_off=off)
    if control.kind == "speed":
        return SpeedSetting(control.speeds or (), can_be_off=off)
    if control.kind == "switch":
        return WordSetting(OFF, "on")
    if control.kind in ("choice", "state") and control.choices:
        words = control.choices if not off or OFF in control.choices else (OFF, *control.choices)
        return WordSetting(*words)
    return AnySetting()


def adjuster_shape(adjuster: Adjuster) -> Number:
    """Return the shape of an adjuster's value, in the adjuster's own unit."""
    low, high = sorted(adjuster.range or (-100.0, 200.0))
    step = adjuster.step if adjuster.step is not None and adjuster.step > 0 else 1.0
    return Number(low, high, unit=adjuster.unit or "", step=step)


LABELS = {
    "traction": "traction control",
    "wheelie": "wheelie control",
    "slide": "slide control",
    "throttle": "throttle response",
    "power": "power mode",
    "launch": "launch control",
    "shifter": "quickshifter",
}
"""What a control is called in full where its name is the bare word of its function."""


def label_of(name: str) -> str:
    """Write the name of a control or an adjuster for the screen."""
    return LABELS.get(name) or words_of(name)


def label_at(path: Path) -> str:
    """Write the last key of a path for the screen: a control's name where it stands under one."""
    return label_of(path[-1]) if len(path) > 1 else words_of(path[-1])


def words_of(name: str) -> str:
    """Write a key of a file as words."""
    return " ".join("ABS" if word == "abs" else word for word in name.replace("_", "-").split("-"))


@attrs.frozen
class OfBike:
    """One value of a set-up that exists because the bike has it."""

    path: Path
    label: str
    help: str
    shape: Shape[Any]
    call: str = ""


def offered(bike: Bike, damping: str | None) -> Iterator[OfBike]:
    """List the controls, adjusters and offsets of a bike as places of a set-up."""
    for name, control in bike.controls.items():
        call = control.call or control_call(name, control)
        shape = setting_shape(control)
        yield OfBike(("controls", name), label_of(name), "what the rider set it to", shape, call)
    for name, adjuster in bike.adjusters.items():
        counted = f", counted from {adjuster.counted_from}" if adjuster.counted_from else ""
        text = f"in {adjuster.unit}s{counted}" if adjuster.unit else "in the adjuster's own unit"
        call = adjuster.call or adjuster_call(name, adjuster)
        yield OfBike(("adjusters", name), label_of(name), text, adjuster_shape(adjuster), call)
    mode = bike.damping.get(damping or "")
    for name, offset in (mode.offsets if mode else {}).items():
        low, high = sorted(offset.range or (-100.0, 100.0))
        yield OfBike(
            ("offsets", name), label_of(name), "trim on top of the automatic damping", Signed(low, high)
        )


def choice_shape(bike: Bike, key: str, damping: str | None) -> Shape[str]:
    """Return the shape of riding mode, damping mode or preset with the bike's own names."""
    names = {
        "mode": tuple(bike.modes),
        "damping": tuple(dict.fromkeys((BY_HAND, *bike.damping))),
        "preset": presets_offered(bike, damping),
    }[key]
    what = {"mode": "one of the bike's riding modes", "damping": "a damping mode", "preset": "a preset"}[key]
    return Named(what, names)


SET = (("setup", "controls"), ("dash", "values"))
"""The tables of a session whose values the bike's controls say how to read."""


def set_up_troubles(data: Mapping[str, Any], bike: Bike) -> Iterator[InputError]:
    """Find the set values that cannot be read as what the bike's control is; ranges are for rules."""
    for table in SET:
        here: Any = data
        for key in table:
            here = here.get(key) if isinstance(here, Mapping) else None
        for name, raw in here.items() if isinstance(here, Mapping) else ():
            control = bike.controls.get(name)
            found = setting_shape(control).load(raw) if control is not None else None
            if isinstance(found, InputError):
                yield attrs.evolve(found, path=(*table, name))
