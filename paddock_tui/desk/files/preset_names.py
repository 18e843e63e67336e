"""A preset of a bike's damping gets another name: in its list, over its values, in every set-up."""

import re
from collections.abc import Mapping
from typing import Any

from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import AnyChange, Change, Edit, Rekey, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.presets import BY_HAND, PRESET_NAME
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.mentions import mentioning


def preset_at(path: Path) -> tuple[str, str] | None:
    """Return damping mode and preset of a value under what presets set; None for any other value."""
    inside = path[:1] == ("damping",) and path[2:3] == ("preset_values",) and len(path) > 3
    return (path[1], path[3]) if inside else None


def renaming_preset(files: GarageFiles, bike: Ref, damping: str, old: str, new: str) -> Step | InputError:
    """Make the step that renames a preset and what refers to it; one undo takes all of it back."""
    name = " ".join(new.split())
    loaded = files.read(bike)
    record = loaded.record if loaded is not None else None
    mode = record.damping.get(damping) if isinstance(record, Bike) else None
    if mode is None or old not in {*(mode.presets or ()), *mode.preset_values}:
        return InputError(f'"{old}"', f"a preset of damping {damping}", "put the cursor on one")
    if not re.fullmatch(PRESET_NAME, name):
        return InputError(f'"{name}"', "a name of letters, digits, spaces, - and _", "type it another way")
    if name in {*(mode.presets or ()), *mode.preset_values}:
        return InputError(
            f"{name} is a preset of {damping} already", "a name that is free", "type another one"
        )
    changes: list[AnyChange] = []
    if mode.presets is not None and old in mode.presets:
        path: Path = ("damping", damping, "presets")
        names = [name if one == old else one for one in mode.presets]
        changes.append(Change(bike, (Edit(path, list(mode.presets), names),)))
    if old in mode.preset_values:
        changes.append(Rekey(bike, ("damping", damping, "preset_values", old), name))
    for ref in mentioning(files, bike.id):
        if ref.kind in ("session", "profile") and _names(files.data(ref), bike, damping, old, record):
            changes.append(Change(ref, (Edit(("setup", "preset"), old, name),)))
    return Step(f"preset {old} -> {name}", tuple(changes))


def _names(data: Mapping[str, Any], bike: Ref, damping: str, preset: str, record: object) -> bool:
    """Return whether a set-up names this preset: in its own mode, or by hand where no mode before has it."""
    if data.get("bike") != bike.id or lookup(data, ("setup", "preset")) != preset:
        return False
    used = lookup(data, ("setup", "damping"))
    if used != BY_HAND:
        return bool(used == damping)
    modes = record.damping if isinstance(record, Bike) else {}
    owners = [name for name, one in modes.items() if preset in one.preset_values]
    return bool((owners[:1] or [damping]) == [damping])
