"""Tables that grow: a control, a reading, an incident is added under its key, or dropped whole."""

import re

import attrs

from paddock_tui.desk.typing import read_typed
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.fielding import field_at
from paddock_tui.records.fields import NUMBERED, Spec, find_table
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.of_bike import label_of
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.trouble import Trouble
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles


@attrs.frozen
class Wanted:
    """What has to be typed to add to a table: how many keys (numbers come by themselves), and a value."""

    words: str
    keys: int
    value: bool


def wanted(ref: Ref, table: Path) -> Wanted | None:
    """Tell what adding to a table asks for; None where nothing can be added there."""
    spec = find_table(CLASSES[ref.kind], table)
    if spec is None:
        return None
    asked = [
        word for word, rule in zip(spec.keyed_by.split(" and "), spec.keys, strict=False) if rule != NUMBERED
    ]
    if spec.shape is not None:
        return Wanted(f"{' and '.join([*asked, spec.label.lower()])}: {_expected(spec)}", len(asked), True)
    return Wanted(f"name of the {' and '.join(asked)}" if asked else "", len(asked), False)


def adding(
    files: GarageFiles, ref: Ref, table: Path, text: str, units: Units | None = None
) -> Step | Trouble:
    """Make the step that adds an entry to a table: from its keys, then its value where it has one."""
    spec = find_table(CLASSES[ref.kind], table)
    asks = wanted(ref, table)
    if spec is None or asks is None:
        return Trouble(f"nothing can be added to {'.'.join(table)}", "a table that grows")
    words = text.split(None, asks.keys) if asks.value else text.split()
    if len(words) < asks.keys or (not asks.value and len(words) > asks.keys):
        return Trouble(f'"{text.strip()}"', asks.words, "names have no spaces: use hyphens")
    keys = _keys(files, ref, table, spec, words)
    if isinstance(keys, Trouble):
        return keys
    path = (*table, *keys)
    if lookup(files.data(ref), path) is not MISSING:
        return Trouble(f"{label_of(keys[-1])} is there already", "a name that is free", "choose another name")
    value: Value | Trouble = {}
    if spec.shape is not None:
        field = field_at(ref.kind, path)
        rest = words[asks.keys] if len(words) > asks.keys else ""
        if field is None:
            return Trouble(f'"{" ".join(keys)}"', asks.words)
        value = read_typed(field, rest, units)
    if isinstance(value, Trouble):
        return attrs.evolve(value, path=path)
    label = f"added {spec.label.lower()}: {' '.join(label_of(key) for key in keys)}"
    return Step(label, (Change(ref, (Edit(path, MISSING, value),)),))


def dropping(files: GarageFiles, ref: Ref, path: Path) -> Step | str:
    """Make the step that drops an entry with everything in it; the reason where there is none."""
    held = lookup(files.data(ref), path)
    if held is MISSING:
        return "there is nothing to drop"
    return Step(
        f"dropped {' '.join(label_of(key) for key in path)}", (Change(ref, (Edit(path, held, MISSING),)),)
    )


def _keys(files: GarageFiles, ref: Ref, table: Path, spec: Spec, words: list[str]) -> Path | Trouble:
    """Give the keys of the new entry: those typed, and the next number where keys are numbers."""
    keys: list[str] = []
    left = list(words)
    for name, rule in zip(spec.keyed_by.split(" and "), spec.keys, strict=False):
        if rule == NUMBERED:
            there = lookup(files.data(ref), (*table, *keys))
            numbers = [int(key) for key in there if key.isdigit()] if isinstance(there, dict) else []
            keys.append(str(max(numbers, default=0) + 1))
            continue
        key = left.pop(0)
        if not re.fullmatch(rule, key):
            return Trouble(f'"{key}"', f"a {name}: {_rule_words(rule)}")
        keys.append(key)
    return tuple(keys)


def _rule_words(rule: str) -> str:
    if "|" in rule:
        return " or ".join(rule.split("|"))
    if rule.startswith("[1-9]"):
        return "a number"
    return "lower-case letters, digits and hyphens, such as front-rebound"


def _expected(spec: Spec) -> str:
    return spec.shape.expected if spec.shape is not None else ""
