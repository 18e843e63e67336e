"""Whether each character takes one cell, told as the painter counts."""

import pytest
from rich.cells import cell_len

from paddock_tui.widgets.paint import one_cell_each


@pytest.mark.parametrize("text", ["", "plain", "── 43/16 ──", "±0.5 °C", "zwei Ö", "ab\tc"])
def test_texts_of_one_cell_each_asked_twice(text: str) -> None:
    assert one_cell_each(text)
    assert one_cell_each(text)


@pytest.mark.parametrize("text", ["漢", "──漢──", "e\u0301", "a\u200bb", "🏁"])
def test_texts_with_another_width_asked_twice_and_among_known_ones(text: str) -> None:
    assert any(cell_len(char) != 1 for char in text)

    assert not one_cell_each(text)
    assert one_cell_each("──")
    assert not one_cell_each(f"{text}──")
