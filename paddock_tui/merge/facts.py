"""Three states of one record's data to one: fact by fact, the same whichever side is called ours."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.merge.conflicts import CONFLICT, Conflict
from paddock_tui.merge.renames import called_alike, merged_former_ids
from paddock_tui.merge.worse import worse
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.former_ids import FORMER, are_former_ids
from paddock_tui.records.paths import Path
from paddock_tui.store.data import same

LAPS: Path = ("laps",)

Data = dict[str, Any]


def merge_data(
    base: Mapping[str, Any], ours: Mapping[str, Any], theirs: Mapping[str, Any]
) -> tuple[Data, tuple[Conflict, ...]]:
    """Return every fact after the merge, disputed ones left out, and the conflicts in a stable order."""
    conflicts: list[Conflict] = []
    found = _table((), *called_alike(dict(base), dict(ours), dict(theirs)), conflicts)
    return found, tuple(sorted(conflicts, key=lambda one: one.path))


def _merge(
    path: Path,
    base: Value | Missing,
    ours: Value | Missing,
    theirs: Value | Missing,
    conflicts: list[Conflict],
) -> Value | Missing:
    if _alike(ours, theirs) or _alike(base, theirs):
        return ours
    if _alike(base, ours):
        return theirs
    if path == (FORMER,) and are_former_ids(ours) and are_former_ids(theirs):
        return merged_former_ids(base, ours, theirs)
    if path == LAPS and isinstance(ours, Mapping) and isinstance(theirs, Mapping):
        return _laps(base if isinstance(base, Mapping) else {}, ours, theirs, conflicts)
    if isinstance(ours, Mapping) and isinstance(theirs, Mapping) and not _as_one(path):
        return _table(path, base if isinstance(base, Mapping) else {}, ours, theirs, conflicts)
    stands = worse(path, ours, theirs)
    conflicts.append(Conflict(path, base, ours, theirs, stands))
    return stands


def _table(
    path: Path,
    base: Mapping[str, Any],
    ours: Mapping[str, Any],
    theirs: Mapping[str, Any],
    conflicts: list[Conflict],
) -> Data:
    found: Data = {}
    for key in dict.fromkeys((*ours, *theirs)):
        before, mine, other = (side.get(key, MISSING) for side in (base, ours, theirs))
        value = _merge((*path, key), before, mine, other, conflicts)
        if value is not MISSING:
            found[key] = value
    return found


def _laps(
    base: Mapping[str, Any],
    ours: Mapping[str, Any],
    theirs: Mapping[str, Any],
    conflicts: list[Conflict],
) -> Data:
    """Merge two lists of laps. Two runs that went on differently are not laid into each other.

    Where one side only has more of the same laps, its list stands; else every lap that is not the same on
    both sides is disputed, also one that only one side has.
    """
    common = [key for key in ours if key in theirs]
    if all(_alike(ours[key], theirs[key]) for key in common) and (
        _within(ours, theirs) or _within(theirs, ours)
    ):
        return _table(LAPS, base, ours, theirs, conflicts)
    found: Data = {}
    for key in dict.fromkeys((*ours, *theirs)):
        before, mine, other = (side.get(key, MISSING) for side in (base, ours, theirs))
        if _alike(mine, other):
            found[key] = mine
        else:
            conflicts.append(Conflict((*LAPS, key), before, mine, other))
    return found


def _within(one: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    return set(one) <= set(other)


def _as_one(path: Path) -> bool:
    """Return whether a table is one fact: an answer with its time and initials, an acceptance, a conflict."""
    return (
        (len(path) == 2 and path[0] in ("checks", CONFLICT))
        or (len(path) == 3 and path[0] == "accepted")
        or (len(path) == 5 and path[0] == "entries" and path[3] == "checks")
    )


def _alike(one: Value | Missing, other: Value | Missing) -> bool:
    if one is MISSING or other is MISSING:
        return one is other
    return same(one, other)


def facts_of(data: Mapping[str, Any], at: Path = ()) -> Iterator[tuple[Path, Value]]:
    """List every value of a record's data with its path; a table with nothing in it is one too."""
    for key, value in data.items():
        path = (*at, key)
        if isinstance(value, Mapping) and value:
            yield from facts_of(value, path)
        else:
            yield path, value
