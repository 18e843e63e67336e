"""The suspension of the wet package: damping opened and preload taken off, from what stood in the dry.

All figures are paddock practice, unpublished: two to four clicks more open all round, 3 mm less preload at
both ends, so that the same travel is used as in the dry.
"""

import math
from typing import Final

import attrs

from paddock_tui.facts.changes import is_damping
from paddock_tui.facts.suspension import damping_unused, what_of
from paddock_tui.facts.wet_values import Part, WetValue, WetValues
from paddock_tui.limits import Limits
from paddock_tui.limits.suspension import END_OF_RANGE
from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.differences import counted, setting_difference
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster

CLICKS_DAMP, CLICKS_WET = 2.0, 3.0
"""Clicks that damping is opened from the dry value."""

OPENED_ENOUGH = 2.0
"""Clicks from which damping counts as opened, whatever the package would set."""

PRELOAD_OFF_MM = 3.0
"""Preload that is taken off, in mm of spring."""

CLICK_IN_TURNS: Final = 0.125
"""One click on a screw without clicks: two are a quarter turn."""

_ROUNDING = 1e-9
_NO_DRY = (
    "no dry session on record to count from: open damping two to four clicks from its dry count, "
    "preload 3 mm less"
)
_AUTOMATIC = "automatic damping: its softer preset, or offsets toward softer"


@attrs.frozen
class _Way:
    """How an adjuster goes from its dry value: steps of the package, steps that are enough, and the sign."""

    part: Part
    steps: int
    enough: int
    step: float
    sign: float
    spare: float


def wet_suspension(setup: SetUp, bike: Bike, dry: SetUp | None, damp: bool, limits: Limits) -> WetValues:
    """Return where adjusters would go from their dry values; what cannot be told is said in words.

    Adjusters that the damping mode in use closes are left alone; both legs of a fork are set alike.
    """
    values: list[WetValue] = []
    words: dict[str, None] = {}
    untold: list[str] = []
    for name, adjuster in sorted(bike.adjusters.items()):
        damping = is_damping(name, bike)
        if not damping and what_of(name, adjuster)[1] != "preload":
            continue
        if damping_unused(name, setup, bike):
            words.update({_AUTOMATIC: None} if damping else {})
            continue
        way = (
            _opening(name, adjuster, damp, limits[END_OF_RANGE])
            if damping
            else _taking_off(name, adjuster, bike)
        )
        if damping and _may_be_as_in_the_dry(name, setup, dry, way):
            untold.append(label_of(name))
        if isinstance(way, str):
            words[way] = None
            continue
        found = _value(name, setup, bike, dry, way)
        if isinstance(found, str):
            words[found] = None
        elif found is not None:
            values.append(found)
    return WetValues(tuple(values), tuple(words), tuple(untold))


def _may_be_as_in_the_dry(name: str, setup: SetUp, dry: SetUp | None, way: _Way | str) -> bool:
    """Return whether damping of which the dry count is known may stand there still: the count of now, or how
    it is counted, is not written down.
    """
    before, now = (one.adjusters.get(name) if one is not None else None for one in (dry, setup))
    return before is not None and (now is None or (isinstance(way, str) and now == before))


def _opening(name: str, adjuster: Adjuster, damp: bool, end_share: float) -> _Way | str:
    """Return how damping is opened, the end of its range left alone; words where the file does not tell."""
    clicks = CLICKS_DAMP if damp else CLICKS_WET
    label = label_of(name)
    if adjuster.counted_from is None or adjuster.range is None or adjuster.unit not in ("click", "turn"):
        return f"{label}: open it {clicks:g} clicks by hand, the file does not say how it is counted"
    one = 1.0 if adjuster.unit == "click" else CLICK_IN_TURNS
    step = adjuster.step or 1.0
    steps = math.floor(clicks * one / step + 0.5 + _ROUNDING)
    if not steps:
        return f"{label}: open it by {clicks * one:g} of a turn, less than its step of {step:g}"
    low, high = sorted(adjuster.range)
    enough = min(max(math.floor(OPENED_ENOUGH * one / step + 0.5 + _ROUNDING), 1), steps)
    spare = max(step, end_share * (high - low)) + 2 * _ROUNDING
    return _Way("damping", steps, enough, step, 1.0 if adjuster.counted_from == "closed" else -1.0, spare)


def _taking_off(name: str, adjuster: Adjuster, bike: Bike) -> _Way | str:
    """Return how preload is taken off; in words where a turn of it, or how it is counted, is not known."""
    end = what_of(name, adjuster)[0]
    per_turn = {"front": bike.front, "rear": bike.rear}.get(end, BikeEnd()).preload_per_turn
    mm = {"mm": 1.0, "turn": per_turn.to("mm") if per_turn is not None else None}.get(adjuster.unit or "")
    label = label_of(name)
    if mm is None:
        unit = adjuster.unit or "step"
        return f"{label}: {PRELOAD_OFF_MM:g} mm less by hand, what one {unit} moves is not known"
    if adjuster.counted_from is None or adjuster.range is None:
        return f"{label}: {PRELOAD_OFF_MM:g} mm less by hand, the file does not say how it is counted"
    step = adjuster.step or 1.0
    steps = math.floor(PRELOAD_OFF_MM / mm / step + 0.5 + _ROUNDING)
    if not steps:
        return f"{label}: {PRELOAD_OFF_MM:g} mm less is under its step of {step * mm:g} mm"
    return _Way("preload", steps, steps, step, 1.0 if adjuster.counted_from == "closed" else -1.0, -_ROUNDING)


def _value(name: str, setup: SetUp, bike: Bike, dry: SetUp | None, way: _Way) -> WetValue | str | None:
    label, now = label_of(name), setup.adjusters.get(name)
    if now is None:
        return f"{label} is not written down"
    base = _dry_value(name, bike, dry, way.sign) if dry is not None else None
    if base is None:
        return _NO_DRY
    low, high = sorted(bike.adjusters[name].range or (base, base))
    if not low <= base <= high or not low <= now <= high:
        return None
    room = (high - base if way.sign > 0 else base - low) - way.spare
    steps = min(way.steps, math.floor(room / way.step)) if room > 0 else 0
    if steps <= 0:
        return f"{label} has no more range that way" if way.sign * (now - base) <= 0 else None
    if way.sign * (now - base) >= min(way.enough, steps) * way.step - 1e-6:
        return None
    new = round(base + way.sign * steps * way.step, 6)
    written = int(new) if new == int(new) else new
    moved = setting_difference("adjusters", name, now, written, bike).words
    held = counted(show_number(now), bike.adjusters[name])
    return WetValue(way.part, ("setup", "adjusters", name), label, now, written, moved, held)


def _dry_value(name: str, bike: Bike, dry: SetUp, sign: float) -> float | None:
    """Return what an adjuster stood at in the dry; of two legs that do the same the more open one."""
    if damping_unused(name, dry, bike):
        return None
    adjuster = bike.adjusters[name]
    legs = [name]
    if adjuster.leg in ("left", "right"):
        here = what_of(name, adjuster)
        legs = [
            key
            for key, one in bike.adjusters.items()
            if one.leg in ("left", "right") and what_of(key, one) == here
        ]
    found = [dry.adjusters[one] for one in legs if one in dry.adjusters]
    return max(found, key=lambda value: sign * value, default=None)
