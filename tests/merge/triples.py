"""Generated triples: a base, and two lists of edits of it."""

import tomllib
from collections.abc import Sequence
from typing import Any

import attrs
from hypothesis import strategies as st

from paddock_tui.records.edits import Edit
from paddock_tui.store.patch import Patched, patch
from tests.store.documents import documents, edits


@attrs.frozen
class Triple:
    """Three texts of one record."""

    base: str
    ours: str
    theirs: str


def edited(text: str, steps: Sequence[Edit]) -> str:
    made = patch(text, steps)
    return made.text if isinstance(made, Patched) else text


def data(text: str) -> dict[str, Any]:
    return tomllib.loads(text.removeprefix("\ufeff"))


@st.composite
def triples(draw: st.DrawFn) -> Triple:
    """Draw a document, and edit it up to three times on each side."""
    base = draw(documents()).text
    sides = []
    for _ in range(2):
        text = base
        for _ in range(draw(st.integers(0, 3))):
            text = edited(text, [draw(edits(data(text)))])
        sides.append(text)
    return Triple(base, *sides)
