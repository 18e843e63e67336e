"""A question in the last line."""

from collections.abc import Callable

import attrs


@attrs.frozen
class Question:
    """A question in the last line: what its answer does (giving what is wrong with it, or nothing).

    `said` stands above it; `left` is done when it is left unanswered.
    """

    words: str
    answered: Callable[[str], str]
    typed: Callable[[str], None] | None = None
    completed: Callable[[str], str] | None = None
    earlier: tuple[str, ...] = ()
    declined: str = ""
    said: tuple[str, ...] = ()
    left: Callable[[], None] | None = None
