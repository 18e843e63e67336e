"""The head of a file, read without the rest: of hundreds of days only the date is asked for."""

import contextlib
import datetime as dt
import json
import re
import time
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.kept_heads import Having, head_of
from paddock_tui.store.listing import RESTS_NS, Stamp
from paddock_tui.store.reading import loads, read_text

MANY = 50
"""Of so many records what has a table is noted together; of fewer looking at each head takes no longer."""

_VERSION = 1
_LARGEST = 1_000_000

_HEADING = re.compile(r"^[ \t]*\[+[ \t]*([^\]\s.]+)", re.MULTILINE)


def heads(files: GarageFiles, kind: str) -> Iterator[tuple[Ref, Mapping[str, Any]]]:
    """Give each record of a kind with its date, whether it is retired, and the names of its tables.

    Nothing else is said of a record that is not in memory: whoever wants more of it reads it.
    """
    for ref in files.listing(kind):
        yield ref, _head(files, ref)
    files.rows.write()


def _head(files: GarageFiles, ref: Ref) -> Mapping[str, Any]:
    if files.is_in_memory(ref):
        return files.data(ref)
    # One that was looked at in this run counts as it was then, until a look finds otherwise.
    stamp = files.rows.indexed.get(ref) or files.stamp(ref)
    if stamp is None:
        return files.data(ref)
    kept = files.rows.others.head(ref, stamp)
    if kept is None:
        path = files.path_of(ref)
        text = read_text(files.tree, path) if path is not None else None
        found = _of_text(text) if isinstance(text, str) else None
        if found is None:
            return files.data(ref)
        kept = head_of(found)
        files.rows.others.note(ref, stamp, kept)
    return kept.as_data()


def _of_text(text: str) -> Mapping[str, Any] | None:
    """Read the head of a text; None where it has to be read whole: a text or an array may hold what looks
    like a heading, and then what is before it is no whole TOML.
    """
    tables = list(_HEADING.finditer(text))
    names = {one[1] for one in tables}
    if any("'" in name or '"' in name for name in names):
        return None
    above = loads(text[: tables[0].start()] if tables else text)
    if isinstance(above, InputError):
        return None
    return {**{key: {} for key in names}, **above}


def days_of(files: GarageFiles, wanted: Callable[[dt.date], bool]) -> Iterator[tuple[dt.date, Ref]]:
    """Give the days of wanted dates that are not retired; of all others only the head is read."""
    for ref, head in heads(files, "day"):
        date = head.get("date")
        if type(date) is dt.date and wanted(date) and "retired" not in head:
            # What is broken further down has no date: the file is read before it counts.
            data = files.data(ref)
            if data.get("date") == date and "retired" not in data:
                yield date, ref


def having(files: GarageFiles, kind: str, table: str) -> tuple[Ref, ...]:
    """List the records of a kind that have a table, in their order.

    That is noted of all of them together, in a small file in the user's cache folder that counts while each
    of theirs is as it was. One that was looked at in this run counts as it was then, until a look finds
    otherwise.
    """
    refs, name, rested = files.listing(kind), f"{kind}-{table}.json", time.time_ns() - RESTS_NS
    stamps = _stamps(files, refs) if len(refs) >= MANY else ()
    if not stamps:
        return tuple(ref for ref, head in heads(files, kind) if table in head)
    known = files.rows.others.having.get(name)
    if known is not None and (known.refs, known.stamps) == (refs, stamps):
        return known.found
    # Few garages have as many.
    from paddock_tui.store.seals import sealed

    seal = sealed(refs, stamps)
    names = _noted(files, name, seal)
    if names is not None:
        found = tuple(ref for ref in refs if ref.id in names)
    else:
        found = tuple(ref for ref, head in heads(files, kind) if table in head)
        if not all(max(one[:2]) < rested for one in stamps):
            return found
        held = {"version": _VERSION, "seal": seal, "names": [ref.id for ref in found]}
        with contextlib.suppress(OSError, RuntimeError):
            write_cached(folder_of(files.tree.real), name, json.dumps(held).encode())
    files.rows.others.having[name] = Having(refs, stamps, found)
    return found


def _stamps(files: GarageFiles, refs: tuple[Ref, ...]) -> tuple[Stamp, ...]:
    """Return what tells each of these files from any other; none where one is edited, or gone."""
    indexed = files.rows.indexed
    found = tuple([indexed.get(ref) or files.stamp(ref) for ref in refs])
    known = tuple([one for one in found if one is not None])
    edited = bool(files.staged) and not files.staged.keys().isdisjoint(refs)
    return known if len(known) == len(found) and not edited else ()


def _noted(files: GarageFiles, name: str, sealed: str) -> frozenset[str] | None:
    """Return the names that were noted of these very files; None where there are none."""
    try:
        text, _ = read_cached(folder_of(files.tree.real), name, _LARGEST)
        held = json.loads(text)
        if held["version"] != _VERSION or held["seal"] != sealed:
            return None
        return frozenset(held["names"])
    except (*CACHE_TROUBLES, RuntimeError):
        return None
