"""What a rename of a record changes on one side: the ids it had, and the keys of a day's entries."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.former_ids import FORMER, former_ids
from paddock_tui.records.paths import Path
from paddock_tui.store.data import leaves, lookup
from paddock_tui.store.references import KEYED_BY


def merged_former_ids(base: object, ours: object, theirs: object) -> Value | Missing:
    """Return every id that a side added and none that a side took out; the order is the same for both."""
    before, mine, other = (former_ids({FORMER: one}) for one in (base, ours, theirs))
    kept = [one for one in before if one in mine and one in other]
    added = sorted(({*mine} | {*other}) - {*before})
    return [*kept, *added] or MISSING


def called_alike(
    base: dict[str, Any], ours: dict[str, Any], theirs: dict[str, Any]
) -> tuple[dict[str, Any], dict[str, Any], dict[str, Any]]:
    """Return the three states with what one side renamed among a day's entries renamed in the others too."""
    table, kinds = KEYED_BY["day"]
    for depth in range(1, len(kinds) + 1):
        for above in list(_tables(base, (table,), depth)):
            for old, new in _renames(base, ours, theirs, above):
                base, theirs = (_rekeyed(one, (*above, old), new) for one in (base, theirs))
            for old, new in _renames(base, theirs, ours, above):
                base, ours = (_rekeyed(one, (*above, old), new) for one in (base, ours))
    return base, ours, theirs


def _tables(data: dict[str, Any], at: Path, depth: int) -> Iterator[Path]:
    here = lookup(data, at)
    if not isinstance(here, Mapping):
        return
    if depth == 1:
        yield at
        return
    for key in here:
        yield from _tables(data, (*at, key), depth - 1)


def _renames(
    base: dict[str, Any], side: dict[str, Any], other: dict[str, Any], at: Path
) -> list[tuple[str, str]]:
    """Return the one entry that a side gave another key: one is gone, one is new, and most of it is the same.

    None where the other side has no such entry any more, or has the new key itself.
    """
    before, now, beside = (lookup(one, at) for one in (base, side, other))
    if not (isinstance(before, Mapping) and isinstance(now, Mapping) and isinstance(beside, Mapping)):
        return []
    gone = [key for key in before if key not in now]
    new = [key for key in now if key not in before]
    if len(gone) != 1 or len(new) != 1 or gone[0] not in beside or new[0] in beside:
        return []
    was, found = before[gone[0]], now[new[0]]
    if not (isinstance(was, Mapping) and isinstance(found, Mapping)):
        return []
    # Below a rider the bikes may have another key too: what is written of them tells.
    deeper = len(KEYED_BY["day"][1]) - len(at)
    held = [(path[deeper:], value) for path, value in leaves(found)]
    alike = [path for path, value in leaves(was) if (path[deeper:], value) in held]
    return [(gone[0], new[0])] if 2 * len(alike) >= len(list(leaves(was))) else []


def _rekeyed(data: dict[str, Any], path: Path, to: str) -> dict[str, Any]:
    first, rest = path[0], path[1:]
    if not rest:
        return {(to if key == first else key): value for key, value in data.items()}
    return {key: _rekeyed(value, rest, to) if key == first else value for key, value in data.items()}
