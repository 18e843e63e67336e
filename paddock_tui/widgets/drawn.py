"""A widget that draws a page: only the cells that changed are sent."""

from collections.abc import Callable

import attrs
from rich.style import Style
from textual import events
from textual.dom import DOMNode
from textual.geometry import Region
from textual.strip import Strip
from textual.timer import Timer
from textual.widget import Widget

from paddock_tui.pages.layout import WIDE, Laid, Line, View, layout
from paddock_tui.pages.layout.texts import opens
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.widgets.paint import strip_of

RESTS_S = 0.35
"""So long a cursor stays on a row before that opens: keys that follow each other leave it there for less."""


class DrawnPage(Widget):
    """Draws a page as its view has it."""

    def __init__(self, *, plain: bool, name: str | None = None) -> None:
        """Draw nothing yet; `plain` draws in ASCII alone."""
        self._styles_made: dict[str, Style] = {}
        super().__init__(name=name)
        self._page = Page("", ())
        self._view = View(0, 0, None, plain=plain)
        self._laid = Laid((), ())
        self._is_stale = False
        self._resting: Timer | None = None
        self.beside: Callable[[Row | None], tuple[Section, ...] | None] = lambda _: None
        """Says what stands at the right of a wide screen for the row under the cursor; None: no panel."""

    @property
    def laid(self) -> Laid:
        """The page as it is laid out, with all that was changed up to now."""
        self._lay()
        return self._laid

    @property
    def cursor_at(self) -> int | None:
        """The number of the row under the cursor; None on a page without one."""
        return self._view.cursor

    @property
    def cursor_row(self) -> Row | None:
        """The row under the cursor; None on a page without one."""
        at = self._view.cursor
        return None if at is None else self._page.rows()[at]

    def change(self, **changes: object) -> None:
        """Change the view, and draw what differs."""
        self._view = attrs.evolve(self._view, **changes)  # type: ignore[arg-type]
        self.relay()

    def leave_open(self, at: int) -> None:
        """Have the row that stands open, or row `at`, stay so until the cursor has rested on another one.

        What opens under the cursor is some lines of text, and what it pushes away comes back as text: a key
        that only goes past sends none of it.
        """
        opened, rows = at if self._view.opened is None else self._view.opened, self._page.rows()
        cursor = self._view.cursor
        if cursor is None or not (opens(rows[opened]) or opens(rows[cursor])):
            return
        self._view = attrs.evolve(self._view, opened=opened if opened != cursor else None)
        if self._resting is not None:
            self._resting.stop()
        self._resting = self.set_timer(RESTS_S, self.rest)

    def rest(self) -> None:
        """Open the row under the cursor, and fold the one that stood open."""
        if self._view.opened is not None:
            self.change(opened=None)

    def relay(self) -> None:
        """Lay the page out anew once what goes on has ended: a key changes page, cursor and last line."""
        if not self._is_stale:
            self._is_stale = True
            self.call_next(self._lay)

    def _lay(self) -> None:
        """Lay the page out and mark the lines that changed; of their cells those are sent that did."""
        if not self._is_stale or not self._view.width:
            return
        self._is_stale = False
        panel = self.beside(self.cursor_row) if self._view.width >= WIDE else None
        self._view = attrs.evolve(self._view, panel=panel)
        before, self._laid = self._laid.lines, layout(self._page, self._view)
        self._view = attrs.evolve(self._view, top=self._laid.top)
        lines = enumerate(self._laid.lines)
        changed = [y for y, line in lines if y >= len(before) or before[y] != line]
        if changed:
            self.refresh(*(Region(0, y, self._view.width, 1) for y in changed))

    def on_resize(self, event: events.Resize) -> None:
        """Lay the page out for the new size."""
        if (event.size.width, event.size.height) == (self._view.width, self._view.height):
            return
        self._laid = Laid((), ())
        self.change(width=event.size.width, height=event.size.height)
        self._lay()
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """Paint one line."""
        line: Line = self.laid.lines[y] if y < len(self.laid.lines) else ()
        return strip_of(line, self.size.width, self._style)

    def notify_style_update(self) -> None:
        """Have the named styles made anew: those of the theme, or of the widget itself, are others now."""
        self._styles_made.clear()
        super().notify_style_update()

    def _style(self, name: str) -> Style:
        """Return a named style, made when it is first painted: a page uses a third of them."""
        made = self._styles_made.get(name)
        if made is None:
            made = self._styles_made[name] = self._named(name).rich_style
        return made

    def _named(self, name: str) -> DOMNode:
        if not name:
            return self
        node = DOMNode(classes=f"board--{name}")
        node._attach(self)
        self.app.stylesheet.apply(node, animate=False)
        return node
