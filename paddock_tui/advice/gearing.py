"""Gearing: speeds and revs in each gear, the longest straight, and the pit lane."""

from collections.abc import Iterable

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
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
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.gearing import GearTrain, final_ratio, on_straight, revs_per_gear, shifts
from paddock_tui.calc.instruments import MARKING_ROLLS_LESS, ROLLED_SHARE
from paddock_tui.calc.speeds import limiter_figure_km_h
from paddock_tui.facts.pace import last_with_top_speed
from paddock_tui.facts.wheel_circumference import rear_rolled
from paddock_tui.records import common as c
from paddock_tui.records.electronics import function_of, speed_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.shapes import Number, Series

GEARING = "gearing"
"""The id of the calculator."""

METHOD = Method(
    "speed = revs / 60 x circumference / (primary x gear x rear teeth / front teeth)",
    "no slip; a loaded tyre rolls 1 to 3 % less than its marking says, and less again when leaned",
    "6 to 120 teeth, up to 30 000 rpm",
    "elementary; slip as in Mannering and Washburn, problem 2.7",
)
RATIO = Method("rear teeth / front teeth", "nothing", "6 to 120 teeth", "elementary")

INPUTS = (
    Input("front", "front sprocket", c.TEETH),
    Input("rear", "rear sprocket", c.TEETH),
    Input("primary", "primary ratio", Number(0.5, 5, step=0.001)),
    Input("gears", "gearbox", Series(1, 8, "the ratios of the gears, first gear first")),
    Input("round", "rolling circumference", c.LENGTH, "of the rear tyre"),
    Input("limit", "rev limit", c.REVS),
    Input("fastest", "speed on the straight", c.SPEED, "", "fastest speed on the longest straight"),
    Input("seen", "revs seen there", c.REVS),
    Input("pit", "pit-lane speed", c.PIT_SPEED),
)
_DRIVE = ("front", "rear", "primary", "gears", "round")


def gearing(about: About) -> Calculator:
    """Return the calculator of gearing, filled from set-up, bike, tyres and day."""
    return Calculator(GEARING, "gearing", INPUTS, _filled(about), _compute)


def _filled(about: About) -> dict[str, FilledInput]:
    found = filled_sprockets(about)
    bike, where = about.situation.bike, f"bike {about.id_of('bike')}"
    if bike is not None:
        for key, value in (
            ("primary", bike.drive.primary),
            ("gears", bike.drive.gearbox),
            ("limit", bike.drive.rev_limit),
        ):
            if value is not None:
                found[key] = FilledInput(value, where)
    rolled = _rolled(about)
    if rolled is not None:
        found["round"] = rolled
    found |= _straight(about)
    pit = _pit(about)
    return found | ({"pit": pit} if pit is not None else {})


def filled_sprockets(about: About) -> dict[str, FilledInput]:
    """Fill both sprockets from the set-up, else as the bike was delivered."""
    bike = about.situation.bike
    found: dict[str, FilledInput] = {}
    for end in ("front", "rear"):
        fitted = getattr(about.setup, f"{end}_sprocket")
        delivered = getattr(bike.drive, f"{end}_sprocket") if bike is not None else None
        if fitted is not None:
            found[end] = FilledInput(fitted, about.place)
        elif delivered is not None:
            found[end] = FilledInput(delivered, f"as delivered, bike {about.id_of('bike')}")
    return found


def _rolled(about: About) -> FilledInput | None:
    found = rear_rolled(about.tyre("rear"), about.situation.bike)
    if found is None:
        return None
    where = f"tyre set {about.id_of('tyres')}" if found.role == "tyres" else f"bike {about.id_of('bike')}"
    if found.marking is None:
        return FilledInput(found.length, f"measured, {where}")
    return FilledInput(found.length, f"from the marking {found.marking}, {where}: rolls 1 to 3 % less")


def _straight(about: About) -> dict[str, FilledInput]:
    """Return the fastest speed of this session, else of the last one at this venue, and the revs seen
    then.
    """
    found: dict[str, FilledInput] = {}
    venue = about.id_of("venue")
    last = last_with_top_speed(about.history, venue) if venue is not None else None
    here = [(last.session, f"session {last.id}")] if last is not None else []
    for session, where in (*here, (about.session, about.place)):
        same = (session.setup.front_sprocket, session.setup.rear_sprocket) == (
            about.setup.front_sprocket,
            about.setup.rear_sprocket,
        )
        if session.top_speed is not None:
            found["fastest"] = FilledInput(session.top_speed, where)
            found.pop("seen", None)
            if session.top_revs is not None and same:
                found["seen"] = FilledInput(session.top_revs, where)
    return found


def _pit(about: About) -> FilledInput | None:
    """Return the posted limit of the day, else what the limiter is set to."""
    day, bike = about.situation.day, about.situation.bike
    if day is not None and day.limits.pit_lane is not None:
        return FilledInput(day.limits.pit_lane, f"as posted, day {about.id_of('day')}")
    for name, control in sorted(bike.controls.items()) if bike is not None else ():
        if function_of(name, control) == "pit-limiter" and bike is not None:
            value = value_in_force(name, about.setup, bike)
            speed = speed_of(value) if value is not None else None
            return None if speed is None else FilledInput(speed, f"the limiter of {about.place}")
    return None


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (
        _ratio(inputs),
        _limiter(inputs),
        _on_straight(inputs),
        _in_gears(inputs),
        _drops(inputs),
        _in_pits(inputs),
        _measured(inputs),
    )


def _drive(inputs: Inputs) -> GearTrain:
    return GearTrain(
        inputs.number("primary"),
        tuple(inputs.value("gears")),
        int(inputs.number("front")),
        int(inputs.number("rear")),
        inputs.amount("round", "m"),
    )


def _ratio(inputs: Inputs) -> Answer:
    def make() -> Answered:
        final = final_ratio(int(inputs.number("front")), int(inputs.number("rear")))
        said = f"{figures.figure(final, 3)} final"
        step = f"{inputs.number('rear'):g} / {inputs.number('front'):g} = {figures.figure(final, 3)}"
        if inputs.known(*_DRIVE):
            overall = _drive(inputs)
            all_gears = (
                figures.figure(overall.overall(gear), 2) for gear in range(1, len(overall.gears) + 1)
            )
            every = " ".join(all_gears)
            each = f"{overall.primary:g} x each gear x {figures.figure(final, 3)} = {every}"
            return Answered(
                f"{said}; overall {every}", f"ratio {figures.figure(final, 3)}", steps=(step, each)
            )
        return Answered(said, f"ratio {figures.figure(final, 3)}", steps=(step,))

    return told(inputs, "ratio", "ratios", ("front", "rear"), RATIO, make, ("primary", "gears"))


def _limiter(inputs: Inputs) -> Answer:
    def make() -> Answered:
        drive, revs = _drive(inputs), inputs.amount("limit", "rpm")
        top = figures.speed(drive.speed_m_s(revs, len(drive.gears)), inputs.units)
        step = f"{_revs_to_speed(drive, revs, len(drive.gears))} = {top}"
        low, high = (
            figures.speed(one.speed_m_s(revs, len(one.gears)), inputs.units) for one in _as_rolls(inputs)
        )
        text = (
            f"{top} in top gear at {figures.revs(revs)}; {low.partition(' ')[0]} to {high} as the tyre rolls"
        )
        return Answered(text, f"limiter about {top} in top", more=(_rolls_words(inputs),), steps=(step,))

    return told(inputs, "limiter", "speed at the limiter", (*_DRIVE, "limit"), METHOD, make)


def _on_straight(inputs: Inputs) -> Answer:
    def make() -> Answered:
        drive, fastest = _drive(inputs), inputs.amount("fastest", "m/s")
        found = on_straight(drive, inputs.amount("limit", "rpm"), fastest)
        seen = figures.speed(fastest, inputs.units)
        at = f"{seen} is about {figures.revs(found.revs_rpm)} in top"
        over = drive.overall(len(drive.gears))
        step = (
            f"{fastest:.2f} m/s x 60 x {over:.3f} / {drive.circumference_m:.3f} m = "
            f"{figures.revs(found.revs_rpm)}"
        )
        if found.reaches_limiter:
            return Answered(f"{at}: the limiter comes in before the end", f"{at}: limiter", steps=(step,))
        left = figures.revs(found.spare_rpm)
        last = f"{figures.revs(inputs.amount('limit', 'rpm'))} - {figures.revs(found.revs_rpm)} = {left}"
        least = min(
            on_straight(one, inputs.amount("limit", "rpm"), fastest).spare_rpm for one in _as_rolls(inputs)
        )
        sure = f", at least {figures.revs(least)} as the tyre rolls" if least > 0 else ", maybe none"
        text = f"{at}, {left} to the limiter{sure}"
        return Answered(
            text, f"about {left} to the limiter", more=(_rolls_words(inputs),), steps=(step, last)
        )

    needs = (*_DRIVE, "limit", "fastest")
    return told(inputs, "straight", "longest straight", needs, METHOD, make)


def _in_gears(inputs: Inputs) -> Answer:
    def make() -> Answered:
        drive, revs = _drive(inputs), inputs.amount("limit", "rpm")
        speeds = [figures.speed(drive.speed_m_s(revs, gear), inputs.units) for gear in _gears(drive)]
        unit = speeds[0].partition(" ")[2]
        said = f"{' '.join(one.partition(' ')[0] for one in speeds)} {unit}"
        each = (f"gear {gear}: {_revs_to_speed(drive, revs, gear)}" for gear in _gears(drive))
        text = f"{said}, first to top; {_rolls_words(inputs)}"
        return Answered(text, steps=(*each, f"first to top = {said}"))

    return told(inputs, "gears", "limiter, by gear", (*_DRIVE, "limit"), METHOD, make)


def _drops(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = shifts(tuple(inputs.value("gears")), inputs.amount("limit", "rpm"))
        if not found:
            raise Inconsistent("gears", "there is one, and no shift")
        revs, gears = inputs.amount("limit", "rpm"), tuple(inputs.value("gears"))
        said = f"{' '.join(figures.revs(one.drop_rpm).partition(' ')[0] for one in found)} rpm"
        each = (
            f"into {one.to_gear}: {revs:g} rpm x (1 - {gears[one.to_gear - 1]:g} / "
            f"{gears[one.to_gear - 2]:g})"
            for one in found
        )
        return Answered(f"{said}, from first up", steps=(*each, f"from first up = {said}"))

    return told(inputs, "drops", "rpm drop per upshift", ("gears", "limit"), METHOD, make)


def _in_pits(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = revs_per_gear(_drive(inputs), inputs.amount("pit", "m/s"))
        said = [figures.revs(one.revs_rpm).partition(" ")[0] for one in found]
        short = f"{said[0]} rpm in first" + (f", {said[1]} in second" if len(said) > 1 else "")
        posted = inputs.amount("pit", "km/h")
        steps = tuple(
            f"{step:g} km/h: {limiter_figure_km_h(posted, step):g} km/h" for step in (1.0, 5.0, 10.0)
        )
        drive, speed = _drive(inputs), inputs.amount("pit", "m/s")
        every = f"{' '.join(said)} rpm"
        each = (
            f"gear {gear}: {speed:.2f} m/s x 60 x {drive.overall(gear):.3f} / {drive.circumference_m:.3f} m"
            for gear in _gears(drive)
        )
        limiter = f"limiter in steps of {', of '.join(steps)}"
        last = f"first to top = {every}"
        return Answered(f"{every}, first to top", short, more=(limiter,), steps=(*each, last))

    return told(inputs, "pits", "pit lane, by gear", (*_DRIVE, "pit"), METHOD, make)


def _measured(inputs: Inputs) -> Answer:
    def make() -> Answered:
        drive = _drive(inputs)
        fastest, revs = inputs.amount("fastest", "m/s"), inputs.amount("seen", "rpm")
        ratio = drive.speed_m_s(revs, len(drive.gears)) / fastest - 1.0 if fastest > 0 else 0.0
        way = "more" if ratio >= 0 else "less"
        by_revs = drive.speed_m_s(revs, len(drive.gears))
        step = f"{by_revs:.2f} m/s / {fastest:.2f} m/s - 1 = {abs(ratio) * 100:.1f} % {way}"
        return Answered(
            f"the revs stand for {abs(ratio) * 100:.1f} % {way} than the speed seen: tyre, slip, readings",
            steps=(step,),
        )

    needs = (*_DRIVE, "fastest", "seen")
    return told(inputs, "measured", "revs against speed", needs, METHOD, make)


def _as_rolls(inputs: Inputs) -> tuple[GearTrain, GearTrain]:
    """Return the drive with the tyre rolling as little and as far as its circumference may."""
    drive = _drive(inputs)
    if _is_marked(inputs):
        shares = (1.0 - MARKING_ROLLS_LESS[1], 1.0 - MARKING_ROLLS_LESS[0])
    else:
        shares = (1.0 - ROLLED_SHARE, 1.0 + ROLLED_SHARE)
    least, most = (attrs.evolve(drive, circumference_m=drive.circumference_m * one) for one in shares)
    return least, most


def _is_marked(inputs: Inputs) -> bool:
    return inputs.origin("round").startswith("from the marking")


def _rolls_words(inputs: Inputs) -> str:
    """Say what the tyre's rolling leaves open in a speed."""
    if _is_marked(inputs):
        return f"{MARKING_ROLLS_LESS[0] * 100:g} to {MARKING_ROLLS_LESS[1] * 100:g} % less as the tyre rolls"
    return f"give or take {ROLLED_SHARE * 100:g} %, as the circumference was taken"


def _revs_to_speed(drive: GearTrain, revs: float, gear: int) -> str:
    """Write the speed at revs in a gear with the numbers put in."""
    return f"{revs:g} rpm / 60 x {drive.circumference_m:.3f} m / {drive.overall(gear):.3f}"


def _gears(drive: GearTrain) -> range:
    return range(1, len(drive.gears) + 1)
