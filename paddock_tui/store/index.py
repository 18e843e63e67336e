"""What every session file says in short, remembered by the file's stamp, so that old seasons are not parsed.

One file a year in the user's cache folder, under the garage's real path; never in the garage. It holds no
verdict and no words of the rider, and is never believed against a file: a row counts only while time of
change, size and inode of its file are as noted, and only where that file had rested for two seconds when
the index was written. Whatever is wrong with the index makes the files be read.
"""

import contextlib
import datetime as dt
import functools
import json
import os
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

import attrs

from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.ridden import was_ridden
from paddock_tui.store import system_calls
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.listing import RESTS_NS
from paddock_tui.store.tree import TreePlace, release

Stamp = tuple[int, int, int, int]
"""What tells that a file changed: times of change of text and status in ns, size, inode."""

OTHER = "other"
"""In place of a year."""

_LARGEST = 4_000_000
_FEWEST = 20
"""Rows that are worth writing a year anew for."""

_VERSION = 5


@attrs.frozen
class SessionRow:
    """What a session says in short. Names are empty where they are not written or are no text.

    `was` holds the ids that the session had before.
    """

    date: dt.date
    number: int
    start: dt.time
    ridden: bool
    bike: str = ""
    rider: str = ""
    tyres: str = ""
    day: str = ""
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
        self._folder = cache_folder().joinpath(*real.parts[1:])
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
                with contextlib.suppress(OSError):
                    self._folder.mkdir(mode=0o700, parents=True, exist_ok=True)
                    _replace(self._folder, f"{year}.json", _as_text(self._years[year]))

    def _year(self, year: str) -> dict[str, Noted]:
        if year not in self._years:
            self._years[year] = _read(self._folder, f"{year}.json")
        return self._years[year]


def cache_folder() -> Path:
    """Return the user's folder for what may be lost. Raises RuntimeError where there is no home."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    base = Path(named) if Path(named).is_absolute() else Path.home() / ".cache"
    return base / "paddock-tui"


def year_of(name: str) -> str:
    """Return the year that a session's id names; OTHER where it names none."""
    return name[:4] if name[:4].isdecimal() and name[:4].isascii() else OTHER


def _as_text(rows: Mapping[str, Noted]) -> bytes:
    plain = {name: [*one.stamp, one.sound, *_plain(one.row)] for name, one in rows.items()}
    return json.dumps({"version": _VERSION, "rows": plain}, separators=(",", ":")).encode()


def _plain(row: SessionRow) -> tuple[Any, ...]:
    date, start = row.date.isoformat(), row.start.isoformat()
    return date, row.number, start, row.ridden, row.bike, row.rider, row.tyres, row.day, *row.was


def _read(folder: Path, name: str) -> dict[str, Noted]:
    """Read a year, the rows that count; none where any of it is not as this program writes it."""
    try:
        here = system_calls.open_root(folder)
        try:
            written = system_calls.status(here, name).st_mtime_ns
            given = json.loads(read_at(TreePlace(here, name), _LARGEST))
        finally:
            release(here)
        if given["version"] != _VERSION:
            return {}
        return {
            name: noted
            for name, held in given["rows"].items()
            if max((noted := _noted(held)).stamp[:2]) + RESTS_NS <= written
        }
    except (OSError, NotRead, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return {}


def _noted(held: list[Any]) -> Noted:
    changed, status, size, inode, sound, *fields = held
    if not type(changed) is type(status) is type(size) is type(inode) is int or type(sound) is not str:
        raise TypeError
    return Noted((changed, status, size, inode), _row(fields), sys.intern(sound))


def _row(fields: list[Any]) -> SessionRow:
    date, number, start, ridden, bike, rider, tyres, day, *was = fields
    if type(number) is not int or type(ridden) is not bool or (was and not _are_texts(was)):
        raise TypeError
    if not type(bike) is type(rider) is type(tyres) is type(day) is str:
        raise TypeError
    # The same few names, days and times stand in thousands of rows: each is held once.
    bike, rider, tyres, day = map(sys.intern, (bike, rider, tyres, day))
    return SessionRow(_date(date), number, _time(start), ridden, bike, rider, tyres, day, tuple(was))


def _are_texts(names: list[Any]) -> bool:
    return all(type(one) is str for one in names)


_date = functools.lru_cache(maxsize=4096)(dt.date.fromisoformat)
_time = functools.lru_cache(maxsize=1440)(dt.time.fromisoformat)


def _replace(folder: Path, name: str, data: bytes) -> None:
    """Put a file in place of another at once, readable for this user alone; a power cut may lose it."""
    here = system_calls.open_root(folder)
    beside = f".{name}.{os.getpid()}"
    try:
        with contextlib.suppress(FileNotFoundError):
            system_calls.unlink(here, beside)
        file = system_calls.create(here, beside, 0o600)
        try:
            while data:
                data = data[system_calls.write(file, data) :]
        finally:
            release(file)
        system_calls.replace(here, beside, here, name)
    finally:
        release(here)
