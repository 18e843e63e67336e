"""A hold on a row of any kind: its mark at the line's start, reversed, and where there is room the word."""

import attrs
import pytest

from paddock_tui.pages.layout import View, layout, text_of
from paddock_tui.pages.rows import FOLD, Page, Row, Section
from paddock_tui.widgets.look import STYLES

HELD = {
    "finding": Row("hold", "The brake lever is long.", kind="finding", more=(("do", "Leave it."),)),
    "from before": Row("hold", "The brake lever is long.", kind="link"),
    "rider on the board": Row("13:20 in 40 min", "ines magpie", aside="HOLD 1", kind="link"),
    "item of a checklist": Row("to fix", "calipers torqued", aside="hold 12:55 IS", kind="check"),
    "folded section": Row("brakes", "lever long", "1 open of 4", kind=FOLD),
}
WORDLESS = ("folded section",)
"""What says only by mark and weight that it holds: the rows inside say the word."""


@pytest.mark.parametrize("kind", HELD)
@pytest.mark.parametrize("size", [(80, 24), (40, 20)])
@pytest.mark.parametrize("plain", [False, True])
@pytest.mark.parametrize("cursor", [0, 1])
def test_a_held_row_has_mark_reverse_and_word(
    kind: str, size: tuple[int, int], plain: bool, cursor: int
) -> None:
    row, other = HELD[kind], Row("another", "row")
    rows = (attrs.evolve(row, severity="hold"), other)
    laid = layout(Page("heading", (Section("title", rows),)), View(*size, cursor, plain=plain))
    mine = [line for line, owner in zip(laid.lines, laid.owners, strict=True) if owner == 0]

    assert text_of(mine[0])[1] == ("#" if plain else "█")
    reversed_words = [text for line in mine for text, style in line if "reverse" in STYLES.get(style, "")]
    assert reversed_words
    assert ("hold" in " ".join(map(text_of, mine)).casefold()) is (kind not in WORDLESS)

    graver = attrs.evolve(row, severity="caution", label=row.label.replace("hold", "caution"), aside="CARE 1")
    calm = layout(Page("heading", (Section("title", (graver, other)),)), View(*size, cursor, plain=plain))
    styles = {style for line in calm.lines for _, style in line}
    assert not any("reverse" in STYLES.get(style, "") for style in styles)
