"""The head of a file, read without the rest: of hundreds of days only the date is asked for."""

import datetime as dt
import re
import time
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import Stamp
from paddock_tui.store.listing import RESTS_NS
from paddock_tui.store.reading import loads, read_text

_MOST = 8192
_HEADS: dict[tuple[str, Stamp], Mapping[str, Any]] = {}
"""The heads of files that had rested when they were read, by their stamps."""

_HEADING = re.compile(r"^[ \t]*\[+[ \t]*([^\]\s.]+)", re.MULTILINE)


def heads(files: GarageFiles, kind: str) -> Iterator[tuple[Ref, Mapping[str, Any]]]:
    """Give each record of a kind with its values above all tables, and the names of its tables.

    A table that is not in memory is given as an empty one: whoever wants what is in it reads the record.
    """
    for ref in files.listing(kind):
        yield ref, _head(files, ref)


def _head(files: GarageFiles, ref: Ref) -> Mapping[str, Any]:
    path, stamp = files.path_of(ref), files.stamp(ref)
    if files.is_in_memory(ref) or path is None or stamp is None:
        return files.data(ref)
    key = str(path), stamp
    found = _HEADS.get(key)
    if found is None:
        text = read_text(files.tree, path)
        found = _of_text(text) if isinstance(text, str) else None
        if found is None:
            return files.data(ref)
        if time.time_ns() - max(stamp[:2]) > RESTS_NS:
            if len(_HEADS) >= _MOST:
                _HEADS.clear()
            _HEADS[key] = found
    return found


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
