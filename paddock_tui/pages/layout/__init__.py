"""Draw a page in a rectangle of cells: pure, the same for the board and for plain text."""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
    from paddock_tui.pages.layout.panel import WIDE
    from paddock_tui.pages.layout.pen import Line, Span, text_of
    from paddock_tui.pages.layout.view import Editor, Laid, Prompt, View
    from paddock_tui.pages.layout.whole import layout

__all__ = ["WIDE", "Editor", "Laid", "Line", "Prompt", "Span", "View", "layout", "text_of"]

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "WIDE": "panel",
            "Editor": "view",
            "Laid": "view",
            "Line": "pen",
            "Prompt": "view",
            "Span": "pen",
            "View": "view",
            "layout": "whole",
            "text_of": "pen",
        },
    )
