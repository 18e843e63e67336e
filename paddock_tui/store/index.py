"""What every session file says in short, remembered by the file's stamp, so that old seasons are not parsed.

One file a year in the user's cache folder, under the garage's real path; never in the garage. It holds no
verdict and no words of the rider, and is never believed against a file: a row counts only while time of
change, size and inode of its file are as noted, and only where that file had rested for two seconds when
the index was written. Whatever is wrong with the index makes the files be read.
"""

import datetime as dt
import functools
import itertools
import json
import sys
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.paths import Ref
from paddock_tui.records.ridden import was_ridden
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.listing import RESTS_NS, Stamp

OTHER = "other"
"""In place of a year."""

_LARGEST = 4_000_000
_FEWEST = 20
"""Rows that are worth writing a year anew for."""

_VERSION = 6


class SessionRow(NamedTuple):
    """What a session says in short. Names are empty where they are not written or are no text.

    `happened` is whether incidents stand in it, `was` holds the ids that the session had before.
    """

    date: dt.date
    number: int
    start: dt.time
    ridden: bool
    bike: str = ""
    rider: str = ""
    tyres: str = ""
    day: str = ""
    happened: bool = False
    was: tuple[str, ...] = ()


def row_of(data: Mapping[str, Any]) -> SessionRow | None:
    """Look at a session's plain data; None where it is retired or its date is not known."""
    date, number, start = data.get("date"), data.get("number"), data.get("start")
    if isinstance(date, dt.datetime) or not isinstance(date, dt.date) or "retired" in data:
        return None
    hot = data.get("pressures", {}).get("hot", {}) if isinstance(data.get("pressures"), dict) else {}
    hot_read = isinstance(hot, dict) and ("front" in hot or "rear" in hot)
    named = [data.get(key) for key in ("bike", "rider", "tyres", "day")]
    bike, rider, tyres, day = (name if isinstance(name, str) else "" for name in named)
    return SessionRow(
        date,
        number if isinstance(number, int) else 0,
        start if isinstance(start, dt.time) else dt.time(0, 0),
        was_ridden(
            parked="parked" in data,
            laps=bool(data.get("laps")) or _counted(data.get("ridden_laps")),
            went_out="went_out" in data,
            hot=hot_read,
        ),
        bike,
        rider,
        tyres,
        day,
        "incidents" in data,
        former_ids(data),
    )


def _counted(laps: object) -> bool:
    return isinstance(laps, int) and not isinstance(laps, bool) and laps > 0


class Noted(NamedTuple):
    """What is noted of a file. `sound` is what it was read whole with; empty where that is not known."""

    stamp: Stamp
    row: SessionRow
    sound: str = ""


class SessionIndex:
    """The rows of one garage's sessions as they were when their files were last read."""

    def __init__(self, real: Path) -> None:
        self._folder = folder_of(real)
        self._years: dict[str, dict[str, Noted]] = {}
        self._fresh: dict[str, int] = {}

    def row(self, name: str, stamp: Stamp) -> SessionRow | None:
        """Return what a session's file says, where it is noted and the file is still the same."""
        noted = self.noted(name, stamp)
        return noted.row if noted is not None else None

    def noted(self, name: str, stamp: Stamp) -> Noted | None:
        """Return what is noted of a file that is still the same."""
        noted = self._year(year_of(name)).get(name)
        return noted if noted is not None and noted.stamp == stamp else None

    def all_noted(self, refs: Iterable[Ref], stamps: Iterable[Stamp]) -> Iterator[tuple[Ref, Noted]]:
        """Give those of many files of which something is noted, and that are still the same."""
        years: dict[str, dict[str, Noted]] = {}
        for ref, stamp in zip(refs, stamps, strict=True):
            name = ref[1]
            begins = name[:4]
            rows = years.get(begins)
            if rows is None:
                rows = years[begins] = self._year(year_of(name))
            noted = rows.get(name)
            if noted is not None and noted[0] == stamp:
                yield ref, noted

    def note(self, name: str, stamp: Stamp, row: SessionRow) -> None:
        """Note what a file says, to be written with others."""
        self._put(name, Noted(stamp, row))

    def is_sound(self, name: str, stamp: Stamp, against: str) -> bool:
        """Return whether a file is noted to have been read whole with something, and is still the same."""
        noted = self._year(year_of(name)).get(name)
        return noted is not None and noted.stamp == stamp and noted.sound == against

    def note_sound(self, name: str, stamp: Stamp | None, against: str) -> None:
        """Note that a file was read whole with something, where it is as noted."""
        noted = self._year(year_of(name)).get(name)
        if noted is not None and noted.stamp == stamp:
            self._put(name, noted._replace(sound=against))

    def _put(self, name: str, noted: Noted) -> None:
        year = year_of(name)
        self._year(year)[name] = noted
        self._fresh[year] = self._fresh.get(year, 0) + 1

    def write(self) -> None:
        """Write the years of which enough is new; that they cannot be written is no harm."""
        for year, count in list(self._fresh.items()):
            if count >= _FEWEST:
                self._fresh[year] = 0
                write_cached(self._folder, f"{year}.json", _as_text(self._years[year]))

    def _year(self, year: str) -> dict[str, Noted]:
        if year not in self._years:
            self._years[year] = _read(self._folder, f"{year}.json")
        return self._years[year]


def year_of(name: str) -> str:
    """Return the year that a session's id names; OTHER where it names none."""
    return name[:4] if name[:4].isdecimal() and name[:4].isascii() else OTHER


def _as_text(rows: Mapping[str, Noted]) -> bytes:
    """Write a year column by column: so it is read again at once."""
    dated = (one.row for one in rows.values())
    plain = [(row.date.isoformat(), row.number, row.start.isoformat(), *row[3:]) for row in dated]
    columns = [list(rows), [one.sound for one in rows.values()]]
    columns += map(list, zip(*(one.stamp for one in rows.values()), strict=True))
    columns += map(list, zip(*plain, strict=True))
    return json.dumps({"version": _VERSION, "columns": columns}, separators=(",", ":")).encode()


def _read(folder: Path, name: str) -> dict[str, Noted]:
    """Read a year, the rows that count; none where any of it is not as this program writes it."""
    try:
        text, written = read_cached(folder, name, _LARGEST)
        given = json.loads(text)
        if given["version"] != _VERSION:
            return {}
        return _rows(given["columns"], written - RESTS_NS)
    except CACHE_TROUBLES:
        return {}


_KINDS = (str, str, int, int, int, int, str, int, str, bool, str, str, str, str, bool, list)
"""What the columns hold: ids, what was read whole with it, the stamp, what a row says."""


def _rows(columns: list[list[Any]], rested: int) -> dict[str, Noted]:
    """Return the rows of files that rested by then. Raises TypeError or ValueError for others than these."""
    if len(lengths := {len(one) for one in columns}) != 1:
        raise ValueError
    if lengths == {0}:
        return {}
    if any(set(map(type, one)) != {kind} for one, kind in zip(columns, _KINDS, strict=True)):
        raise TypeError
    ids, sound, changed, status, size, inode, dates, numbers, starts, ridden, *names, happened, was = columns
    # The same few names, days and times stand in thousands of rows: each is held once.
    bikes, riders, tyres, days = (map(sys.intern, one) for one in names)
    former = map(_texts, was) if any(was) else itertools.repeat(())
    said = zip(  # noqa: B905 - the last may go on for ever
        map(_date, dates), numbers, map(_time, starts), ridden, bikes, riders, tyres, days, happened, former
    )
    stamps = zip(changed, status, size, inode, strict=True)
    noted = zip(stamps, map(_row, said), map(sys.intern, sound), strict=True)
    if max(changed) <= rested and max(status) <= rested:
        return dict(zip(ids, map(_put, noted), strict=True))
    return {
        name: one for name, one in zip(ids, map(_put, noted), strict=True) if max(one.stamp[:2]) <= rested
    }


_row = functools.partial(tuple.__new__, SessionRow)
_put = functools.partial(tuple.__new__, Noted)
"""Made of whole tuples, of which thousands are read at each start."""


def _texts(held: list[Any]) -> tuple[str, ...]:
    """Return former ids. Raises TypeError for what are none."""
    if not all(type(one) is str for one in held):
        raise TypeError
    return tuple(held)


_date = functools.lru_cache(maxsize=4096)(dt.date.fromisoformat)
_time = functools.lru_cache(maxsize=1440)(dt.time.fromisoformat)
