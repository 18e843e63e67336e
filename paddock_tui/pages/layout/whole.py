"""A whole page in a rectangle of cells: header, rows, findings, last line."""

from paddock_tui.pages.layout.body import shown
from paddock_tui.pages.layout.columns import Columns, columns
from paddock_tui.pages.layout.findings import block_height, caution_lines, findings_block, padded
from paddock_tui.pages.layout.footer import is_cut, last_line, preview, prompt_line
from paddock_tui.pages.layout.header import answer_line, header
from paddock_tui.pages.layout.panel import beside, panel_lines, panel_width, rows_width
from paddock_tui.pages.layout.pen import Line, Pen, rule, sections_with_units, with_units
from paddock_tui.pages.layout.view import Laid, Prompt, View
from paddock_tui.pages.rows import Page

_ANSWERS = 12
"""From this height on the answer of a page has a line of its own."""

TYPING = ("enter saves", "escape leaves")
"""Which keys act while a row is being typed in: letters are text then."""


def layout(page: Page, view: View) -> Laid:
    """Draw the page: header, the rows around the cursor, the findings, the last line.

    Gives exactly `view.height` lines of at most `view.width` cells, whatever the page holds. The
    heights of the parts depend on the height of the view alone.
    """
    height = max(view.height, 0)
    if view.width < 1:
        return Laid(((),) * height, (None,) * height)
    page = with_units(page)
    pen = Pen(view.width, view.plain, page.held)
    places = columns(page, pen)
    head = (2 if page.answer and height >= _ANSWERS else 1) if height > 2 else 0
    foot = 1 if height > 1 else 0
    block = block_height(height) if page.judged else 0
    caution = caution_lines(page, places, height)
    under = _preview_height(view, height, block) or len(caution)
    rows = height - head - foot - under
    beside_width = panel_width(view.width) if view.panel is not None else 0
    rows_pen = Pen(rows_width(view.width), view.plain, page.held) if beside_width else pen
    part = shown(page, view, columns(page, rows_pen) if beside_width else places, rows)
    arrows = pen.arrows(part.above, part.below)
    lines = [header(page, pen), *([answer_line(page, pen)] if head > 1 else [])] if head else []
    drawn = padded([owned.line for owned in part.lines], rows)
    if beside_width:
        said = view.panel or ()
        panel = panel_lines(sections_with_units(said), beside_width, rows, view.plain)
        drawn = beside(drawn, panel, rows_pen.width)
    lines += drawn
    if view.prompt:
        lines += _asked(view.prompt, places, under, foot)
    else:
        lines += caution or findings_block(page, places, under, arrows)
        hints = TYPING if view.editor else view.hints
        lines += (
            [last_line(view.last, hints, "" if block else arrows, pen, page.clock, page.now)] if foot else []
        )
    owners = [None] * head + [owned.row for owned in part.lines]
    owners += [None] * (height - len(owners))
    return Laid(tuple(lines), tuple(owners), part.top, rows)


def _preview_height(view: View, height: int, block: int) -> int:
    """Return a question without a block above it takes the lines it needs, at most a third of the screen."""
    if not view.prompt or block:
        return block
    if not (view.prompt.more or view.prompt.editor.error or is_cut(view.prompt, view.width)):
        return block
    return height // 3


def _asked(prompt: Prompt, places: Columns, height: int, foot: int) -> list[Line]:
    lines: list[Line] = []
    if height:
        lines = [
            rule(places.pen, "enter answers, escape leaves"),
            *padded(preview(prompt, places), height - 1),
        ]
    return lines + ([prompt_line(prompt, places.pen)] if foot else [])
