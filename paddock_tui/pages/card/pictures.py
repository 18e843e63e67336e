"""The pictures of the screens as inline SVG: black on white, told apart by shape, with words for each.

What is drawn comes from the same rows of data as on the screens; here are only millimetres.
"""

from collections.abc import Callable, Iterator
from html import escape
from typing import TypeAlias

from paddock_tui.pages.layout.lanes import marked
from paddock_tui.pages.pictures import Chart, Dot, Lane, Lanes, Mark
from paddock_tui.pages.pictures.data import NOW
from paddock_tui.pages.rows import Bar

Placing: TypeAlias = Callable[[float], float]
"""From a value of a scale to where it is drawn."""

_PLACES = 49
"""Places of a bar that letters are told apart on."""

_LEFT, _RIGHT, _TOP, _BOTTOM = 17.0, 97.0, 4.0, 44.0
"""Where a picture of 100 by 50 has its scale: labels stand left of it, ticks below."""


def bar_svg(bar: Bar) -> str:
    """Draw a scale from its first word to its second: now as a block, what it is compared with as letters."""
    low, high = bar.ends
    parts = [] if bar.fixed else [*_open(bar)]
    said = [f"{low} to {high}", "fixed" if bar.fixed else "", *(_said(one) for one in bar.marks)]
    if bar.at is None:
        said.insert(1, "no mark")
    else:
        said.insert(1, f"now {round(100 * min(max(bar.at, 0.0), 1.0))} %")
    for place, sign in marked([] if bar.fixed else bar.marks, 0.0, 1.0, _PLACES):
        parts.append(_letter(_along(place / (_PLACES - 1)), 13.2, sign, 6.8))
    if bar.at is not None:
        at = _along(bar.at)
        shape = f"M{at - 2:g} 2h4v1h-4zm0 2h4v1h-4z" if bar.fixed else f"M{at - 2:g} .5h4v6h-4z"
        parts.append(f'<path d="{shape}" fill="#000"/>')
    return _svg("0 0 100 14", "; ".join(filter(None, said)), "".join(parts))


def _open(bar: Bar) -> Iterator[str]:
    """Draw what may be set: a line with a tick for each level, closed at both ends of what a mode allows."""
    low, high = bar.allowed or (0.0, 1.0)
    yield f'<path d="M{_along(low)} 3.5H{_along(high)}" stroke="#000" stroke-width=".6"/>'
    for one in range(bar.steps):
        at = one / (bar.steps - 1) if bar.steps > 1 else 0.5
        if low - 1e-9 <= at <= high + 1e-9:
            yield f'<path d="M{_along(at)} 2.5v2" stroke="#000" stroke-width=".6"/>'
    if bar.allowed is not None:
        yield f'<path d="M{_along(low)} .8v5.4M{_along(high)} .8v5.4" stroke="#000"/>'


def _along(at: float) -> float:
    return round(min(max(at, 0.0), 1.0) * 96 + 2, 2)


def _said(mark: Mark) -> str:
    return f"{mark.word} {round(100 * mark.at)} %"


def chart_svg(chart: Chart) -> str:
    """Draw a chart: what counts as dots on a line, what was set aside as letters on top, the band in grey."""
    high, low = _ends(chart)
    top = _TOP + (5.0 if chart.over else 0.0)

    def across(value: float) -> float:
        return _between(value, chart.low, chart.high, _LEFT + 2, _RIGHT - 2)

    def down(value: float) -> float:
        return _between(value, high, low, top, _BOTTOM)

    parts = list(_band(chart, down))
    for level in chart.levels:
        dash = "" if level.wanted else ' stroke-dasharray=".4 1.6"'
        parts.append(f'<path d="M{_LEFT} {down(level.at)}H{_RIGHT}" stroke="#000" stroke-width=".2"{dash}/>')
    parts += _level_words(chart, down)
    counting = [(across(one.across), down(one.at)) for one in chart.dots if one.at is not None]
    line = " ".join(f"{x:g},{y:g}" for x, y in counting)
    parts.append(f'<polyline points="{line}" fill="none" stroke="#000" stroke-width=".4"/>')
    parts += [_dot(one, across(one.across), down(one.at or 0.0)) for one in chart.dots if one.at is not None]
    if chart.over:
        parts.append(_text(_LEFT - 1, _TOP + 1.2, chart.over, "end"))
        parts += [_letter(across(one.across), _TOP + 1.2, one.sign) for one in chart.dots if one.at is None]
    parts += _ticks(chart.ticks, across)
    return _svg("0 0 100 50", chart.sentence, "".join(parts))


def _ends(chart: Chart) -> tuple[float, float]:
    """Return what lies on top and at the bottom: every dot has room between the outer levels."""
    places = [one.at for one in chart.levels] + [one.at for one in chart.dots if one.at is not None]
    first, last = chart.levels[0].at, chart.levels[-1].at
    return (max(places), min(places)) if first >= last else (min(places), max(places))


def _band(chart: Chart, down: Placing) -> Iterator[str]:
    if chart.band is not None:
        edges = sorted(down(one) for one in chart.band)
        tall = round(max(edges[1] - edges[0], 0.4), 2)
        yield f'<rect x="{_LEFT}" y="{edges[0]}" width="{_RIGHT - _LEFT}" height="{tall}" fill="#ddd"/>'


def _level_words(chart: Chart, down: Placing) -> Iterator[str]:
    """Write the words of the levels, leaving out those that would touch the one before."""
    before = -10.0
    for level in chart.levels:
        at = down(level.at)
        if level.words and at - before >= 4.5:
            before = at
            yield _text(_LEFT - 1, at + 1.2, level.words, "end")


def _dot(dot: Dot, x: float, y: float) -> str:
    if dot.sign == NOW:
        return f'<circle cx="{x}" cy="{y}" r="1.1" fill="#000"/>'
    return _letter(x, y + 1.2, dot.sign)


def lanes_svg(lanes: Lanes) -> str:
    """Draw a lane below the other: its band as a box, its reach as a line, its marks as letters on ticks."""
    deep = min((_BOTTOM - _TOP) / max(len(lanes.lanes), 1), 20.0)

    def across(value: float) -> float:
        return _between(value, lanes.low, lanes.high, _LEFT, _RIGHT)

    parts: list[str] = []
    for place, lane in enumerate(lanes.lanes):
        parts += _lane(lane, _TOP + deep * (place + 0.5), across)
    parts += _ticks(lanes.ticks, across)
    return _svg("0 0 100 50", lanes.sentence, "".join(parts))


def _lane(lane: Lane, y: float, across: Placing) -> Iterator[str]:
    yield _text(_LEFT - 1, y + 1.2, lane.label, "end")
    yield f'<path d="M{_LEFT} {y:g}H{_RIGHT}" stroke="#000" stroke-width=".2" stroke-dasharray=".4 1.6"/>'
    if lane.band is not None:
        low, high = across(lane.band.low), across(lane.band.high)
        box = f'x="{low}" y="{y - 2.5:g}" width="{round(high - low, 2)}" height="5"'
        yield f'<rect {box} fill="#ddd" stroke="#000" stroke-width=".3"/>'
    if lane.reach is not None:
        yield f'<path d="M{across(lane.reach.low)} {y:g}H{across(lane.reach.high)}" stroke="#000"/>'
    for mark in lane.marks:
        at = across(mark.at)
        yield f'<path d="M{at} {y - 2:g}v4" stroke="#000"/>'
        yield _letter(at, y - 3, mark.sign)
    said = " · ".join(filter(None, (lane.value, lane.note)))
    if said:
        yield _text(_LEFT, y + 6.5, said)


def _ticks(ticks: tuple[tuple[float, str], ...], across: Placing) -> Iterator[str]:
    """Write the ticks below, leaving out those that would touch the one before."""
    before = -10.0
    for value, words in ticks:
        at = across(value)
        if at - before >= 2.2 * len(words) + 1.5:
            before = at
            yield _text(at, 49.2, words, "middle")


def _between(value: float, low: float, high: float, first: float, last: float) -> float:
    """Return the place of a value on a scale from `low` to `high` that is drawn from `first` to `last`."""
    part = 0.5 if high == low else (value - low) / (high - low)
    return round(first + (last - first) * min(max(part, 0.0), 1.0), 2)


def _letter(x: float, y: float, sign: str, size: float = 3.8) -> str:
    how = f'font-size="{size}" text-anchor="middle" font-weight="bold"'
    return f'<text x="{x:g}" y="{y:g}" {how}>{escape(sign)}</text>'


def _text(x: float, y: float, words: str, anchor: str = "start") -> str:
    return f'<text x="{x:g}" y="{y:g}" font-size="3.8" text-anchor="{anchor}">{escape(words)}</text>'


def _svg(box: str, words: str, inside: str) -> str:
    return (
        f'<svg viewBox="{box}" role="img" aria-label="{escape(words)}">'
        f"<title>{escape(words)}</title>{inside}</svg>"
    )
