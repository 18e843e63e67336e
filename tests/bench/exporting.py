"""What an export takes, and whether other readers find in it what is there: `... exporting [SESSIONS ...]`.

For each size of a career: a processor's seconds, seconds waited, the most memory of the process, and rows.
With two sizes or more the exponent of the seconds and the memory that a thousand sessions more take are
printed, and the latter is held against its bound. The tables are then read by pandas and by DuckDB where
they are installed, and their sums held against those of the csv module; where they are not, that is said.
"""

import csv
import importlib
import itertools
import math
import os
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import Path

import attrs

from tests.bench._career import write_career

_SIZES = ("300", "1000")
_MB = 1024.0
_MOST_MB_A_THOUSAND = 20.0
"""What a thousand sessions more may take: of the past only what the judgement rests on is held."""


@attrs.frozen
class Export:
    """One export: of how many sessions, what it took, and where its tables stand."""

    sessions: int
    cpu_s: float
    waited_s: float
    most_mb: float
    rows: int
    folder: Path


def main(arguments: list[str]) -> int:
    """Print the figures; 1 where a reader finds other sums, or memory grows by more than its bound."""
    wrong: list[str] = []
    done: list[Export] = []
    with tempfile.TemporaryDirectory() as name:
        for size in map(int, arguments or _SIZES):
            one = _export(Path(name), size)
            done.append(one)
            _say(
                f"{one.sessions:6} sessions {one.cpu_s:8.1f} s cpu {one.waited_s:8.1f} s "
                f"{one.most_mb:7.0f} MB {one.rows:9} rows"
            )
        for low, high in itertools.pairwise(done):
            wrong += _growth(low, high)
        for library, sums in _READERS.items():
            wrong += _compared(library, sums, done[0].folder)
    for one_wrong in wrong:
        sys.stderr.write(f"{one_wrong}\n")
    return 1 if wrong else 0


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def _export(where: Path, sessions: int) -> Export:
    career = write_career(where / f"garage-{sessions}", sessions)
    folder = where / f"tables-{sessions}"
    command = [sys.executable, "-m", "paddock_tui", "export", str(career.root), "--to", str(folder)]
    quiet = os.open(os.devnull, os.O_WRONLY)
    began = time.monotonic()
    pid = os.posix_spawn(
        sys.executable,
        command,
        {**os.environ, "XDG_CACHE_HOME": str(where / "cache")},
        file_actions=[(os.POSIX_SPAWN_DUP2, quiet, 1)],
    )
    _, status, used = os.wait4(pid, 0)
    waited = time.monotonic() - began
    os.close(quiet)
    if status:
        raise SystemExit(f"the export of {sessions} sessions ended with {os.waitstatus_to_exitcode(status)}")
    rows = sum(sum(1 for _ in _rows(file)) for file in sorted(folder.glob("*.csv")))
    cpu = used.ru_utime + used.ru_stime
    return Export(sessions, cpu, waited, used.ru_maxrss / _MB, rows, folder)


def _growth(low: Export, high: Export) -> list[str]:
    """Say how seconds and memory grow, and what is over its bound."""
    ratio = math.log(high.sessions / low.sessions)
    more = (high.most_mb - low.most_mb) / (high.sessions - low.sessions) * 1000.0
    exponent = math.log(high.cpu_s / low.cpu_s) / ratio
    _say(
        f"{low.sessions} to {high.sessions}: seconds grow as sessions ** {exponent:.2f}, {more:.0f} MB a 1000"
    )
    over = more > _MOST_MB_A_THOUSAND
    return [f"{high.sessions} sessions: over {_MOST_MB_A_THOUSAND} MB for each 1000 more"] if over else []


def _rows(file: Path) -> Iterator[dict[str, str]]:
    with file.open(encoding="utf-8", newline="") as held:
        yield from csv.DictReader(held)


def _own(folder: Path) -> dict[str, Decimal]:
    """Return sums of the tables as the csv module reads them."""
    return {
        "sessions": Decimal(sum(1 for _ in _rows(folder / "sessions.csv"))),
        "lap seconds": sum((Decimal(row["lap_s"]) for row in _rows(folder / "laps.csv")), Decimal(0)),
        "laps joined": Decimal(sum(1 for _ in _rows(folder / "laps.csv"))),
        "settings": Decimal(sum(1 for _ in _rows(folder / "settings.csv"))),
    }


def _pandas(library: object, folder: Path) -> dict[str, float]:
    read = getattr(library, "read_csv")  # noqa: B009
    sessions, laps = read(folder / "sessions.csv"), read(folder / "laps.csv")
    return {
        "sessions": float(len(sessions)),
        "lap seconds": float(laps["lap_s"].sum()),
        "laps joined": float(len(laps.merge(sessions, on="session"))),
        "settings": float(len(read(folder / "settings.csv"))),
    }


def _duckdb(library: object, folder: Path) -> dict[str, float]:
    ask = getattr(library, "sql")  # noqa: B009

    def one(query: str) -> float:
        found = ask(query.format(**{file.stem: f"read_csv('{file}')" for file in folder.glob("*.csv")}))
        return float(found.fetchall()[0][0])

    return {
        "sessions": one("select count(*) from {sessions}"),
        "lap seconds": one("select sum(lap_s) from {laps}"),
        "laps joined": one("select count(*) from {laps} join {sessions} using (session)"),
        "settings": one("select count(*) from {settings}"),
    }


_READERS: dict[str, Callable[[object, Path], dict[str, float]]] = {"pandas": _pandas, "duckdb": _duckdb}


def _compared(library: str, sums: Callable[[object, Path], dict[str, float]], folder: Path) -> list[str]:
    """Hold the sums that a library finds against our own; where it is not installed, that is said."""
    try:
        module = importlib.import_module(library)
    except ImportError:
        _say(f"{library}: not compared, it is not installed here")
        return []
    own, found = _own(folder), sums(module, folder)
    wrong = [
        f"{library}: {name} {found[name]}, not {own[name]}"
        for name in own
        if not math.isclose(found[name], float(own[name]), rel_tol=1e-9)
    ]
    _say(f"{library}: {len(own)} sums compared, {len(wrong)} differ")
    return wrong
