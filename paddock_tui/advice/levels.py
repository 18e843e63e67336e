"""Levels of the aids: what a number helps, and where to start for this rider, surface and tyre."""

import functools
from collections.abc import Iterable, Iterator

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.answered import answered
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
from paddock_tui.calc.levels import Level, Levels
from paddock_tui.calc.starting_levels import Aid, TyreState, street_help
from paddock_tui.facts.suggested_levels import (
    ROAD,
    Riding,
    help_to_start,
    level_to_start,
    new_here,
    state_of_rear,
)
from paddock_tui.records import common as c
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import control_in_force, value_in_force
from paddock_tui.records.paths import Path
from paddock_tui.records.session import is_ridden
from paddock_tui.records.shapes import Flag, Setting, Word
from paddock_tui.records.shapes_of_bike import label_of, setting_shape
from paddock_tui.records.tyres import TYRE_KINDS
from paddock_tui.rules.core import SetValue

METHOD = Method(
    "help from 0 % (least that is on) to 100 % (most) by group, surface and rear tyre, then the level at "
    "or above it; halfway goes to more help",
    "the file says which end helps most; a start, not a rule",
    "the manual and an instructor come first; come down one step at a time, warm and calm",
    "paddock practice, unpublished",
)

CONDITIONS = (
    Input("group", "rider's group", c.GROUP),
    Input("surface", "surface", c.SURFACE),
    Input("track", "track temperature", c.FELT_TRACK),
    Input("tyre", "kind of the rear tyre", Word(*TYRE_KINDS)),
    Input("worn", "rear tyre worn", Flag()),
    Input("scrubbed", "rear tyre scrubbed in", Flag()),
    Input(
        "first", "new bike or new track", Flag(), "first session on this bike, or here: one step more help"
    ),
)
_NEEDS = ("group", "surface", "tyre")


@attrs.frozen
class _Aid:
    """One aid of the bike: the name of its control, what it is, and its levels."""

    name: str
    control: Control
    aid: Aid
    levels: Levels | None


def levels(about: About) -> Calculator:
    """Return the calculator of levels: conditions, and each aid of the bike as it is set."""
    bike = about.situation.bike
    aids = tuple(_aids(bike)) if bike is not None else ()
    now = tuple(
        Input(f"now {one.name}", f"{label_of(one.name)} now", setting_shape(one.control)) for one in aids
    )
    compute = functools.partial(_compute, about, aids)
    return Calculator("levels", "levels of the aids", (*CONDITIONS, *now), _filled(about, aids), compute)


def starting_levels(about: About) -> dict[Path, Setting]:
    """Return the level that each aid starts at in these conditions, as far as it can be said."""
    session = about.situation.session
    if session is not None and is_ridden(session):
        return {}
    answers = answered(about, levels).values()
    return {put.path: put.value for one in answers for put in one.puts if isinstance(put.value, int | str)}


def _aids(bike: Bike) -> Iterator[_Aid]:
    for name, control in bike.controls.items():
        function = function_of(name, control)
        if function in HELP_FUNCTIONS or function == "engine-braking":
            yield _Aid(name, control, Aid(function), levels_of(name, control))


def _filled(about: About, aids: tuple[_Aid, ...]) -> dict[str, FilledInput]:
    situation, session = about.situation, about.session
    found: dict[str, FilledInput] = {}
    if situation.rider is not None and situation.rider.group is not None:
        found["group"] = FilledInput(situation.rider.group, f"rider {about.id_of('rider')}")
    made_for = situation.profile.made_for if situation.profile is not None else None
    surface = session.surface or made_for
    if surface is not None:
        found["surface"] = FilledInput(surface, about.place)
    if session.track is not None:
        found["track"] = FilledInput(session.track, about.place)
    found |= _filled_tyre(about)
    first = _first_of(about)
    if first:
        found["first"] = FilledInput(True, first)
    bike = situation.bike
    for one in aids:
        value = value_in_force(one.name, about.setup, bike) if bike is not None else None
        if value is not None:
            found[f"now {one.name}"] = FilledInput(value, about.place)
    return found


def _first_of(about: About) -> str:
    """Say what is new to this rider, the bike or the venue; empty where neither is, or nobody knows."""
    if about.situation.session is None:
        return ""
    return new_here(about.id_of("rider"), about.id_of("venue"), about.history)


def _filled_tyre(about: About) -> dict[str, FilledInput]:
    """Fill what the rear tyre is; a tread that was measured after the session says nothing of it."""
    tyre, where = about.tyre("rear"), f"tyre set {about.id_of('tyres')}"
    found: dict[str, FilledInput] = {}
    if tyre.kind is not None:
        found["tyre"] = FilledInput(tyre.kind, where)
    state = TyreState()
    if about.situation.tyres is not None:
        state = state_of_rear(about.session, about.history, about.situation.tyres)
    if state.unscrubbed or tyre.scrubbed is not None:
        found["scrubbed"] = FilledInput(not state.unscrubbed, where)
    day, measured = about.session.date, tyre.tread_measured
    later = day is not None and measured is not None and measured > day
    treads = (tyre.tread_left, tyre.tread_middle, tyre.tread_right)
    depths = [one.to("mm") for one in treads if one is not None]
    if depths and tyre.worn_at is not None and not later:
        found["worn"] = FilledInput(state.worn, f"tread of {where}")
    elif state.worn:
        found["worn"] = FilledInput(True, f"as seen on {where}")
    return found


def _compute(about: About, aids: tuple[_Aid, ...], inputs: Inputs) -> Iterable[Answer]:
    return [_answer(about, one, inputs) for one in aids]


def _answer(about: About, one: _Aid, inputs: Inputs) -> Answer:
    road = about.session.kind == ROAD
    needs = () if road else _NEEDS

    def make() -> Answered:
        wanted = street_help(one.aid) if road else _wanted(about, inputs, one.aid)
        if wanted is None:
            return Answered("no level helps: this tyre is not for this surface")
        return _start(about, one, wanted, inputs.value(f"now {one.name}"), bool(inputs.value("first")))

    uses = ("track", "worn", "scrubbed", "first", f"now {one.name}")
    return told(inputs, one.name, label_of(one.name), needs, METHOD, make, uses)


def suggested_words(level: Setting) -> str:
    """Say beside a row which level is where a rider of this group starts."""
    return f"usual {level}"


def _wanted(about: About, inputs: Inputs, aid: Aid) -> float | None:
    state = TyreState(bool(inputs.value("worn")), inputs.value("scrubbed") is False)
    group, surface, tyre = (inputs.value(one) for one in _NEEDS)
    riding = Riding(group, surface, tyre, inputs.value("track"), state)
    return help_to_start(riding, aid, about.situation.limits)


def _start(about: About, one: _Aid, wanted: float, now: Level | None, first: bool) -> Answered:
    freeing = one.aid is Aid.ENGINE_BRAKING
    share = _share(wanted, freeing)
    level = _level(one, wanted, first)
    if level is None:
        which = "which end brakes least" if freeing else "which end helps most"
        return Answered(f"{share}, but {which} is not known: the bike's file can say it")
    new = ("one step more for a first session on this bike, or here",) if first and not freeing else ()
    more = (f"wanted: {share}", *new, *_now_line(one, now))
    barred = _barred(about, one, level)
    said = str(level) if isinstance(level, int) else f'"{level}"'
    if barred:
        return Answered(f"{said} would be the start ({share}): {barred}", "", (), more)
    text = f"start at {said}, a start, not a rule ({share})"
    return Answered(text, suggested_words(level), (SetValue(("setup", "controls", one.name), level),), more)


def _share(position: float, weakening: bool) -> str:
    """Write a position 0..1 in percent of most help; that of engine braking runs to its weakest end."""
    if weakening:
        return f"{100 * (1 - position):.0f} % of most engine braking"
    return f"{100 * position:.0f} % of most help"


def _level(one: _Aid, wanted: float, first: bool) -> Level | None:
    if one.levels is None:
        return None
    if one.aid is Aid.ENGINE_BRAKING:
        scale = one.levels.scale_if_known()
        return None if scale is None else scale.nearest(wanted)
    helps = one.levels.help_if_known()
    return None if helps is None else level_to_start(helps, wanted, first)


def _now_line(one: _Aid, now: Level | None) -> tuple[str, ...]:
    scale = one.levels.scale_if_known() if one.levels is not None else None
    if scale is None or now is None:
        return ()
    if scale.is_off(now):
        return ("now off, below the least",)
    if now not in scale.on:
        return (f"now {now}, which this bike does not have",)
    return (f"now {now}, which is {_share(scale.position_of(now), one.aid is Aid.ENGINE_BRAKING)}",)


def _barred(about: About, one: _Aid, level: Level) -> str:
    """Say why the riding mode does not let this level be set; empty where it does."""
    bike = about.situation.bike
    if bike is None:
        return ""
    here = control_in_force(one.name, about.setup, bike)
    return "" if here.fixed is None and here.allows(one.control, level) else here.words()
