"""The arguments of the command line: every command with what it takes, examples and exit statuses."""

import argparse
import contextlib
import functools
import sys
from collections.abc import Iterator

from paddock_tui.commands.common import USAGE, complain, terminal_width
from paddock_tui.commands.usage import USAGES

TYPE_CHECKING = False  # what it stands for in `typing`, which takes longer to load than all of this
if TYPE_CHECKING:
    import datetime as dt
    from typing import Any

_GARAGE = "the folder of the garage"
_REF = "kind/id, e.g. bike/magpie, or an id or the start of one where that is unique"


class _Formatter(argparse.HelpFormatter):
    """Help as wide as the terminal; every argument that is added makes one to try itself."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=terminal_width() - 2)


class _RawFormatter(_Formatter, argparse.RawDescriptionHelpFormatter):
    """The same, with the lines of descriptions as they are."""


class _Parser(argparse.ArgumentParser):
    def __init__(self, **given: "Any") -> None:
        super().__init__(formatter_class=_Formatter, **given)

    def error(self, message: str) -> None:  # type: ignore[override]
        self.print_usage(sys.stderr)
        complain((f"{self.prog}: {message}", f"  {self.prog} --help says what it takes, with examples"))
        raise SystemExit(USAGE)


@functools.cache
def parser(command: str = "") -> argparse.ArgumentParser:
    """Make the parser of the command line, once: it keeps nothing of what it parsed.

    Of one command where that is known: those of all others would be made for nothing.
    """
    with _untranslated():
        return _parser(command)


@contextlib.contextmanager
def _untranslated() -> Iterator[None]:
    """Take argparse's own words as they are: it looks for files of translations four times for each of sixty.

    That was more than all else that the parser takes. No system has such files for it.
    """
    words = vars(argparse)
    own = words.get("_")
    words["_"] = str
    try:
        yield
    finally:
        words["_"] = own


def _parser(command: str = "") -> argparse.ArgumentParser:
    made = _Parser(
        prog="paddock-tui",
        description="Set up a sport motorcycle for each session, check it, record it and learn from it.",
        epilog="Begin with: paddock-tui new FOLDER. A starting point, not a guarantee of safety: the bike's "
        "manual, scrutineers, local rules and qualified people come first.",
    )
    made.add_argument("--version", action="store_true", help="print the versions of program and libraries")
    commands = made.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    for name, add in _ADDED.items():
        if command in ("", name):
            add(commands)
    _explain(commands)
    return made


def _add_open(commands: "argparse._SubParsersAction[_Parser]") -> None:
    open_ = commands.add_parser("open", help="open the screens; `paddock-tui GARAGE` does the same")
    open_.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    open_.add_argument("--at", metavar="DATETIME", type=_moment, help="pretend it is this time")


def _add_undo(commands: "argparse._SubParsersAction[_Parser]") -> None:
    undo = commands.add_parser("undo", help="take the last step back")
    undo.add_argument("garage", metavar="GARAGE", help=_GARAGE)


def _add_redo(commands: "argparse._SubParsersAction[_Parser]") -> None:
    redo = commands.add_parser("redo", help="do again what was taken back")
    redo.add_argument("garage", metavar="GARAGE", help=_GARAGE)


def _add_new(commands: "argparse._SubParsersAction[_Parser]") -> None:
    new = commands.add_parser("new", help="make an empty garage with templates")
    new.add_argument("folder", metavar="FOLDER", help="a folder that is new or empty: the garage will be it")


def _add_settings(commands: "argparse._SubParsersAction[_Parser]") -> None:
    settings = commands.add_parser("settings", help="print your settings: keys, theme, garage, steps")
    settings.add_argument("--edit", action="store_true", help="open the file in $VISUAL or $EDITOR")


def _add_help(commands: "argparse._SubParsersAction[_Parser]") -> None:
    help_ = commands.add_parser("help", help="print a help topic, or what a word means")
    help_.add_argument("topic", metavar="TOPIC", nargs="*", help="the topics are listed when left out")


def _add_completion(commands: "argparse._SubParsersAction[_Parser]") -> None:
    shell = commands.add_parser("completion", help="print the completion script of a shell")
    shell.add_argument("shell", choices=("bash", "zsh", "fish"), help="the shell to print it for")


def _add_doctor(commands: "argparse._SubParsersAction[_Parser]") -> None:
    doctor = commands.add_parser("doctor", help="test terminal, disk, clock, git and permissions")
    doctor.add_argument("garage", metavar="GARAGE", nargs="?", help="tests its disk and files too")


_PLAIN: "Any" = {"action": "store_const", "const": "plain", "help": "as sentences, for a screen reader"}


def _explain(commands: "argparse._SubParsersAction[_Parser]") -> None:
    """Give every command its description, examples and exit statuses, and let it be quiet."""
    for name, one in commands.choices.items():
        usage = USAGES[name]
        one.description = usage.about
        one.epilog = usage.epilog()
        one.formatter_class = _RawFormatter
        if name not in ("open", "git", "completion"):
            one.add_argument("-q", "--quiet", action="store_true", help="print nothing but errors")


def _add_show(commands: "argparse._SubParsersAction[_Parser]") -> None:
    show = commands.add_parser("show", help="print what is in a garage, or one record")
    show.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    show.add_argument("record", metavar="REF", nargs="?", help="kind/id, or an id where that is unique")
    show.add_argument("--paths", action="store_true", help="with the path under which `set` takes each value")
    show.add_argument(
        "--format", choices=("text", "json", "html"), default="text", help="text when left out; html of card"
    )
    show.add_argument("--plain", dest="format", **_PLAIN)
    show.add_argument("--long", action="store_true", help="of brief: the long form, at most 60 lines")
    show.add_argument(
        "--from",
        dest="came",
        metavar="REF",
        help="of brief: the session or profile that its rider comes from, of any bike; of compare: the other",
    )
    show.add_argument(
        "--with",
        dest="personal",
        action="append",
        default=[],
        choices=("incidents",),
        help="of season: count the falls too",
    )


_YES = "take what the screen would ask about; without it that is refused (3)"


def _add_set(commands: "argparse._SubParsersAction[_Parser]") -> None:
    set_ = commands.add_parser("set", help="set values of one record; PATH= clears one")
    set_.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    set_.add_argument("record", metavar="REF", help=_REF)
    set_.add_argument(
        "values", metavar="PATH=VALUE", nargs="*", help="one value, e.g. air=17; air= takes it out again"
    )
    set_.add_argument(
        "--from", dest="file", metavar="FILE", help="a whole set-up as JSON; - is standard input"
    )
    set_.add_argument("--preview", action="store_true", help="with --from: only say what it would set")
    set_.add_argument("--yes", action="store_true", help=_YES)


def _add_enter(commands: "argparse._SubParsersAction[_Parser]") -> None:
    enter = commands.add_parser("enter", help="set values of a session in one typed line, or none of them")
    enter.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    enter.add_argument(
        "line", metavar="LINE", nargs="?", help='short names and values, e.g. "t4 fr12 hot 2.38 2.05"'
    )
    enter.add_argument("--list", action="store_true", help="list the short names, on this bike too")
    enter.add_argument("--session", metavar="REF", help="the current session when left out; or a profile")
    enter.add_argument("--at", metavar="DATETIME", type=_moment, help="pretend it is this time")
    enter.add_argument("--preview", action="store_true", help="only say what it would set")
    enter.add_argument("--yes", action="store_true", help=_YES)


def _add_check(commands: "argparse._SubParsersAction[_Parser]") -> None:
    check = commands.add_parser(
        "check",
        help="review a session: status 0 NO FINDINGS, 1 CARE or NOT YET, 2 HOLD, 3 not read, 64 wrong usage",
    )
    check.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    check.add_argument("--session", metavar="ID", help="which session; the current one when left out")
    check.add_argument("--at", metavar="DATETIME", type=_moment, help="pretend it is this time")
    check.add_argument("--plain", dest="format", **_PLAIN)
    check.add_argument("--all", action="store_true", help="read and review everything")
    check.add_argument("--format", choices=("text", "json"), default="text", help="text when left out")


def _add_accept(commands: "argparse._SubParsersAction[_Parser]") -> None:
    accept = commands.add_parser("accept", help="ride with a serious finding, and say why")
    accept.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    accept.add_argument("rule", metavar="RULE", help='the first word behind "To accept it" in `check`')
    accept.add_argument("subject", metavar="SUBJECT", help="the second word there: what the finding is about")
    what = accept.add_mutually_exclusive_group(required=True)
    what.add_argument("--reason", metavar="TEXT", help="why you ride with it")
    what.add_argument("--withdraw", action="store_true", help="take the acceptance back")
    accept.add_argument("--session", metavar="ID", help="which session; the current one when left out")
    accept.add_argument("--at", metavar="DATETIME", type=_moment, help="pretend it is this time")


def _add_slip(commands: "argparse._SubParsersAction[_Parser]") -> None:
    slip = commands.add_parser("slip", help="print the debrief sheet, one page")
    slip.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    slip.add_argument("--session", metavar="ID", help="which session; the current one when left out")
    slip.add_argument("--at", metavar="DATETIME", type=_moment, help="pretend it is this time")


def _add_schema(commands: "argparse._SubParsersAction[_Parser]") -> None:
    schema = commands.add_parser("schema", help="print the form of the records as JSON Schema")
    schema.add_argument(
        "kind", metavar="KIND", nargs="?", help="bike, session, day ...; every kind when left out"
    )


def _add_export(commands: "argparse._SubParsersAction[_Parser]") -> None:
    export = commands.add_parser("export", help="write the garage as tables, one fact a cell")
    export.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    export.add_argument("--to", metavar="FOLDER", required=True, help="a folder that is new or empty")
    export.add_argument("--format", choices=("csv", "jsonl"), default="csv", help="csv when left out")
    export.add_argument("--since", metavar="DATE", type=_day, help="only sessions of this day and later")
    export.add_argument("--bike", metavar="ID", help="only sessions of this bike")
    export.add_argument("--rider", metavar="ID", help="only sessions of this rider")
    export.add_argument(
        "--with",
        dest="personal",
        action="append",
        default=[],
        choices=("health", "incidents", "acceptances", "words"),
        help="write these too; left out unless asked for",
    )


def _add_git(commands: "argparse._SubParsersAction[_Parser]") -> None:
    git = commands.add_parser("git", help="one garage on many laptops: records are merged by fact")
    what = git.add_subparsers(dest="what", metavar="WHAT", required=True, parser_class=_Parser)
    setup = _of_git(what, "setup", "have git merge this garage's records by fact; shown first")
    setup.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    setup.add_argument("--undo", action="store_true", help="take it back")
    setup.add_argument("--yes", action="store_true", help="without asking")
    split = _of_git(what, "split", "two new sessions of one name: theirs gets the next number")
    split.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    take = _of_git(what, "take", "decide a fact that two laptops changed differently")
    take.add_argument("garage", metavar="GARAGE", help=_GARAGE)
    take.add_argument("record", metavar="REF", help=_REF)
    take.add_argument("path", metavar="PATH", help="as the review names it, e.g. setup.controls.traction")
    take.add_argument(
        "side", choices=("ours", "theirs", "base"), help="whose value stands; base: as before both"
    )
    merge = _of_git(what, "merge", "the merge driver, called by git")
    for name in ("base", "ours", "theirs"):
        merge.add_argument(name, metavar=name.upper(), help=f"the file of {name}, as git gives it")
    merge.add_argument("--path", help="the record's name in the repository")


def _of_git(what: "argparse._SubParsersAction[_Parser]", name: str, does: str) -> "_Parser":
    return what.add_parser(name, help=does, description=f"{does[:1].upper()}{does[1:]}.")


def _day(text: str) -> "dt.date":
    import datetime as dt

    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f'"{text}" is no date, e.g. 2026-06-20') from None


def _moment(text: str) -> "dt.datetime":
    import datetime as dt

    try:
        found = dt.datetime.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f'"{text}" is no date and time, e.g. 2026-06-20T10:30') from None
    return found.replace(tzinfo=None)


_ADDED = {
    "open": _add_open,
    "show": _add_show,
    "set": _add_set,
    "enter": _add_enter,
    "check": _add_check,
    "accept": _add_accept,
    "slip": _add_slip,
    "undo": _add_undo,
    "redo": _add_redo,
    "schema": _add_schema,
    "export": _add_export,
    "git": _add_git,
    "new": _add_new,
    "settings": _add_settings,
    "help": _add_help,
    "completion": _add_completion,
    "doctor": _add_doctor,
}
"""What makes the parser of each command, in the order that help lists them in."""
