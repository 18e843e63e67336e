"""Rules about presets of damping: one made for another surface, an offset that a preset does not leave."""

from paddock_tui.records.bike import Bike
from paddock_tui.records.presets_in_use import Started
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.aid_words import track
from paddock_tui.rules.core import CAUTION, HOLD, NOTE, RaisedFinding, Remedy, Result, SetValue, rule
from paddock_tui.text import clip

_FILE = "the bike's file: what its presets set and leave"
_FOR_WET = {"wet": ("wet", "damp"), "damp": ("damp", "wet")}


@rule("preset-made-for-the-dry", CAUTION, source=_FILE, when=("to_come",), at="setup:setup.preset")
def preset_made_for_the_dry(preset_used: Started, surface: str, column: str, bike: Bike) -> Result:
    """A preset that is made for a dry track on a wet one; on a damp one a note."""
    if preset_used.values.use != "dry" or column == "dry":
        return None
    written = bike.damping[preset_used.mode].preset_values
    other = next((name for use in _FOR_WET[column] for name, one in written.items() if one.use == use), None)
    what = f"Take {clip(other, 20)}" if other is not None else "Take a softer preset"
    return RaisedFinding(
        message=f"Preset {clip(preset_used.name, 20)} is made for the dry, not for {track(surface)}.",
        why="Damping for dry grip skips where the tyre is loaded less.",
        remedy=Remedy(
            f"{what}, then two easy laps; or offsets toward softer.",
            (SetValue(("setup", "preset"), other),) if other is not None else (),
        ),
        severity=CAUTION if column == "wet" else NOTE,
        subject="preset",
        facts=f"preset {preset_used.name}; surface {surface}",
    )


@rule("outside-what-the-preset-leaves", HOLD, of_set_up=True, source=_FILE, at="setup:setup.offsets")
def outside_what_the_preset_leaves(preset_used: Started, setup: SetUp) -> Result:
    """An offset beyond the range that the preset in use leaves of it."""
    found = []
    for name, (first, last) in preset_used.values.leaves.items():
        low, high = sorted((first, last))
        value = setup.offsets.get(name)
        if value is None or low <= value <= high:
            continue
        label, nearest = label_of(name), low if value < low else high
        found.append(
            RaisedFinding(
                message=f"{label[:1].upper()}{label[1:]} {show_number(value)} is not for "
                f"{clip(preset_used.name, 20)}: it leaves {show_number(low)} to {show_number(high)}.",
                why="The bike will not take the value in this preset, or will change it.",
                remedy=Remedy(
                    f"Set {show_number(nearest)}, or choose another preset.",
                    (SetValue(("setup", "offsets", name), _plain(nearest)),),
                ),
                subject=name,
                path=("setup", "offsets", name),
                facts=f"{label} {show_number(value)}; preset {preset_used.name} leaves "
                f"{show_number(low)} to {show_number(high)}",
            )
        )
    return found or None


def _plain(value: float) -> int | float:
    return int(value) if value == int(value) else value
