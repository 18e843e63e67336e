"""At, below and above the limits of what stays open by comparison."""

import datetime as dt

from tests.rules.cases.incidents import earlier
from tests.rules.cases.standing import (
    BOOK,
    FORK_4,
    PADS_15,
    RIDDEN,
    THRICE,
    fork,
    lost,
    measured,
    reading,
    slack,
)
from tests.rules.limit_rows.row import LimitRow, row
from tests.rules.situations import at, put, went_before

SLACK, HEIGHT, STOOD, LOST, WEAR, OLD, HELP, OFFS, SLEPT = (
    "chain-slack-outside-the-book",
    "height-never-ridden",
    "bike-stood-or-workshop",
    "pressure-lost-unanswered",
    "wear-near-its-limit",
    "wear-reading-old",
    "help-lowered",
    "run-offs-in-a-day",
    "slept-little",
)


def stood(days: int, severity: str) -> LimitRow:
    """Ride last so many days before."""
    last = dt.date(2026, 5, 16) - dt.timedelta(days=days)
    return row(STOOD, "days", severity, history=went_before({**RIDDEN, "date": last}), going_out=True)


def settled(then: str, severity: str) -> LimitRow:
    """Lose air, then check twice, fifteen hours apart."""
    first = {**RIDDEN, "date": dt.date(2026, 5, 13), "pressures.cold": reading("2.20 bar")}
    second = {**RIDDEN, "date": dt.date(2026, 5, 14), "pressures.cold": reading("2.00 bar")}
    third = {"date": dt.date(2026, 5, 15), "pressures.cold": reading("2.00 bar", dt.time(17, 0))}
    fourth = {"number": 1, "pressures.cold": reading(then)}
    tyres = {"may": {"front": {"kind": "track-day"}, "rear": {"kind": "track-day"}}}
    return row(LOST, "settled", severity, history=went_before(first, second, third, fourth, tyres=tyres))


def step(low: int, to: int, severity: str, name: str = "levels") -> LimitRow:
    """Lower traction from a level to another, both under where the group starts on the dry."""
    before = went_before({**RIDDEN, "setup.controls.traction": low})
    return row(HELP, name, severity, at("traction", to), history=before)


ROWS = [
    *(row(SLACK, "hold_under", worst, *BOOK, *slack(mm)) for mm, worst in ((24, "hold"), (25, "serious"))),
    *(row(SLACK, "over", worst, *BOOK, *slack(mm)) for mm, worst in ((50, ""), (51, "serious"))),
    *(
        row(HEIGHT, "caution_up_to", worst, fork(f"{mm} mm"), history=FORK_4, going_out=True)
        for mm, worst in ((4, ""), (6, "caution"), (7, "hold"))
    ),
    stood(90, ""),
    stood(91, "caution"),
    row(LOST, "hold_from", "serious", **lost("2.29 bar")),
    row(LOST, "hold_from", "hold", **lost("2.30 bar")),
    # From one day to the next the air outside may have moved by 0.03 bar of the 0.05.
    settled("1.98 bar", ""),
    settled("1.97 bar", "serious"),
    settled("2.02 bar", ""),
    settled("2.03 bar", "serious"),
    *(
        row(WEAR, "within", worst, PADS_15, put("session", "front_pads", f"{mm} mm"))
        for mm, worst in ((2.4, "caution"), (2.5, "caution"), (2.6, ""))
    ),
    row(OLD, "outings", "", **measured(7)),
    row(OLD, "outings", "", **measured(8)),
    row(OLD, "outings", "note", **measured(9), going_out=True),
    step(5, 4, ""),
    step(5, 3, "caution"),
    step(5, 4, "", "share"),
    step(5, 3, "caution", "share"),
    row(OFFS, "times", "", *THRICE[:2]),
    row(OFFS, "times", "caution", *THRICE),
    row(OFFS, "times", "caution", *THRICE, history=went_before(earlier("off the track"))),
    *(
        row(SLEPT, "hours", worst, put("session", "slept", f"{hours} h"))
        for hours, worst in ((4.5, "note"), (5, ""), (5.5, ""))
    ),
]
