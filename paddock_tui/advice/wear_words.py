"""What readings of a part that wears come to: its rate, and how soon its least may come."""

from collections.abc import Sequence

from paddock_tui.advice.calculators import Answered
from paddock_tui.advice.ridden_so_far import count_words
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.wear import WearReading, wear
from paddock_tui.calc.wear_trend import COVERS, LEAST_READINGS, WearTrend, wear_trend

_SHOWN = 6
_FAR = 20
"""Sessions beyond which no figure is given: gauge, track and pace tell no more. Common practice."""


def wear_in_words(what: str, readings: Sequence[WearReading], least_mm: float, ridden: float) -> Answered:
    """Return what readings say, after so many ridden sessions; Inconsistent where they tell no wear yet."""
    found = wear(readings)
    if found is None:
        raise Inconsistent(what, "no wear to tell yet: it takes two readings and a loss between them")
    rate = f"{found.mm_per_session:.2f} mm a session"
    since = int(ridden - found.last.sessions)
    last = f"last {found.last.mm:g} mm" + (f", {count_words(since)} ago" if since else "")
    shown = ", ".join(f"{one.mm:g} mm after {one.sessions:g}" for one in readings[-_SHOWN:])
    lines = (f"readings: {shown}", f"counted from: {found.readings} readings of what is fitted now")
    if found.last.mm <= least_mm:
        step = f"{found.last.mm:g} mm, the last reading, is not over {least_mm:g} mm"
        text = f"at {least_mm:g} mm or under ({last}): change them"
        return Answered(text, "at their least", (), lines, (step,))
    if found.readings < LEAST_READINGS:
        step = f"median loss of {found.readings} readings = {rate}"
        said = f"{rate} ({last}); how long they last takes {LEAST_READINGS} readings"
        return Answered(said, rate, (), lines, (step,))
    return _by_trend(wear_trend(readings, least_mm, ridden), least_mm, last, lines)


def _by_trend(found: WearTrend, least: float, last: str, lines: tuple[str, ...]) -> Answered:
    """Say how soon the limit may come, by the fastest wear the readings allow."""
    rate = f"{found.mm_per_session:.2f} mm a session"
    words = count_words(found.soonest_sessions)
    latest = "" if found.latest_sessions is None else f", {count_words(found.latest_sessions)} at the slowest"
    steps = (
        f"{rate}, {max(found.slowest_mm, 0.0):.2f} to {found.fastest_mm:.2f} mm by {COVERS:.0%} of "
        "such readings",
        f"at the fastest {found.least_mm:.1f} mm by now{latest}, to {least:g} mm in = {words}",
    )
    if found.soonest_sessions > _FAR:
        text = f"{rate}; look before each session all the same ({last})"
        return Answered(text, rate, (), lines, (steps[0], f"no figure beyond {_FAR} sessions: {rate}"))
    text = f"{rate}: {least:g} mm may come within {words} ({last})"
    return Answered(text, f"{rate}, {least:g} mm within {found.soonest_sessions}", (), lines, steps)
