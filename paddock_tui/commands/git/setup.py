"""`git setup`: git merges the records of a garage by fact; shown first, nothing global, undone by --undo."""

import shlex
import shutil
import sys
from pathlib import Path

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, complain, open_desk, say
from paddock_tui.records.paths import FOLDERS
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.git import GitFailed, git, top_of
from paddock_tui.store.git_consent import allow, forbid
from paddock_tui.text import printable

NAME = "paddock-tui"
_SECTION = f"merge.{NAME}"
_ATTRIBUTES = ".gitattributes"


def setup(garage: str, *, undo: bool = False, yes: bool = False) -> int:
    """Write or take back `.gitattributes` lines and the repository's own configuration, once it is agreed."""
    root = open_desk(garage).root
    try:
        top = top_of(root)
        say(_plan(top, undo))
        if not yes and not _agreed():
            complain(("nothing was changed",))
            return NOT_DONE
        _attributes(root, undo)
        _configure(root, undo)
        (forbid if undo else allow)(root)
    except GitFailed as error:
        raise CommandStopped(NOT_DONE, f"git: {printable(str(error))}", "  nothing was changed") from error
    except (OSError, ValueError) as error:
        why = in_plain_words(error) if isinstance(error, OSError) else str(error)
        raise CommandStopped(NOT_DONE, printable(why)) from error
    say(("taken back" if undo else "done: commit .gitattributes, and run this once on each laptop",))
    return OK


_LINES = tuple(
    f"/{pattern} merge={NAME}"
    for pattern in ("garage.toml", *(f"{one}/**/*.toml" for one in FOLDERS.values()))
)
"""The lines of `.gitattributes` in the garage's own folder."""


def driver() -> str:
    """Return the command that git runs to merge a record."""
    program = shutil.which(NAME)
    called = [program] if program is not None else [sys.executable, "-m", "paddock_tui"]
    return f"{shlex.join(called)} git merge %O %A %B --path %P"


def _plan(top: Path, undo: bool) -> list[str]:
    verb = "take out of" if undo else "add to"
    config = "take out of its own configuration:" if undo else "set in its own configuration, nothing global:"
    said = [printable(f"repository {top}"), f"{verb} {_ATTRIBUTES} of the garage:"]
    said += [*(f"  {one}" for one in _LINES), config]
    return [*said, *(f"  {key} = {value}" for key, value in _settings())]


def _settings() -> tuple[tuple[str, str], ...]:
    return (f"{_SECTION}.name", "records of a garage, by fact"), (f"{_SECTION}.driver", driver())


def _agreed() -> bool:
    if not sys.stdin.isatty():
        complain(("say --yes to have it done",))
        return False
    sys.stderr.write("do this? y and enter, anything else leaves it: ")
    sys.stderr.flush()
    return sys.stdin.readline().strip().casefold() in ("y", "yes")


def _attributes(root: Path, undo: bool) -> None:
    """Change only our own lines of the file; one that held nothing else goes."""
    file = root / _ATTRIBUTES
    if file.is_symlink():
        raise ValueError(f"{file} is a link: add the lines yourself")
    held = file.read_text(encoding="utf-8").splitlines() if file.exists() else []
    others = [line for line in held if line not in _LINES]
    wanted = others if undo else [*held, *(line for line in _LINES if line not in held)]
    if wanted:
        file.write_text("\n".join(wanted) + "\n", encoding="utf-8")
    else:
        file.unlink(missing_ok=True)


def _configure(root: Path, undo: bool) -> None:
    if undo:
        held = git(root, "config", "--local", "--list").splitlines()
        if any(line.startswith(f"{_SECTION}.".encode()) for line in held):
            git(root, "config", "--local", "--remove-section", _SECTION)
        return
    for key, value in _settings():
        git(root, "config", "--local", key, value)
