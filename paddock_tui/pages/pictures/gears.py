"""Speed over revs: the gears of now as digits, those with other sprockets as dots under them."""

from collections.abc import Iterator

from paddock_tui.calc.gearing import GearTrain
from paddock_tui.pages.pictures.data import Chart, ChartLevel, Dot

LEGEND = "digit: gear now  · the same gear with the others"

_LEVELS = 9
_KM_H = 3.6


def gears_chart(now: GearTrain, other: GearTrain | None, limit_rpm: float, others: str = "") -> Chart:
    """Draw each gear from where the upshift before it lands to the limiter, speed in km/h across."""
    levels = tuple(_levels(now, limit_rpm))
    dots = [Dot(speed, revs, "·") for _, speed, revs in _points(other, levels, limit_rpm)] if other else []
    dots += [Dot(speed, revs, str(gear)) for gear, speed, revs in _points(now, levels, limit_rpm)]
    top = max(one.speed_m_s(limit_rpm, len(one.gears)) for one in (now, other) if one is not None) * _KM_H
    high = 50.0 * (int(top / 50.0) + 1)
    step = 50 if high <= 300 else 100
    ticks = [(float(at), f"{at}") for at in range(0, int(high), step)]
    return Chart(
        0.0,
        high,
        levels,
        tuple(dots),
        _sentence(now, other, limit_rpm, others),
        ticks=(*ticks, (high, "km/h")),
        heads=("gear", "now, km/h", "lands at, rpm", *(("others, km/h",) if other else ())),
        table=tuple(_rows(now, other, limit_rpm)),
    )


def _levels(now: GearTrain, limit_rpm: float) -> Iterator[ChartLevel]:
    """Return levels from the limiter down to somewhat below the revs that the widest upshift leaves."""
    low = limit_rpm * min(
        (higher / lower for lower, higher in zip(now.gears, now.gears[1:], strict=False)), default=0.5
    )
    step = max(500.0, 500.0 * round((limit_rpm - low) / (_LEVELS - 1) / 500.0 + 0.3))
    for place in range(_LEVELS):
        revs = limit_rpm - place * step
        if revs > 0.0:
            yield ChartLevel(revs, f"{revs:.0f}" if place % 2 == 0 else "")


def _points(
    drive: GearTrain, levels: tuple[ChartLevel, ...], limit_rpm: float
) -> Iterator[tuple[int, float, float]]:
    for gear in range(1, len(drive.gears) + 1):
        lands = _lands(drive, gear, limit_rpm)
        for level in levels:
            if level.at >= lands - 1e-6:
                yield gear, drive.speed_m_s(level.at, gear) * _KM_H, level.at


def _lands(drive: GearTrain, gear: int, limit_rpm: float) -> float:
    if gear == 1:
        return 0.0
    return limit_rpm * drive.gears[gear - 1] / drive.gears[gear - 2]


def _sentence(now: GearTrain, other: GearTrain | None, limit_rpm: float, others: str) -> str:
    top = len(now.gears)
    fitted = f"{now.front_teeth}/{now.rear_teeth}"
    said = f"gear {top} at the limiter {now.speed_m_s(limit_rpm, top) * _KM_H:.0f} km/h with {fitted}"
    if other is None:
        return said
    return f"{said}, {other.speed_m_s(limit_rpm, top) * _KM_H:.0f} with {others}"


def _rows(now: GearTrain, other: GearTrain | None, limit_rpm: float) -> Iterator[tuple[str, ...]]:
    for gear in range(1, len(now.gears) + 1):
        lands = "" if gear == 1 else f"{_lands(now, gear, limit_rpm):.0f}"
        row = (str(gear), f"{now.speed_m_s(limit_rpm, gear) * _KM_H:.0f}", lands)
        yield (*row, f"{other.speed_m_s(limit_rpm, gear) * _KM_H:.0f}") if other is not None else row
