"""Riding modes at a glance: modes across, controls down, what is set now; presets beside each other."""

from collections.abc import Iterator, Mapping, Sequence

import attrs

from paddock_tui.advice.riding_modes import with_mode
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import control_difference, with_way
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.in_force import allows, in_force_value
from paddock_tui.records.presets import PresetValues
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Damping
from paddock_tui.text import printable

MODES = "modes"
NOW = "set now"
FREE = "·"
UNKNOWN = "?"
NONE = "-"
LEGEND = "= fixed; 6..10 between; · free; off: may be off; ! not what is set"


def modes_page(
    name: str,
    setup: SetUp | None,
    bike: Bike,
    surface: str | None = None,
    across: int | None = None,
    taking: Section | None = None,
) -> Page:
    """Make the page of a bike's modes, for one set-up or for none.

    `across` counts the mode or preset that is looked at (None: the one in use), `taking` says what taking
    that mode would do.
    """
    held = setup or SetUp()
    sections: list[Section] = []
    if bike.modes:
        sections.append(_modes(held, bike, surface, setup is not None, across))
        sections += ([taking] if taking is not None else []) + list(_outside(held, bike))
    else:
        words = "This bike has no riding modes." if bike.electronics else "Its riding modes are not listed."
        sections.append(Section("riding modes", (Row("", words, kind="text", key="no modes"),)))
    for damping, mode in bike.damping.items():
        if mode.presets:
            sections.append(_presets(damping, mode, held, bike, setup is not None, across))
    answers = _answer(held, bike, surface, setup is not None)
    return Page(
        f"riding modes · {printable(name)}",
        tuple(sections),
        judged=False,
        answer=answers[0],
        answer_short=answers[1],
    )


def _answer(held: SetUp, bike: Bike, surface: str | None, is_set: bool) -> tuple[str, str]:
    """Say which riding mode is in force, what it is made for, and which are made for this surface."""
    if not bike.modes:
        return "No riding mode is listed for this bike.", ""
    if not is_set:
        return f"{len(bike.modes)} riding modes: {', '.join(map(printable, bike.modes))}", ""
    mode = bike.modes.get(held.mode or "")
    if mode is None:
        return "Which riding mode is in force is not known.", "Riding mode not known."
    use = "any surface" if mode.use == "any" else f"{mode.use or 'not said'}"
    first = f"{printable(held.mode or '')} is in force, made for {printable(use)}"
    now = surface if surface in ("dry", "wet") else "wet" if surface is not None else None
    fits = [printable(name) for name, one in bike.modes.items() if now is not None and one.use == now]
    return f"{first}; made for the {now}: {', '.join(fits)}" if fits else first, first


def mode_at(bike: Bike, across: int) -> str | None:
    """Return the mode that is looked at; None on a bike without any."""
    names = tuple(bike.modes)
    return names[min(across, len(names) - 1)] if names else None


def preset_at(bike: Bike, damping: str, setup: SetUp, across: int | None) -> str:
    """Return the preset of a damping mode that is looked at."""
    names = bike.damping[damping].presets or ()
    return names[_chosen(names, setup.preset if setup.damping == damping else None, across)]


def _chosen(names: Sequence[str], used: str | None, across: int | None) -> int:
    if across is not None:
        return min(across, len(names) - 1)
    return names.index(used) if used in names else 0


def moves(mode: str, setup: SetUp, bike: Bike) -> tuple[str, ...]:
    """Say row by row what taking a riding mode changes in force."""
    new, old = bike.modes[mode], bike.modes.get(setup.mode or "")
    taken = with_mode(mode, setup, bike)
    said = []
    for name, control in bike.controls.items():
        before = in_force_value(name, control, setup, old)
        after = in_force_value(name, control, taken, new)
        if before != after:
            moved = control_difference(name, before, after, bike)
            at_least = " at least" if name in new.limits else ""
            said.append(f"{moved.label} {with_way(moved.figures + at_least, moved.way)}")
    return tuple(said)


def taking_lines(
    said: Sequence[str], goes: Sequence[str], comes: Sequence[str], nothing: str
) -> tuple[str, ...]:
    """Say what a step would do, on the page and in its preview: `nothing` where it says of no move.

    What comes and goes follows straight behind the first move: a narrow screen has no room for all of them.
    """
    changed = (*(f"goes: {one}" for one in goes), *(f"comes: {one}" for one in comes))
    rest = (" · ".join(said[1:]),) if len(said) > 1 else ()
    return (*said[:1], *changed, *rest) if said else (nothing, *changed)


def taking_section(
    mode: str, setup: SetUp, bike: Bike, goes: Sequence[str] = (), comes: Sequence[str] = ()
) -> Section:
    """Say what taking a riding mode would do: in force, and which findings go and come."""
    lines = taking_lines(moves(mode, setup, bike), goes, comes, "nothing changes in force")
    rows = tuple(Row("", printable(line), kind="text", key=f"taking {at}") for at, line in enumerate(lines))
    instead = f"{mode} instead of {setup.mode}" if setup.mode else mode
    return Section(printable(instead), rows, "enter takes it")


def _modes(setup: SetUp, bike: Bike, surface: str | None, is_set: bool, across: int | None) -> Section:
    names = tuple(bike.modes)
    inside = {name: one for name, one in bike.controls.items() if not one.outside_modes}
    made = tuple(_use(mode.use) for mode in bike.modes.values())
    first = Row(
        "made for",
        kind="cells",
        key="modes made for",
        cells=(*made, printable(surface or "")) if is_set else made,
    )
    rows = [first, *(_control_row(name, control, setup, bike, is_set) for name, control in inside.items())]
    rows.append(Row("", LEGEND if is_set else LEGEND.partition("; !")[0], kind="text", key="modes legend"))
    heads = tuple(printable(name.upper() if name == setup.mode else name) for name in names)
    force = f"in force: {printable(setup.mode)}" if setup.mode else "which is in force: not known"
    return Section(
        "modes",
        tuple(rows),
        force if is_set else "",
        columns=(*heads, NOW) if is_set else heads,
        chosen=_chosen(names, setup.mode, across),
        last_stands=is_set,
    )


def _control_row(name: str, control: Control, setup: SetUp, bike: Bike, is_set: bool) -> Row:
    value = setup.controls.get(name)
    cells = [_cell(name, control, mode, value, is_set) for mode in bike.modes.values()]
    if is_set:
        mode = bike.modes.get(setup.mode or "")
        force = in_force_value(name, control, setup, mode)
        cells.append(_now(force, value))
    return Row(
        label_of(name), kind="cells", key=f"mode row {name}", cells=tuple(printable(cell) for cell in cells)
    )


def _now(force: Setting | None, value: Setting | None) -> str:
    """Say what is in force, and what was set where the riding mode fixes it away from that."""
    if force is None:
        return UNKNOWN
    return str(force) if value in (None, force) else f"{force} ({value})"


def _cell(name: str, control: Control, mode: Mode, value: Setting | None, is_set: bool) -> str:
    """Say what one mode makes of one control, in the bike's own numbers."""
    if name in mode.fixes:
        fixed = mode.fixes[name]
        return f"= {fixed}{_mark(is_set and value is not None and value != fixed)}"
    off = name in (mode.off_allowed or ())
    bounds = mode.limits.get(name)
    if bounds is None:
        known = control.levels is not None or control.choices is not None or control.kind == "switch"
        return (FREE if known else UNKNOWN) + (" off" if off else "")
    outside = is_set and value is not None and not allows(control, bounds, value, off)
    return f"{_between(bounds, control)}{' off' if off else ''}{_mark(outside)}"


def _mark(moved: bool) -> str:
    return " !" if moved else ""


def _between(bounds: Sequence[Setting], control: Control) -> str:
    """Write what a mode leaves: two levels or a run of words as from..to, other words one by one."""
    if len(bounds) == 2 and all(isinstance(one, int) for one in bounds):
        return f"{bounds[0]}..{bounds[1]}"
    words = tuple(map(str, bounds))
    order = control.choices or ()
    places = [order.index(word) for word in words if word in order]
    run = len(places) == len(words) > 1 and places == list(range(places[0], places[0] + len(words)))
    return f"{words[0]}..{words[-1]}" if run else ", ".join(words)


def _outside(setup: SetUp, bike: Bike) -> Iterator[Section]:
    rows = []
    for name, control in bike.controls.items():
        if control.outside_modes:
            words = control.choices or control.speeds or (("on",) if control.kind == "switch" else ())
            off = ("off",) if control.off not in (None, False) and "off" not in words else ()
            value = setup.controls.get(name)
            said = ", ".join((*off, *words)) or "levels of its own"
            now = "not known" if value is None else str(value)
            rows.append(
                Row(label_of(name), printable(f"{now}; can be {said}"), kind="text", key=f"outside {name}")
            )
    if rows:
        yield Section("outside the modes", tuple(rows), "a mode leaves these alone")


def _presets(
    damping: str, mode: Damping, setup: SetUp, bike: Bike, is_set: bool, across: int | None
) -> Section:
    """Put the presets of one damping mode beside each other; what nobody wrote down is '?'."""
    names = mode.presets or ()
    written = [mode.preset_values.get(name) for name in names]
    rows = [_preset_row("made for", [_made(one) for one in written], "", is_set)]
    for label, key in (("front", "front_firmness"), ("rear", "rear_firmness"), ("damper", "damper")):
        found = [getattr(one, key) if one is not None else None for one in written]
        if any(value is not None for value in found):
            rows.append(_preset_row(label, [_word(value) for value in found], "", is_set))
    for table, there, now in (
        ("offsets", mode.offsets, setup.offsets),
        ("adjusters", bike.adjusters, setup.adjusters),
    ):
        rows += _preset_rows(table, there, written, now if setup.damping == damping else {}, is_set)
    used = setup.preset if setup.damping == damping else None
    heads = tuple(printable(name.upper() if name == used else name) for name in names)
    note = f"in use: {printable(used)}" if used else ("not the damping in use" if is_set else "")
    return Section(
        f"presets of {printable(damping)}",
        tuple(attrs.evolve(row, path=("damping", damping)) for row in rows),
        note,
        columns=(*heads, NOW) if is_set else heads,
        chosen=_chosen(names, used, across),
        last_stands=is_set,
    )


def _preset_rows(
    table: str,
    there: Mapping[str, object],
    written: Sequence[PresetValues | None],
    now: Mapping[str, float],
    is_set: bool,
) -> Iterator[Row]:
    for name in there:
        found = [getattr(one, table).get(name) if one is not None else None for one in written]
        if any(value is not None for value in found):
            held = now.get(name)
            cells = [_signed(one) if table == "offsets" else _word(one) for one in (*found, held)]
            yield _preset_row(label_of(name), cells[:-1], cells[-1] if held is not None else "", is_set)


def _preset_row(label: str, cells: Sequence[str], now: str, is_set: bool) -> Row:
    held = (*cells, now) if is_set else tuple(cells)
    return Row(label, kind="cells", key=f"preset {label}", cells=tuple(printable(cell) for cell in held))


def _made(one: PresetValues | None) -> str:
    return UNKNOWN if one is None else _use(one.use)


def _word(value: Setting | float | None) -> str:
    if value is None:
        return NONE
    return value if isinstance(value, str) else show_number(value)


def _signed(value: Setting | float | None) -> str:
    """Write an offset: above nothing with its sign, since 1 may be firmer or softer than what it moves."""
    return f"+{_word(value)}" if isinstance(value, int | float) and value > 0 else _word(value)


def _use(use: str | None) -> str:
    return use or UNKNOWN
