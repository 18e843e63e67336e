"""What the commands share: exit statuses, opening a garage, printing."""

import contextlib
import os
import sys
from collections.abc import Iterable, Iterator

from paddock_tui.text import ascii_asked, fold, in_ascii, printable

TYPE_CHECKING = False  # what it stands for in `typing`, which takes longer to load than all of this
if TYPE_CHECKING:
    import datetime as dt

    from paddock_tui.desk import Desk
    from paddock_tui.desk.looking import LooksAt
    from paddock_tui.records.errors import InputError
    from paddock_tui.records.paths import Ref
    from paddock_tui.store.garage import GarageFiles

OK = 0
CARE = 1
HOLD = 2
NOT_DONE = 3
USAGE = 64
"""Exit statuses: what was asked for is wrong (64), or could not be done (3); verdicts 0 to 2."""


class CommandStopped(Exception):
    """A command that cannot go on: the exit status, and what to say."""

    def __init__(self, status: int, *lines: str) -> None:
        super().__init__(" ".join(lines))
        self.status = status
        self.lines = lines


def open_to_read(
    folder: str, at: "dt.datetime | None" = None, *, files: "GarageFiles | None" = None
) -> "LooksAt":
    """Open the garage in a folder to look at it alone; Stop where there is none. `at` sets the clock.

    Nothing of what writes is loaded. That a step was cut short is said, and left as it is. `files` are its
    files, where they are held in another way than all at once.
    """
    from pathlib import Path

    from paddock_tui.desk.looking import LooksAt
    from paddock_tui.desk.venue_clock import VenueClock
    from paddock_tui.store.cut_short import declared
    from paddock_tui.store.garage import GarageFiles

    files = files or GarageFiles(Path(folder))
    _refuse_what_is_none(files)
    if declared(files.root):
        from paddock_tui.store.saving import cut_short

        complain(filter(None, (printable(cut_short(files)),)))
    return LooksAt(files, (lambda: at) if at is not None else VenueClock(files))


def open_desk(folder: str, at: "dt.datetime | None" = None, *, writes: bool = True) -> "Desk":
    """Open the garage in a folder; Stop where there is none. `at` sets the clock.

    A step that was cut short is completed, and that is said; by a command that writes nothing only said.
    """
    import datetime as dt
    from pathlib import Path

    from paddock_tui.desk import Desk

    desk = Desk(Path(folder), (lambda: at) if at is not None else dt.datetime.now)
    _refuse_what_is_none(desk.files)
    said = desk.mend() if writes else desk.cut_short()
    if said:
        complain((printable(said),))
    return desk


def _refuse_what_is_none(files: "GarageFiles") -> None:
    problem = files.problem()
    if problem is not None:
        raise CommandStopped(NOT_DONE, *sentences(problem))


def find_ref(desk: "LooksAt", text: str, among: tuple[str, ...] = (), besides: tuple[str, ...] = ()) -> "Ref":
    """Find the record that an argument names, among these kinds (all, where none is named).

    Those `besides` have to be spelled kind/id. Stop where it names none.
    """
    from paddock_tui.desk import NoSuchRecord, find
    from paddock_tui.records.paths import FOLDERS

    try:
        found = find(desk.files, text, among or tuple(FOLDERS))
    except NoSuchRecord as error:
        raise CommandStopped(NOT_DONE, *sentences(error.trouble)) from None
    if among and found.kind not in (*among, *besides):
        raise CommandStopped(NOT_DONE, f"{found} is not a {among[0]}")
    return found


def columns() -> int:
    """Return the width to print at: the terminal's, at least 38 and at most 100; 80 where there is none."""
    return max(38, min(100, terminal_width()))


def terminal_width() -> int:
    """Return what the user says, else how wide the terminal is, else 80.

    As `shutil` tells it, which also loads three ways to compress files: each command would wait for that.
    """
    asked = os.environ.get("COLUMNS", "")
    width = int(asked) if asked.isdecimal() else 0
    if width == 0 and sys.__stdout__ is not None:
        with contextlib.suppress(ValueError, OSError):
            width = os.get_terminal_size(sys.__stdout__.fileno()).columns
    return width or 80


def say(lines: Iterable[str]) -> None:
    """Print lines; where the output takes ASCII alone, as a screen there shows them."""
    plain = ascii_asked() or not _takes_more(sys.stdout.encoding)
    for line in lines:
        sys.stdout.write((in_ascii(line) if plain else line).rstrip() + "\n")


def _takes_more(encoding: str | None) -> bool:
    """Return whether an output takes more than ASCII; one of eight bits replaces what it lacks."""
    return not (encoding or "ascii").lower().replace("-", "").startswith(("ascii", "ansi"))


def complain(lines: Iterable[str]) -> None:
    """Print lines where errors go; in a terminal they are wrapped, elsewhere each stays one line."""
    for line in lines:
        for part in _wrapped(line) if sys.stderr.isatty() else (line,):
            with contextlib.suppress(OSError):  # there is nobody left to tell
                sys.stderr.write(part.rstrip() + "\n")


def sentences(trouble: "InputError") -> tuple[str, ...]:
    """Write one trouble: where, what was found and expected, and the mend on a line of its own."""
    place = (
        f"{trouble.file}:{trouble.line}: " if trouble.line else f"{trouble.file}: " if trouble.file else ""
    )
    said = printable(f"{place}{trouble.found}: expected {trouble.expected}")
    return (said, printable(f"  {trouble.mend}")) if trouble.mend else (said,)


def counted(number: int, noun: str) -> str:
    """Write a number with its noun, in the plural where that is meant."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def _wrapped(line: str) -> Iterator[str]:
    indent = line[: len(line) - len(line.lstrip(" "))]
    for place, part in enumerate(fold(line, columns() - len(indent) - 2)):
        yield f"{indent}{part}" if place == 0 else f"{indent}  {part}"
