"""A day as a line: its groups, its stops, one's own sessions, now, and what is due."""

import datetime as dt
from collections.abc import Sequence

import attrs

from paddock_tui.pages.pictures.data import NOW, Lane, Lanes, Mark, Stretch

LEGEND = "█1█ ridden  [4] to come  ┊ now"


@attrs.frozen
class DaySpan:
    """A span of the day; of one's own session its number, of a thing that is due `what` it is."""

    start: dt.time
    end: dt.time | None
    number: str = ""
    ridden: bool = False
    what: str = ""


@attrs.frozen
class DayLane:
    """One line of the day: a group, the stops, or the sessions of a bike; `note` stands behind it."""

    label: str
    spans: tuple[DaySpan, ...]
    note: str = ""


def day_lanes(lanes: Sequence[DayLane], now: dt.time | None) -> Lanes | None:
    """Draw the day from its first span to its last; None where no time is known."""
    spans = [span for lane in lanes for span in lane.spans]
    if not spans:
        return None
    low = min(_hours(span.start) for span in spans)
    high = max(_hours(span.end or span.start) for span in spans)
    if now is not None:
        low, high = min(low, _hours(now)), max(high, _hours(now))
    first, last = int(low), int(high) + 1
    return Lanes(
        float(first),
        float(last),
        tuple(
            Lane(
                lane.label,
                tuple(Mark(span.what[0], _hours(span.start), span.what) for span in lane.spans if span.what),
                note=lane.note,
                stretches=tuple(_stretch(span) for span in lane.spans if not span.what),
            )
            for lane in lanes
        ),
        "; ".join(_said(lane) for lane in lanes if lane.spans),
        ticks=tuple((float(hour), f"{hour:02d}") for hour in range(first, last + 1)),
        zero=_hours(now) if now is not None else None,
        heads=("", "from", "to", "what"),
        table=tuple(
            (lane.label, f"{span.start:%H:%M}", f"{span.end:%H:%M}" if span.end else "", _what(span))
            for lane in lanes
            for span in lane.spans
        ),
    )


def _stretch(span: DaySpan) -> Stretch:
    start = _hours(span.start)
    words = ""
    if span.number:
        words = f"{NOW}{span.number}{NOW}" if span.ridden else f"[{span.number}]"
    return Stretch(start, _hours(span.end) if span.end is not None else start, words)


def _what(span: DaySpan) -> str:
    if not span.number:
        return span.what
    return f"session {span.number}, {'ridden' if span.ridden else 'to come'}"


def _said(lane: DayLane) -> str:
    return f"{lane.label} {', '.join(map(_when, lane.spans))}"


def _when(span: DaySpan) -> str:
    what = _what(span)
    return f"{span.start:%H:%M}{f' {what}' if what else ''}"


def _hours(time: dt.time) -> float:
    return time.hour + time.minute / 60.0
