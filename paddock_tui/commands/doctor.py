"""`doctor`: tests what a pit laptop and its link get wrong, and says what to fix; nothing is sent."""

import datetime as dt
import locale
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import attrs

from paddock_tui.commands.common import CARE, NOT_DONE, OK, CommandStopped, columns, say, sentences
from paddock_tui.desk.clock_watch import in_words
from paddock_tui.desk.lookup import glances
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.store.crash import state_folder
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.git import GitFailed, git, top_of
from paddock_tui.store.private import private
from paddock_tui.store.settings import load_settings
from paddock_tui.store.system_calls import lock, sync
from paddock_tui.text import printable

Level = Literal["ok", "better", "broken"]
_LEAST_FREE = 50_000_000
_SLOW_SYNC_S = 0.5
_MOST_ESCAPE_MS = 50
_MOST_AHEAD_S = 120.0
"""What clocks of two laptops, or of a laptop and a share, may differ by."""


@attrs.frozen
class Tested:
    """What one test found: how it is, what it is about, what was found, and what to do."""

    level: Level
    label: str
    found: str
    fix: str = ""


def doctor(folder: str | None) -> int:
    """Print what was tested; status 1 where something could be better, 3 where something does not work."""
    root = Path(folder) if folder is not None else None
    if root is not None and not root.is_dir():
        raise CommandStopped(
            NOT_DONE, printable(f"there is no folder {folder}"), "  paddock-tui new makes a garage"
        )
    sections = [Section("terminal", _rows(_terminal())), Section("this machine", _rows(_machine()))]
    if root is not None:
        sections.append(Section("garage", _rows(_garage(root))))
    page = Page("doctor", tuple(sections), judged=False)
    say(plain_page(page, columns()))
    levels = {row.severity for row in page.rows()}
    return NOT_DONE if "broken" in levels else CARE if "better" in levels else OK


def _graded(bad: bool, level: Level, label: str, found: str, fix: str) -> Tested:
    """Make the result of a test: as it should be, or of this level with what to do."""
    return Tested(level, label, found, fix) if bad else Tested("ok", label, found)


def _rows(tests: Iterator[Tested]) -> tuple[Row, ...]:
    words = {"ok": "", "better": "better: ", "broken": "fix: "}
    return tuple(
        Row(
            one.label,
            printable(one.found),
            aside=f"{words[one.level]}{one.fix}" if one.fix else "",
            kind="text",
            severity=one.level,
            key=one.label,
        )
        for one in tests
    )


def _terminal() -> Iterator[Tested]:
    term = os.environ.get("TERM", "")
    dumb = term in ("", "dumb", "unknown")
    yield Tested(
        "better" if dumb else "ok",
        "TERM",
        term or "not set",
        "draws no screens: pages as text" if dumb else "",
    )
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        yield Tested("ok", "screens", "this is no terminal now: text alone")
    wide, high = shutil.get_terminal_size((80, 24))
    small = wide < 40 or high < 20
    yield _graded(small, "better", "size", f"{wide}x{high}", "40x20 at least")
    colours = "24 bit" if os.environ.get("COLORTERM") in ("truecolor", "24bit") else ""
    colours = colours or ("256" if "256" in term else "16 or fewer")
    yield Tested("ok", "colours", "none, NO_COLOR is set" if os.environ.get("NO_COLOR") else colours)
    yield _locale()
    yield _mosh()
    yield from _tmux()


def _locale() -> Tested:
    encoding = locale.getpreferredencoding(False)
    if encoding.lower().replace("-", "") == "utf8":
        return Tested("ok", "locale", encoding)
    return Tested("better", "locale", encoding, "lines are drawn in plain letters; set LANG=C.UTF-8")


def _mosh() -> Tested:
    """Look for what keeps a session over a link that comes and goes; it needs UTF-8 to draw."""
    if shutil.which("mosh-server") is None:
        return Tested("ok", "mosh", "not there: tmux keeps the screen over a link that drops")
    return _graded(_locale().level != "ok", "better", "mosh", "there", "it needs UTF-8: set LANG=C.UTF-8")


def _tmux() -> Iterator[Tested]:
    """Ask tmux how long it holds an escape back."""
    if not os.environ.get("TMUX"):
        return
    said = _asked("tmux", "show-options", "-sv", "escape-time")
    if not said.isdecimal():
        yield Tested("ok", "escape in tmux", "not known")
    elif int(said) > _MOST_ESCAPE_MS:
        yield Tested("better", "escape in tmux", f"{said} ms", "tmux set -s escape-time 10")
    else:
        yield Tested("ok", "escape in tmux", f"{said} ms")


def _asked(*words: str) -> str:
    try:
        done = subprocess.run(words, capture_output=True, text=True, timeout=2, check=False)
    except (OSError, subprocess.SubprocessError):
        return ""
    return done.stdout.strip()


def _machine() -> Iterator[Tested]:
    now = _now()
    odd = now.year < 2025
    yield Tested(
        "broken" if odd else "ok",
        "clock",
        f"{now:%Y-%m-%d %H:%M} {now.tzname()}",
        "set date and time" if odd else "",
    )
    folder = state_folder()
    fits = _writable(folder if folder.exists() else folder.parent if folder.parent.exists() else Path.home())
    yield _graded(not fits, "better", "own folder", str(folder), "without it undo lasts for one run")
    _, wrong = load_settings()
    said = " ".join(sentences(wrong[0])) if wrong else "as they should be"
    yield Tested(
        "better" if wrong else "ok", "settings", said, "paddock-tui settings --edit" if wrong else ""
    )
    found = shutil.which("git") is not None
    yield Tested("ok", "git", "there" if found else "not there: only one laptop can keep a garage")


def _now() -> dt.datetime:
    return dt.datetime.now().astimezone()


def _writable(folder: Path) -> bool:
    return os.access(folder, os.W_OK | os.X_OK)


def _garage(root: Path) -> Iterator[Tested]:
    files = GarageFiles(root)
    problem = files.problem()
    if problem is not None:
        yield Tested("broken", "garage", problem.found, problem.mend or problem.expected)
        return
    yield from _disk(root)
    yield _clock_beside(files)
    yield _private(root)
    unread = [
        files.name_of(ref) for ref in files.all() if (one := files.read(ref)) is None or one.record is None
    ]
    strays = [*files.strays(), *files.former.troubles(files.name_of)]
    count = len(unread) + len(strays)
    named = ", ".join([*unread, *(one.file for one in strays)][:3])
    fix = f"paddock-tui check {root} --all names each: {named}"
    yield _graded(count > 0, "broken" if unread else "better", "files", f"{count} cannot be read", fix)
    yield from _repository(root)


def _clock_beside(files: GarageFiles) -> Tested:
    """Compare the clock with the newest record: the latest day that was ridden, and the file written last."""
    now = _now()
    ridden = max((one.date for one in glances(files) if one.ridden), default=now.date())
    paths = (files.path_of(ref) for ref in files.all())
    written = max((path.stat().st_mtime for path in paths if path is not None and path.exists()), default=0.0)
    label, fix = "clock beside records", "set date and time, or correct the record's date"
    if ridden > now.date():
        return Tested("better", label, f"behind: a session of {ridden:%Y-%m-%d} was ridden already", fix)
    ahead = written - now.timestamp()
    said = f"behind: a file was written {in_words(ahead)} from now"
    if ahead > _MOST_AHEAD_S:
        return Tested("better", label, said, "set date and time")
    return Tested("ok", label, f"last ridden {ridden:%Y-%m-%d}, nothing later than now")


def _disk(root: Path) -> Iterator[Tested]:
    """Write a file of a moment beside the records, lock it, sync it, and take it away again."""
    try:
        with tempfile.NamedTemporaryFile(prefix=".paddock-doctor-", dir=root) as file:
            file.write(b"x" * 4096)
            file.flush()
            before = time.monotonic()
            sync(file.fileno())
            took = time.monotonic() - before
            locks = _locks(file.fileno())
    except OSError as error:
        yield Tested("broken", "writing", in_plain_words(error), "nothing can be saved here")
        return
    waits = "edits show as not yet saved for a while"
    yield _graded(took > _SLOW_SYNC_S, "better", "writing", f"synced in {took * 1000:.0f} ms", waits)
    yield _graded(not locks, "better", "lock", "yes" if locks else "no", "one program at a time here")
    free = shutil.disk_usage(root).free
    yield _graded(free < _LEAST_FREE, "broken", "free space", f"{free // 1_000_000} MB", "make room")


def _private(root: Path) -> Tested:
    """Test whether the garage's own folder, which undo needs, is this user's alone."""
    try:
        with private(root):
            return Tested("ok", "undo", "its folder is yours")
    except FileNotFoundError:
        return Tested("ok", "undo", "nothing was changed here yet")
    except OSError as error:
        return Tested("better", "undo", "only for one run", printable(in_plain_words(error)))


def _locks(file: int) -> bool:
    try:
        lock(file)
    except OSError:
        return False
    return True


def _repository(root: Path) -> Iterator[Tested]:
    try:
        top = top_of(root)
        driver = git(top, "config", "--get", "merge.paddock-tui.driver")
    except GitFailed:
        yield Tested("ok", "merging by git", "not set up: see paddock-tui help merge")
        return
    except (OSError, ValueError):
        return
    yield Tested("ok", "merging by git", "by fact" if driver.strip() else "line by line")
