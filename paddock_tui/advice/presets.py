"""Presets of damping: what choosing one brings, and how far a set-up has moved from its own."""

from collections.abc import Iterator

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.presets import BY_HAND, PresetValues
from paddock_tui.records.presets_in_use import Started, preset_in_use
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import SetValue


@attrs.frozen
class MovedValue:
    """One value that a preset sets, and what it is now."""

    table: str
    name: str
    preset: float
    now: float

    def __str__(self) -> str:
        by = self.now - self.preset
        return f"{label_of(self.name)} {'+' if by > 0 else ''}{show_number(by)}"


def preset_brings(bike: Bike, setup: SetUp) -> tuple[SetValue, ...]:
    """Return what the named preset would set, one step: offsets, or by hand the clicks of the adjusters.

    A preset that a motor goes to can be gone on from by hand: damping by hand then, at its clicks.
    """
    used = preset_in_use(bike, setup)
    if used is None:
        return ()
    if setup.damping != BY_HAND and used.values.offsets:
        return tuple(_differing("offsets", used, setup))
    clicks = tuple(_differing("adjusters", used, setup))
    if setup.damping == BY_HAND or not used.values.adjusters:
        return clicks
    return (SetValue(("setup", "damping"), BY_HAND), *clicks)


def _differing(table: str, used: Started, setup: SetUp) -> Iterator[SetValue]:
    held = getattr(setup, table)
    for name, value in getattr(used.values, table).items():
        if held.get(name) != value:
            yield SetValue(("setup", table, name), int(value) if value == int(value) else value)


def moved_from_preset(bike: Bike, setup: SetUp) -> tuple[MovedValue, ...]:
    """List what is set otherwise than the named preset has it: by hand its clicks, else its offsets."""
    used = preset_in_use(bike, setup)
    if used is None:
        return ()
    table = "adjusters" if setup.damping == BY_HAND else "offsets"
    held = getattr(setup, table)
    return tuple(
        MovedValue(table, name, value, held[name])
        for name, value in getattr(used.values, table).items()
        if name in held and held[name] != value
    )


def moved_words(bike: Bike, setup: SetUp) -> str:
    """Say how far a set-up has moved from its preset; empty where it names none of which that is known."""
    used = preset_in_use(bike, setup)
    if used is None or not (used.values.adjusters if setup.damping == BY_HAND else used.values.offsets):
        return ""
    moved = moved_from_preset(bike, setup)
    return f"{used.name}: {', '.join(map(str, moved)) if moved else 'as it is built'}"


def preset_words(values: PresetValues) -> str:
    """Say in one line what a preset sets: 'is made for wet; sets front soft, over bumps -1'."""
    ends = (("front", values.front_firmness), ("rear", values.rear_firmness), ("damper", values.damper))
    sets = [f"{end} {value}" for end, value in ends if value is not None]
    sets += [f"{label_of(name)} {signed(value)}" for name, value in values.offsets.items()]
    sets += [f"{label_of(name)} {show_number(value)}" for name, value in values.adjusters.items()]
    made = f"is made for {use_words(values.use)}" if values.use else ""
    return "; ".join(filter(None, (made, f"sets {', '.join(sets)}" if sets else ""))) or "sets nothing known"


def use_words(use: str) -> str:
    """Write what a mode or a preset is made for."""
    return "any surface" if use == "any" else use


def signed(value: float) -> str:
    """Write an offset with its sign."""
    return f"+{show_number(value)}" if value > 0 else show_number(value)
