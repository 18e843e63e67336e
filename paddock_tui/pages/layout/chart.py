"""A chart as lines: words of each level at the left, its points in cells, ticks below."""

from paddock_tui.pages.layout.cells import Cells
from paddock_tui.pages.layout.columns import MARK
from paddock_tui.pages.layout.lanes import place_of, ticks_line
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.pictures import Chart, Dot
from paddock_tui.pages.pictures.data import NOW
from paddock_tui.text import width

_WIDEST = 5
"""Cells of one place of a counted scale, at most: more only part what belongs together."""


def chart_lines(picture: Chart, pen: Pen) -> list[Line]:
    """Draw the row on top where there is one, each level, and the ticks."""
    lead = max((width(pen.say(one.words)) for one in picture.levels), default=0)
    lead = max(lead, width(pen.say(picture.over))) + 2
    room = max(pen.width - MARK - lead, 1)
    cells, step = _across(picture, room)

    def column(across: float) -> int:
        if picture.counted:
            return int((across - picture.low) * step)
        return place_of(across, picture.low, picture.high, cells)

    rows: dict[int | None, list[Dot]] = {}
    for dot in picture.dots:
        rows.setdefault(_level(picture, dot.at), []).append(dot)
    lines = []
    if picture.over:
        lines.append(_row(picture.over, _points(rows.get(None, []), column, cells, pen, ""), lead, pen))
    for place, level in enumerate(picture.levels):
        ground = "┄" if level.wanted else "░" if _shaded(picture, place) else ""
        drawn = _points(rows.get(place, []), column, cells, pen, ground)
        lines.append(_row(level.words, drawn, lead, pen))
    if picture.ticks:
        lines.append(ticks_line([(column(at), words) for at, words in picture.ticks], MARK + lead, pen))
    return lines


def _across(picture: Chart, room: int) -> tuple[int, float]:
    """Return how many cells the chart is wide, and of a counted scale how many each place takes."""
    if not picture.counted:
        return room, 1.0
    places = picture.high - picture.low + 1
    step = min(float(int(room / places)) or room / places, float(_WIDEST))
    return min(int(places * step) or 1, room), step


def _level(picture: Chart, at: float | None) -> int | None:
    """Return the level nearest to a place; the one on top for what has none."""
    if at is None or not picture.levels:
        return None
    return min(range(len(picture.levels)), key=lambda place: abs(picture.levels[place].at - at))


def _shaded(picture: Chart, place: int) -> bool:
    if picture.band is None:
        return False
    first, last = (_level(picture, edge) for edge in picture.band)
    if first is None or last is None:
        return False
    return min(first, last) <= place <= max(first, last)


def _points(dots: list[Dot], column, cells: int, pen: Pen, ground: str) -> Cells:  # type: ignore[no-untyped-def]
    drawn = Cells(pen, cells)
    if ground:
        drawn.fill(0, cells - 1, ground, "bar")
    # What stands now covers what it is compared with.
    for dot in sorted(dots, key=lambda one: one.sign == NOW or one.sign.isdigit()):
        bold = dot.sign == NOW or dot.sign.isalnum()
        drawn.put(column(dot.across), dot.sign, "mark" if bold else "aside")
    return drawn


def _row(words: str, drawn: Cells, lead: int, pen: Pen) -> Line:
    ink = Ink(pen)
    said = pen.say(words)
    ink.to(MARK + max(lead - 2 - width(said), 0))
    ink.put(said, "aside", lead - 1)
    ink.to(MARK + lead)
    drawn.onto(ink)
    return ink.line()
