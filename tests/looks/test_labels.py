"""Labels: none is longer than its column at 80 cells, so that values stand under each other."""

from collections.abc import Iterator

from paddock_tui.desk import Desk
from paddock_tui.pages.layout.columns import MARK, columns
from paddock_tui.pages.layout.pen import Pen
from paddock_tui.pages.rows import Row
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.kinds import CLASSES
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.text import width
from tests.looks import LOOKS, made_of

COLUMN = 22
"""Cells of a label at 80 columns, its gap left out."""

HELP = 47
"""Cells of what an action does, at 80 columns."""

NAMED = {
    "garage": "a record stands under the name that its owner gave it",
    "garage-lower": "a record stands under the name that its owner gave it",
    "before": "an item of a list stands under the words that its owner gave it",
    "after": "an item of a list stands under the words that its owner gave it",
    "why": "a rule stands under its id, which the file names",
    "guide": "what is missing is said in whole words: its value is where it leads",
}
"""Looks of which some rows have labels that are no words of the program, each with why."""

LONG = {
    "launch control resets to": "the control's name stands before",
    "noise certificate, bike": "whose certificate it is stands behind the paper's name",
}
"""Labels that may be longer, each with why."""


def test_no_label_of_a_row_is_longer_than_its_column(desk: Desk) -> None:
    long = {
        f"{look}: {row.label}"
        for look, row in _rows(desk)
        if width(row.label) > COLUMN and row.label not in LONG and look not in NAMED
    }

    assert long == set()


def test_no_label_of_a_field_is_longer_than_its_column() -> None:
    long = {f"{cls.__name__}: {spec.label}" for cls, spec in _fields() if width(spec.label) > COLUMN}

    assert long == set()


def test_what_is_let_through_is_there(desk: Desk) -> None:
    held = {row.label for _, row in _rows(desk) if width(row.label) > COLUMN}

    assert set(LONG) <= held


def test_the_column_is_that_of_the_widest_page(desk: Desk) -> None:
    widest = max(
        columns(made_of(desk, seen).whole, Pen(80)).value for name, seen in LOOKS.items() if name not in NAMED
    )

    assert widest - MARK - 2 == COLUMN


def _rows(desk: Desk) -> Iterator[tuple[str, Row]]:
    """List the rows of every look, also those that are folded, that have a value beside a label."""
    for name, seen in LOOKS.items():
        for row in made_of(desk, seen).whole.rows():
            if row.kind in ("field", "ask", "link", "text") and row.value:
                yield name, row


def _fields() -> Iterator[tuple[type, Spec]]:
    """List every field that a record declares, with its class."""
    left: list[type] = list(CLASSES.values())
    seen: set[type] = set()
    while left:
        cls = left.pop()
        if cls in seen:
            continue
        seen.add(cls)
        for _, spec in specs(cls).values():
            if spec.record is not None:
                left.append(spec.record)
            elif spec.nature == "one":
                yield cls, spec


def test_what_an_action_does_is_said_in_the_cells_beside_its_name() -> None:
    assert {one.id: one.help for one in ACTIONS if width(one.help) > HELP} == {}
