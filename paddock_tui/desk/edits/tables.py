"""Tables that grow: a control, a reading, an incident is added under its key, or dropped whole."""

import re
from collections.abc import Mapping, Sequence

import attrs

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.edits.values import bike_of, field_of, shown
from paddock_tui.entry import read_typed
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.electronics import FUNCTIONS
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import NAMED, NUMBERED, Spec, find_table
from paddock_tui.records.ids import id_of
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import FOLDERS, Path, Ref
from paddock_tui.records.shapes.base import article
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.store.data import blocked, lookup
from paddock_tui.store.garage import GarageFiles

_LEAST_START = 2
"""So many letters at least stand for a name that they begin."""


@attrs.frozen
class WantedKeys:
    """What has to be typed to add to a table: how many keys (numbers come by themselves), and a value."""

    words: str
    keys: int
    value: bool


def wanted(ref: Ref, table: Path) -> WantedKeys | None:
    """Return what adding to a table asks for; None where nothing can be added there."""
    spec = find_table(CLASSES[ref.kind], table)
    if spec is None:
        return None
    asked = [name for name, rule in _named_keys(spec) if rule != NUMBERED]
    if spec.shape is not None:
        expected = spec.shape.expected
        return WantedKeys(f"{' and '.join([*asked, spec.label.lower()])}: {expected}", len(asked), True)
    return WantedKeys(f"name of the {' and '.join(asked)}" if asked else "", len(asked), False)


def adding(
    files: GarageFiles, ref: Ref, table: Path, text: str, units: Units | None = None
) -> Step | InputError:
    """Make the step that adds an entry to a table: from its keys, then its value where it has one."""
    spec = find_table(CLASSES[ref.kind], table)
    asks = wanted(ref, table)
    if spec is None or asks is None:
        return InputError(
            f"nothing can be added to {'.'.join(table)}", "a table that grows", "m shows all actions"
        )
    place = _place(files, ref, table, spec, asks, text)
    if isinstance(place, InputError):
        return place
    path, rest = place
    value = _value(files, ref, path, rest, units) if spec.shape is not None else {}
    if isinstance(value, InputError):
        return attrs.evolve(value, path=path)
    edits = (Edit(path, MISSING, value),)
    refused = refusals(files, ref, edits)
    if refused:
        return refused[0]
    label = f"added {spec.label.lower()}: {' '.join(label_of(key) for key in path[len(table) :])}"
    return Step(label, (Change(ref, edits),))


def dropping(files: GarageFiles, ref: Ref, path: Path) -> Step | str:
    """Make the step that drops an entry with everything in it; the reason where there is none."""
    held = lookup(files.data(ref), path)
    if held is MISSING:
        return "there is nothing to delete: x is for an entry or a record"
    return Step(
        f"deleted {' '.join(label_of(key) for key in path)}", (Change(ref, (Edit(path, held, MISSING),)),)
    )


def _place(
    files: GarageFiles, ref: Ref, table: Path, spec: Spec, asks: WantedKeys, text: str
) -> tuple[Path, str] | InputError:
    """Return the path of the new entry, which nothing may stand at or bar, and the text of its value."""
    words = _words(spec, asks, text)
    keys = _keys(files, ref, table, spec, words) if not isinstance(words, InputError) else words
    if isinstance(keys, InputError):
        return keys
    path = (*table, *keys)
    if lookup(files.data(ref), path) is not MISSING:
        return InputError(
            f"{label_of(keys[-1])} is there already", "a name that is free", "choose another name"
        )
    bar = blocked(files.data(ref), path)
    if bar is not MISSING:
        said = f"{shown(bar)} stands where a table would have to be"
        return InputError(said, "a table", "edit the file", path)
    return path, " ".join(words[asks.keys :]) if not isinstance(words, InputError) else ""


def _words(spec: Spec, asks: WantedKeys, text: str) -> list[str] | InputError:
    """Part what was typed into the keys that are asked for and, where there is one, the value."""
    words = text.split(None, asks.keys) if asks.value else text.split()
    if not asks.value and asks.keys == 1 and words and " " in spec.keys[-1]:
        words = [" ".join(words)]
    if len(words) < asks.keys:
        return InputError(f'"{text.strip()}"', asks.words, f"type {_some_words(spec)}")
    if not asks.value and len(words) > asks.keys:
        return InputError(f'"{text.strip()}"', asks.words, "names have no spaces: use hyphens")
    return words


def _keys(files: GarageFiles, ref: Ref, table: Path, spec: Spec, words: list[str]) -> Path | InputError:
    """Return the keys of the new entry: those typed, and the next number where keys are numbers."""
    keys: list[str] = []
    left = list(words)
    for name, rule in _named_keys(spec):
        if rule == NUMBERED:
            key = _next(files, ref, (*table, *keys))
        else:
            key = _meant(left.pop(0), rule, _known(files, ref, (*table, *keys), name))
        if not re.fullmatch(rule, key):
            return _no_key(name, rule, key)
        keys.append(key)
    return tuple(keys)


def _known(files: GarageFiles, ref: Ref, table: Path, name: str) -> tuple[str, ...]:
    """List the names that a key of a table usually has: functions for a bike's controls, else the bike's own.

    What stands in the table already is left out.
    """
    there = lookup(files.data(ref), table)
    loaded = files.read(ref)
    bike = loaded.record if loaded is not None and isinstance(loaded.record, Bike) else bike_of(files, ref)
    if name == "control":
        names = FUNCTIONS[:-1] if table == ("controls",) else tuple(bike.controls) if bike else ()
    elif name == "adjuster" and table != ("adjusters",):
        names = tuple(bike.adjusters) if bike else ()
    else:
        names = tuple(one.id for one in files.listing(name)) if name in FOLDERS else ()
    return tuple(one for one in names if not isinstance(there, Mapping) or one not in there)


def _meant(typed: str, rule: str, known: Sequence[str]) -> str:
    """Return the name that was meant: in either case, and by a start that one known name alone has."""
    lower = typed.casefold()
    options = known or (rule.split("|") if "|" in rule else ())
    starts = [one for one in options if one.startswith(lower)]
    if lower in options or len(starts) != 1 or len(lower) < _LEAST_START:
        return typed if re.fullmatch(rule, typed) else lower if re.fullmatch(rule, lower) else typed
    return starts[0]


def _next(files: GarageFiles, ref: Ref, table: Path) -> str:
    there = lookup(files.data(ref), table)
    keys = there if isinstance(there, Mapping) else {}
    return str(max((int(key) for key in keys if re.fullmatch(NUMBERED, key, re.ASCII)), default=0) + 1)


def _no_key(name: str, rule: str, key: str) -> InputError:
    """Say why this can be no key, and offer the nearest one that can."""
    if rule == NUMBERED:
        return InputError(f"{int(key) - 1} is taken", "a number that is free", "delete what is not needed")
    near = id_of(key)
    mend = f"write {near}" if near != key and re.fullmatch(rule, near) else "type it another way"
    return InputError(f'"{key}"', f"{article(name)}: {_rule_words(rule)}", mend)


def _value(files: GarageFiles, ref: Ref, path: Path, text: str, units: Units | None) -> Value | InputError:
    """Read the value of a new entry as its field reads it, on a set-up as the bike's own does."""
    field = field_of(files, ref, path)
    if field is None:
        return InputError(f'"{path[-1]}"', "a name that can stand there", "type it another way")
    found = read_typed(field, text, units)
    if isinstance(found, InputError) and not found.mend:
        return attrs.evolve(found, mend=f"e.g. {field.shape.show(field.shape.example())}")
    return found


def _named_keys(spec: Spec) -> list[tuple[str, str]]:
    """Pair what each key of a table is called with its rule."""
    return list(zip(spec.keyed_by.split(" and "), spec.keys, strict=True))


def _some_words(spec: Spec) -> str:
    """Say what would be an answer: the first words of a fixed choice, else the names of what is asked."""
    asked = [rule.split("|")[0] if "|" in rule else f"the {name}" for name, rule in _named_keys(spec)]
    named = [word for word, rule in zip(asked, spec.keys, strict=True) if rule != NUMBERED]
    return " and ".join([*named, *(["its value"] if spec.shape is not None else [])])


def _rule_words(rule: str) -> str:
    if "|" in rule:
        return " or ".join(rule.split("|"))
    if rule.startswith("[1-9]"):
        return "a whole number, 100 or more"
    if rule == NAMED:
        return "lower-case letters, digits and hyphens, e.g. front-rebound"
    marks = {"0-9": "digits", " ": "spaces", "_": "underscores", ".": "dots", "-]": "hyphens"}
    letters = "letters" if "A-Z" in rule else "lower-case letters"
    return ", ".join([letters, *(name for mark, name in marks.items() if mark in rule)])
