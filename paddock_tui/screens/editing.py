"""The way out to an editor of the rider's own, for what no row can mend."""

import os
import shlex
from typing import TYPE_CHECKING

from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Ref
from paddock_tui.widgets.signals import run_child

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


def problem(screen: "MainScreen", row: Row) -> None:
    """Go to the row where a problem can be mended; where there is none, open the editor at its line."""
    ref = screen.desk.files.ref_named(row.file)
    loaded = screen.desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        screen.board.say(f"{row.file} is not in the garage any more")
    elif loaded.record is None or not row.path or _unknown(screen, ref, row):
        _edit(screen, ref, row.line)
    else:
        screen.jump(ref, row.path)


def record(screen: "MainScreen") -> None:
    """Open the record under the cursor, or the one shown, in the editor."""
    row = screen.board.cursor_row
    ref = row.ref if row is not None and row.ref is not None else screen.place.record or screen.place.subject
    if ref is None or screen.desk.files.path_of(ref) is None:
        screen.board.say("there is no file here to open")
        return
    _edit(screen, ref, 1)


def _unknown(screen: "MainScreen", ref: Ref, row: Row) -> bool:
    """Return whether the problem is a key that no row shows."""
    loaded = screen.desk.files.read(ref)
    return loaded is not None and any(one.path == row.path for one in loaded.unknown)


def _edit(screen: "MainScreen", ref: Ref, line: int) -> None:
    path = screen.desk.files.path_of(ref)
    if path is None:
        return
    screen.desk.settled()
    words = shlex.split(os.environ.get("VISUAL") or os.environ.get("EDITOR") or "vi")
    at = [f"+{line}"] if line > 1 else []
    said = ""
    with screen.app.suspend():
        try:
            status = run_child([*words, *at, str(path)])
        except OSError as error:
            said = f"{words[0]} cannot be started: {error.strerror}; set EDITOR to yours"
        else:
            said = f"{words[0]} ended with {status}" if status else ""
    screen.desk.poll()
    screen.draw()
    if said:
        screen.board.say(said)
