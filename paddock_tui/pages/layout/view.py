"""What the drawing of a page depends on beside the page, and what comes out of it."""

import attrs

from paddock_tui.pages.layout.pen import Line, text_of
from paddock_tui.pages.rows import Section


@attrs.frozen
class Editor:
    """Text being typed: `caret` counts characters; `error` is what was wrong with it when kept.

    `offered`: the text stood there before, and the first character typed replaces it. `second`: a digit was
    typed on a row, and a second one may follow.
    """

    text: str = ""
    caret: int = 0
    error: str = ""
    offered: bool = False
    second: bool = False


@attrs.frozen
class Prompt:
    """A question in the last line with its own text; `more` are lines said above it (a preview)."""

    label: str
    editor: Editor
    more: tuple[str, ...] = ()


@attrs.frozen
class View:
    """Size in cells, the row under the cursor and the first line shown, editor, and last line.

    `cursor` counts the rows of the page; None stands on no row. `opened` is the row that stands open in place
    of the cursor's until that has rested; None: the cursor's own. `hints` say which keys act; the
    first are dropped first where there is no room. `plain` draws in ASCII alone. `panel` is said at the right
    of a wide screen; empty keeps its room, None has none.
    """

    width: int
    height: int
    cursor: int | None = 0
    top: int = 0
    editor: Editor | None = None
    prompt: Prompt | None = None
    last: str = ""
    hints: tuple[str, ...] = ()
    plain: bool = False
    panel: tuple[Section, ...] | None = None
    opened: int | None = None


@attrs.frozen
class Laid:
    """Exactly as many lines as the view is high, which row each belongs to, and the new top.

    `body` is how many lines the rows have; `caret` is line and column of the caret, for a terminal
    cursor.
    """

    lines: tuple[Line, ...]
    owners: tuple[int | None, ...]
    top: int = 0
    body: int = 0

    def text(self) -> str:
        """Return the bare text, one line a row."""
        return "\n".join(text_of(line) for line in self.lines)
