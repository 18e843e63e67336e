"""Which sections of a page are folded when it is opened, chosen once and kept while one stays there."""

from collections.abc import Callable

from paddock_tui.pages.folding import folds_of, opens, waiting, waiting_first, with_folds
from paddock_tui.pages.layout.body import body
from paddock_tui.pages.layout.columns import Columns, columns
from paddock_tui.pages.layout.findings import block_height, caution_lines
from paddock_tui.pages.layout.pen import Pen
from paddock_tui.pages.rows import Page, Section
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules import NOTE, Review
from paddock_tui.screens.place import PlaceKey

WIDE, HIGH = 80, 24
"""The screen that pages are folded for; on a smaller one they are folded for that."""

_SCREENS = 2
_MOST_COUNTED = 300
"""Sections of which it is remembered how many lines they take: a page has some thirty."""
_CAUTION, _SHORT_CAUTION = 3, 1
_AROUND = 3
"""Lines of heading and answer, and the last line."""


class Folds:
    """What was chosen for each place of this run, for a screen of this size."""

    def __init__(self) -> None:
        self.wide, self.high = WIDE, HIGH
        self._chosen: dict[PlaceKey, dict[str, bool]] = {}
        self._waiting: dict[PlaceKey, frozenset[str]] = {}
        self._counted: dict[int, tuple[Section, Columns, int]] = {}
        """How many lines sections take, in the columns of their page."""

    def fit(self, wide: int, high: int) -> None:
        """Choose for a screen of this size from now on; none is meant while its size is not known."""
        if wide and high:
            self.wide, self.high = min(wide, WIDE), min(high, HIGH)

    def of(self, key: PlaceKey, choose: Callable[[], dict[str, bool]]) -> dict[str, bool]:
        """Return what is folded at a place, chosen when it is first asked for."""
        if key not in self._chosen:
            self._chosen[key] = choose()
        return self._chosen[key]

    def waiting(self, key: PlaceKey, choose: Callable[[], frozenset[str]]) -> frozenset[str]:
        """Return which sections stand first at a place, chosen when it is first asked for."""
        if key not in self._waiting:
            self._waiting[key] = choose()
        return self._waiting[key]

    def lines_of(self, page: Page) -> Callable[[Section], int]:
        """Return what counts the lines of a section of a page: one that was kept is not counted again."""
        places, lines = columns(page, Pen(self.wide)), lines_of(page, self.wide)
        if len(self._counted) > _MOST_COUNTED:
            self._counted.clear()

        def count(section: Section) -> int:
            known = self._counted.get(id(section))
            if known is None or known[0] is not section or known[1] != places:
                known = self._counted[id(section)] = section, places, lines(section)
            return known[2]

        return count

    def forget(self, key: PlaceKey) -> None:
        """Have it chosen again: what is open there may be something else."""
        self._chosen.pop(key, None)
        self._waiting.pop(key, None)


def fold(page: Page, judged: Review, key: PlaceKey, folds: Folds, most: int = 0) -> Page:
    """Fold what a page is too long for; what has a finding, lacks an essential or is to do stays open.

    `most` are the lines that its rows may take, where that is not what any page may.
    """
    is_open = opens(open_places(judged))
    two = most_of(page, folds.wide, folds.high)
    chosen = folds.of(key, lambda: folds_of(page, is_open, folds.lines_of(page), min(most or two, two)))
    return with_folds(page, chosen, is_open)


def ordered(page: Page, judged: Review, key: PlaceKey, folds: Folds) -> Page:
    """Put what waits before what stands in its own order; while one stays there nothing moves."""
    is_open = opens(open_places(judged))
    return waiting_first(page, folds.waiting(key, lambda: waiting(page, is_open)))


def most_of(page: Page, wide: int = WIDE, high: int = HIGH) -> int:
    """Return how many lines a page may take when it is opened: two screens of such a size."""
    below = block_height(high) if page.judged else _cautions(page, wide, high)
    return _SCREENS * max(high - _AROUND - below, 1)


def _cautions(page: Page, wide: int, high: int) -> int:
    """Return the lines of the caution below a page, of which a narrow screen has room for the short one."""
    if wide >= WIDE:
        return _CAUTION
    return max(len(caution_lines(page, columns(page, Pen(wide)), high)), _SHORT_CAUTION)


def open_places(judged: Review) -> frozenset[tuple[Ref | None, Path]]:
    """List where something is open: a finding above a note, a to-do, a missing essential."""
    wheres = [
        *(one.where for one in judged.findings if one.severity > NOTE),
        *(one.where for one in judged.to_do),
    ]
    places = [(one.ref, one.path) for one in wheres if one is not None]
    return frozenset([*places, *((one.ref, one.path) for one in judged.missing)])


def lines_of(page: Page, wide: int = WIDE) -> Callable[[Section], int]:
    """Return what counts the lines of a section of a page at so many columns."""
    places = columns(page, Pen(wide))
    return lambda section: len(body(Page("", (section,)), places).lines)
