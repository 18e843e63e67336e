"""Pressures: cold to hot of each tyre in the band of its target, of one session or over several."""

from collections.abc import Sequence

import attrs

from paddock_tui.pages.pictures.data import Lane, Lanes, Mark, Stretch

LEGEND = "c cold  h hot  [ ] band of the target"

_ROUND = 0.1
_MARGIN = 0.05


@attrs.frozen
class TyreReading:
    """What one tyre read in one session, in bar, and the band of its target there; None where not known.

    The band reaches `within` below the target and above `most`, its upper end where it is a window.
    """

    label: str
    cold: float | None
    hot: float | None
    target: float | None
    within: float
    most: float | None = None

    @property
    def band(self) -> Stretch | None:
        """The band of the target; None where no target is known."""
        if self.target is None:
            return None
        return Stretch(self.target - self.within, (self.most or self.target) + self.within)


def pressure_lanes(readings: Sequence[TyreReading]) -> Lanes | None:
    """Draw a lane for each reading on one scale; None where nothing was read."""
    if not any(one.cold is not None or one.hot is not None for one in readings):
        return None
    figures = [figure for one in readings for figure in _figures(one)]
    low = _down(min(figures) - _MARGIN)
    high = max(_down(max(figures) + _MARGIN + _ROUND), low + 2 * _ROUND)
    steps = round((high - low) / _ROUND)
    every = 1 if steps <= 5 else 2
    at = [low + place * _ROUND for place in range(0, steps + 1, every)]
    ticks = tuple((one, f"{one:.1f}") for one in at)
    return Lanes(
        low,
        high,
        tuple(_lane(one) for one in readings),
        "; ".join(said(one) for one in readings),
        ticks=ticks,
        heads=("", "cold", "hot", "target", "so"),
        table=tuple(_row(one) for one in readings),
    )


def against_target(one: TyreReading) -> str:
    """Say where a hot reading lies against the band of its target; empty where one of them is not known."""
    if one.hot is None or one.target is None:
        return ""
    nearest = min(max(one.hot, one.target), one.most or one.target)
    off = round(one.hot - nearest, 2)
    if abs(off) <= one.within + 1e-9:
        return "in its band"
    return f"{abs(off):.2f} {'over' if off > 0 else 'under'}"


def said(one: TyreReading) -> str:
    """Say one reading in words."""
    cold, hot = _bar(one.cold) or "not read", _bar(one.hot) or "not read"
    target = f", target {_target(one)}" if one.target is not None else ", no target known"
    where = against_target(one)
    return f"{one.label}: cold {cold}, hot {hot} bar{target}{f', {where}' if where else ''}"


def _lane(one: TyreReading) -> Lane:
    marks = [
        Mark(sign, figure, word)
        for sign, figure, word in (("c", one.cold, "cold"), ("h", one.hot, "hot"))
        if figure is not None
    ]
    reach = Stretch(one.cold, one.hot) if one.cold is not None and one.hot is not None else None
    value = f"{_bar(one.cold) or '?'} -> {_bar(one.hot) or '?'}" if marks else "not read"
    return Lane(one.label, tuple(marks), value, against_target(one), one.band, reach)


def _figures(one: TyreReading) -> list[float]:
    found = [figure for figure in (one.cold, one.hot) if figure is not None]
    if one.band is not None:
        found += [one.band.low, one.band.high]
    return found


def _row(one: TyreReading) -> tuple[str, ...]:
    return (
        one.label,
        _bar(one.cold) or "not read",
        _bar(one.hot) or "not read",
        _target(one) or "not known",
        against_target(one),
    )


def _target(one: TyreReading) -> str:
    """Write a target, of a window both ends."""
    most = f" to {_bar(one.most)}" if one.most not in (None, one.target) else ""
    return f"{_bar(one.target)}{most}"


def _bar(figure: float | None) -> str:
    return "" if figure is None else f"{figure:.2f}"


def _down(figure: float) -> float:
    return int(figure / _ROUND + 1e-9) * _ROUND
