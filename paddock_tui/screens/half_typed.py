"""Text that is half typed when the program has to leave, and its offer at the next start."""

import attrs

from paddock_tui.records.paths import spell
from paddock_tui.screens.actions import entry_line
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import ENTRY_WORDS
from paddock_tui.screens.question_line import QuestionLine
from paddock_tui.store.half_typed import HalfTyped, take
from paddock_tui.text import printable

_ENTRY = ("entry",)
"""Stands for the entry line, where text of a row is kept by the row's path."""


def half_typed(host: Host, line: QuestionLine) -> HalfTyped | None:
    """Return what is being typed and not kept yet, where it can be offered again after a restart."""
    typing = host.board.half_typed
    if typing is None:
        return None
    row, text = typing
    if row is not None and row.ref is not None and row.path and text != row.edit:
        return HalfTyped(row.ref, row.path, text)
    asked, subject = line.question, host.place.subject
    if asked is not None and asked.words == ENTRY_WORDS and subject is not None and text.strip():
        return HalfTyped(subject, _ENTRY, text)
    return None


def offer(host: Host, line: QuestionLine) -> None:
    """Open the editor or the entry line again with what was being typed when the program had to leave."""
    half = take(host.desk.root)
    if half is None or host.desk.files.read(half.ref) is None:
        return
    if half.path == _ENTRY:
        line.unanswered[ENTRY_WORDS] = half.text
        host.go(attrs.evolve(host.place, room="setup", subject=half.ref))
        entry_line.enter(host)
        return
    host.jump(half.ref, half.path)
    row = host.board.cursor_row
    if row is not None and row.path == half.path:
        host.board.edit(half.text)
        host.board.say("half typed when the program had to leave: enter saves it, escape leaves it")
    else:
        place = f"{spell(half.path)} of {half.ref}"
        host.board.say(printable(f"half typed when the program had to leave, at {place}: {half.text}"))
