"""The head of a file, read without the rest: of hundreds of days only the date is asked for."""

import datetime as dt
import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.kept_heads import head_of
from paddock_tui.store.reading import loads, read_text

_HEADING = re.compile(r"^[ \t]*\[+[ \t]*([^\]\s.]+)", re.MULTILINE)


def heads(files: GarageFiles, kind: str) -> Iterator[tuple[Ref, Mapping[str, Any]]]:
    """Give each record of a kind with its date, whether it is retired, and the names of its tables.

    Nothing else is said of a record that is not in memory: whoever wants more of it reads it.
    """
    for ref in files.listing(kind):
        yield ref, _head(files, ref)
    files.rows.write()


def _head(files: GarageFiles, ref: Ref) -> Mapping[str, Any]:
    stamp = files.stamp(ref) if not files.is_in_memory(ref) else None
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
