"""What one tyre has behind it: its age by the date code, heat cycles, distance and hours."""

import functools
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About, End, tyre_of
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.advice.ridden_so_far import count_words, counted_words, day_of, so_far, until_words
from paddock_tui.calc.date_code import age_years, read_date_code
from paddock_tui.facts.tyre_counts import TyreCount, tyre_count
from paddock_tui.records import common as c
from paddock_tui.records.shapes import DateCode, Whole
from paddock_tui.records.tyres import TyreSet

AGE = Method(
    "day - first day of the week on the side wall",
    "the code is the tyre's own; a tyre ages in storage too",
    "tyres from 2000 on: three digits do not tell their decade",
    "49 CFR 574.5; at what age it is too old its maker says",
)
CYCLES = Method(
    "start value + one for each session on it, whatever its length",
    "warmers within 15 minutes of parking keep a cycle going; sessions on other bikes are not seen",
    "how many a tyre bears its vendor says",
    "paddock practice, unpublished",
)
RIDDEN = Method(
    "start value + the distance of each session on it, as entered or laps x lap length",
    "every lap a whole one; hours by ridden time, laps, or from going out to parking",
    "sessions on other bikes are not seen",
    "elementary",
)
_NONE = "none counted on this bike"

INPUTS = (
    Input("code", "date code", DateCode()),
    Input("on", "on", c.DAY, "", "day"),
    Input("cycles", "heat cycles before", Whole(0, 200)),
    Input("distance", "distance before", c.DISTANCE),
)


def tyre_life(about: About, name: str, tyres: TyreSet, end: End) -> Calculator:
    """Return the age and counts of one tyre of the set `name`, over the sessions of the bike in question."""
    count = tyre_count(so_far(about).with_sets({name: tyres}), name, end, tyres)
    where = f"tyre set {count.first}"
    given = filled(
        code=if_known(tyre_of(tyres, end).date_code, f"tyre set {name}"),
        on=if_known(day_of(about), about.place if about.session.date is not None else "today"),
        cycles=if_known(count.cycles_before, where),
        distance=if_known(count.distance_before, where),
    )
    lines = tuple(_counted(about, name, count))
    return Calculator("tyre life", f"{end} tyre", INPUTS, given, functools.partial(_compute, count, lines))


def _counted(about: About, name: str, count: TyreCount) -> Iterable[str]:
    """Say over which sessions was counted, and from which set the tyre goes on."""
    bike = about.id_of("bike")
    on = f"sessions of bike {bike}" if bike is not None else "no sessions: no bike is looked at"
    yield f"counted from {on}: {count_words(count.sessions)} on this tyre"
    yield until_words(about)
    if count.first != name:
        yield f"this tyre goes on from set {count.first}"


def _compute(count: TyreCount, lines: tuple[str, ...], inputs: Inputs) -> Iterable[Answer]:
    return (_age(inputs), _cycles(count, lines, inputs), _ridden(count, lines, inputs))


def _age(inputs: Inputs) -> Answer:
    def make() -> Answered:
        code, on = inputs.value("code"), inputs.value("on")
        made = read_date_code(code)
        years = f"{age_years(code, on):.1f} years old"
        return Answered(f"{years} on {on}: week {made.week} of {made.year}", years)

    return told(inputs, "age", "age", ("code", "on"), AGE, make)


def _cycles(count: TyreCount, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        least = "" if count.cycles_before is not None else "at least "
        if not count.sessions:
            said = count_words(count.all_cycles, "heat cycle")
            return Answered(f"{said} before, {_NONE}", _NONE, (), lines)
        said = f"{least}{count_words(count.all_cycles, 'heat cycle')}"
        counted = counted_words(count.sessions, count.last)
        text = f"{said}: {count.cycles_before or 0} before, {count.cycles} in {counted}"
        return Answered(text, f"{said} by now", (), lines)

    needs = () if count.sessions else ("cycles",)
    return told(inputs, "cycles", "heat cycles", needs, CYCLES, make, ("cycles",))


def _ridden(count: TyreCount, lines: tuple[str, ...], inputs: Inputs) -> Answer:
    def make() -> Answered:
        far = figures.odometer(count.all_km, inputs.units)
        if not count.sessions:
            return Answered(f"{far} before, {_NONE}", _NONE, (), lines)
        least = count.distance_before is None or count.without_km
        said = f"{'at least ' if least else ''}{far}"
        here = figures.odometer(count.km, inputs.units)
        text = f"{said}: {here} and {count.hours:.1f} h of it in {counted_words(count.sessions, count.last)}"
        return Answered(text, f"{said}, {count.hours:.1f} h here", (), (*lines, *_lost(count)))

    needs = () if count.sessions else ("distance",)
    return told(inputs, "ridden", "distance and hours", needs, RIDDEN, make, ("distance",))


def _lost(count: TyreCount) -> Iterable[str]:
    if count.without_km:
        yield f"of {count_words(count.without_km)} nobody knows how far"
    if count.without_hours:
        yield f"of {count_words(count.without_hours)} nobody knows how long"
