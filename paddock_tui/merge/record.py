"""One record merged from three texts, verified: the result parses to exactly the facts that it must hold."""

import tomllib
from collections.abc import Mapping
from typing import Any

import attrs

from paddock_tui.merge.conflicts import CONFLICT, Conflict
from paddock_tui.merge.facts import merge_data
from paddock_tui.merge.lines import merged_lines
from paddock_tui.records.disputes import held_disputes
from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.store.data import edits_toward, leaves, same
from paddock_tui.store.lines import BOM, split_lines
from paddock_tui.store.patch import Patched, patch


class MergeError(Exception):
    """Nothing was merged, and why."""


@attrs.frozen
class Merged:
    """The merged text and what is disputed in it, of this merge and of earlier ones."""

    text: str
    conflicts: tuple[Conflict, ...]
    open: int


_FEW = 3
"""So many facts tell that two texts are of one record; a side may change all of fewer."""

_OUTING = ("date", "number", "start", "bike")
"""What tells one outing from another; a side corrects one of them, or shifts it over midnight."""


def are_different(base: str, side: str) -> bool:
    """Return whether a side is no later state of the base, but another record in its place.

    As where git takes a file for a renamed one: of a record nothing is left, or it is of another outing.
    """
    was, now = _parsed(base), _parsed(side)
    if not was or not now:
        return False
    moved = [key for key in _OUTING if key in was and key in now and not same(was[key], now[key])]
    if "day" in was and same(was["day"], now.get("day")) and "date" in moved and "start" in moved:
        moved.remove("date")
    held = dict(leaves(was))
    kept = [path for path, value in leaves(now) if path in held and same(held[path], value)]
    return len(moved) >= 2 or (len(held) >= _FEW and not kept)


def merged(base: str, ours: str, theirs: str) -> Merged:
    """Merge three texts of one record. Raises MergeError where one is no TOML, or it cannot be written."""
    was, mine, other = (
        _data(text, name) for text, name in ((base, "base"), (ours, "ours"), (theirs, "theirs"))
    )
    goal, conflicts = merge_data(was, mine, other)
    for one in conflicts:
        goal.setdefault(CONFLICT, {})[one.key] = one.as_table()
    for start in (_by_lines(base, ours, theirs), ours):
        text = _brought(start, goal)
        if text is not None:
            return Merged(text, conflicts, len(held_disputes(goal)))
    raise MergeError("the merged facts cannot be written into the file without touching other lines")


def _by_lines(base: str, ours: str, theirs: str) -> str:
    found = merged_lines(*(split_lines(text.removeprefix(BOM)) for text in (base, ours, theirs)))
    return (BOM if ours.startswith(BOM) else "") + "".join(found)


def _brought(text: str, goal: Mapping[str, Any]) -> str | None:
    """Edit a text until it holds exactly these facts; None where it cannot be done."""
    data = _parsed(text)
    if data is None:
        return None
    held = edits_toward(data, {key: value for key, value in goal.items() if key != CONFLICT}, ())
    edits = [one for one in held if one.path != (CONFLICT,)]
    before = held_disputes(data)
    for key, table in held_disputes(goal).items():
        old = before.get(key, MISSING)
        if old is not MISSING and not same(old, table):
            edits.append(Edit((CONFLICT, key), old, MISSING))
            old = MISSING
        if old is MISSING:
            edits.append(Edit((CONFLICT, key), MISSING, table))
    edits += [
        Edit((CONFLICT, key), old, MISSING) for key, old in before.items() if key not in held_disputes(goal)
    ]
    made = patch(text, edits)
    if not isinstance(made, Patched):
        return None
    return made.text if same(_full(_parsed(made.text)), _full(goal)) else None


def _full(data: Mapping[str, Any] | None) -> dict[str, Any] | None:
    """Return data without tables that hold nothing: dropping the last value may take its heading along."""
    if data is None:
        return None
    found: dict[str, Any] = {}
    for key, value in data.items():
        inner = _full(value) if isinstance(value, Mapping) else value
        if inner != {} or not isinstance(value, Mapping):
            found[key] = inner
    return found


def _data(text: str, name: str) -> dict[str, Any]:
    found = _parsed(text)
    if found is None:
        raise MergeError(f"{name} is not valid TOML")
    return found


def _parsed(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text.removeprefix(BOM))
    except (ValueError, RecursionError):
        return None
