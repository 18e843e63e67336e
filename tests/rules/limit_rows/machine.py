"""At, below and above the limits of the rules about fuel, brakes, rider, event and the road."""

import datetime as dt

from tests.rules.cases.event import LIMIT, noise
from tests.rules.cases.fuel import LEARNT, tank
from tests.rules.cases.incidents import MOVING, earlier
from tests.rules.cases.road import HOME, cold, tread
from tests.rules.cases.work import service
from tests.rules.limit_rows.row import LimitRow, row
from tests.rules.situations import Change, put, went_before

FUEL = "fuel-short-at-the-flag"
ADDED = put("session", "fuel_added", "6.4 l")
HUNDRED = (put("session", "planned_laps", 98), put("bike", "tank.consumption", "4 l/100km"))


def left(litres: float, severity: str, limit: str = "hold_below") -> LimitRow:
    """Ten laps of four kilometres at a learnt 16 l/100 km need 6.4 l; so many litres are left."""
    return row(FUEL, limit, severity, ADDED, tank(6.4 + litres), history=LEARNT)


def share(litres: float, severity: str) -> LimitRow:
    """A hundred laps at 4 l/100 km need 16 l, 15 % of which are 2.4 l."""
    return row(FUEL, "share", severity, *HUNDRED, tank(16 + litres))


def sparing(litres: float, severity: str) -> LimitRow:
    """Ten laps of four kilometres at an entered 16 l/100 km need 6.4 l, 85 % of which are 5.44 l."""
    entered = put("bike", "tank.consumption", "16 l/100km")
    return row(FUEL, "sparing", severity, tank(litres), entered)


def last(day: int) -> Change:
    """Change the brake fluid a year before, on this day of May."""
    return service("brake-fluid", last=dt.date(2025, 5, day))


def pads(millimetres: float) -> Change:
    """Measure the front pads."""
    return put("session", "front_pads", f"{millimetres:g} mm")


def start(hour: int, minute: int) -> Change:
    """Start at this time."""
    return put("session", "start", dt.time(hour, minute))


FATIGUE = [("", 3), ("serious", 4), ("serious", 5)]
AIR = [("note", 2), ("note", 3), ("", 4)]
HEATER = [("note", 7), ("note", 8), ("", 9)]
NOISE = [("caution", "101"), ("caution", "100"), ("", "99.5")]
ROAD = [("caution", "2.25"), ("caution", "2.30"), ("", "2.35")]
TREAD = [
    ("serious", "0.9"),
    ("caution", "1.0"),
    ("caution", "1.1"),
    ("caution", "1.5"),
    ("", "1.6"),
    ("", "1.7"),
]

ROWS = [
    left(-0.1, "hold"),
    left(0.0, "caution"),
    left(0.1, "caution"),
    left(1.9, "caution", "reserve"),
    sparing(5.4, "hold"),
    sparing(5.44, "serious"),
    sparing(5.5, "serious"),
    left(2.0, "", "reserve"),
    left(2.1, "", "reserve"),
    share(2.3, "caution"),
    share(2.4, ""),
    share(2.5, ""),
    row("two-falls-in-a-day", "falls", "", MOVING),
    row("two-falls-in-a-day", "falls", "serious", MOVING, history=went_before(earlier(moving=True))),
    row(
        "two-falls-in-a-day",
        "falls",
        "serious",
        MOVING,
        history=went_before(earlier(moving=True), earlier(moving=True)),
    ),
    *(row("rider-spent", "fatigue", worst, put("session", "fatigue", score)) for worst, score in FATIGUE),
    row("pads-below-the-least", "millimetres", "hold", pads(1.4)),
    row("pads-below-the-least", "millimetres", "", pads(1.5)),
    row("pads-below-the-least", "millimetres", "", pads(1.6)),
    row("brake-fluid-old", "months", "caution", last(15)),
    row("brake-fluid-old", "months", "", last(16)),
    row("brake-fluid-old", "months", "", last(17)),
    *(row("noise-near-the-limit", "within", worst, LIMIT, noise(f"{read} dB(A)")) for worst, read in NOISE),
    *(
        row("road-home-at-track-pressure", "below", worst, *HOME, cold(front=f"{bar} bar", rear="2.9 bar"))
        for worst, bar in ROAD
    ),
    *(
        row("little-tread-for-the-road", limit, worst, *HOME, tread("rear", f"{depth} mm"))
        for limit in ("serious_below", "caution_below")
        for worst, depth in TREAD
    ),
    *(row("frost-near", "below", worst, put("session", "air", f"{air} C")) for worst, air in AIR),
    *(
        row("fumes-in-a-closed-space", "below", worst, put("session", "air", f"{air} C"))
        for worst, air in HEATER
    ),
    *(
        row("dusk-on-the-road", limit, worst, *HOME, put("session", "date", date), start(hour, minute))
        for limit, date, hour in (
            ("summer", dt.date(2026, 5, 16), 20),
            ("winter", dt.date(2026, 11, 7), 17),
        )
        for worst, hour, minute in (("", hour - 1, 59), ("caution", hour, 0), ("caution", hour, 1))
    ),
]
