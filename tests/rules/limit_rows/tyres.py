"""At, below and above the limits of the rules about tyres and pressures."""

import datetime as dt
from typing import Any

from tests.rules.cases.pressures import COLD_AT_20, LONG, RANGED, TARGETS, cold, hot, weather
from tests.rules.cases.tyres import SLICKS, TREADED, USED, both, ends, made, queued, soaked, track
from tests.rules.limit_rows.row import row
from tests.rules.situations import put, went_before

AT_ODDS = "air-pressure-not-of-the-altitude"
TODAY = dt.date(2026, 5, 16)
CHECKED: dict[str, Any] = {
    "pressures": {"cold": {"front": "2.30 bar", "rear": "1.90 bar", "temperature": "20 C"}}
}
HEAT, TARGET, RANGE, ROAD = (
    "race-tyres-without-heat",
    "hot-pressure-off-its-target",
    "tyre-worked-outside-its-range",
    "road-pressure-on-the-track",
)

ROWS = [
    row(HEAT, "cold_below", "serious", SLICKS, track("14 C")),
    row(HEAT, "cold_below", "caution", SLICKS, track("15 C")),
    row(HEAT, "cold_below", "caution", SLICKS, track("16 C")),
    row(HEAT, "warm_over", "caution", TREADED, track("19 C")),
    row(HEAT, "warm_over", "caution", TREADED, track("20 C")),
    row(HEAT, "warm_over", "note", TREADED, track("21 C")),
    row("warmers-on-too-short", "least", "caution", SLICKS, *soaked(44)),
    row("warmers-on-too-short", "least", "", SLICKS, *soaked(45)),
    row("warmers-on-too-short", "least", "", SLICKS, *soaked(46)),
    row("off-the-warmers-too-long", "most", "", SLICKS, *queued(2)),
    row("off-the-warmers-too-long", "most", "", SLICKS, *queued(3)),
    row("off-the-warmers-too-long", "most", "note", SLICKS, *queued(4)),
    *(
        row("warmers-too-hot", "road_over", worst, both("road"), USED, put("session", "warmers_at", at))
        for at, worst in (("59 C", ""), ("60 C", ""), ("61 C", "caution"))
    ),
    *(
        row("warmers-too-hot", "any_over", worst, SLICKS, USED, put("session", "warmers_at", at))
        for at, worst in (("94 C", ""), ("95 C", ""), ("96 C", "serious"))
    ),
    row("tyre-old", "years", "caution", made("1821")),
    row("tyre-old", "years", "", made("2221")),
    row("tyre-old", "race_years", "caution", ends("slick", "slick"), made("1823")),
    row("tyre-old", "race_years", "", ends("slick", "slick"), made("2223")),
    row(TARGET, "caution_over", "", TARGETS, *hot(front="2.53 bar")),
    row(TARGET, "caution_over", "caution", TARGETS, *hot(front="2.55 bar")),
    row(TARGET, "serious_over", "caution", TARGETS, *hot(front="2.73 bar")),
    row(TARGET, "serious_over", "serious", TARGETS, *hot(front="2.75 bar")),
    # 2.10 bar at 20 C are 2.37 bar at 45 C and 2.85 bar at 90 to 95 C.
    row(RANGE, "below", "caution", RANGED, COLD_AT_20, LONG, *hot(front="2.34 bar")),
    row(RANGE, "below", "", RANGED, COLD_AT_20, LONG, *hot(front="2.39 bar")),
    row(RANGE, "above", "", RANGED, COLD_AT_20, LONG, *hot(front="2.88 bar")),
    row(RANGE, "above", "caution", RANGED, COLD_AT_20, LONG, *hot(front="2.93 bar")),
    *(
        row(
            "pressure-lost",
            "more_than",
            worst,
            cold(front, temperature="20 C"),
            history=went_before(CHECKED),
        )
        # The air outside may be 0.01 bar other than then.
        for front, worst in (("2.16 bar", ""), ("2.14 bar", "serious"))
    ),
    *(
        row(
            "pressure-lost",
            name,
            worst,
            cold("2.14 bar", temperature="20 C"),
            put("garage", f"limits.pressure-lost.{name}", hpa),
            history=went_before({**CHECKED, "date": day}),
        )
        for name, day in (("air_drifts", TODAY), ("weather_moves", TODAY - dt.timedelta(days=1)))
        for hpa, worst in (("10 hPa", "serious"), ("25 hPa", ""))
    ),
    *(
        row(
            AT_ODDS,
            "more_than",
            worst,
            put("venue", "altitude", "0 m"),
            put("session", "air_pressure", pressure),
            *changed,
        )
        for pressure, worst, changed in (
            ("963 hPa", "note", ()),
            ("963.5 hPa", "", ()),
            ("1063 hPa", "", ()),
            ("1063.5 hPa", "note", ()),
            (
                "1063.5 hPa",
                "",
                (put("garage", f"limits.{AT_ODDS}.more_than", "51 hPa"),),
            ),
        )
    ),
    row(ROAD, "front_from", "", cold("2.40 bar")),
    row(ROAD, "front_from", "caution", cold("2.41 bar")),
    row(ROAD, "front_from", "caution", cold("2.42 bar")),
    row(ROAD, "rear_from", "", cold(rear="2.61 bar")),
    row(ROAD, "rear_from", "caution", cold(rear="2.62 bar")),
    row(ROAD, "rear_from", "caution", cold(rear="2.63 bar")),
    row("weather-moved-since-set", "more_than", "", *weather("20 C")),
    row("weather-moved-since-set", "more_than", "note", *weather("21 C")),
    row("weather-moved-since-set", "more_than", "", *weather("19 C")),
]
