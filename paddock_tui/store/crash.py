"""A report of an unexpected error: places in the program, no values, nothing that stands in a garage."""

import contextlib
import datetime as dt
import os
import platform
import sys
import traceback
from collections.abc import Iterator
from pathlib import Path

from paddock_tui import __version__

CRASHED = 70
"""The exit status after an unexpected error, as sysexits has it for errors of the program."""

_OWN = Path(__file__).parent.parent


def state_folder() -> Path:
    """Return the platform's folder for what a program keeps about itself."""
    home = Path.home()
    if sys.platform == "darwin":
        return home / "Library" / "Logs" / "paddock-tui"
    named = os.environ.get("XDG_STATE_HOME", "")
    base = Path(named) if Path(named).is_absolute() else home / ".local" / "state"
    return base / "paddock-tui"


def report(error: BaseException) -> str:
    """Write the report of an error and give its path; empty where it cannot be written. Never raises."""
    with contextlib.suppress(OSError, RuntimeError, ValueError):
        folder = state_folder()
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / f"crash-{dt.datetime.now():%Y%m%d-%H%M%S}-{os.getpid()}.txt"
        path.write_text("\n".join(_lines(error)) + "\n", encoding="utf-8", errors="replace")
        return str(path)
    return ""


def sentence(path: str) -> str:
    """Return one line saying that there was an unexpected error, and where its report is."""
    where = f"; a report without garage content: {path}" if path else "; no report could be written"
    return f"an unexpected error ended paddock-tui{where}"


def _lines(error: BaseException) -> Iterator[str]:
    yield f"paddock-tui {__version__}, python {platform.python_version()}, {platform.system()}"
    yield "places in the program only: no values, no messages, nothing of a garage"
    yield from _one(error, set())


def _one(error: BaseException, seen: set[int]) -> Iterator[str]:
    """Write an error, innermost cause first, each with its type and its frames."""
    if id(error) in seen:
        return
    seen.add(id(error))
    before = error.__cause__ or error.__context__
    if before is not None:
        yield from _one(before, seen)
    for inside in error.exceptions if isinstance(error, BaseExceptionGroup) else ():
        yield from _one(inside, seen)
    yield ""
    yield f"{type(error).__module__}.{type(error).__qualname__}"
    for frame in traceback.extract_tb(error.__traceback__):
        yield f"  {_place(Path(frame.filename))}:{frame.lineno} {frame.name}"


def _place(file: Path) -> str:
    """Return a file's place inside the program or a library, without the folders of this computer."""
    if file.is_relative_to(_OWN):
        return str(Path(_OWN.name) / file.relative_to(_OWN))
    return "/".join(file.parts[-3:])
