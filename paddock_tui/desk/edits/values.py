"""What is typed or chosen, turned into one step."""

import datetime as dt
import functools
import getpass
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

import attrs

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.thresholds import declared_words, with_unit
from paddock_tui.entry.typed import far_from, read_typed
from paddock_tui.entry.typing_kinds import whole_text
from paddock_tui.quantities import Quantity
from paddock_tui.quantities import parse as parse_quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.differences import old_to_new, unit_of, way_of, with_way
from paddock_tui.records.edits import MISSING, Change, Edit, Missing, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import SET_UP, Field, field_at, fields
from paddock_tui.records.paths import Path, Ref, parse, spell
from paddock_tui.store.data import blocked, lookup, same
from paddock_tui.store.garage import GarageFiles

if TYPE_CHECKING:
    from paddock_tui.rules import Finding


_Asked = ParamSpec("_Asked")
_Made = TypeVar("_Made")


def at_one_look(
    make: Callable[Concatenate[GarageFiles, _Asked], _Made],
) -> Callable[Concatenate[GarageFiles, _Asked], _Made]:
    """Have what makes a step look at each file once: the step is held to the files when it is kept."""

    @functools.wraps(make)
    def made(files: GarageFiles, /, *asked: _Asked.args, **named: _Asked.kwargs) -> _Made:
        with files.once.each():
            return make(files, *asked, **named)

    return made


def bike_of(files: GarageFiles, ref: Ref) -> Bike | None:
    """Return the bike that a session or a profile is for; None where that is not known."""
    loaded = files.read(ref)
    named = getattr(loaded.record, "bike", None) if loaded is not None else None
    if ref.kind not in ("session", "profile") or not isinstance(named, str):
        return None
    bike = files.read(Ref("bike", named))
    return bike.record if bike is not None and isinstance(bike.record, Bike) else None


def field_of(files: GarageFiles, ref: Ref, path: Path) -> Field | None:
    """Return the field at a path of a record, with the shapes of its bike."""
    loaded = files.read(ref)
    return field_at(ref.kind, path, loaded.record if loaded is not None else None, bike_of(files, ref))


@at_one_look
def setting(
    files: GarageFiles,
    ref: Ref,
    wanted: Sequence[tuple[str, str]],
    units: Units | None = None,
    *,
    of_row: bool = False,
) -> Step | list[InputError]:
    """Make one step of path and text pairs; an empty text clears. All troubles at once.

    `of_row`: typed on a row, where three digits alone have their point by the unit.
    """
    edits: dict[Path, Edit | None] = {}
    troubles: list[InputError] = []
    for spelled, text in wanted:
        path = parse(spelled)
        field = field_of(files, ref, path) if path is not None else None
        if path is None or field is None:
            troubles.append(_no_such_path(files, ref, spelled))
        elif path in edits:
            troubles.append(InputError("a second value for it", "each value once", path=path))
        else:
            typed = with_unit(ref, path, text)
            edit = _typed_edit(files.data(ref), path, field, typed, units, of_row=of_row)
            if isinstance(edit, InputError):
                troubles.append(attrs.evolve(edit, path=path))
            else:
                edits[path] = edit
    if troubles:
        return troubles
    made = tuple(edit for edit in edits.values() if edit is not None)
    against = refusals(files, ref, made)
    if against:
        return against
    return with_ticks(files, ref, Step(_label(files, ref, made), (Change(ref, made),) if made else ()))


def setting_value(files: GarageFiles, ref: Ref, path: Path, value: Value | Missing) -> Step:
    """Make one step that puts a plain value at a path."""
    edit = _edit(files.data(ref), path, value)
    edits = [edit] if edit is not None else []
    return Step(_label(files, ref, edits), (Change(ref, tuple(edits)),) if edits else ())


@at_one_look
def clearing(files: GarageFiles, ref: Ref, path: Path) -> Step:
    """Make one step that clears a value to 'not known', and the ticks that say the same."""
    return with_ticks(files, ref, setting_value(files, ref, path, MISSING))


def with_ticks(files: GarageFiles, ref: Ref, step: Step) -> Step:
    """Have a step that takes out a value of a session take out the ticks that answer the same.

    Else what was found of the value would be gone under an answer from before it.
    """
    made = [one for one in step.changes if isinstance(one, Change)]
    gone = {edit.path[0] for change in made for edit in change.edits if edit.new is MISSING}
    if ref.kind != "session" or not gone:
        return step
    from paddock_tui.facts.essentials.paths import SAME_AS_TICKED

    names = list(dict.fromkeys(name for key in gone for name in SAME_AS_TICKED.get(key, ())))
    data = files.data(ref)
    own = [edit for name in names if (edit := _edit(data, ("checks", name), MISSING)) is not None]
    day, place = Ref("day", str(data.get("day"))), ("entries", str(data.get("rider")), str(data.get("bike")))
    of_day = files.data(day) if names and data.get("day") is not None else {}
    others = [_edit(of_day, (*place, "checks", name), MISSING) for name in names]
    theirs = tuple(edit for edit in others if edit is not None)
    ticks = [edit.path[-1].replace("-", " ") for edit in (*own, *theirs)]
    if not ticks:
        return step
    changes = tuple(attrs.evolve(one, edits=(*one.edits, *own)) if one.ref == ref else one for one in made)
    label = f"{step.label}; asked again: {', '.join(dict.fromkeys(ticks))}"
    return Step(label, (*changes, *((Change(day, theirs),) if theirs else ())))


def _typed_edit(
    data: Mapping[str, Any], path: Path, field: Field, text: str, units: Units | None, *, of_row: bool
) -> Edit | InputError | None:
    """Return the edit that what was typed asks for; None where that stands there already."""
    bar = blocked(data, path)
    if bar is not MISSING:
        return InputError(f"{shown(bar)} stands where a table would have to be", "a table", "edit the file")
    if not text.strip():
        return _edit(data, path, MISSING)
    new = read_typed(field, whole_text(field.shape, text, units) if of_row else text, units)
    if isinstance(new, InputError):
        return new
    return _too_far(field, text, new, lookup(data, path)) or _edit(data, path, new)


def _too_far(field: Field, text: str, new: Value, old: Value | Missing) -> InputError | None:
    """Ask for the unit of a bare pressure that is far from the last one: it may be meant in another."""
    last = None if any(char.isalpha() for char in text) else far_from(field, new, old)
    if last is None:
        return None
    return InputError(
        f'"{text.strip()}" would be {new}, far from the last {last}',
        "a pressure with its unit",
        f'write "{new}" if that is meant',
    )


def accepting(
    files: GarageFiles, ref: Ref, finding: "Finding", reason: str, now: dt.datetime, initials: str | None
) -> Step:
    """Make the step that accepts a serious finding: reason, who, when, and the facts as they read now."""
    path = ("accepted", finding.rule, finding.subject)
    value: Mapping[str, Value] = {
        "reason": reason.strip(),
        "by": initials or login(),
        **({"at": now.time().replace(microsecond=0)} if not _is_past(files, ref, now) else {}),
        "facts": finding.facts,
    }
    old = lookup(files.data(ref), path)
    label = f"accepted: {finding.message}"
    if isinstance(old, Mapping):
        edits = [_edit(files.data(ref), (*path, key), item) for key, item in value.items()]
        return Step(label, (Change(ref, tuple(edit for edit in edits if edit is not None)),))
    return Step(label, (Change(ref, (Edit(path, MISSING, value),)),))


def _is_past(files: GarageFiles, ref: Ref, now: dt.datetime) -> bool:
    """Return whether a record is of an earlier day: nothing of it happens now."""
    date = files.data(ref).get("date")
    return type(date) is dt.date and date < now.date()


def withdrawing(files: GarageFiles, ref: Ref, rule: str, subject: str) -> Step | None:
    """Make the step that takes an acceptance back; None where there is none."""
    path = ("accepted", rule, subject)
    old = lookup(files.data(ref), path)
    if not isinstance(old, Mapping):
        return None
    return Step(f"no longer accepted: {rule} {subject}", (Change(ref, (Edit(path, old, MISSING),)),))


def login() -> str:
    """Return the name of whoever is logged in; 'rider' where the system does not say."""
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return "rider"


def shown(value: Value | Missing, field: Field | None = None) -> str:
    """Write a plain value for the last line."""
    if value is MISSING:
        return "not known"
    if isinstance(value, Mapping):
        return "a table"
    loaded = field.shape.load(value) if field is not None else None
    if field is not None and not isinstance(loaded, InputError):
        return field.shape.show(loaded)
    return str(value)


def _edit(data: Mapping[str, Any], path: Path, new: Value | Missing) -> Edit | None:
    """Return the edit that puts a value at a path; None where it stands there already."""
    old = lookup(data, path)
    if (old is MISSING and new is MISSING) or (new is not MISSING and old is not MISSING and same(old, new)):
        return None
    return Edit(path, old, new)


def said(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> list[str]:
    """Say each edit in words: what it is called, what stood there, and what stands there after it."""
    words = []
    bike = bike_of(files, ref)
    for edit in edits:
        field = field_of(files, ref, edit.path)
        name = field.label if field is not None else spell(edit.path)
        words.append(f"{name} {moved(edit, field, declared_words(ref, edit.path), bike)}")
    return words


def moved(edit: Edit, field: Field | None, gone: str = "", bike: Bike | None = None) -> str:
    """Write what stood there -> what stands there after an edit, with the unit, and the way a set-up goes.

    `gone` is said of nothing.
    """
    old, new = (gone if gone and one is MISSING else shown(one, field) for one in (edit.old, edit.new))
    words = old_to_new(old, new, unit_of(field), (_is_figure(edit.old), _is_figure(edit.new)))
    if edit.path[:1] != (SET_UP,) or MISSING in (edit.old, edit.new):
        return words
    return with_way(words, way_of(edit.path, _read(edit.old), _read(edit.new), bike))


def _read(value: Value | Missing) -> object:
    """Return a value as a set-up holds it: a height as an amount, a level as it is."""
    found = parse_quantity(value) if isinstance(value, str) else None
    return found if isinstance(found, Quantity) else value


def _is_figure(value: Value | Missing) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _label(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> str:
    return "; ".join(said(files, ref, edits)) or "nothing to change"


def _no_such_path(files: GarageFiles, ref: Ref, spelled: str) -> InputError:
    mend = f"see them with: paddock-tui show GARAGE {ref} --paths"
    loaded = files.read(ref)
    if loaded is not None and loaded.record is not None:
        last = spelled.rpartition(".")[2]
        paths = [field.path for field in fields(ref.kind, loaded.record, bike_of(files, ref))]
        near = [spell(path) for path in paths if path[-1] == last][:3]
        mend = f"do you mean {' or '.join(near)}? {mend}" if near else mend
    return InputError(f'"{spelled}"', f"a path of a {ref.kind}", mend)
