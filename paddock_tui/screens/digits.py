"""Digits on a row: set at once, open for a second one, or the beginning of what has a fixed length."""

from collections.abc import Callable
from typing import Any

from paddock_tui.entry.typing_kinds import COUNTED, is_whole, second_possible, typing_kind
from paddock_tui.pages.rows import Row
from paddock_tui.records.shapes import Shape
from paddock_tui.screens.host import Host

Keep = Callable[[Row, str], object]
"""Keeps what was typed on a row."""


def begun(host: Host, row: Row, shape: Shape[Any] | None, digit: str, keep: Keep) -> None:
    """Take a digit on a row that is not open: the whole answer, or the beginning of one."""
    kind = typing_kind(shape) if shape is not None else ""
    second = shape is not None and second_possible(shape, digit)
    if kind == "yes or no":
        host.board.say("yes or no: y, n or space")
    elif kind not in COUNTED or second:
        host.board.edit(digit, second=second)
    else:
        keep(row, digit)


def followed(host: Host, row: Row, text: str, keep: Keep) -> None:
    """Keep what is being typed on a row once it is whole: its second digit, its third or its fourth."""
    if (host.board.has_second and len(text) == 2) or is_whole(row.typing, text):
        keep(row, text)
