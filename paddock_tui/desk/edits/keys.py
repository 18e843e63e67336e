"""What a single key asks of a value: step it, toggle it, or set a digit; each becomes one step."""

from collections.abc import Mapping
from typing import cast

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.desk.edits.thresholds import limit_at
from paddock_tui.desk.edits.values import at_one_look, bike_of, field_of, setting_value
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.edits import MISSING, Step, Value
from paddock_tui.records.electronics import Control
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.shapes import Flag, Setting
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.shapes_of_bike import can_be_off, is_off
from paddock_tui.records.step_sizes import stepped_by
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

CONTROLS = ("setup", "controls")

NO_SIZES: Mapping[str, float] = {}
"""Every value steps as it is declared."""

Last = Mapping[tuple[Ref, Path], Value]
"""The values that controls had before they were switched off, for switching them on again."""


@at_one_look
def stepping(
    files: GarageFiles,
    ref: Ref,
    path: Path,
    by: int,
    more_help: bool | None,
    sizes: Mapping[str, float] = NO_SIZES,
) -> Step | str:
    """Step a value: by the bike's own number, or toward more or less help where that is asked and known.

    `sizes` are the steps that the rider chose for some kinds of value.
    Gives the reason in words where it cannot be stepped.
    """
    field = field_of(files, ref, path)
    if field is None:
        return "nothing can be set here: w says what the row is"
    old = lookup(files.data(ref), path)
    control = _control(files, ref, path)
    if control is not None and more_help is not None:
        toward = _toward(path[-1], control, old, more_help)
        if toward is not None:
            step = setting_value(files, ref, path, toward)
            return step if step.changes else f"{field.label} is at its end: {toward}"
    value = field.shape.load(old) if old is not MISSING else None
    if limit_at(ref, path) is not None:
        return f"{path[-1].replace('_', ' ')} has no steps: enter edits it"
    if value is None or isinstance(value, InputError):
        return f"{field.label} is not known: type it"
    sized = stepped_by(field.shape, sizes)
    stepped = sized.step(value, by) if sized is not None else field.shape.step(value, by)
    if stepped is None:
        return f"{field.label} has no steps: enter edits it"
    dumped = cast("Value", field.shape.dump(stepped))
    step = setting_value(files, ref, path, dumped)
    return step if step.changes else f"{field.label} is at its end: {field.shape.show(value)}"


@at_one_look
def toggling(files: GarageFiles, ref: Ref, path: Path, last: Last) -> Step | str:
    """Toggle yes and no; switch a control off, or back to the level it had, else to its most help.

    Gives the reason in words where it cannot be toggled.
    """
    field = field_of(files, ref, path)
    if field is None:
        return "nothing can be set here: w says what the row is"
    old = lookup(files.data(ref), path)
    if isinstance(field.shape, Flag):
        return setting_value(files, ref, path, old is not True)
    control = _control(files, ref, path)
    if control is None:
        return f"{field.label} is neither on nor off: enter edits it"
    if not can_be_off(control) and OFF not in field.shape.words():
        return f"{field.label} cannot be off on this bike: type a level"
    off: Value = OFF if control.off is None or isinstance(control.off, bool) else control.off
    if old is MISSING or not is_off(control, cast("Setting", old)):
        return setting_value(files, ref, path, off)
    before = last.get((ref, path))
    known = before is not None and not is_off(control, cast("Setting", before))
    on = before if known else _on(path[-1], control, field)
    return (
        f"{field.label} has no level that is known: type it"
        if on is None
        else setting_value(files, ref, path, on)
    )


def value_on(files: GarageFiles, ref: Ref, path: Path) -> Value | None:
    """Return what a control is at while it is on; None where it is off, not known, or no control."""
    old = lookup(files.data(ref), path)
    control = _control(files, ref, path)
    if control is None or not isinstance(old, int | str) or is_off(control, old):
        return None
    return old


def _toward(name: str, control: Control, old: object, more_help: bool) -> Setting | None:
    """Return the level with more or less help, or toward a named end; None where that is not known."""
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is None or not isinstance(old, int | str) or isinstance(old, bool):
        return None
    try:
        return scale.toward_most(old) if more_help else scale.toward_least(old)
    except (Inconsistent, OutOfRange):
        return None


def _on(name: str, control: Control, field: Field) -> Value | None:
    """Return the level to switch on: the most help where that is known, else the first one; None: no
    levels.
    """
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is not None:
        return scale.most
    values = levels.values if levels is not None else field.shape.words()
    return next((value for value in values if not is_off(control, value)), None)


def _control(files: GarageFiles, ref: Ref, path: Path) -> Control | None:
    bike = bike_of(files, ref) if path[:2] == CONTROLS else None
    return bike.controls.get(path[-1]) if bike is not None else None
