"""What every session file says in short, remembered by the file's stamp, so that old seasons are not parsed.

One file a year in the user's cache folder, under the garage's real path; never in the garage. It holds no
verdict and no words of the rider, and is never believed against a file: a row counts only while time of
change, size and inode of its file are as noted, and only where that file had rested for two seconds when
the index was written. Whatever is wrong with the index makes the files be read.
"""

import datetime as dt
import functools
import json
import operator
from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import compress, groupby
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.paths import Ref
from paddock_tui.records.ridden import was_ridden
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.columns import each_of, numbers, packed, recurring, word, words
from paddock_tui.store.listing import RESTS_NS, Stamp

OTHER = "other"
"""In place of a year."""

_LARGEST = 4_000_000
_FEWEST = 20
"""Rows that are worth writing a year anew for."""

_VERSION = 8


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
    """What is noted of files that are still the same, side by side: of each its stamp and its row."""

    refs: list[Ref]
    stamps: list[Stamp]
    rows: list[SessionRow]


class _AsRead(NamedTuple):
    """What was read of one year, side by side: ids, stamps, rows, and what each was read whole with."""

    ids: list[str]
    stamps: list[Stamp]
    rows: list[SessionRow]
    sound: list[str]


class _Year:
    """What is noted of the sessions of one year by their ids.

    Their stamps, their rows, and what each was read whole with; that is empty where it is not known. Each is
    put together when one of them is asked for: mostly all are, and are as they were `as_read`.
    """

    def __init__(self, as_read: _AsRead | None = None) -> None:
        self.as_read = as_read or _AsRead([], [], [], [])

    @functools.cached_property
    def stamps(self) -> dict[str, Stamp]:
        """The stamp of each."""
        return dict(zip(self.as_read.ids, self.as_read.stamps, strict=True))

    @functools.cached_property
    def rows(self) -> dict[str, SessionRow]:
        """The row of each."""
        return dict(zip(self.as_read.ids, self.as_read.rows, strict=True))

    @functools.cached_property
    def sound(self) -> dict[str, str]:
        """What each was read whole with."""
        return dict(zip(self.as_read.ids, self.as_read.sound, strict=True))

    def put(self, name: str, stamp: Stamp, row: SessionRow, sound: str) -> None:
        self.stamps[name], self.rows[name], self.sound[name] = stamp, row, sound

    def same(self, ids: list[str], stamps: Sequence[Stamp]) -> list[bool]:
        """Return of each of some files whether something is noted of it, and it is still the same."""
        return list(map(operator.eq, map(self.stamps.get, ids), stamps))

    def only(self, those: Callable[[str], bool]) -> "_Year":
        """Return what is noted of some of them."""
        found = _Year()
        for name in filter(those, self.rows):
            found.put(name, self.stamps[name], self.rows[name], self.sound[name])
        return found


class SessionIndex:
    """The rows of one garage's sessions as they were when their files were last read."""

    def __init__(self, real: Path) -> None:
        self._folder = folder_of(real)
        self._years: dict[str, _Year] = {}
        self._fresh: dict[str, int] = {}

    def row(self, name: str, stamp: Stamp) -> SessionRow | None:
        """Return what a session's file says, where it is noted and the file is still the same."""
        year = self._year(year_of(name))
        return year.rows[name] if year.stamps.get(name) == stamp else None

    def all_noted(self, refs: Sequence[Ref], stamps: Sequence[Stamp]) -> Noted:
        """Return what is noted of those of many files that are still the same."""
        names, found, at = [ref.id for ref in refs], Noted([], [], []), 0
        # Named after their day they mostly come year by year, and mostly all are as they were.
        for begins, group in groupby([name[:4] for name in names]):
            end = at + sum(1 for _ in group)
            year = self._year(year_of(begins))
            part, ids, now = refs[at:end], names[at:end], stamps[at:end]
            if (year.as_read.ids, year.as_read.stamps) == (ids, now):
                found.refs.extend(part)
                found.stamps.extend(now)
                found.rows.extend(year.as_read.rows)
            else:
                same = year.same(ids, now)
                found.refs.extend(compress(part, same))
                found.stamps.extend(compress(now, same))
                found.rows.extend(map(year.rows.__getitem__, compress(ids, same)))
            at = end
        return found

    def sound(self, refs: Iterable[Ref]) -> list[str]:
        """Return what each of some files, which are as noted, was read whole with."""
        return [self._year(year_of(ref.id)).sound[ref.id] for ref in refs]

    def note(self, name: str, stamp: Stamp, row: SessionRow) -> None:
        """Note what a file says, to be written with others."""
        self._put(name, stamp, row, "")

    def is_sound(self, name: str, stamp: Stamp, against: str) -> bool:
        """Return whether a file is noted to have been read whole with something, and is still the same."""
        year = self._year(year_of(name))
        return year.stamps.get(name) == stamp and year.sound[name] == against

    def note_sound(self, name: str, stamp: Stamp | None, against: str) -> None:
        """Note that a file was read whole with something, where it is as noted."""
        year = self._year(year_of(name))
        if stamp is not None and year.stamps.get(name) == stamp:
            self._put(name, stamp, year.rows[name], against)

    def _put(self, name: str, stamp: Stamp, row: SessionRow, sound: str) -> None:
        year = year_of(name)
        self._year(year).put(name, stamp, row, sound)
        self._fresh[year] = self._fresh.get(year, 0) + 1

    def write(self) -> None:
        """Write the years of which enough is new; that they cannot be written is no harm."""
        for year, count in list(self._fresh.items()):
            if count >= _FEWEST:
                self._fresh[year] = 0
                write_cached(self._folder, f"{year}.json", _as_text(_fitting(self._years[year])))

    def _year(self, year: str) -> _Year:
        if year not in self._years:
            self._years[year] = _read(self._folder, f"{year}.json")
        return self._years[year]


def year_of(name: str) -> str:
    """Return the year that a session's id names; OTHER where it names none."""
    return name[:4] if name[:4].isdecimal() and name[:4].isascii() else OTHER


def _fitting(year: _Year) -> _Year:
    """Return what can be written: numbers such as files have, others are read each time."""

    def fits(name: str) -> bool:
        return all(abs(one) < _TOO_LARGE for one in (*year.stamps[name], year.rows[name].number))

    return year.only(fits)


_TOO_LARGE = 1 << 63


def _as_text(year: _Year) -> bytes:
    """Write a year column by column, in the order of the ids: so it is read again at once."""
    ids = sorted(year.rows)
    said = [year.rows[name] for name in ids]
    changed, status, size, inode = ([year.stamps[name][at] for name in ids] for at in range(4))
    columns = {
        "ids": ids,
        "changed": packed(changed),
        "status": packed(status),
        "size": packed(size),
        "inode": packed(inode),
        "sound": recurring([year.sound[name] for name in ids]),
        "date": recurring([row.date.isoformat() for row in said]),
        "number": packed([row.number for row in said]),
        "start": recurring([row.start.isoformat() for row in said]),
        "ridden": packed([row.ridden for row in said]),
        "bike": recurring([row.bike for row in said]),
        "rider": recurring([row.rider for row in said]),
        "tyres": recurring([row.tyres for row in said]),
        "day": recurring([row.day for row in said]),
        "happened": packed([row.happened for row in said]),
        "was": recurring([row.was for row in said]),
    }
    return json.dumps({"version": _VERSION, "columns": columns}, separators=(",", ":")).encode()


def _read(folder: Path, name: str) -> _Year:
    """Read a year, the rows that count; none where any of it is not as this program writes it."""
    try:
        text, written = read_cached(folder, name, _LARGEST)
        given = json.loads(text)
        if given["version"] != _VERSION:
            return _Year()
        return _rows(given["columns"], written - RESTS_NS)
    except CACHE_TROUBLES:
        return _Year()


def _rows(columns: dict[str, Any], rested: int) -> _Year:
    """Return the rows of files that rested by then. Raises one of CACHE_TROUBLES for others than these."""
    ids = words(columns["ids"])
    changed, status = numbers(columns["changed"]), numbers(columns["status"])
    stamps = zip(changed, status, *(numbers(columns[one]) for one in ("size", "inode")), strict=True)
    said = zip(
        each_of(columns["date"], dt.date.fromisoformat),
        numbers(columns["number"]),
        each_of(columns["start"], dt.time.fromisoformat),
        map(bool, numbers(columns["ridden"])),
        *(each_of(columns[one], word) for one in ("bike", "rider", "tyres", "day")),
        map(bool, numbers(columns["happened"])),
        each_of(columns["was"], lambda held: tuple(map(word, held))),
        strict=True,
    )
    as_read = _AsRead(ids, list(stamps), list(map(_row, said)), list(each_of(columns["sound"], word)))
    if {len(as_read.stamps), len(as_read.rows), len(as_read.sound)} != {len(ids)}:
        raise ValueError(columns)
    year = _Year(as_read)
    if max(changed, default=0) <= rested and max(status, default=0) <= rested:
        return year
    return year.only(lambda name: max(year.stamps[name][:2]) <= rested)


_row = functools.partial(tuple.__new__, SessionRow)
"""Made of whole tuples, of which thousands are read at each start."""
