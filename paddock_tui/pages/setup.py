"""The set-up page: controls with their help bars, suspension, drive and starting pressures."""

from collections.abc import Iterator, Mapping, Sequence

import attrs

from paddock_tui.advice.presets import moved_from_preset, preset_brings, preset_words, signed
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import Scale
from paddock_tui.entry.typing_kinds import choices_of, typing_kind
from paddock_tui.facts.controls import short_range
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Bar, Row, Section
from paddock_tui.pages.values import field_row, with_trouble
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import counted_unit
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, Mode, function_of
from paddock_tui.records.fields_of_record import SET_UP, field_at
from paddock_tui.records.in_force import ControlInForce, closed_by, control_in_force
from paddock_tui.records.presets_in_use import preset_in_use, presets_offered
from paddock_tui.records.setup import Counted, SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import adjuster_shape, label_of, offered, setting_shape
from paddock_tui.records.suspension import BY_HAND, Adjuster
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

MORE_LESS = ("more", "less")
LIGHT_FIRM = ("light", "firm")

DRIVE = ("front_sprocket", "rear_sprocket", "links")
HEIGHTS = ("front_spring", "rear_spring", "fork_height", "rear_height")
WAYS = {"fork_height": "more = front lower", "rear_height": "more = rear higher"}
"""Which way a height tips the bike: said beside it, since one of them goes against its name."""
PRESSURES = ("front_start", "rear_start")


def setup_sections(loaded: Loaded, setup: SetUp, bike: Bike, units: Units) -> Iterator[Section]:
    """Return the sections of a set-up in the order in which it is gone through."""
    mode = bike.modes.get(setup.mode or "")
    electronics: list[Row] = []
    if bike.modes:
        electronics.append(
            _chosen_row(loaded, setup, bike, "mode", "riding mode", _mode_words(setup.mode, mode))
        )
    electronics += [
        _control_row(loaded, setup, name, control, bike) for name, control in bike.controls.items()
    ]
    if electronics:
        yield Section("electronics", tuple(electronics))
    elif bike.electronics == "none":
        yield Section("electronics", (), "none on this bike")
    yield Section(_suspension_title(setup), tuple(_suspension_rows(loaded, setup, bike, units)))
    yield Section("drive", tuple(_plain_row(loaded, key, units) for key in DRIVE))
    yield Section("starting pressures, cold", tuple(_plain_row(loaded, key, units) for key in PRESSURES))


def _suspension_title(setup: SetUp) -> str:
    if setup.damping is None:
        return "suspension"
    return "suspension, by hand" if setup.damping == BY_HAND else f"suspension, {printable(setup.damping)}"


def _suspension_rows(loaded: Loaded, setup: SetUp, bike: Bike, units: Units) -> Iterator[Row]:
    if bike.damping or setup.damping is not None:
        yield _chosen_row(loaded, setup, bike, "damping", "damping mode", "")
    if presets_offered(bike, setup.damping):
        yield _preset_row(loaded, setup, bike)
    sets = _preset_has(bike, setup)
    for name, adjuster in bike.adjusters.items():
        row = _adjuster_row(loaded, setup, name, adjuster, closed_by(name, setup, bike))
        yield _with_preset(row, sets.get(("adjusters", name)))
    for place in offered(bike, setup.damping):
        if place.path[0] == "offsets":
            row = _offset_row(loaded, setup, place.path[1], place.label, place.shape.band())
            yield _with_preset(row, sets.get(("offsets", place.path[1])))
    for key in HEIGHTS:
        row = _plain_row(loaded, key, units)
        way = WAYS.get(key, "") if not row.trouble else ""
        yield attrs.evolve(row, aside="; ".join(filter(None, (way, row.aside))))


def _preset_row(loaded: Loaded, setup: SetUp, bike: Bike) -> Row:
    """Show the preset with how far the set-up has moved from it and what it brings; `v` takes that over."""
    row = _chosen_row(loaded, setup, bike, "preset", "preset", "")
    used = preset_in_use(bike, setup)
    if used is None or row.trouble:
        return row
    brings = preset_brings(bike, setup)
    moved = moved_from_preset(bike, setup)
    by_hand = any(put.path == (SET_UP, "damping") for put in brings)
    said = (
        f"moved: {', '.join(map(str, moved))}" if moved else "",
        preset_words(used.values),
        "v goes on by hand from its clicks" if by_hand else "v takes its values" if brings else "",
    )
    return attrs.evolve(row, aside=printable("; ".join(filter(None, said))), offer=brings)


def _preset_has(bike: Bike, setup: SetUp) -> dict[tuple[str, str], str]:
    """Say what the preset has for each value that was moved from it, and for what its motors set."""
    said = {
        (
            one.table,
            one.name,
        ): f"preset {signed(one.preset) if one.table == 'offsets' else show_number(one.preset)}"
        for one in moved_from_preset(bike, setup)
    }
    used = preset_in_use(bike, setup)
    if used is not None and setup.damping != BY_HAND:
        clicks = used.values.adjusters.items()
        said |= {("adjusters", name): f"the preset sets {show_number(value)}" for name, value in clicks}
    return said


def _with_preset(row: Row, said: str | None) -> Row:
    """Say beside a value what the preset has there."""
    if said is None or row.trouble:
        return row
    return attrs.evolve(row, aside="; ".join(filter(None, (said, row.aside))))


def _control_row(loaded: Loaded, setup: SetUp, name: str, control: Control, bike: Bike) -> Row:
    path = (SET_UP, "controls", name)
    here = control_in_force(name, setup, bike)
    # What was set stays in sight where the riding mode that may fix it is not known.
    value = here.value if here.mode_known else setup.controls.get(name)
    fixed = here.fixed is not None
    shape = setting_shape(control)
    row = Row(
        label=label_of(name),
        value="not known" if value is None else printable(str(value)),
        range=short_range(control).removeprefix("range " if value is None else ""),
        aside="; ".join(_control_asides(name, control, here, value)),
        bar=_bar(name, control, value, here),
        ref=loaded.ref,
        path=path,
        shut=f"fixed by the riding mode {printable(setup.mode or '')}" if fixed else "",
        edit="" if value is None or fixed else shape.show(value),
        known=value is not None,
        typing=typing_kind(shape),
        choices=tuple(printable(one) for one in choices_of(shape)),
    )
    return with_trouble(loaded, row)


def _control_asides(
    name: str, control: Control, here: ControlInForce, value: Setting | None
) -> Iterator[str]:
    if not here.mode_known:
        yield "riding mode not known, may fix it"
    elif here.fixed is not None:
        yield "fixed by mode"
    elif here.bounds is not None:
        # The marks come first on a narrow line: the rest is short.
        yield here.words().removeprefix("the riding ").replace("mode allows ", "mode ").replace(" to ", "-")
    function = function_of(name, control)
    unsure = control.levels is not None or control.kind == "choice"
    if function in HELP_FUNCTIONS and control.most_help is None and unsure:
        yield "which end helps most? not known"
    if function == "engine-braking" and control.frees_most is None and unsure:
        yield "which end brakes least? not known"
    effect = control.effects.get(str(value)) if value is not None else None
    if effect is not None:
        off = [end for end, word in (("front", effect.front), ("rear", effect.rear)) if word == "off"]
        if off:
            yield f"{' and '.join(off)} off at this level"
    if control.key_off == "resets":
        yield "resets at ignition off"


def _bar(name: str, control: Control, value: Setting | None, here: ControlInForce) -> Bar | None:
    """Draw a scale where it is known which end is which; words where it is not."""
    scale = scale_of(name, control)
    if scale is None:
        return None
    bar = Bar(position_on(scale, value), steps=len(scale.on))
    if function_of(name, control) == "engine-braking":
        bar = attrs.evolve(bar, ends=MORE_LESS, two_ended=True)
    return attrs.evolve(bar, fixed=here.fixed is not None, allowed=_allowed(scale, here.bounds))


def _allowed(scale: Scale, bounds: Sequence[Setting] | None) -> tuple[float, float] | None:
    """Return what a riding mode leaves open of a scale, as places on it; None where it leaves all."""
    places = [place for bound in bounds or () if (place := position_on(scale, bound)) is not None]
    return (min(places), max(places)) if places else None


def scale_of(name: str, control: Control) -> Scale | None:
    """Return the scale that a control is drawn on; None where it has none, or nobody knows its ends."""
    function = function_of(name, control)
    levels = levels_of(name, control)
    if levels is None or control.kind in ("state", "speed", "switch"):
        return None
    if function in HELP_FUNCTIONS:
        return levels.help_if_known()
    return levels.scale_if_known() if function == "engine-braking" else None


def position_on(scale: Scale, value: Setting | None) -> float | None:
    """Return the place of a level on its scale; None where it is off, not known or no level."""
    if value is None or scale.is_off(value):
        return None
    try:
        return scale.position_of(value)
    except (Inconsistent, OutOfRange):
        return None


def _adjuster_row(loaded: Loaded, setup: SetUp, name: str, adjuster: Adjuster, closed_by: str) -> Row:
    path = (SET_UP, "adjusters", name)
    value = setup.adjusters.get(name)
    counted: Mapping[str, Counted] = getattr(loaded.record, "counted", {})
    unit = adjuster.unit or ""
    words = f"{unit}s" if unit in ("click", "turn") and value != 1 else unit
    way = counted_unit(adjuster).removeprefix(unit)
    words += way
    limits = f"of {show_number(max(adjuster.range))}" if adjuster.range else ""
    aside = "" if value is None else _counted_words(counted.get(name))
    bar = None
    if adjuster.what == "damper" and adjuster.range and value is not None:
        low, high = adjuster.range
        part = (value - low) / (high - low) if high > low else 0.0
        firm = 1 - part if adjuster.counted_from == "closed" else part
        bar = Bar(max(0.0, min(1.0, firm)), LIGHT_FIRM, True, 0)
    row = Row(
        label=label_of(name),
        value="not known" if value is None else show_number(value),
        range=(f"{words}{',' * bool(way)} {limits}" if value is not None else f"{limits} {words}").strip(),
        aside=f"not used in {printable(closed_by)} damping" if closed_by else aside,
        bar=bar,
        ref=loaded.ref,
        path=path,
        edit="" if value is None else show_number(value),
        known=value is not None,
        typing=typing_kind(adjuster_shape(adjuster)),
        unit=unit,
    )
    return with_trouble(loaded, row)


def _counted_words(counted: Counted | None) -> str:
    if counted is None or counted.on is None:
        return "assumed"
    return f"counted {short_date(counted.on)}"


def _offset_row(
    loaded: Loaded, setup: SetUp, name: str, label: str, band: tuple[float, float, str] | None
) -> Row:
    value = setup.offsets.get(name)
    limits = f"of {show_number(band[0])} to {show_number(band[1])}" if band else ""
    return Row(
        label=label,
        value="not known" if value is None else f"{'+' * (value > 0)}{show_number(value)}",
        range=limits,
        aside="offset on the automatic damping",
        ref=loaded.ref,
        path=(SET_UP, "offsets", name),
        edit="" if value is None else show_number(value),
        known=value is not None,
        typing="other",
    )


def _chosen_row(loaded: Loaded, setup: SetUp, bike: Bike, key: str, label: str, aside: str) -> Row:
    value = getattr(setup, key)
    field = field_at(loaded.ref.kind, (SET_UP, key), loaded.record, bike)
    names = field.shape.words() if field is not None else ()
    row = Row(
        label=label,
        value="not known" if value is None else printable(value),
        aside=aside,
        ref=loaded.ref,
        path=(SET_UP, key),
        edit=value or "",
        known=value is not None,
        typing="choice",
        choices=tuple(printable(name) for name in names),
    )
    return with_trouble(loaded, row)


def _plain_row(loaded: Loaded, key: str, units: Units) -> Row:
    field = field_at(loaded.ref.kind, (SET_UP, key))
    if field is None:
        raise KeyError(key)
    return field_row(loaded, field, units)


def _mode_words(name: str | None, mode: Mode | None) -> str:
    if mode is None:
        return "" if name is None else "not one of this bike's"
    use = "any surface" if mode.use == "any" else mode.use
    parts = [f"made for {use}"] if use else []
    if mode.fixes:
        parts.append("fixes " + ", ".join(label_of(key) for key in mode.fixes))
    if mode.limits:
        parts.append("limits " + ", ".join(label_of(key) for key in mode.limits))
    return "; ".join(parts)
