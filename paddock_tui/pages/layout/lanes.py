"""Lanes and pairs as lines: a label, a value, a scale with its marks, and a note behind it."""

from collections.abc import Iterator, Sequence

import attrs

from paddock_tui.pages.layout.cells import Cells
from paddock_tui.pages.layout.columns import MARK
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.pictures import Lane, Lanes, Mark, Pair, Pairs, Stretch
from paddock_tui.pages.pictures.data import NOW, SEVERAL
from paddock_tui.text import width

_LEAST, _MOST = 9, 60
"""Cells of a scale: with fewer nothing is told apart, and more say nothing more."""

_SHORT, _LONG = 6, 15
"""Cells of a value of a pair: its number alone on a narrow screen."""

_HALF = 17
"""Cells of each scale of a pair on a screen of 80; with less room both shrink alike."""


@attrs.frozen
class _Places:
    """Cells of the label, the value, the scale and the note; 0 leaves the part out."""

    label: int
    value: int
    scale: int
    note: int


def lanes_lines(picture: Lanes, pen: Pen) -> list[Line]:
    """Draw the words of the ends, each lane, and the ticks."""
    places = _places(picture, pen)
    start = MARK + places.label + places.value
    lines = []
    if any(picture.ends):
        lines.append(_ends(picture.ends, start, places.scale, pen))
    for lane in picture.lanes:
        ink = Ink(pen)
        ink.to(MARK)
        ink.put(pen.say(lane.label), "label", places.label - 1)
        if places.value:
            ink.to(MARK + places.label)
            ink.put(pen.say(lane.value), "value", places.value - 1)
        ink.to(start)
        _track(lane, picture.low, picture.high, places.scale, pen, picture.zero).onto(ink)
        if lane.note:
            ink.put(" ")
            ink.put(pen.say(lane.note), "aside")
        lines.append(ink.line())
    if picture.ticks:
        at = [(place_of(one, picture.low, picture.high, places.scale), word) for one, word in picture.ticks]
        lines.append(ticks_line(at, start, pen))
    return lines


def pairs_lines(picture: Pairs, pen: Pen) -> list[Line]:
    """Draw front and rear side by side, most outside: a line for each adjuster, what it is in the middle."""
    what = max((width(pen.say(pair.what)) for pair in picture.pairs), default=0) + 2
    value = _SHORT if pen.width < 60 else _LONG
    half = max(min((pen.width - MARK - what - 2 * value) // 2, _HALF), 1)
    lines = [_pair_heads(picture, pen, half, value, what)]
    for pair in picture.pairs:
        lines.append(_pair_line(pair, pen, half, value, what))
    return lines


def ticks_line(ticks: Sequence[tuple[int, str]], start: int, pen: Pen) -> Line:
    """Draw words under their places; one that would touch the one before it is left out."""
    ink = Ink(pen)
    for place, words in ticks:
        said = pen.say(words)
        at = start + place
        if (at < ink.at + 1 and ink.at) or at + width(said) > pen.width:
            continue
        ink.to(at)
        ink.put(said, "aside")
    return ink.line()


def place_of(value: float, low: float, high: float, cells: int) -> int:
    """Return the cell of a value on a scale; below 0 or from `cells` on where it lies outside."""
    if high <= low:
        return 0
    return round((value - low) / (high - low) * (cells - 1))


def marked(marks: Sequence[Mark], low: float, high: float, cells: int) -> Iterator[tuple[int, str]]:
    """Return the cell and the sign of each mark: the one of now is in front, several letters are a star."""
    held: dict[int, str] = {}
    for mark in marks:
        place = min(max(place_of(mark.at, low, high, cells), 0), cells - 1)
        before = held.get(place, mark.sign)
        if NOW in (before, mark.sign):
            held[place] = NOW
        else:
            held[place] = mark.sign if before == mark.sign else SEVERAL
    yield from held.items()


def _places(picture: Lanes, pen: Pen) -> _Places:
    say = pen.say
    label = min(max((width(say(one.label)) for one in picture.lanes), default=0) + 2, pen.width * 2 // 5)
    value = max((width(say(one.value)) for one in picture.lanes), default=0)
    note = max((width(say(one.note)) for one in picture.lanes), default=0)
    value, note = value and value + 1, note and note + 1
    room = pen.width - MARK - label
    if room - value - note < 2 * _LEAST:
        # The value stands in the table behind the picture: on a narrow screen it gives way to the scale.
        value = 0
    scale = min(max(room - value - note, min(_LEAST, room)), _MOST)
    return _Places(label, value, max(scale, 1), note)


def _track(lane: Lane, low: float, high: float, cells: int, pen: Pen, zero: float | None = None) -> Cells:
    drawn = Cells(pen, cells)

    def at(value: float) -> int:
        return place_of(value, low, high, cells)

    drawn.fill(0, cells - 1, " " if lane.shut or lane.stretches or zero is not None else "·", "bar")
    if lane.used is not None and lane.used.high > lane.used.low:
        drawn.fill(at(lane.used.low), at(lane.used.high), NOW, "mark")
    if lane.reach is not None:
        _reach(drawn, at(lane.reach.low), at(lane.reach.high))
    if lane.band is not None:
        drawn.put(max(at(lane.band.low), 0), "[", "aside")
        drawn.put(min(at(lane.band.high), cells - 1), "]", "aside")
    if zero is not None:
        crossed = lane.reach is not None and at(lane.reach.low) < at(zero) < at(lane.reach.high)
        drawn.put(at(zero), "┼" if crossed else "┊", "bar")
    for place, piece in enumerate(lane.stretches):
        after = lane.stretches[place + 1 : place + 2]
        room = at(after[0].low) - at(piece.low) if after else cells
        _stretch(drawn, piece, at(piece.low), at(piece.high), room)
    for place, one in marked(lane.marks, low, high, cells):
        drawn.put(place, one, "mark" if one == NOW or lane.reach is not None else "aside")
    return drawn


def _reach(drawn: Cells, low: int, high: int) -> None:
    """Draw an interval with its ends; one that leaves the scale ends in an arrow."""
    drawn.fill(low, high, "─", "bar")
    drawn.put(max(low, 0), "├" if low >= 0 else "<", "bar")
    drawn.put(min(high, drawn.count - 1), "┤" if high < drawn.count else ">", "bar")


def _stretch(drawn: Cells, piece: Stretch, low: int, high: int, room: int) -> None:
    """Draw a piece, or its words: what stands between their two outer signs where the next one is close."""
    if piece.words:
        words = piece.words if width(piece.words) <= room else piece.words[1:-1]
        drawn.put(low, words, "mark" if NOW in piece.words or "[" in piece.words else "aside")
    else:
        drawn.fill(low, max(high - 1, low), "─", "bar")


def _ends(ends: tuple[str, str], start: int, cells: int, pen: Pen) -> Line:
    """Draw the words of both ends flush with the scale; where that is too short, from its middle outwards."""
    ink = Ink(pen)
    left, right = pen.say(ends[0]), pen.say(ends[1])
    if width(left) + 1 + width(right) <= cells:
        at, after = start, start + cells - width(right)
    else:
        at, after = start + cells // 2 - width(left), start + cells // 2 + 1
    ink.to(max(at, MARK))
    ink.put(left, "aside")
    ink.to(after)
    ink.put(right, "aside")
    return ink.line()


def _pair_heads(picture: Pairs, pen: Pen, half: int, value: int, what: int) -> Line:
    ink = Ink(pen)
    ink.to(MARK)
    ink.put("front"[: value - 1], "title")
    ink.to(MARK + value)
    outer, inner = pen.say(picture.outer), pen.say(picture.inner)
    whole = width(outer) + 1 + width(inner) <= half
    outer, inner = (outer, inner) if whole else (outer.split(" ")[0], inner.split(" ")[0])
    inner = inner if width(outer) + 1 + width(inner) <= half else ""
    ink.put(outer, "aside", half)
    ink.to(MARK + value + half - width(inner))
    ink.put(inner, "aside")
    ink.to(MARK + value + half + what)
    ink.put(inner, "aside")
    ink.to(MARK + value + 2 * half + what - width(outer))
    ink.put(outer, "aside")
    ink.put(" ")
    ink.put("rear", "title")
    return ink.line()


def _pair_line(pair: Pair, pen: Pen, half: int, value: int, what: int) -> Line:
    ink = Ink(pen)
    ink.to(MARK)
    for lane, front in ((pair.front, True), (pair.rear, False)):
        said = "" if lane is None else _short(pen.say(lane.value), value)
        style = "value" if lane is not None and lane.marks else "unknown"
        if front:
            ink.put(said, style, value - 1)
            ink.to(MARK + value)
        _half(lane, front, half, pen).onto(ink)
        if front:
            name = pen.say(pair.what)
            ink.to(MARK + value + half + (what - width(name)) // 2)
            ink.put(name, "label", what - 1)
            ink.to(MARK + value + half + what)
        else:
            ink.put(" ")
            ink.put(said, style)
    return ink.line()


def _short(said: str, cells: int) -> str:
    """Return a value in the cells it has: its number alone, and a question mark for what is not known."""
    if width(said) < cells:
        return said
    first = said.partition(" ")[0]
    return first if first[:1].isdigit() and width(first) < cells else "?"


def _half(lane: Lane | None, front: bool, cells: int, pen: Pen) -> Cells:
    if lane is None:
        return Cells(pen, cells)
    if not front:
        return _track(lane, 0.0, 1.0, cells, pen)
    turned = tuple(attrs.evolve(mark, at=1.0 - mark.at) for mark in lane.marks)
    return _track(attrs.evolve(lane, marks=turned), 0.0, 1.0, cells, pen)
