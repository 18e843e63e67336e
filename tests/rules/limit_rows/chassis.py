"""At, below and above the limits of the rules about suspension, geometry and changes of them."""

from tests.rules.cases.before import copied, ridden
from tests.rules.cases.method import turned
from tests.rules.cases.suspension import (
    DAMPER,
    NO_TOP_OUT,
    REAR_TABLES,
    ROAD,
    TRAVEL,
    dived,
    free,
    measured,
    sag,
    theirs,
    used,
)
from tests.rules.limit_rows.row import LimitRow, row
from tests.rules.situations import Change, put

SAG, STEP, HEIGHT, END, CLOSED, RIDER = (
    "rider-sag-out-of-its-window",
    "step-too-large",
    "height-step-too-large",
    "damping-near-its-end",
    "steering-damper-nearly-closed",
    "set-up-of-another-rider",
)
LONG = put("bike", "front.travel", "200 mm")
SET_30 = put("bike", "front.technician_rider_sag", "30 mm")
CLEAR = put("bike", "front.highest_clear", "20 mm")
ONE_SCREW: tuple[Change, ...] = (
    put("bike", "adjusters.front-rebound.unit", "turn"),
    put("bike", "adjusters.front-rebound.range", [0, 2.5]),
)
CLICKS_12 = put("bike", "adjusters.front-rebound.range", [0, 12])
CLICKS_40 = put("bike", "adjusters.front-rebound.range", [0, 40])


def sags(limit: str, *rows: tuple[float, str], at: tuple[Change, ...] = ()) -> list[LimitRow]:
    """Give a row for each rider sag in mm, with what it raises."""
    return [row(SAG, limit, severity, NO_TOP_OUT, *at, sag(mm)) for mm, severity in rows]


def screw(turns: float) -> Change:
    """Set rebound of a screw without clicks; a fifth of its way is half a turn."""
    return turned("front-rebound", turns)


def height(mm: str) -> Change:
    """Set the fork height."""
    return put("session", "setup.fork_height", mm)


def weight(kg: str) -> Change:
    """Give the rider another weight; the set-up is of one of 90 kg."""
    return put("rider", "weight", kg)


FREE, RIDDEN_BEFORE, USED = "rear-free-sag-and-spring", "sag-not-as-ridden-before", "travel-used-up"

ROWS = [
    *(
        row(FREE, limit, severity, *REAR_TABLES, sag(30, "rear"), free(mm))
        for limit, mm, severity in (
            ("free_least", 2.5, "note"),
            ("free_least", 3, ""),
            ("free_least", 3.5, ""),
            ("free_most", 19.5, ""),
            ("free_most", 20, ""),
            ("free_most", 20.5, "note"),
        )
    ),
    *(
        row(RIDDEN_BEFORE, "apart", severity, sag(mm), **ridden(measured(30)))
        for mm, severity in ((35.5, ""), (36, "note"), (36.5, "note"))
    ),
    *(
        row(USED, "left", severity, TRAVEL, **ridden(used("110 mm"), dived(read)))
        for read, severity in (("117.5 mm", ""), ("118 mm", "caution"), ("118.5 mm", "caution"))
    ),
    *sags("track_least", (19.5, "caution"), (20, ""), (20.5, "")),
    *sags("track_most", (39.5, ""), (40, ""), (40.5, "caution")),
    *sags("road_least", (19.5, "caution"), (20, ""), (20.5, ""), at=(ROAD,)),
    *sags("road_most", (39.5, ""), (40, ""), (40.5, "caution"), at=(ROAD,)),
    # Of 200 mm of travel 23 to 30 % are 46 to 60 mm, 28 to 35 % are 56 to 70 mm.
    *sags("track_least_percent", (45.5, "caution"), (46, ""), (46.5, ""), at=(LONG,)),
    *sags("track_most_percent", (59.5, ""), (60, ""), (60.5, "caution"), at=(LONG,)),
    *sags("road_least_percent", (55.5, "caution"), (56, ""), (56.5, ""), at=(LONG, ROAD)),
    *sags("road_most_percent", (69.5, ""), (70, ""), (70.5, "caution"), at=(LONG, ROAD)),
    *sags("long_travel", (41, "caution"), at=(put("bike", "front.travel", "150 mm"),)),
    *sags("long_travel", (41, ""), at=(put("bike", "front.travel", "151 mm"),)),
    *sags("serious_under", (14.5, "serious"), (15, "caution"), (15.5, "caution")),
    *sags("serious_over", (49.5, "caution"), (50, "caution"), (50.5, "serious")),
    *sags("technician_within", (34.5, ""), (35, ""), (35.5, "caution"), (24.5, "caution"), at=(SET_30,)),
    # Of twenty-four clicks a fifth are 4.8, of twelve 2.4, of forty 8.
    row(
        STEP,
        "clicks",
        "caution",
        CLICKS_12,
        turned("front-rebound", 11),
        **copied(turned("front-rebound", 6), bike=(CLICKS_12,)),
    ),
    row(
        STEP,
        "clicks",
        "",
        CLICKS_12,
        turned("front-rebound", 10),
        **copied(turned("front-rebound", 6), bike=(CLICKS_12,)),
    ),
    row(
        STEP,
        "clicks",
        "",
        CLICKS_12,
        turned("front-rebound", 9),
        **copied(turned("front-rebound", 6), bike=(CLICKS_12,)),
    ),
    row(STEP, "share", "", CLICKS_40, turned("front-rebound", 20), **copied()),
    row(STEP, "share", "caution", CLICKS_40, turned("front-rebound", 21), **copied()),
    row(STEP, "share", "", CLICKS_40, turned("front-rebound", 19), **copied()),
    row(
        STEP, "damping_turns", "", *ONE_SCREW, screw(1.75), **copied(*ONE_SCREW, screw(1.25), bike=ONE_SCREW)
    ),
    row(STEP, "damping_turns", "", *ONE_SCREW, screw(1.5), **copied(*ONE_SCREW, screw(1.25), bike=ONE_SCREW)),
    row(
        STEP,
        "damping_turns",
        "caution",
        *ONE_SCREW,
        screw(2),
        **copied(*ONE_SCREW, screw(1.25), bike=ONE_SCREW),
    ),
    row(STEP, "preload_turns", "", turned("front-preload", 8.5), **copied()),
    row(STEP, "preload_turns", "caution", turned("front-preload", 9), **copied()),
    row(STEP, "preload_turns", "", turned("front-preload", 8), **copied()),
    row(HEIGHT, "height", "", CLEAR, height("9.5 mm"), **copied(height("5 mm"))),
    row(HEIGHT, "height", "", CLEAR, height("10 mm"), **copied(height("5 mm"))),
    row(HEIGHT, "height", "caution", CLEAR, height("10.5 mm"), **copied(height("5 mm"))),
    row(END, "share", "caution", turned("front-rebound", 2)),
    row(END, "share", "", turned("front-rebound", 3)),
    row(END, "share", "", turned("front-rebound", 4)),
    # Of eight clicks a tenth is less than one: one click at least.
    row(
        END,
        "share",
        "caution",
        put("bike", "adjusters.front-rebound.range", [0, 8]),
        turned("front-rebound", 0),
    ),
    row(END, "share", "", put("bike", "adjusters.front-rebound.range", [0, 8]), turned("front-rebound", 1)),
    # Exactly a tenth of the way from either end is in it.
    row(END, "share", "caution", CLICKS_40, turned("front-rebound", 4)),
    row(END, "share", "caution", CLICKS_40, turned("front-rebound", 36)),
    row(END, "share", "", CLICKS_40, turned("front-rebound", 35)),
    row(END, "share", "", put("bike", "adjusters.front-rebound.range", [1, 4]), turned("front-rebound", 2)),
    row(CLOSED, "clicks", "serious", DAMPER, turned("steering-damper", 1)),
    row(CLOSED, "clicks", "serious", DAMPER, turned("steering-damper", 2)),
    row(CLOSED, "clicks", "", DAMPER, turned("steering-damper", 3)),
    row(RIDER, "weight", "", weight("80.5 kg"), **theirs()),
    row(RIDER, "weight", "", weight("80 kg"), **theirs()),
    row(RIDER, "weight", "caution", weight("79.5 kg"), **theirs()),
]
