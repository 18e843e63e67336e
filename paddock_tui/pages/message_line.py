"""What a finding says, on one line: what it quotes from the records is cut, not its own words."""

from typing import TYPE_CHECKING

from paddock_tui.text import clip, printable, width

if TYPE_CHECKING:
    from paddock_tui.rules import Finding, Pending

MESSAGE_CELLS = 78
"""What a message takes at most: one line of the narrowest full screen."""

_LEAST = 10
"""Cells that a text from the records keeps where there is any way."""


def message_line(finding: "Finding | Pending", cells: int = MESSAGE_CELLS) -> str:
    """Return the message in at most `cells` cells, the longest of its quotations cut first."""
    text = printable(finding.message)
    quoted = sorted({printable(one) for one in finding.quoted}, key=width, reverse=True)
    for one in quoted:
        over = width(text) - cells
        if over <= 0:
            break
        text = text.replace(one, clip(one, max(width(one) - over, _LEAST)), 1)
    return clip(text, cells)
