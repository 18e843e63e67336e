"""The laps of a session in their order, and those of two sessions over each other."""

import math
from collections.abc import Iterator, Sequence

from paddock_tui.advice.session_laps import fall_words, lap_words, usual_words
from paddock_tui.calc.descriptive import quantile
from paddock_tui.calc.stint import Stint, TimedLap
from paddock_tui.pages.pictures.data import NOW, Chart, ChartLevel, Dot

BEFORE = "o"
"""The sign of a lap of the session before."""

LEGEND = "█ counts  o out  i in  t traffic  x slow"
LEGEND_OF_TWO = "█ with it  o before"

_FEWEST = 3
"""With fewer laps there is nothing to draw."""

_MOST_LEVELS = 8
_STEPS = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0)
"""Seconds from one level to the next; the smallest that needs no more levels than there are."""


def laps_chart(found: Stint) -> Chart | None:
    """Draw the laps of one session, the middle half of the clean ones shaded; None with too few."""
    if len(found.clean) < _FEWEST:
        return None
    dots = [Dot(float(one.number), one.seconds) for one in found.clean]
    dots += [Dot(float(one.lap.number), None, (one.lap.mark or "x")[0]) for one in found.aside]
    numbers = sorted(dot.across for dot in dots)
    times = found.times_s
    band = (quantile(times, 0.25), quantile(times, 0.75)) if len(times) > _FEWEST else None
    return Chart(
        numbers[0],
        numbers[-1],
        _levels(times),
        tuple(dots),
        _sentence(found, band),
        ticks=tuple((number, f"{number:g}") for number in numbers),
        band=band,
        over="set aside" if found.aside else "",
        counted=True,
        heads=("lap", "time", "counts"),
        table=tuple(_rows(found)),
    )


def two_stints(before: Stint, after: Stint) -> Chart | None:
    """Draw the clean laps of two sessions over each other, by their number among them; None with too few."""
    if min(len(before.clean), len(after.clean)) < _FEWEST:
        return None
    dots = [
        Dot(float(place), one.seconds, sign)
        for laps, sign in ((before.clean, BEFORE), (after.clean, NOW))
        for place, one in enumerate(laps, 1)
    ]
    most = max(len(before.clean), len(after.clean))
    said = f"before it: {usual_words(before)}; with it: {usual_words(after)}"
    return Chart(
        1.0,
        float(most),
        _levels([*before.times_s, *after.times_s]),
        tuple(dots),
        said,
        ticks=tuple((float(place), str(place)) for place in range(1, most + 1)),
        counted=True,
        heads=("clean lap", "before", "with it"),
        table=tuple(
            (str(place + 1), _time(before.clean, place), _time(after.clean, place)) for place in range(most)
        ),
    )


def _levels(times: Sequence[float]) -> tuple[ChartLevel, ...]:
    """Return levels from the slowest clean lap down to the fastest: faster is down."""
    low, high = min(times), max(times)
    for step in _STEPS:
        first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
        if last - first < _MOST_LEVELS:
            break
    digits = 2 if step < 0.1 else 1 if step < 1.0 else 0
    return tuple(
        ChartLevel(place * step, lap_words(place * step, digits)) for place in range(last, first - 1, -1)
    )


def _sentence(found: Stint, band: tuple[float, float] | None) -> str:
    count = len(found.clean)
    parts = [f"{count + len(found.aside)} laps, {count} count: {usual_words(found)}"]
    if found.best_s is not None:
        parts.append(f"best {lap_words(found.best_s)}")
    if band is not None:
        parts.append(f"half of them in {lap_words(band[0])} to {lap_words(band[1])}")
    if found.aside:
        parts.append("set aside: " + ", ".join(f"lap {one.lap.number} {one.why}" for one in found.aside))
    fall = fall_words(found)
    if fall:
        parts.append(f"fall-off {fall}")
    return "; ".join(parts)


def _rows(found: Stint) -> Iterator[tuple[str, ...]]:
    why = {one.lap.number: one.why for one in found.aside}
    every = sorted((*found.clean, *(one.lap for one in found.aside)), key=lambda lap: lap.number)
    for lap in every:
        yield str(lap.number), lap_words(lap.seconds, 3), why.get(lap.number, "yes")


def _time(laps: Sequence[TimedLap], place: int) -> str:
    return lap_words(laps[place].seconds, 3) if place < len(laps) else ""
