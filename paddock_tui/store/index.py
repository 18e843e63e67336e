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
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.paths import Ref
from paddock_tui.records.ridden import was_ridden
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.columns import each_of, numbers, packed, recurring, word
from paddock_tui.store.listing import RESTS_NS, Stamp

OTHER = "other"
"""In place of a year."""

_LARGEST = 4_000_000
_FEWEST = 20
"""Rows that are worth writing a year anew for."""

_VERSION = 7


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
        for begins, group in itertools.groupby(zip(refs, stamps, strict=True), lambda one: one[0][1][:4]):
            rows = self._year(year_of(begins))
            for ref, stamp in group:
                noted = rows.get(ref[1])
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
                held = {name: one for name, one in self._years[year].items() if _fits(one)}
                write_cached(self._folder, f"{year}.json", _as_text(held))

    def _year(self, year: str) -> dict[str, Noted]:
        if year not in self._years:
            self._years[year] = _read(self._folder, f"{year}.json")
        return self._years[year]


def year_of(name: str) -> str:
    """Return the year that a session's id names; OTHER where it names none."""
    return name[:4] if name[:4].isdecimal() and name[:4].isascii() else OTHER


def _fits(noted: Noted) -> bool:
    """Return whether the numbers are such as files have: others are read each time."""
    return all(abs(one) < _TOO_LARGE for one in (*noted.stamp, noted.row.number))


_TOO_LARGE = 1 << 63


def _as_text(rows: Mapping[str, Noted]) -> bytes:
    """Write a year column by column, in the order of the ids: so it is read again at once."""
    noted = [rows[name] for name in sorted(rows)]
    said = [one.row for one in noted]
    changed, status, size, inode = ([one.stamp[at] for one in noted] for at in range(4))
    columns = {
        "ids": sorted(rows),
        "changed": packed(changed, "q"),
        "status": packed(status, "q"),
        "size": packed(size, "Q"),
        "inode": packed(inode, "Q"),
        "sound": recurring([one.sound for one in noted]),
        "date": recurring([row.date.isoformat() for row in said]),
        "number": packed([row.number for row in said], "q"),
        "start": recurring([row.start.isoformat() for row in said]),
        "ridden": packed([row.ridden for row in said], "B"),
        "bike": recurring([row.bike for row in said]),
        "rider": recurring([row.rider for row in said]),
        "tyres": recurring([row.tyres for row in said]),
        "day": recurring([row.day for row in said]),
        "happened": packed([row.happened for row in said], "B"),
        "was": recurring([row.was for row in said]),
    }
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


def _rows(columns: dict[str, Any], rested: int) -> dict[str, Noted]:
    """Return the rows of files that rested by then. Raises one of CACHE_TROUBLES for others than these."""
    ids = [word(one) for one in columns["ids"]]
    changed, status = numbers(columns["changed"], "q"), numbers(columns["status"], "q")
    stamps = zip(changed, status, *(numbers(columns[one], "Q") for one in ("size", "inode")), strict=True)
    said = zip(
        each_of(columns["date"], dt.date.fromisoformat),
        numbers(columns["number"], "q"),
        each_of(columns["start"], dt.time.fromisoformat),
        map(bool, numbers(columns["ridden"], "B")),
        *(each_of(columns[one], word) for one in ("bike", "rider", "tyres", "day")),
        map(bool, numbers(columns["happened"], "B")),
        each_of(columns["was"], lambda held: tuple(map(word, held))),
        strict=True,
    )
    sound = each_of(columns["sound"], word)
    noted = map(_put, zip(stamps, map(_row, said), sound, strict=True))
    found = dict(zip(ids, noted, strict=True))
    if max(changed, default=0) <= rested and max(status, default=0) <= rested:
        return found
    return {name: one for name, one in found.items() if max(one.stamp[:2]) <= rested}


_row = functools.partial(tuple.__new__, SessionRow)
_put = functools.partial(tuple.__new__, Noted)
"""Made of whole tuples, of which thousands are read at each start."""
