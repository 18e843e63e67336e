"""What differs between two set-ups: each value once, named and written in one way wherever it is shown."""

from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.calc.levels import Scale
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, function_of
from paddock_tui.records.fields_of_record import SET_UP, Field, field_at
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Number, Whole
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster

TABLES = ("controls", "adjusters", "offsets")
"""The tables of a set-up; everything else in it is a value of its own."""

TYRES: Path = ("tyres",)
NOT_KNOWN = "not known"

STRENGTH = "strength"
"""What the scale of engine braking tells, in place of help."""

_COUNTED = ("click", "turn")

_HEIGHTS = {"fork_height": ("front lower", "front higher"), "rear_height": ("rear higher", "rear lower")}
"""What more, and what less, of a height does to the bike."""

_HELPS, _HOLDS = ("more help", "less help"), ("more braking", "less braking")
"""What more, and what less, of an aid and of engine braking does."""

_WAYS = (("firmer", "softer"), ("more", "less"), _HELPS, _HOLDS, *_HEIGHTS.values())
_OTHER_WAY = {one: other for pair in _WAYS for one, other in (pair, pair[::-1])}


@attrs.frozen
class HelpChange:
    """What a difference does to the help of an aid, or to how strong engine braking is."""

    what: str
    old: str
    new: str

    @property
    def beside(self) -> str:
        """Old | new."""
        return f"{self.what} {old_to_new(self.old, self.new, between=' | ')}"

    def __str__(self) -> str:
        return f"{self.what} {old_to_new(self.old, self.new)}"


@attrs.frozen
class SetUpDifference:
    """One value that differs: where it stands in a session, what it is called, what it was and is.

    `old` and `new` are None where not known, `old_text` and `new_text` how they are written without `unit`.
    `listed` is whether the bike still has such a thing, `help` what it does to help; None where such a
    value gives none, or without the bike. `way` says for damping whether it is firmer or softer, for preload
    more or less, for an aid whether it helps more, for engine braking whether it holds more, for a height
    which end came up or down; empty where the bike's file does not tell.
    """

    path: Path
    label: str
    old: Any
    new: Any
    old_text: str
    new_text: str
    unit: str = ""
    listed: bool = True
    help: HelpChange | None = None
    way: str = ""

    @property
    def about(self) -> tuple[str, str]:
        """Return the two keys under which a session keeps the reason of this difference."""
        inside = self.path[1:] if self.path[0] == SET_UP else self.path
        return (inside[0], inside[1]) if len(inside) == 2 else (SET_UP, inside[0])

    @property
    def kind(self) -> str:
        """The table it stands in: controls, adjusters, offsets; 'setup' for a value of its own."""
        return self.about[0]

    @property
    def key(self) -> str:
        """The last part of its path."""
        return self.about[1]

    @property
    def known(self) -> bool:
        """Whether both values are written down: what is not known changes nothing."""
        return self.old is not None and self.new is not None

    @property
    def words(self) -> str:
        """Old -> new, with the unit, and the way where it is known."""
        return with_way(self.figures, self.way)

    @property
    def figures(self) -> str:
        """Old -> new, with the unit alone, where there is room for no more."""
        return old_to_new(self.old_text, self.new_text, self.unit, self._which)

    @property
    def back(self) -> str:
        """The way back: new -> old, with the unit, and that way where it is known."""
        words = old_to_new(self.new_text, self.old_text, self.unit, self._which[::-1])
        return with_way(words, _OTHER_WAY.get(self.way, ""))

    @property
    def beside(self) -> str:
        """Old | new, with the unit."""
        return old_to_new(self.old_text, self.new_text, self.unit, self._which, " | ")

    @property
    def _which(self) -> tuple[bool, bool]:
        return self.old is not None, self.new is not None

    def __str__(self) -> str:
        return f"{self.label} {self.words}"


def with_way(words: str, way: str) -> str:
    """Write old -> new with the way it goes, where that is known."""
    return f"{words} ({way})" if way else words


def old_to_new(
    old: str, new: str, unit: str = "", known: tuple[bool, bool] = (True, True), between: str = " -> "
) -> str:
    """Write old -> new, the unit once, behind the last figure that is known; the one place."""
    if known[1]:
        return f"{old}{between}{with_unit(new, unit)}"
    return f"{with_unit(old, unit) if known[0] else old}{between}{new}"


def with_unit(text: str, unit: str) -> str:
    """Write a figure with its unit: clicks and turns are counted, '1 click', '2 clicks'."""
    counted, _, way = unit.partition(" ")
    many = "s" if counted in _COUNTED and text not in ("1", "-1") else ""
    return f"{text} {counted}{many} {way}".rstrip()


def differences(old: SetUp, new: SetUp, bike: Bike | None = None) -> tuple[SetUpDifference, ...]:
    """List what differs, in the order of the declarations; figures in other units of the same size do not.

    With the bike, values have its labels and units.
    """
    found = tuple(_differing(old, new))
    holder = Session(setup=new) if found else None
    return tuple(_difference(*one, holder, bike) for one in found)


def session_differences(before: Session, after: Session, bike: Bike | None) -> tuple[SetUpDifference, ...]:
    """List what differs of two sessions' tyre sets and set-ups."""
    found = differences(before.setup, after.setup, bike)
    if before.tyres == after.tyres:
        return found
    tyres = _difference(TYRES, before.tyres, after.tyres, after, bike)
    return (attrs.evolve(tyres, label="tyre set"), *found)


def changed_values(before: Session, after: Session) -> Iterator[tuple[Path, Any, Any]]:
    """List what differs of two sessions' tyre sets and set-ups, as places and bare values: without words."""
    if before.tyres != after.tyres:
        yield TYRES, before.tyres, after.tyres
    yield from _differing(before.setup, after.setup)


def control_difference(name: str, old: Any, new: Any, bike: Bike) -> SetUpDifference:
    """Return the difference of two values of one control, which need not be the ones written down."""
    return setting_difference("controls", name, old, new, bike)


def setting_difference(table: str, name: str, old: Any, new: Any, bike: Bike) -> SetUpDifference:
    """Return the difference of two values of a control, an adjuster or an offset."""
    one = {name: new}
    made = {"controls": SetUp(controls=one), "adjusters": SetUp(adjusters=one), "offsets": SetUp(offsets=one)}
    return _difference((SET_UP, table, name), old, new, Session(setup=made[table]), bike)


def height_difference(key: str, old: Quantity, new: Quantity) -> SetUpDifference:
    """Return the difference of two heights: 'fork_height' or 'rear_height'."""
    return _difference((SET_UP, key), old, new, Session(), None)


def _differing(old: SetUp, new: SetUp) -> Iterator[tuple[Path, Any, Any]]:
    for one in attrs.fields(SetUp):
        before, after = getattr(old, one.name), getattr(new, one.name)
        if before is after:
            continue
        if one.name in TABLES:
            yield from _in_table(one.name, before, after)
        elif not same_value(before, after):
            yield (SET_UP, one.name), before, after


def _in_table(
    name: str, before: Mapping[str, Any], after: Mapping[str, Any]
) -> Iterator[tuple[Path, Any, Any]]:
    for key in dict.fromkeys((*before, *after)):
        was, became = before.get(key), after.get(key)
        if not same_value(was, became):
            yield (SET_UP, name, key), was, became


def _difference(path: Path, old: Any, new: Any, holder: Session | None, bike: Bike | None) -> SetUpDifference:
    field = field_at("session", path, holder, bike)
    label = field.label if field is not None else label_of(path[-1].replace("_", "-"))
    listed = _listed(path, bike)
    helps, way = _help_change(path, old, new, bike), way_of(path, old, new, bike)
    signs = path[:2] == (SET_UP, "offsets")
    texts = _with_sign(old, signs), _with_sign(new, signs)
    unit = unit_of(field)
    adjuster = bike.adjusters.get(path[-1]) if bike is not None and path[1:2] == ("adjusters",) else None
    if adjuster is not None and (old is None or new is None):
        # Without a way that it went, the figure itself has to say from which end it is counted.
        unit = counted_unit(adjuster)
    return SetUpDifference(path, label, old, new, *texts, unit, listed, helps, way)


def _with_sign(value: Any, signs: bool) -> str:
    """Write a value; an offset above nothing with its sign."""
    return f"{'+' * (signs and isinstance(value, int | float) and value > 0)}{written(value)}"


def counted_unit(adjuster: Adjuster) -> str:
    """Return the unit of an adjuster with the way its numbers are counted: 'click out', 'turn in', 'mm'."""
    unit = adjuster.unit or ""
    way = {"closed": " out", "open": " in"}.get(adjuster.counted_from or "", "")
    return f"{unit}{way}" if unit in _COUNTED else unit


def counted(figure: str, adjuster: Adjuster) -> str:
    """Write a figure of an adjuster with its unit and the way it is counted: '9 clicks out', '2 turns in'."""
    unit, _, way = counted_unit(adjuster).partition(" ")
    return f"{with_unit(figure, unit)} {way}".rstrip()


def way_of(path: Path, old: Any, new: Any, bike: Bike | None) -> str:
    """Say which way a height moved, or a control, an adjuster or offset was turned, as the bike counts it."""
    if path[-1] in _HEIGHTS and isinstance(old, Quantity) and isinstance(new, Quantity):
        higher, lower = _HEIGHTS[path[-1]]
        return higher if new.to("mm") > old.to("mm") else lower
    if bike is not None and path[:2] == (SET_UP, "controls"):
        return _way_of_level(path[2], old, new, bike)
    if bike is None or len(path) != 3 or not isinstance(old, int | float) or not isinstance(new, int | float):
        return ""
    up, name = new > old, path[2]
    if path[1] == "offsets":
        firmest = [one.offsets[name] for one in bike.damping.values() if name in one.offsets]
        ends = {(one.firmest == max(one.range)) for one in firmest if one.range and one.firmest is not None}
        return ("firmer" if up in ends else "softer") if len(ends) == 1 and len(firmest) >= 1 else ""
    adjuster = bike.adjusters.get(name) if path[1] == "adjusters" else None
    if adjuster is None or adjuster.counted_from is None:
        return ""
    more = up == (adjuster.counted_from == "open")
    preload = (adjuster.what or name.replace("-", " ")).endswith("preload")
    return ("more" if more else "less") if preload else ("firmer" if more else "softer")


def _way_of_level(name: str, old: Any, new: Any, bike: Bike) -> str:
    """Say whether a level helps more or less, or engine braking holds more; empty where that is not known."""
    control = bike.controls.get(name)
    function = function_of(name, control) if control is not None else ""
    if control is None or function not in (*HELP_FUNCTIONS, "engine-braking"):
        return ""
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is None or any(not scale.is_off(one) and one not in scale.on for one in (old, new)):
        return ""
    # Switched off it helps less than its weakest level; the scale of engine braking runs to its weakest.
    before, after = (-1.0 if scale.is_off(one) else scale.position_of(one) for one in (old, new))
    more, less = _HELPS if function in HELP_FUNCTIONS else _HOLDS[::-1]
    return "" if before == after else more if after > before else less


def unit_of(field: Field | None) -> str:
    """Return the unit that stands behind a bare number of a field; empty where its text carries its own."""
    return field.shape.unit if field is not None and isinstance(field.shape, Number | Whole) else ""


def _help_change(path: Path, old: Any, new: Any, bike: Bike | None) -> HelpChange | None:
    control = bike.controls.get(path[-1]) if bike is not None and path[:-1] == (SET_UP, "controls") else None
    function = function_of(path[-1], control) if control is not None else ""
    if control is None or function not in (*HELP_FUNCTIONS, "engine-braking"):
        return None
    levels = levels_of(path[-1], control)
    scale = levels.scale_if_known() if levels is not None else None
    # The scale of engine braking runs toward its weakest end.
    weakens = function == "engine-braking"
    said = [_position(scale, value, weakens) for value in (old, new)]
    return HelpChange(STRENGTH if weakens else "help", *said)


def _position(scale: Scale | None, value: Any, weakens: bool) -> str:
    if value is None or scale is None:
        return NOT_KNOWN
    if scale.is_off(value):
        return "off"
    if value not in scale.on:
        return "not on this bike"
    position = scale.position_of(value)
    return f"{100 * (1 - position if weakens else position):.0f} %"


def _listed(path: Path, bike: Bike | None) -> bool:
    if bike is None or len(path) < 3:
        return True
    if path[1] == "offsets":
        return any(path[2] in mode.offsets for mode in bike.damping.values())
    return path[2] in (bike.controls if path[1] == "controls" else bike.adjusters)


def same_value(one: object, other: object) -> bool:
    """Return whether two values of a set-up are the same; figures are compared across units."""
    if one is other:
        return True
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.dimension == other.dimension and one.same(other)
    return one == other


def written(value: object) -> str:
    """Write a value of a set-up."""
    if value is None:
        return NOT_KNOWN
    if isinstance(value, float | int) and not isinstance(value, bool):
        return show_number(float(value))
    return str(value)
