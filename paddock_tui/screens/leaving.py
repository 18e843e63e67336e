"""Text that is half typed when the program has to leave, and its offer at the next start."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.records.paths import spell
from paddock_tui.screens import entering
from paddock_tui.store.half_typed import HalfTyped, take
from paddock_tui.text import printable

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

_ENTRY = ("entry",)
"""Stands for the entry line, where text of a row is kept by the row's path."""


def half_typed(screen: "MainScreen") -> HalfTyped | None:
    """Return what is being typed and not kept yet, where it can be offered again after a restart."""
    typing = screen.board.half_typed
    if typing is None:
        return None
    row, text = typing
    if row is not None and row.ref is not None and row.path and text != row.edit:
        return HalfTyped(row.ref, row.path, text)
    asked, subject = screen.asking.question, screen.place.subject
    if asked is not None and asked.words == entering.WORDS and subject is not None and text.strip():
        return HalfTyped(subject, _ENTRY, text)
    return None


def offer(screen: "MainScreen") -> None:
    """Open the editor or the entry line again with what was being typed when the program had to leave."""
    half = take(screen.desk.root)
    if half is None or screen.desk.files.read(half.ref) is None:
        return
    if half.path == _ENTRY:
        screen.asking.unanswered[entering.WORDS] = half.text
        screen.go(attrs.evolve(screen.place, room="setup", subject=half.ref))
        entering.enter(screen)
        return
    screen.jump(half.ref, half.path)
    row = screen.board.cursor_row
    if row is not None and row.path == half.path:
        screen.board.edit(half.text)
        screen.board.say("half typed when the program had to leave: enter keeps it, escape leaves it")
    else:
        place = f"{spell(half.path)} of {half.ref}"
        screen.board.say(printable(f"half typed when the program had to leave, at {place}: {half.text}"))
