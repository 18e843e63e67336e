"""The aids in a briefing: what each does as it is set, what none does, what was traded for what."""

import re
from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.answered import answered
from paddock_tui.advice.levels import levels
from paddock_tui.calc.levels import Scale
from paddock_tui.explanations import OF_FUNCTIONS
from paddock_tui.explanations.in_short import IN_SHORT
from paddock_tui.facts.controls import ShownControl
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import is_off, label_of

_SAME = 1e-9
"""Shares of a scale nearer than this are the same: they come from divisions."""


@attrs.frozen
class BriefedAid:
    """One control of the bike as it is in force, where its rider would start, and how far that is away.

    `gap` is the share of the scale by which it stands below that start, negative above; None where not known.
    """

    name: str
    function: str
    control: Control
    value: Setting | None
    start: Setting | None = None
    gap: float | None = None

    @property
    def label(self) -> str:
        """Its name with a capital."""
        said = label_of(self.name)
        return said[:1].upper() + said[1:]

    @property
    def shown(self) -> str:
        """Its name and value: 'Traction control 3 (0-10)'."""
        if self.value is None:
            return f"{self.label}, set to what is not known"
        said = str(ShownControl(self.name, self.value, self.control)).replace("(range ", "(")
        return said[:1].upper() + said[1:]

    @property
    def off(self) -> bool:
        """Whether it is off."""
        return self.value is not None and is_off(self.control, self.value)


def briefed_aids(about: About, setup: SetUp, bike: Bike) -> tuple[BriefedAid, ...]:
    """List the controls of a bike in the order in which they matter, each with the start of its rider."""
    starts = {
        one.key: put.value
        for one in answered(about, levels).values()
        for put in one.puts
        if isinstance(put.value, int | str)
    }
    order = tuple(IN_SHORT)
    found = [
        _aid(name, control, value_in_force(name, setup, bike), starts.get(name))
        for name, control in bike.controls.items()
    ]
    return tuple(sorted(found, key=lambda one: order.index(one.function)))


def missing_words(about: About) -> str:
    """Say what is missing for the starts of a rider; empty where nothing is."""
    found = dict.fromkeys(what for one in answered(about, levels).values() for what in one.missing)
    return f", not known: {', '.join(found)}" if found else ""


def _aid(name: str, control: Control, value: Setting | None, start: Setting | None) -> BriefedAid:
    made = BriefedAid(name, function_of(name, control), control, value, start)
    levels_ = levels_of(name, control)
    scale = levels_.scale_if_known() if levels_ is not None else None
    if scale is None or value is None or start is None:
        return made
    return attrs.evolve(made, gap=_gap(scale, value, start))


def _gap(scale: Scale, value: Setting, start: Setting) -> float | None:
    if start not in scale.on or not (value in scale.on or scale.is_off(value)):
        return None
    # Off is below the least that is on: further from a start than any level.
    here = -1 / max(len(scale.on) - 1, 1) if scale.is_off(value) else scale.position_of(value)
    return scale.position_of(start) - here


def away(aids: tuple[BriefedAid, ...]) -> tuple[BriefedAid, ...]:
    """List the aids that stand away from their start: less help first, the furthest away first."""
    "them first."
    found = [(one, one.gap) for one in aids if one.gap is not None and abs(one.gap) > _SAME]
    order = sorted(found, key=lambda pair: (_two_ended(pair[0]), pair[1] < 0, -abs(pair[1])))
    return tuple(one for one, _ in order)


def _two_ended(one: BriefedAid) -> bool:
    return one.function == "engine-braking"


def away_sentence(one: BriefedAid) -> str:
    """Say in one line how an aid stands against the start of its rider."""
    if _two_ended(one):
        word = "more engine braking" if (one.gap or 0) > 0 else "less engine braking"
    else:
        word = "less help" if (one.gap or 0) > 0 else "more help"
    return f"{one.shown}: {word} than your start, {one.start}."


def does(aids: tuple[BriefedAid, ...]) -> Iterator[str]:
    """Say what each aid that is on does for the rider."""
    for one in aids:
        if one.function == "shifter" and not one.off and one.value is not None:
            effect = one.control.effects.get(str(one.value))
            which = {"up": ", up only", "down": ", down only", "both": ", up and down"}
            shifts = which.get(effect.shifts or "", "") if effect is not None else ""
            yield f"{one.shown}: {IN_SHORT[one.function].does}{shifts}."
        elif one.value is not None and not one.off:
            yield f"{one.shown}: {IN_SHORT[one.function].does}."


def does_not(aids: tuple[BriefedAid, ...]) -> Iterator[str]:
    """Say what is off or not known, then what no aid does, then what each one does not."""
    off = [one.label for one in aids if one.off and one.function in HELP_FUNCTIONS]
    if off:
        yield f"Off, and nothing catches you there: {', '.join(off)}."
    lost = [label_of(one.name) for one in aids if one.value is None]
    if lost:
        yield f"Not known what it is set to: {', '.join(lost)}; count on nothing there."
    unknown = [label_of(one.name) for one in aids if _direction_unknown(one)]
    if unknown:
        yield f"Which end is which is not known for {', '.join(unknown)}: ask before you turn it."
    yield "No aid adds grip: on a cold tyre or oil it acts late or not at all."
    on = dict.fromkeys(one.function for one in aids if not one.off)
    yield from dict.fromkeys(IN_SHORT[function].does_not for function in on)


def _clause(said: str) -> str:
    """Return the first clause of a phrase: it has to be read in a minute."""
    return re.split("[;:]", said)[0]


def _direction_unknown(one: BriefedAid) -> bool:
    if one.function not in (*HELP_FUNCTIONS, "engine-braking"):
        return False
    levels_ = levels_of(one.name, one.control)
    return levels_ is None or levels_.scale_if_known() is None


def traded(aids: tuple[BriefedAid, ...], costs_first: bool) -> Iterator[str]:
    """Say what was traded for what where an aid stands away from the rider's start."""
    for one in away(aids):
        found = OF_FUNCTIONS[one.function]
        way = found.less if (one.gap or 0) > 0 else found.more
        gives = way.gives.performance or way.gives.safety
        costs = way.costs.safety or way.costs.performance
        if not (gives and costs):
            continue
        if one.function in HELP_FUNCTIONS and (one.gap or 0) < 0:
            gives = way.gives.safety or gives
            costs = way.costs.performance or costs
        costs = _clause(costs)
        said = f"costs: {costs}; gives: {gives}" if costs_first else f"gives: {gives}; costs: {costs}"
        yield f"{label_of(one.name)[:1].upper()}{label_of(one.name)[1:]}, {way.name}, {said}."
