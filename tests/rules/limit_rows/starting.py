"""Rows of the limits on cold pressures."""

from tests.rules.cases.starting import PLAN, WINDOW, cold
from tests.rules.limit_rows.row import LimitRow, row

WINDOWED = "start-outside-the-vendors-window"
LOW, PLANNED = "starting-pressure-too-low", "starting-pressure-off-the-plan"

ROWS: list[LimitRow] = [
    row(LOW, "front_under", "caution", cold("1.69 bar", "1.90 bar")),
    row(LOW, "front_under", "", cold("1.70 bar", "1.90 bar")),
    row(LOW, "front_under", "", cold("1.71 bar", "1.90 bar")),
    row(LOW, "rear_under", "caution", cold("2.10 bar", "1.49 bar")),
    row(LOW, "rear_under", "", cold("2.10 bar", "1.50 bar")),
    row(LOW, "rear_under", "", cold("2.10 bar", "1.51 bar")),
    row(LOW, "serious_more", "serious", cold("1.39 bar", "1.90 bar")),
    row(LOW, "serious_more", "caution", cold("1.40 bar", "1.90 bar")),
    row(LOW, "serious_more", "caution", cold("1.41 bar", "1.90 bar")),
    row(WINDOWED, "more_than", "", *WINDOW, cold("2.16 bar", "1.90 bar")),
    row(WINDOWED, "more_than", "", *WINDOW, cold("2.15 bar", "1.90 bar")),
    row(WINDOWED, "more_than", "caution", *WINDOW, cold("2.14 bar", "1.90 bar")),
    row(WINDOWED, "more_than", "caution", *WINDOW, cold("2.41 bar", "1.90 bar")),
    row(PLANNED, "more_than", "", *PLAN, cold("2.29 bar", "1.90 bar")),
    row(PLANNED, "more_than", "", *PLAN, cold("2.30 bar", "1.90 bar")),
    row(PLANNED, "more_than", "caution", *PLAN, cold("2.31 bar", "1.90 bar")),
    row(PLANNED, "more_than", "", *PLAN, cold("1.90 bar", "1.90 bar")),
    row(PLANNED, "more_than", "caution", *PLAN, cold("1.89 bar", "1.90 bar")),
]
