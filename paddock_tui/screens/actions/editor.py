"""The way out to an editor of the rider's own, for what no row can mend."""

import os
import shlex
from pathlib import Path as FilePath

from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Ref
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.store.errors import NotWritten
from paddock_tui.text import printable
from paddock_tui.widgets.signals import run_child


def problem(host: Host, row: Row) -> None:
    """Go to the row where a problem can be mended; where there is none, open the editor at its line."""
    target = host.desk.files.leads_out(row.file)
    if target is not None:
        _ask_to_allow(host, target)
        return
    files = host.desk.files
    ref = next((one for one in files.all() if files.name_of(one) == row.file), None)
    loaded = host.desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        host.board.say(f"{row.file} is not in the garage any more")
    elif loaded.record is None or not row.path or _unknown(host, ref, row):
        _edit(host, ref, row.line)
    else:
        host.jump(ref, row.path)


def _record(host: Host) -> None:
    """Open the record under the cursor, or the one shown, in the editor."""
    row = host.board.cursor_row
    ref = row.ref if row is not None and row.ref is not None else host.place.record or host.place.subject
    if ref is None or host.desk.files.path_of(ref) is None:
        host.board.say("there is no file here to open: g, then put the cursor on a record")
        return
    _edit(host, ref, 1)


def _ask_to_allow(host: Host, target: FilePath) -> None:
    """Ask once whether a link of the garage may lead to a place outside."""
    place = printable(str(target))

    def answered(_: str) -> str:
        try:
            host.desk.files.allow(target)
        except NotWritten as error:
            return printable(error.reason)
        host.draw()
        host.board.say(f"{place} is read and written from here on")
        return ""

    words = "outside the garage: enter reads and writes it, escape not"
    host.ask(Question(words, answered, declined="it is not read", said=(place,), confirms=True))


def _unknown(host: Host, ref: Ref, row: Row) -> bool:
    """Return whether the problem is a key that no row shows."""
    loaded = host.desk.files.read(ref)
    return loaded is not None and any(one.path == row.path for one in loaded.unknown)


def _edit(host: Host, ref: Ref, line: int) -> None:
    path = host.desk.files.path_of(ref)
    if path is None:
        return
    if not path.is_file():
        host.board.say(printable(f"{path.name} is not a plain file: no editor is opened on it"))
        return
    host.desk.settled()
    try:
        words = shlex.split(os.environ.get("VISUAL") or os.environ.get("EDITOR") or "vi") or ["vi"]
    except ValueError as error:
        host.board.say(f"EDITOR cannot be read: {error}")
        return
    at = [f"+{line}"] if line > 1 else []
    said = ""
    with host.suspended():
        try:
            # An absolute path is never taken for an option, whatever the file is called.
            status = run_child([*words, *at, str(path.absolute())])
        except OSError as error:
            said = f"{words[0]} cannot be started: {error.strerror}; set EDITOR to yours"
        else:
            said = f"{words[0]} ended with {status}" if status else ""
    host.desk.poll()
    host.draw()
    if said:
        host.board.say(said)


EDITOR = Action(
    "editor",
    "",
    "open in the editor",
    "open the record's file in $VISUAL or $EDITOR",
    do=_record,
    unjudged=True,
)
