"""The pictures of the set-up card as inline SVG: told apart by shape, not by colour, with words for each."""

from collections.abc import Sequence
from html import escape

from paddock_tui.advice.session_laps import lap_words
from paddock_tui.pages.card.content import PressurePicture
from paddock_tui.pages.rows import Bar
from paddock_tui.trade.stint import Stint

_FEWEST = 3
"""With fewer laps there is nothing to draw."""


def bar_svg(bar: Bar) -> str:
    """Draw a scale from its first word to its second with one mark; the words stand in its description."""
    low, high = bar.ends
    mark = ""
    words = f"{low} to {high}: no mark"
    if bar.at is not None:
        at = round(min(max(bar.at, 0.0), 1.0) * 96 + 2, 2)
        mark = f'<path d="M{at - 2} 1h4v6h-4z" fill="#000"/>'
        words = f"{low} to {high}: {round(100 * bar.at)} %"
    ticks = "".join(f'<path d="M{_tick(one, bar.steps)} 3v2" stroke="#000"/>' for one in range(bar.steps))
    line = '<path d="M2 4h96" stroke="#000" fill="none"/>'
    return _svg("0 0 100 8", words, f"{line}{ticks}{mark}", stretched=True)


def _tick(place: int, steps: int) -> float:
    return round(2 + 96 * (place / (steps - 1) if steps > 1 else 0.5), 2)


def laps_svg(stint: Stint) -> str:
    """Draw the clean laps in their order as dots on a line, the median dashed; empty with few laps."""
    laps = stint.clean
    if len(laps) < _FEWEST or stint.usual_s is None:
        return ""
    times = [one.seconds for one in laps]
    low, high = min(times), max(times)
    span = (high - low) or 1.0
    first, last = laps[0].number, laps[-1].number

    def place(number: int, seconds: float) -> tuple[float, float]:
        across = 4 + 92 * (number - first) / max(1, last - first)
        return round(across, 1), round(8 + 34 * (seconds - low) / span, 1)

    points = [place(one.number, one.seconds) for one in laps]
    line = " ".join(f"{x},{y}" for x, y in points)
    dots = "".join(f'<circle cx="{x}" cy="{y}" r="1.3"/>' for x, y in points)
    middle = place(first, stint.usual_s)[1]
    usual = f'<path d="M4 {middle}h92" stroke="#000" stroke-width=".5" stroke-dasharray="2 2"/>'
    drawn = f'<polyline points="{line}" fill="none" stroke="#000" stroke-width=".7"/>'
    ends = _text(4, 5, f"best {lap_words(low)}") + _text(4, 49, f"slowest clean {lap_words(high)}")
    range_ = f"{lap_words(low)} to {lap_words(high)}"
    words = f"{len(laps)} clean laps from {range_}, median {lap_words(stint.usual_s)}"
    return _svg("0 0 100 50", words, usual + drawn + dots + ends)


def pressure_svg(tyres: Sequence[PressurePicture]) -> str:
    """Draw cold to hot of each tyre beside its target; empty where nothing was read."""
    known = [one for one in tyres if one.cold is not None or one.hot is not None]
    figures = [value for one in known for _, value, _ in _marks(one)]
    if not known:
        return ""
    low, high = min(figures) - 0.05, max(figures) + 0.05

    def across(value: float) -> float:
        return round(18 + 76 * (value - low) / (high - low), 1)

    parts: list[str] = []
    said: list[str] = []
    for place, one in enumerate(known):
        y = 12 + 22 * place
        parts.append(_text(2, y + 2, one.end))
        if one.cold is not None and one.hot is not None:
            parts.append(f'<path d="M{across(one.cold)} {y}H{across(one.hot)}" stroke="#000"/>')
        for name, value, up in _marks(one):
            parts.append(_mark(name, across(value), y))
            parts.append(_text(across(value), y + up, f"{value:.2f}", middle=True))
            said.append(f"{one.end} {name} {value:.2f}")
    return _svg("0 0 100 50", f"bar: {', '.join(said)}; circle cold, dot hot, line target", "".join(parts))


def _marks(one: PressurePicture) -> list[tuple[str, float, int]]:
    """Return what is marked of a tyre, its figure in bar, and how far below the line that stands.

    Of a target that is a window both ends, the upper one's figure below the lower one's.
    """
    most = one.most if one.most != one.target else None
    marks = (("cold", one.cold, -3), ("hot", one.hot, -3), ("target", one.target, 7), ("target", most, 11))
    return [(name, value, up) for name, value, up in marks if value is not None]


def _mark(name: str, x: float, y: float) -> str:
    if name == "target":
        return f'<path d="M{x} {y - 2.5}v6" stroke="#000" stroke-width="1"/>'
    fill = "#000" if name == "hot" else "#fff"
    return f'<circle cx="{x}" cy="{y}" r="1.8" fill="{fill}" stroke="#000" stroke-width=".7"/>'


def _text(x: float, y: float, words: str, *, middle: bool = False) -> str:
    anchor = ' text-anchor="middle"' if middle else ""
    return f'<text x="{x}" y="{y}" font-size="4.2"{anchor}>{escape(words)}</text>'


def _svg(box: str, words: str, inside: str, *, stretched: bool = False) -> str:
    aspect = ' preserveAspectRatio="none"' if stretched else ""
    return (
        f'<svg viewBox="{box}"{aspect} role="img" aria-label="{escape(words)}">'
        f"<title>{escape(words)}</title>{inside}</svg>"
    )
