"""A question in the last line."""

from collections.abc import Callable

import attrs

ENTRY_WORDS = "entry"
"""What the entry line asks with."""


@attrs.frozen
class Question:
    """A question in the last line: what its answer does (giving what is wrong with it, or nothing).

    `said` stands above it; `left` is done when it is left unanswered. `offered`: what was typed and left is
    offered again. `confirms`: enter alone says yes; whoever typed something meant something else.
    """

    words: str
    answered: Callable[[str], str]
    typed: Callable[[str], None] | None = None
    completed: Callable[[str], str] | None = None
    earlier: tuple[str, ...] = ()
    declined: str = ""
    said: tuple[str, ...] = ()
    left: Callable[[], None] | None = None
    offered: bool = True
    confirms: bool = False
