"""Fuel: litres for what is planned, what is left at the flag, and the cans for a day."""

import functools
from collections.abc import Iterable
from decimal import Decimal

from paddock_tui.advice import figures
from paddock_tui.advice.about import About, usual_lap
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    told,
)
from paddock_tui.advice.fuel_range import INPUTS as RANGE
from paddock_tui.advice.fuel_range import tank_gives
from paddock_tui.calc.fuel import (
    FuelPlan,
    cans_for_day,
    fuel_mass,
    laps_from_minutes,
    plan_fuel,
    to_add_l,
)
from paddock_tui.facts.fuel import in_tank, laps_around, rate_of, reserve_at_flag_l, warm_up_laps
from paddock_tui.facts.race import class_entered
from paddock_tui.limits import Limits
from paddock_tui.limits.fuel import RESERVE, RESERVE_SHARE
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount, Number, Whole
from paddock_tui.records.timetable import group_today, slots_of
from paddock_tui.rules.core import SetValue

INPUTS = (
    Input("laps", "planned laps", Number(0, 500, unit="laps")),
    Input("minutes", "planned time", Amount("time", "min", 0, 1440)),
    Input("usual", "usual lap", Number(10, 3600, unit="s", step=0.1)),
    Input("length", "lap length", c.LAP_LENGTH),
    Input("rate", "consumption", c.CONSUMPTION),
    Input("around", "out and in laps", Whole(0, 20, unit="laps")),
    Input("warm_up", "warm-up laps", Whole(0, 20, unit="laps")),
    Input("own_reserve", "rider's own reserve", c.VOLUME),
    Input("tank", "fuel in the tank", c.VOLUME),
    Input("capacity", "tank, brimmed", c.VOLUME, "what it holds"),
    Input("sessions", "sessions in the day", Whole(0, 40)),
    Input("can", "size of a can", c.VOLUME),
    *RANGE,
)


def fuel(about: About) -> Calculator:
    """Return the calculator of fuel, filled from plan, venue, history and bike."""
    limits = about.situation.limits
    return Calculator("fuel", "fuel", INPUTS, _filled(about), functools.partial(_compute, limits))


def method(limits: Limits) -> Method:
    """Return how fuel is reckoned, with the reserve in force."""
    litres, share = limits[RESERVE], 100.0 * limits[RESERVE_SHARE]
    return Method(
        f"laps x length x consumption, and a reserve of {litres:g} l or the rider's own, "
        f"{share:g} % where that is more",
        "every lap a whole one, also out of the pit lane: it errs toward more",
        "to 500 laps; the sharpest map burns more; brim the tank where weight does not matter",
        "elementary; reserve and the default consumption: paddock practice, unpublished",
    )


def _filled(about: About) -> dict[str, FilledInput]:
    session, place = about.session, about.place
    found: dict[str, FilledInput] = {}
    if session.planned_laps is not None:
        found["laps"] = FilledInput(session.planned_laps, place)
    if session.planned_time is not None:
        found["minutes"] = FilledInput(session.planned_time, place)
    usual = usual_lap(about.history, session.rider, about.id_of("venue"))
    if usual is not None:
        found["usual"] = FilledInput(usual.seconds, usual.where)
    venue = about.situation.venue
    if venue is not None and venue.length is not None:
        found["length"] = FilledInput(venue.length, f"venue {about.id_of('venue')}")
    words = "the planned time holds them" if "laps" not in found else "one out, one in"
    found["around"] = FilledInput(laps_around(session), words)
    entered = class_entered(session, about.situation.day)
    found["warm_up"] = FilledInput(warm_up_laps(session, entered), f"a {session.kind or 'session'}")
    rider = about.situation.rider
    if rider is not None and rider.limits.fuel_reserve is not None:
        found["own_reserve"] = FilledInput(rider.limits.fuel_reserve, f"rider {about.id_of('rider')}")
    found["rate"] = _rate(about)
    tank = _tank(about, found["rate"].value)
    if tank is not None:
        found["tank"] = tank
    bike = about.situation.bike
    if bike is not None and bike.tank.capacity is not None:
        found["capacity"] = FilledInput(bike.tank.capacity, f"bike {about.id_of('bike')}")
    if bike is not None and bike.tank.road_consumption is not None:
        found["road_rate"] = FilledInput(bike.tank.road_consumption, f"bike {about.id_of('bike')}")
    day = about.situation.day
    if day is not None and day.distance_home is not None:
        found["home"] = FilledInput(day.distance_home, f"day {about.id_of('day')}")
    found["can"] = FilledInput(Quantity(Decimal(10), "l"), "a common can")
    return found | _sessions(about)


def _rate(about: About) -> FilledInput:
    """Return the consumption, as the bike's file says it or learnt to a tenth."""
    found = rate_of(about.session, about.setup.mode, about.situation.bike, about.history)
    if found.given is not None:
        return FilledInput(found.given, f"default of bike {about.id_of('bike')}")
    return FilledInput(_l_per_100km(found.l_per_100km), found.where)


def _l_per_100km(rate: float) -> Quantity:
    return Quantity(Decimal(f"{rate:.1f}"), "l/100km")


def _tank(about: About, rate: Quantity) -> FilledInput | None:
    """Return what the tank holds before the outing: brimmed, or counted from the last brim."""
    if about.situation.session is None:
        return None
    found = in_tank(about.session, about.situation.bike, about.history, rate.to("l/100km"))
    if found is None:
        return None
    if found.given is not None:
        return FilledInput(found.given, f"{found.where}, {about.place}")
    return FilledInput(Quantity(Decimal(f"{found.litres:.1f}"), "l"), found.where)


def _sessions(about: About) -> dict[str, FilledInput]:
    day, session = about.situation.day, about.session
    if day is None:
        return {}
    group = group_today(day, session.rider, session.bike)
    slots = slots_of(day, group)
    if not slots:
        return {}
    return {
        "sessions": FilledInput(
            len(slots), f"timetable of {group or 'the only group'}, day {about.id_of('day')}"
        )
    }


def _compute(limits: Limits, inputs: Inputs) -> Iterable[Answer]:
    laps = ("laps",) if inputs.known("laps") or not inputs.known("minutes") else ("minutes", "usual")
    needs = (*laps, "length", "rate", "around", "warm_up")
    yield _needed(limits, inputs, needs)
    yield _at_flag(limits, inputs, (*needs, "tank"))
    yield _to_add(limits, inputs, (*needs, "tank"))
    yield _cans(limits, inputs, (*needs, "sessions", "can"))
    yield from tank_gives(inputs, max(limits[RESERVE], inputs.amount_or("own_reserve", "l", 0.0)))


def _plan(inputs: Inputs) -> FuelPlan:
    if inputs.known("laps"):
        laps = inputs.number("laps")
    else:
        laps = laps_from_minutes(inputs.amount("minutes", "min"), inputs.number("usual"))
    length, rate = inputs.amount("length", "km"), inputs.amount("rate", "l/100km")
    return plan_fuel(laps, length, rate, inputs.number("around"), inputs.number("warm_up"))


def _reserve(limits: Limits, inputs: Inputs, plan: FuelPlan) -> float:
    own = inputs.amount("own_reserve", "l") if inputs.known("own_reserve") else None
    return reserve_at_flag_l(plan.needed_l, own, limits)


def _needed(limits: Limits, inputs: Inputs, needs: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        plan = _plan(inputs)
        reserve = _reserve(limits, inputs, plan)
        whole = figures.volume(plan.needed_l + reserve, inputs.units)
        ride, kept = (figures.volume(one, inputs.units) for one in (plan.needed_l, reserve))
        km = figures.distance(plan.distance_km, inputs.units)
        mass = fuel_mass(plan.needed_l + reserve)
        more = f"that is {mass.low_kg:.1f} to {mass.high_kg:.1f} kg of petrol (EN 228, at 15 C)"
        steps = (
            f"{plan.distance_km:.1f} km x {inputs.amount('rate', 'l/100km'):g} l/100km / 100 = {ride}",
            f"{ride} + {kept} reserve = {whole}",
        )
        text = f"{whole}: {ride} for {km}, {kept} reserve"
        return Answered(text, f"needs {whole}", (), (more,), steps)

    return told(inputs, "needed", "to start with", needs, method(limits), make, ("own_reserve",))


def _at_flag(limits: Limits, inputs: Inputs, needs: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        plan = _plan(inputs)
        left = plan.at_flag_l(inputs.amount("tank", "l"))
        if left < 0:
            short = figures.volume(-left, inputs.units)
            lacks = f"{plan.needed_l:.2f} l - {inputs.amount('tank', 'l'):g} l = {short}"
            return Answered(f"it runs out {short} before the flag", f"{short} too little", steps=(lacks,))
        said = figures.volume(left, inputs.units)
        below = " (less than the reserve)" if left < _reserve(limits, inputs, plan) else ""
        step = f"{inputs.amount('tank', 'l'):g} l - {plan.needed_l:.2f} l = {said}"
        return Answered(f"{said} left{below}", f"{said} left at the flag{below}", steps=(step,))

    return told(inputs, "flag", "at the flag", needs, method(limits), make)


def _to_add(limits: Limits, inputs: Inputs, needs: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        plan, tank = _plan(inputs), inputs.amount("tank", "l")
        missing = to_add_l(tank - plan.needed_l, _reserve(limits, inputs, plan))
        if missing <= 0:
            enough = f"{tank:g} l - {plan.needed_l:.2f} l keeps {_reserve(limits, inputs, plan):g} l: nothing"
            return Answered("nothing: the reserve is there at the flag", steps=(enough,))
        said = figures.volume(missing, inputs.units)
        reserve = _reserve(limits, inputs, plan)
        working = (
            f"{plan.needed_l:.2f} l + {reserve:.2f} l - {tank:.2f} l, rounded up to half a litre: {said}",
        )
        room = inputs.amount("capacity", "l") - tank if inputs.known("capacity") else None
        if room is not None and missing > room:
            free = figures.volume_at_most(max(room, 0.0), inputs.units)
            lacking = figures.volume_at_least(plan.needed_l + reserve - tank - max(room, 0.0), inputs.units)
            text = f"brim it ({free}), and {lacking} is still missing: plan fewer laps"
            last = f"{said} do not go in, {free} do, missing: {lacking}"
            return Answered(text, f"brim it, {lacking} missing", steps=(*working, last))
        return Answered(
            f"{said} more, for the reserve at the flag",
            f"add {said}",
            (SetValue(("fuel_added",), said, "session"),),
            steps=working,
        )

    uses = ("own_reserve", "capacity")
    return told(inputs, "add", "to add", needs, method(limits), make, uses)


def _cans(limits: Limits, inputs: Inputs, needs: tuple[str, ...]) -> Answer:
    def make() -> Answered:
        plan = _plan(inputs)
        ride = plan.needed_l * inputs.number("sessions")
        reserve = _reserve(limits, inputs, plan)
        tank = inputs.amount_or("tank", "l", 0.0)
        found = cans_for_day(ride + reserve, tank, inputs.amount("can", "l"))
        litres = figures.volume(found.litres, inputs.units)
        cans = f"{found.cans} can{'s' if found.cans != 1 else ''}"
        steps = (
            f"{inputs.number('sessions'):g} x {plan.needed_l:.2f} l + {reserve:.2f} l - {tank:g} l = "
            f"{litres}",
            f"{litres} / {inputs.amount('can', 'l'):g} l, rounded up = {cans}",
        )
        return Answered(f"{litres} besides what is in the tank: {cans}", steps=steps)

    return told(inputs, "cans", "to bring for the day", needs, method(limits), make, ("tank", "own_reserve"))
