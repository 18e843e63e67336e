"""Turning adjusters: so many clicks or turns more or less, inside the range and off its last clicks."""

import math
from collections.abc import Callable
from typing import Final

from paddock_tui.advice.about import End
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.trims import trim
from paddock_tui.advice.next_change.words import Move, Refusal
from paddock_tui.facts.wet_damping import CLICK_IN_TURNS
from paddock_tui.limits.suspension import END_OF_RANGE
from paddock_tui.records.differences import setting_difference
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster
from paddock_tui.rules.core import SetValue

TURN_IN_CLICKS: Final = 2.0
"""What one turn of preload is on an adjuster that clicks. Common practice, no source."""

_SPLIT: Final = ("rebound", "compression")
DAMPING: Final = (*_SPLIT, *(f"{one} {side}" for one in _SPLIT for side in ("slow", "fast")))


def damping(case: Case, end: End, what: str, clicks: float) -> Move | Refusal:
    """Turn damping at one end: `clicks` above zero is more damping. `what` is rebound or compression.

    Both legs of a fork are turned alike. Where one of them is split, the slow side is meant.
    """
    found = _adjusters(case, end, what)
    if not found:
        return Refusal(f"there is no {what} adjuster at the {end}", own=True)
    if all(case.closed_by(name) for name in found):
        return trim(case, end, clicks)
    return _turned(case, found, clicks, _clicks_of)


def fast_compression(case: Case, end: End, clicks: float) -> Move | Refusal:
    """Turn the fast side of compression where it is split, else compression."""
    found = _adjusters(case, end, "compression fast")
    return _turned(case, found, clicks, _clicks_of) if found else damping(case, end, "compression", clicks)


def preload(case: Case, end: End, turns: float) -> Move | Refusal:
    """Turn preload at one end: `turns` above zero is more preload."""
    found = _adjusters(case, end, "preload")
    if not found:
        return Refusal(f"there is no preload adjuster at the {end}", own=True)
    return _turned(case, found, turns, _turns_of)


def steering_damper(case: Case, clicks: float) -> Move | Refusal:
    """Turn the steering damper: `clicks` above zero is firmer."""
    found = {name: one for name, one in case.bike.adjusters.items() if one.what == "damper"}
    if not found:
        return Refusal("there is no steering damper to turn")
    return _turned(case, found, clicks, _clicks_of)


def damper_firmness(case: Case) -> float | None:
    """Return how firm the steering damper stands, 0 light to 1 firm; None where that is not known."""
    for name, one in case.bike.adjusters.items():
        value = case.setup.adjusters.get(name)
        if one.what != "damper" or one.range is None or value is None or one.counted_from is None:
            continue
        low, high = sorted(one.range)
        share = (value - low) / (high - low) if high > low else 0.0
        return 1.0 - share if one.counted_from == "closed" else share
    return None


def _adjusters(case: Case, end: End, what: str) -> dict[str, Adjuster]:
    here = {name: one for name, one in case.bike.adjusters.items() if one.end == end}
    exact = {name: one for name, one in here.items() if one.what == what}
    if exact or what not in _SPLIT:
        return exact
    return {name: one for name, one in here.items() if one.what == f"{what} slow"}


def _clicks_of(adjuster: Adjuster, clicks: float) -> float:
    return clicks * CLICK_IN_TURNS if adjuster.unit == "turn" else clicks


def _turns_of(adjuster: Adjuster, turns: float) -> float:
    return turns * TURN_IN_CLICKS if adjuster.unit == "click" else turns


def _turned(
    case: Case, found: dict[str, Adjuster], amount: float, in_unit: Callable[[Adjuster, float], float]
) -> Move | Refusal:
    reads: list[str] = []
    puts: list[SetValue] = []
    for name, adjuster in found.items():
        new = _new_value(case, name, adjuster, in_unit(adjuster, amount))
        if isinstance(new, Refusal):
            return new
        old = case.setup.adjusters[name]
        reads.append(str(setting_difference("adjusters", name, old, new, case.bike)))
        puts.append(SetValue(("setup", "adjusters", name), int(new) if new == int(new) else new))
    return Move("; ".join(reads), tuple(puts), tuple(("adjusters", name) for name in found))


def _new_value(case: Case, name: str, adjuster: Adjuster, amount: float) -> float | Refusal:
    """Return the value after turning, or why it cannot be: closed, not written down, no range left."""
    label = label_of(name)
    closed = case.closed_by(name)
    if closed:
        return Refusal(closed, own=True)
    old = case.setup.adjusters.get(name)
    if old is None:
        return Refusal(f"{label} is not written down: count it first", own=True)
    if adjuster.counted_from is None:
        return Refusal(f"the bike's file does not say from which end {label} is counted", own=True)
    if adjuster.range is None:
        return Refusal(f"the bike's file does not say the range of {label}", own=True)
    step = adjuster.step or 1.0
    steps = max(1, math.floor(abs(amount) / step + 0.5))
    sign = 1.0 if (amount > 0) == (adjuster.counted_from == "open") else -1.0
    new = round(old + sign * steps * step, 6)
    low, high = sorted(adjuster.range)
    spare = (
        max(step, case.limits[END_OF_RANGE] * (high - low)) if adjuster.what in (*DAMPING, "damper") else 0.0
    )
    if low + spare <= new <= high - spare:
        return new
    if low <= new <= high:
        return Refusal(f"{label} would stand in the last clicks of its range", own=True)
    return Refusal(
        f"{label} has no more range that way: the spring or the valving is the next thing", own=True
    )
