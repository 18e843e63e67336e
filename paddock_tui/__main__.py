"""The way in: one line of arguments to one command. No screen is loaded unless one is opened."""

from paddock_tui import put_off

put_off.begin()  # before all others: of what they import, most commands need little

import argparse
import contextlib
import gc
import os
import sys
import threading
from collections.abc import Callable, Sequence

from paddock_tui import __version__
from paddock_tui.commands.arguments import parser as parser
from paddock_tui.commands.common import USAGE, CommandStopped, complain
from paddock_tui.commands.output import Output, printing

TYPE_CHECKING = False  # what it stands for in `typing`, which takes longer to load than all of this
if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.pages.rows import Page
    from paddock_tui.records.paths import Ref

INTERRUPTED = 130
"""The status that shells give to programs ended by ctrl+c: never a verdict."""

GARBAGE_AFTER = 400_000
"""How many more objects there have to be than at the last look for garbage: one among the rows of ten
thousand sessions took as long as reading them, and most commands end before."""

_LIBRARIES = ("textual", "attrs", "cattrs", "tomlkit", "pint")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and give its exit status; where its output cannot be written, that is one line more."""
    with printing() as output:
        try:
            return _main(arguments, output)
        finally:
            lost = output.finish()
            if lost:
                complain((lost,))


def script() -> None:
    """Run one command and end the process with its status: at once, where nothing is left to wait for.

    The interpreter would take everything apart first, which the rider waits for. What is loaded stays: it
    is not looked through for garbage time and again while more is loaded.
    """
    gc.set_threshold(GARBAGE_AFTER, 20, 100)
    try:
        status = main()
    except SystemExit as stop:
        if not isinstance(stop.code, int):
            raise
        status = stop.code
    writer = sys.modules.get("paddock_tui.desk.writer")
    is_done = writer is None or not writer.is_at_work()
    if is_done and all(one.daemon or one is threading.main_thread() for one in threading.enumerate()):
        for stream in (sys.stdout, sys.stderr):
            with contextlib.suppress(OSError, ValueError):
                stream.flush()
        os._exit(status)
    sys.exit(status)


def _main(arguments: Sequence[str] | None, output: Output) -> int:
    words = list(sys.argv[1:] if arguments is None else arguments)
    if not words:
        words = _garage_here()
    if not words:
        words = _usual_garage()
    if words and not words[0].startswith("-") and words[0] not in _COMMANDS:
        words.insert(0, "open")
    given = parser(words[0] if words and words[0] in _COMMANDS else "").parse_args(words)
    if given.version:
        sys.stdout.write("\n".join(_versions()) + "\n")
        return 0
    if given.command is None:
        parser().print_help(sys.stderr)
        return USAGE
    if getattr(given, "quiet", False):
        output.mute()
    try:
        return int(_run(given))
    except CommandStopped as stop:
        complain(stop.lines)
        return stop.status
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        from paddock_tui.store.crash import CRASHED, report, sentence

        complain((sentence(report(error)),))
        return CRASHED


def _garage_here() -> list[str]:
    """Return the folder that one is in as an argument, where it is a garage."""
    from pathlib import Path

    return [str(Path.cwd())] if Path("garage.toml").is_file() else []


def _usual_garage() -> list[str]:
    """Return the garage of the settings file as an argument, where it names one."""
    from pathlib import Path

    from paddock_tui.store.settings import load_settings

    named = load_settings()[0].garage
    return [str(Path(named).expanduser())] if named else []


def _run(given: argparse.Namespace) -> int:
    """Import the one command that is asked for, and run it."""
    from paddock_tui import quick_classes

    quick_classes.begin()
    return _COMMANDS[given.command](given)


def _open(given: argparse.Namespace) -> int:
    from paddock_tui.commands.open import open_screens

    return open_screens(given.garage, given.at)


def _show(given: argparse.Namespace) -> int:
    from paddock_tui.commands.show import show

    return show(
        given.garage,
        given.record,
        given.format,
        paths=given.paths,
        long=given.long,
        came=given.came,
        personal=given.personal,
        screen=_screen_page,
    )


def _screen_page(desk: "Desk", room: str, subject: "Ref | None", other: str) -> "Page":
    """Make a page of the screens, which only those commands load that print one."""
    from paddock_tui.screens.printed import printed_page

    return printed_page(desk, room, subject, other)


def _set(given: argparse.Namespace) -> int:
    from paddock_tui.commands.set import set_from, set_values

    if given.file is not None:
        return set_from(given.garage, given.record, given.file, preview=given.preview, yes=given.yes)
    return set_values(given.garage, given.record, given.values, yes=given.yes)


def _enter(given: argparse.Namespace) -> int:
    from paddock_tui.commands.enter import enter

    line = None if given.list else given.line or ""
    return enter(given.garage, line, given.session, given.at, preview=given.preview, yes=given.yes)


def _check(given: argparse.Namespace) -> int:
    from paddock_tui.commands.check import check, check_all

    if given.all:
        return check_all(given.garage, given.at, given.format)
    return check(given.garage, given.session, given.at, given.format)


def _accept(given: argparse.Namespace) -> int:
    from paddock_tui.commands.accept import accept

    reason = None if given.withdraw else given.reason
    return accept(given.garage, given.rule, given.subject, reason, given.session, given.at)


def _slip(given: argparse.Namespace) -> int:
    from paddock_tui.commands.slip import slip

    return slip(given.garage, given.session, given.at)


def _undo(given: argparse.Namespace) -> int:
    from paddock_tui.commands.undo import undo

    return undo(given.garage)


def _redo(given: argparse.Namespace) -> int:
    from paddock_tui.commands.undo import redo

    return redo(given.garage)


def _new(given: argparse.Namespace) -> int:
    from paddock_tui.commands.new import new

    return new(given.folder)


def _help(given: argparse.Namespace) -> int:
    from paddock_tui.commands.help import help_on
    from paddock_tui.screens.own_settings import OwnSettings
    from paddock_tui.screens.registry import ACTIONS
    from paddock_tui.store.settings import load_settings

    return help_on(" ".join(given.topic), OwnSettings(load_settings(ACTIONS)[0]).actions)


def _settings(given: argparse.Namespace) -> int:
    from paddock_tui.commands.settings import settings
    from paddock_tui.screens.registry import ACTIONS

    return settings(ACTIONS, edit=given.edit)


def _completion(given: argparse.Namespace) -> int:
    from paddock_tui.commands.completion import completion
    from paddock_tui.help import names

    return completion(given.shell, parser(), names())


def _doctor(given: argparse.Namespace) -> int:
    from paddock_tui.commands.doctor import doctor

    return doctor(given.garage)


def _schema(given: argparse.Namespace) -> int:
    from paddock_tui.commands.schema import schema

    return schema(given.kind)


def _export(given: argparse.Namespace) -> int:
    from paddock_tui.commands.export import export

    return export(
        given.garage,
        given.to,
        given.format,
        since=given.since,
        bike=given.bike,
        rider=given.rider,
        personal=given.personal,
    )


def _git(given: argparse.Namespace) -> int:
    if given.what == "merge":
        from paddock_tui.commands.git.merge import merge

        return merge(given.base, given.ours, given.theirs, given.path)
    if given.what == "split":
        from paddock_tui.commands.git.split import split

        return split(given.garage)
    if given.what == "take":
        from paddock_tui.commands.git.take import take

        return take(given.garage, given.record, given.path, given.side)
    from paddock_tui.commands.git.setup import setup

    return setup(given.garage, undo=given.undo, yes=given.yes)


_COMMANDS: dict[str, Callable[[argparse.Namespace], int]] = {
    "open": _open,
    "show": _show,
    "set": _set,
    "enter": _enter,
    "check": _check,
    "accept": _accept,
    "slip": _slip,
    "undo": _undo,
    "redo": _redo,
    "new": _new,
    "help": _help,
    "settings": _settings,
    "completion": _completion,
    "doctor": _doctor,
    "schema": _schema,
    "export": _export,
    "git": _git,
}
"""What each command runs. A first argument that is none of them is a garage, and opens the screens."""


def _versions() -> list[str]:
    from importlib.metadata import PackageNotFoundError, version

    lines = [f"paddock-tui {__version__}", f"python {sys.version.split()[0]}"]
    for name in _LIBRARIES:
        try:
            lines.append(f"{name} {version(name)}")
        except PackageNotFoundError:
            lines.append(f"{name} not installed")
    return lines


if __name__ == "__main__":
    script()
