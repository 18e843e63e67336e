"""The entry line: typed words turned into edits of one record, and edits printed as typed words.

One line is one record and one step. It is applied whole, or not at all.
"""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
    from paddock_tui.entry.completion import complete, completed
    from paddock_tui.entry.line import (
        LONGEST,
        Choice,
        LineContext,
        LineQuestion,
        Piece,
        TypedLine,
        Unread,
        answered,
    )
    from paddock_tui.entry.line_of_edits import printed
    from paddock_tui.entry.reading import read_line
    from paddock_tui.entry.typed import FAR_BAR, far_from, read_typed
    from paddock_tui.entry.vocabulary import Vocabulary, calls_of

__all__ = [
    "FAR_BAR",
    "LONGEST",
    "Choice",
    "LineContext",
    "LineQuestion",
    "Piece",
    "TypedLine",
    "Unread",
    "Vocabulary",
    "answered",
    "calls_of",
    "complete",
    "completed",
    "far_from",
    "printed",
    "read_line",
    "read_typed",
]

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "Choice": "line",
            "FAR_BAR": "typed",
            "LONGEST": "line",
            "LineContext": "line",
            "LineQuestion": "line",
            "Piece": "line",
            "TypedLine": "line",
            "Unread": "line",
            "Vocabulary": "vocabulary",
            "answered": "line",
            "calls_of": "vocabulary",
            "complete": "completion",
            "completed": "completion",
            "far_from": "typed",
            "printed": "line_of_edits",
            "read_line": "reading",
            "read_typed": "typed",
        },
    )
