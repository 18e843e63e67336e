"""The air in a tyre from one cold check to the next: what was lost, by the gas law at like temperature."""

import datetime as dt
from collections.abc import Iterator
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.outside_pressure import AirMoves, apart_error_kpa, outside_at_both
from paddock_tui.calc.tyre_pressure import same_air_kpa_gauge
from paddock_tui.limits import Limits
from paddock_tui.limits.matters import LOST_HOLD, SETTLED
from paddock_tui.limits.pressures import LEAK
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.seen import AirInTyre, ColdCheck, ColdReading, Seen
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS
from paddock_tui.records.session_parts import PressureReading

WITHIN = dt.timedelta(hours=72)
"""How far apart two cold checks tell of a puncture; weeks apart every tyre has lost some."""

TWICE_WITHIN = dt.timedelta(days=7)
APART = dt.timedelta(hours=12)
ENDS = ("front", "rear")


def cold_of(outing: Outing, end: str) -> ColdReading | None:
    """Return the cold reading of one end as it was found; None where it was not read, or on warmers."""
    reading = outing.session.pressures.get("cold")
    read = getattr(reading, end) if reading is not None else None
    return None if reading is None or read is None else _reading(outing, reading, read.to("kPa"))


def left_with(outing: Outing, end: str) -> ColdReading | None:
    """Return the cold reading of one end as the tyre was left: as set, else as found."""
    reading = outing.session.pressures.get("cold")
    if reading is None:
        return None
    left = getattr(reading, f"set_to_{end}") or getattr(reading, end)
    return None if left is None else _reading(outing, reading, left.to("kPa"))


def _reading(outing: Outing, reading: PressureReading, kpa: float) -> ColdReading:
    date, clock = outing.session.date, reading.at or outing.session.start
    at = dt.datetime.combine(date, clock) if date is not None and clock is not None else None
    celsius = reading.temperature.to("C") if reading.temperature is not None else None
    return ColdReading(kpa, celsius, (reading.gauge or "").strip(), at, outing.id, outing.outside)


def after_readings(seen: AirInTyre, outing: Outing, end: str) -> AirInTyre:
    """Return what is remembered of a tyre after an outing: its last cold reading, and what was lost."""
    cold, let, lost = seen.cold, seen.let, seen.lost
    found = _loss(seen, outing, end)
    if found is not None:
        lost = (*lost, found.at)
    left = left_with(outing, end)
    if left is not None:
        if not left.gauge and cold is not None:
            # It was by the one in use, which was last named.
            left = attrs.evolve(left, gauge=cold.gauge)
        cold, let = left, False
    others = (one for name, one in outing.session.pressures.items() if name != "cold")
    if any(getattr(one, f"set_to_{end}") is not None for one in others):
        let = True
    return AirInTyre(cold, let, lost)


class _Loss(NamedTuple):
    """Air that a cold reading shows to be lost: how much, in bar, and when that was read."""

    bar: float
    at: dt.datetime


_last_losses: dict[str, tuple[AirInTyre, Outing, _Loss | None]] = {}
"""What was last found at each end: the walk asks for it when it opens matters, and when it remembers."""


def _loss(before: AirInTyre, outing: Outing, end: str) -> _Loss | None:
    """Return what a tyre lost by an outing's cold reading; None where nothing is compared, or no loss."""
    last = _last_losses.get(end)
    if last is not None and last[0] is before and last[1] is outing:
        return last[2]
    now = cold_of(outing, end)
    lost = lost_bar(before, now, outing.limits)
    found = None
    if lost is not None and now is not None and now.at is not None:
        found = _Loss(lost, now.at) if _is_lost(lost, before, now, outing.limits) else None
    _last_losses[end] = before, outing, found
    return found


def lost_bar(before: AirInTyre, now: ColdReading | None, limits: Limits) -> float | None:
    """Return how much less than the same air a cold reading shows, in bar; None where nothing is compared.

    Both have to be cold, of the same gauge, at most three days apart, and no air let out or put in since.
    """
    then = before.cold
    if then is None or now is None or before.let or None in (then.at, now.at, then.celsius, now.celsius):
        return None
    # A reading without a gauge is by the one in use, which was last named.
    if (now.gauge or then.gauge) != then.gauge or not _near(then.at, now.at):
        return None
    try:
        outside = outside_at_both(then.outside, now.outside, AirMoves.of(limits))
        if outside is None:
            return None
        first, second = (one.kpa for one in outside)
        expected = same_air_kpa_gauge(then.kpa, then.celsius or 0.0, now.celsius or 0.0, first, second)
    except (Inconsistent, OutOfRange):
        return None
    return (expected - now.kpa) / 100


def _is_lost(lost: float | None, before: AirInTyre, now: ColdReading, limits: Limits) -> bool:
    """Return whether so much in bar is a loss: over the limit by more than the air outside may be off."""
    if lost is None or before.cold is None or lost <= limits[LEAK]:
        return False
    return lost - _off_bar(before.cold, now, limits) > limits[LEAK]


def _off_bar(then: ColdReading, now: ColdReading, limits: Limits) -> float:
    """Return how far what was lost between two readings may be off, for the air outside, in bar."""
    return apart_error_kpa(then.outside, now.outside, AirMoves.of(limits)) / 100


def _near(then: dt.datetime | None, now: dt.datetime | None) -> bool:
    return then is not None and now is not None and dt.timedelta() <= now - then <= WITHIN


def _opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for end, name in outing.tyres.items():
        before = seen.tyre(name, end)
        lost = _loss(before, outing, end)
        if lost is None:
            continue
        again = any(lost.at - one <= TWICE_WITHIN for one in before.lost)
        yield opened(
            "pressure-lost-unanswered",
            name,
            outing,
            ("answers", "pressure-lost-unanswered"),
            at=lost.at.time(),
            record="tyres",
            home=outing.session.tyres or "",
            subject=end,
            value=lost.bar,
            cause=_left_with(before),
            grade=3 if again or lost.bar >= outing.limits[LOST_HOLD] - 1e-9 else 2,
        )


def _left_with(before: AirInTyre) -> str:
    """Say what the tyre had been left with, and when."""
    cold = before.cold
    if cold is None:
        return ""
    gauge = f" by {cold.gauge}" if cold.gauge else ""
    return f"{cold.kpa / 100:.2f} bar{gauge} in session {cold.of}"


def _carried(one: Opened, outing: Outing) -> Opened:
    """Remember the last check of the tyre, and whether two of them twelve hours apart read alike."""
    if outing.tyres.get(one.subject) != one.whom:
        return one
    now = cold_of(outing, one.subject)
    if now is None or now.at is None or now.celsius is None:
        return one
    before = next((known for known in one.checks if now.at - known.at >= APART), None)
    checks = (*one.checks, ColdCheck(now.at, now, left_with(outing, one.subject) or now))
    settled = before is not None and _alike(before.left, now, outing.limits)
    return attrs.evolve(one, checks=checks[-4:], answered=one.answered or settled)


def _alike(left: ColdReading, now: ColdReading, limits: Limits) -> bool:
    """Return whether two readings are of the same air, however far the air outside may be off."""
    lost = lost_bar(AirInTyre(cold=left), now, limits)
    return lost is not None and abs(lost) + _off_bar(left, now, limits) <= limits[SETTLED] + 1e-9


def _closes(one: Opened, outing: Outing) -> bool:
    return _carried(one, outing).answered


def _says(one: Opened, now: Present) -> Said | None:
    if now.here(one) and one.grade < 3:
        # The reading of now says it itself.
        return None
    old = now.session.date is not None and one.date is not None and now.session.date - one.date > WITHIN * 4
    hold = one.grade == 3
    return Said(
        NOTE if old and not hold else HOLD if hold else SERIOUS,
        f"The {one.subject} tyre lost {one.value:.2f} bar, {now.when(one)}: cause not found.",
        "Twice within a week, or a third of a bar at once, is a puncture or a valve until it is found."
        if hold
        else f"It was left with {one.cause}. Air that went once goes on going: a nail, a valve, the rim.",
        "Soapy water on tread, valve and rim; enter in the tyre set's file what was found and done, or read "
        "it cold twice, twelve hours apart, with the same gauge.",
        f"{one.subject} lost {one.value:.2f} bar {one.stamp}; cause not found",
    )


declare(
    MatterKind(
        "pressure-lost-unanswered",
        "tyre",
        SERIOUS,
        "tyres",
        "valve or puncture found, by whom; or two cold checks twelve hours apart that read the same, "
        "with what the air outside may have moved",
        _opens,
        _says,
        closes=_closes,
        carried=_carried,
        guard="set to, warmers, another gauge, a hot reading: never compared; weeks later: a note",
        at="session:pressures.cold.{subject}",
        afterwards=False,
        limits=(SETTLED, LOST_HOLD),
    )
)
