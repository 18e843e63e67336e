"""Rows, sections and pages: what is shown, without a word about how it is drawn."""

import functools
from typing import TYPE_CHECKING, Literal

import attrs

from paddock_tui.entry.row_typing import TAKES_LETTERS, TypingKind
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.verdict_words import RIDDEN_TAIL

if TYPE_CHECKING:
    from paddock_tui.pages.pictures import Mark, Picture
    from paddock_tui.rules.core import SetValue

RowKind = Literal[
    "field", "text", "finding", "link", "heading", "add", "check", "ask", "cells", "picture", "fold"
]
FOLD: Literal["fold"] = "fold"
"""The heading of a section that can be folded: its title, a summary, and what is open in it."""

MISSING, TO_DO = "missing ", "todo "
"""Begin the keys of rows of an essential that is not known, and of what is to do: neither is ever folded."""

NOTHING = "-"
"""What stands where nothing is written and no rule waits for it: quiet, so that what is missed is seen."""


@attrs.frozen
class Bar:
    """A scale with the mark of now. `at` is 0.0 to 1.0 (None: no mark: off, or not known).

    `ends` are the words at its two ends, least help and most help for a help bar. `two_ended` says
    that neither end is better. `steps` is how many levels it has. `marks` are what to compare with, each
    with the first letter of its word, `allowed` what the riding mode leaves open, and `fixed` says that it
    leaves nothing open.
    """

    at: float | None
    ends: tuple[str, str] = ("least help", "most help")
    two_ended: bool = False
    steps: int = 0
    marks: "tuple[Mark, ...]" = ()
    allowed: tuple[float, float] | None = None
    fixed: bool = False

    @property
    def is_drawn(self) -> bool:
        """Whether there is anything to see on it."""
        return self.at is not None or bool(self.marks)


@attrs.frozen
class Row:
    """One line of a page. All text is printable already.

    `value` is what the record holds, `range` follows it quietly, `aside` is said where there is room.
    `shut` says why the row takes no key; `trouble` is what is wrong with a value that cannot be read,
    with the mend, and then `value` is the raw text. `severity` colours a finding. `edit` is the text
    that an editor starts with. `opens` is a record that enter opens. `adds` is the table that `n` adds
    to here, `drops` the entry that `x` drops. `file` and `line` say where a problem stands. `offer` are
    the values that `v` takes over here, `working` the lines of the calculation behind them. `cells` are
    its texts under the columns of its section. `typing` is how its value is typed, `choices` are the words
    that a number picks there, `unit` what may be typed behind its digits. `picture` is drawn in place of
    words, on a narrow screen on a page of its own where it is `apart`. `more` is what a finding says under
    the cursor, each with its label; elsewhere it takes one line, in its `short` words where that
    is too narrow. `whole`: the value is never cut, it wraps.
    """

    label: str
    value: str = ""
    range: str = ""
    aside: str = ""
    bar: Bar | None = None
    kind: RowKind = "field"
    ref: Ref | None = None
    path: Path = ()
    shut: str = ""
    trouble: str = ""
    severity: str = ""
    edit: str = ""
    known: bool = True
    opens: Ref | None = None
    adds: Path = ()
    drops: Path = ()
    file: str = ""
    line: int = 0
    key: str = ""
    offer: "tuple[SetValue, ...]" = ()
    working: tuple[str, ...] = ()
    cells: tuple[str, ...] = ()
    typing: TypingKind = ""
    choices: tuple[str, ...] = ()
    unit: str = ""
    picture: "Picture | None" = None
    apart: bool = False
    more: tuple[tuple[str, str], ...] = ()
    whole: bool = False
    short: str = ""

    @property
    def takes_letters(self) -> bool:
        """Whether a letter types or answers here, so that commands are alt and a letter."""
        return self.typing in TAKES_LETTERS and self.kind in ("field", "ask") and not self.shut

    @property
    def identity(self) -> tuple[str, ...]:
        """What the cursor stays on while the page around it changes."""
        return (str(self.ref), *self.path, self.key or ("" if self.path else self.label))


@attrs.frozen
class Section:
    """Rows under one title; `note` stands beside the title.

    `columns` are the headings of rows with cells. `chosen` is the column looked at, and `last_stands` says
    that the last one stays where the others move sideways. `folded`: it shows as its heading until it is
    opened, with `summary` (else its first values) how many of its rows are open, and those rows `hidden`.
    `quiet` are the places of rows that stand behind one line where the page is too long with them.
    `at_hand`: it is what one comes to the page for now, so that it stands first. `heavy`: its rule is, too.
    `first`: it stands before all others, whatever waits in them.
    """

    title: str
    rows: tuple[Row, ...]
    note: str = ""
    columns: tuple[str, ...] = ()
    chosen: int = 0
    last_stands: bool = False
    folded: bool = False
    summary: str = ""
    open_rows: int = 0
    hidden: tuple[Row, ...] = ()
    quiet: frozenset[int] = frozenset()
    at_hand: bool = False
    heavy: bool = False
    first: bool = False


@attrs.frozen
class Page:
    """A whole page: a heading, the verdict beside it and `whose` it is, sections, and the findings below.

    `judged` keeps the room of the findings below, also while there are none, so that a finding that
    comes or goes shifts nothing; `caution` is said there where findings leave a line,
    `caution_short` where the whole of it has no room. `clock` and `now`,
    the next thing to do, stand in the last line while nothing else is said there; `leads` is the action of
    that and the row where it is entered. `answer` is the page's one
    question answered, right below its heading, `answer_mid` the same in fewer words, `answer_short` the same
    for a narrow line. `when` says beside it when the bike goes out, in ever fewer words.
    `place` is where it is shown, by which what was unfolded on it is remembered. `labels` are cells kept for
    labels on a page that grows while one types, so that its columns stand still.
    """

    heading: str
    sections: tuple[Section, ...]
    verdict: str = ""
    findings: tuple[Row, ...] = ()
    caution: str = ""
    caution_short: str = ""
    judged: bool = True
    clock: str = ""
    now: str = ""
    leads: tuple[str, tuple[str, ...]] | None = None
    whose: str = ""
    answer: str = ""
    answer_mid: str = ""
    answer_short: str = ""
    when: tuple[str, ...] = ()
    place: str = ""
    labels: int = 0

    @property
    def held(self) -> bool:
        """Whether a hold stands against going out: every page of what is held looks like no other."""
        return self.verdict.startswith("HOLD") and RIDDEN_TAIL not in self.verdict

    def rows(self) -> tuple[Row, ...]:
        """List the rows of every section in order."""
        return self._rows

    @functools.cached_property
    def _rows(self) -> tuple[Row, ...]:
        return tuple(row for section in self.sections for row in section.rows)
