"""Rules about tyre pressures: against the target, against each other, against the last check."""

from collections.abc import Mapping
from decimal import Decimal

from paddock_tui.calc.cooling_pressure import Freshness
from paddock_tui.calc.tyre_air_learning import HOT_WITHIN_MIN
from paddock_tui.facts.past import End
from paddock_tui.facts.tyre_air import AirMoved, Lost
from paddock_tui.facts.tyre_pressures import Hot, PressureRead, StartPressure, Worked
from paddock_tui.limits import Limits
from paddock_tui.limits.pressures import (
    AIR_DRIFT,
    AIR_WEATHER,
    LEAK,
    OFF_TARGET_CAUTION,
    OFF_TARGET_SERIOUS,
    OVER_RANGE,
    ROAD_FRONT,
    ROAD_REAR,
    UNDER_RANGE,
)
from paddock_tui.limits.weather import MOVED_SINCE_SET
from paddock_tui.quantities import Quantity
from paddock_tui.records.hot_target import HotTarget
from paddock_tui.rules.core import (
    CAUTION,
    HOLD,
    NOTE,
    PRESSURES,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)


@rule(
    "hot-below-cold",
    SERIOUS,
    per="end",
    when=("same_air",),
    at="session:pressures.hot.{subject}",
    rank=PRESSURES,
)
def hot_below_cold(end: End, cold_read: PressureRead, hot_read: Hot) -> Result:
    """A tyre read lower hot than it went out cold: swapped, misread, or it leaks."""
    if hot_read.pressure.to("kPa") >= cold_read.left_at.to("kPa"):
        return None
    return RaisedFinding(
        message=f"The {end} reads {hot_read.pressure} hot, but went out with {cold_read.left_at} cold.",
        why="Heat can only raise it: front and rear are swapped, the gauge was misread, or the tyre leaks.",
        remedy=Remedy("Read it again; look for a leak at valve and rim with soapy water before riding."),
    )


@rule("no-hot-pressure-last-time", NOTE, at="session:pressures.hot.front", when=("to_come",), rank=PRESSURES)
def no_hot_pressure_last_time(last_without_hot: str) -> Result:
    """The last session on these tyres has no hot pressures: the next cold start is a guess."""
    return RaisedFinding(
        message="No hot pressures were read after the last session on these tyres.",
        why="Without them nobody knows what the cold pressure turned into, and the next start is a guess.",
        remedy=Remedy(
            f"Read them first thing when you come back, within {HOT_WITHIN_MIN:g} minutes of parking."
        ),
        path=("pressures", "hot", "front"),
    )


@rule("hot-reading-too-late", NOTE, gathers=("hot_read",), at="session:pressures.hot.at", rank=PRESSURES)
def hot_reading_too_late(hot_read: Mapping[End, Hot]) -> Result:
    """Hot readings that were taken some minutes after parking."""
    late = [one for one in hot_read.values() if one.fresh not in (None, Freshness.HOT)]
    if not late:
        return None
    is_late = any(one.fresh is Freshness.LATE for one in late)
    word = "saved, but out of every trend" if is_late else "warm, not hot"
    return RaisedFinding(
        message=f"Hot pressures read {late[0].minutes} min after parking: {word}.",
        why="A tyre cools from the moment it stands; the reading is less than it was on track.",
        remedy=Remedy("Read the pressures first, before the helmet comes off."),
    )


@rule(
    "hot-pressure-off-its-target",
    CAUTION,
    per="end",
    at="session:pressures.hot.set_to_{subject}",
    limits=(OFF_TARGET_CAUTION, OFF_TARGET_SERIOUS),
    rank=PRESSURES,
)
def hot_pressure_off_its_target(end: End, hot_read: Hot, hot_target: HotTarget, limits: Limits) -> Result:
    """A hot pressure far from this tyre's target, and nobody has set it right yet.

    A warm reading is lower than the hot one was: too high it tells something, too low nothing.
    """
    over, nearest = hot_target.over_bar(hot_read.pressure), hot_target.nearest(hot_read.pressure)
    fresh = hot_read.fresh is Freshness.HOT
    if hot_read.set_to is not None or abs(over) <= limits[OFF_TARGET_CAUTION] or (over < 0 and not fresh):
        return None
    way, does = (
        ("over", "the contact patch is small and hot")
        if over > 0
        else ("under", "the carcass flexes too much")
    )
    return RaisedFinding(
        message=f"The {end} is {_by(abs(over), nearest)} {way} its hot target of {hot_target}.",
        why=f"So far off, {does}: feel, grip and wear all suffer.",
        remedy=Remedy(
            "Set it to the target once while it is hot, and read it again after the next session.",
            (SetValue(("pressures", "hot", f"set_to_{end}"), str(nearest), "session"),) if fresh else (),
        ),
        severity=SERIOUS if abs(over) > limits[OFF_TARGET_SERIOUS] else CAUTION,
    )


@rule(
    "tyre-worked-outside-its-range",
    CAUTION,
    per="end",
    at="session:pressures.hot.{subject}",
    limits=(UNDER_RANGE, OVER_RANGE),
    rank=PRESSURES,
)
def tyre_worked_outside_its_range(end: End, worked: Worked, limits: Limits) -> Result:
    """Cold and hot reading say that the gas got far colder or hotter than this tyre works at."""
    if worked.low_c - limits[UNDER_RANGE] <= worked.gas_c <= worked.high_c + limits[OVER_RANGE]:
        return None
    hot = worked.gas_c > worked.high_c
    return RaisedFinding(
        message=f"The {end} got {'too hot' if hot else 'too little heat'}; air about {worked.gas_c:.0f} C.",
        why=f"It works from {worked.low_c:g} to {worked.high_c:g} C; the air stays below the rubber. "
        + ("It was started low, or it is worked hard." if hot else "It was started high, or not worked."),
        remedy=Remedy(
            "Start it so that it meets its hot target; the set-up page works it out beside the row."
        ),
        path=("pressures", "hot", end),
    )


@rule(
    "pressure-lost",
    SERIOUS,
    per="end",
    at="session:pressures.cold.{subject}",
    limits=(LEAK, AIR_DRIFT, AIR_WEATHER),
    rank=PRESSURES,
)
def pressure_lost(
    end: End, lost_since: Lost, cold_read: PressureRead, to_come: bool, limits: Limits
) -> Result:
    """A tyre has lost pressure since its last check, temperature allowed for: a puncture or a valve.

    By more than what is not known of the pressure outside may be.
    """
    if (lost_since.kpa - lost_since.off_kpa) / 100 <= limits[LEAK]:
        return None
    second = " A second reading agrees." if lost_since.confirmed else ""
    return RaisedFinding(
        message=f"The {end} lost {_by(lost_since.kpa / 100, cold_read.left_at)} since {lost_since.since}.",
        why=f"Temperature allowed for, air has gone: a nail, a valve, the rim.{second}",
        remedy=Remedy(
            "Leave the bike parked: soapy water on tread, valve and rim, and read it again in ten minutes."
        ),
        severity=HOLD if lost_since.confirmed else SERIOUS,
    )


@rule(
    "road-pressure-on-the-track",
    CAUTION,
    per="end",
    at="setup:setup.{subject}_start",
    when=("on_dry", "organised", "to_come"),
    limits=(ROAD_FRONT, ROAD_REAR),
    rank=PRESSURES,
)
def road_pressure_on_the_track(end: End, goes_out_with: StartPressure, limits: Limits) -> Result:
    """A cold pressure as it is for the road: too much once the tyre is hot."""
    most = limits[ROAD_FRONT if end == "front" else ROAD_REAR]
    if goes_out_with.pressure.to("bar") < most:
        return None
    return RaisedFinding(
        message=f"The {end} goes out with {goes_out_with.pressure} cold: a figure for the road.",
        why="On the track it rises by a third of a bar and more: a small contact patch that gets greasy.",
        remedy=Remedy(
            "Ask the tyre vendor for the track figure; many start at 2.1 to 2.3 front, 1.9 to 2.2 rear."
        ),
    )


@rule(
    "weather-moved-since-set",
    NOTE,
    at="session:pressures.cold.front",
    when=("to_come", "organised"),
    limits=(MOVED_SINCE_SET,),
    rank=PRESSURES,
)
def weather_moved_since_set(air_moved: AirMoved, limits: Limits) -> Result:
    """It got much warmer or colder since the cold pressures were set."""
    by = air_moved.now_c - air_moved.then_c
    if abs(by) <= limits[MOVED_SINCE_SET]:
        return None
    way, more = ("warmer", "more") if by > 0 else ("colder", "less")
    changes = [
        f"{end} {_by(abs(kpa) / 100, pressure)} {more} than {pressure}"
        for end, (pressure, kpa) in air_moved.tyres.items()
    ]
    since = "" if air_moved.since == "then" else f" {air_moved.since}"
    return RaisedFinding(
        message=f"The air is {abs(by):.0f} C {way} than when the pressures were set{since}.",
        why=f"By the gas law, the same air, tyres cold and in the shade: {', '.join(changes)}.",
        remedy=Remedy("Read the cold pressures again, in the shade, with the same gauge."),
    )


def _by(bar: float, like: Quantity) -> str:
    """Write a difference of pressures in the unit of another figure."""
    made = Quantity(Decimal(repr(bar)), "bar")
    return made.shown_in(like.unit, {"bar": 2, "psi": 1}.get(like.unit, 0))
