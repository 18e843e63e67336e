"""How one bike counts a setting: which way is more, where it stands, where to start; in sentences."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.presets import preset_words, signed, use_words
from paddock_tui.calc.levels import Level, Levels, Scale
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.paths import Path
from paddock_tui.records.presets_in_use import preset_in_use
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import is_off, label_of
from paddock_tui.records.suspension import Adjuster, Offset


@attrs.frozen
class OnBike:
    """What the numbers of one bike mean: `more` and `less` are its own ends, `said` are sentences."""

    more: str = ""
    less: str = ""
    said: tuple[str, ...] = ()


@attrs.frozen
class Start:
    """Where a rider starts with an aid: the level, and for whom and what ("intermediate, wet")."""

    level: Setting
    whom: str = ""


def on_this_bike(path: Path, setup: SetUp, bike: Bike, start: Start | None = None) -> OnBike:
    """Say how a bike counts one value of a set-up; nothing where its file says nothing of it."""
    if len(path) == 2:
        return OnBike(said=tuple(_of_field(path[1], setup, bike)))
    table, name = path[1], path[2]
    if table == "controls" and name in bike.controls:
        control = bike.controls[name]
        return of_control(name, control, value_in_force(name, setup, bike), start)
    if table == "adjusters" and name in bike.adjusters:
        return of_adjuster(bike.adjusters[name], setup.adjusters.get(name))
    damping = bike.damping.get(setup.damping or "")
    if table == "offsets" and damping is not None and name in damping.offsets:
        return of_offset(damping.offsets[name], setup.offsets.get(name))
    return OnBike()


def of_control(name: str, control: Control, value: Setting | None, start: Start | None = None) -> OnBike:
    """Say how a bike counts a control, where it stands and where to start."""
    function = function_of(name, control)
    levels = levels_of(name, control)
    if function in HELP_FUNCTIONS and levels is not None:
        return _helping(control, levels, value, start)
    if function == "engine-braking" and levels is not None:
        return _engine_braking(control, levels, value, start)
    return OnBike(said=tuple(_state(control, value)))


def _helping(control: Control, levels: Levels, value: Setting | None, start: Start | None) -> OnBike:
    scale = levels.help_if_known()
    if scale is None:
        ends = f"{_quoted(levels.values[0])} to {_quoted(levels.values[-1])}"
        unknown = f"Which end of {ends} helps most on this bike is not known: its file can say it."
        return OnBike(said=(unknown, *_now(value)))
    said: list[str] = []
    if len(scale.on) == 1:
        said.append(f"On this bike {_quoted(scale.most)} is the only level that is on.")
    else:
        said.append(f"On this bike {_quoted(scale.most)} helps most and {_quoted(scale.least)} least.")
    said += _standing(control, scale, value, "to most help", ("the least that is on", "the most"))
    if start is not None:
        said.append(_starting(start))
    return OnBike(str(scale.most), str(scale.least) if len(scale.on) > 1 else "", tuple(said))


def _engine_braking(control: Control, levels: Levels, value: Setting | None, start: Start | None) -> OnBike:
    scale = levels.scale_if_known()
    if scale is None:
        ends = f"{_quoted(levels.values[0])} to {_quoted(levels.values[-1])}"
        unknown = f"Which end of {ends} brakes least on this bike is not known: its file can say it."
        return OnBike(said=(unknown, *_now(value)))
    said = [f"On this bike {_quoted(scale.most)} brakes least with the engine, {_quoted(scale.least)} most."]
    said += _standing(control, scale, value, "to the least engine braking", ("the most", "the least"))
    if start is not None:
        said.append(_starting(start))
    return OnBike(str(scale.most), str(scale.least), tuple(said))


def _standing(
    control: Control, scale: Scale, value: Setting | None, toward: str, ends: tuple[str, str]
) -> Iterator[str]:
    """Say where a value stands on its scale; `ends` are the words for its two ends, the named one last."""
    if value is None:
        yield "What it is set to is not known."
    elif is_off(control, value):
        yield f"It is off, below {_quoted(scale.least)}."
    elif value not in scale.on:
        yield f"It is set to {_quoted(value)}, which this bike does not have."
    elif len(scale.on) > 1:
        share = scale.position_of(value)
        if share in (0.0, 1.0):
            yield f"It is set to {_quoted(value)}, {ends[share == 1.0]}."
        else:
            yield f"{_quoted(value)} stands {round(share * 100)} % of the way {toward}."


def _starting(start: Start) -> str:
    whom = f" ({start.whom})" if start.whom else ""
    return f"A start for you here{whom} is {_quoted(start.level)}."


def _state(control: Control, value: Setting | None) -> Iterator[str]:
    words = control.choices or control.speeds or (("on",) if control.kind == "switch" else ())
    if words:
        off = () if control.off in (None, False) or "off" in words else ("off",)
        yield f"On this bike: {', '.join((*off, *words))}."
    yield from _now(value)
    if control.gentlest is not None:
        yield f"{_quoted(control.gentlest)} is the gentlest."


def _now(value: Setting | float | None) -> tuple[str, ...]:
    shown = show_number(value) if isinstance(value, int | float) else value
    return ("What it is set to is not known.",) if value is None else (f"It is set to {shown}.",)


def of_adjuster(adjuster: Adjuster, value: float | None) -> OnBike:
    """Say how an adjuster counts: which end is firmer, or has more preload, and where it stands."""
    unit = {"click": "clicks", "turn": "turns"}.get(adjuster.unit or "", adjuster.unit or "")
    if adjuster.counted_from is None:
        unknown = "Whether it is counted from closed or from open is not known: the bike's file can say it."
        return OnBike(said=(unknown, *_now(value)))
    closed = adjuster.counted_from == "closed"
    most = "the most preload" if adjuster.what == "preload" else "the firmest"
    way = "out from closed" if closed else "in from open"
    said = [f"Counted {way}: {'fewer' if closed else 'more'} is {_more_word(adjuster)}."]
    if adjuster.range is None:
        return OnBike("fewer" if closed else "more", "more" if closed else "fewer", (*said, *_now(value)))
    low, high = sorted(adjuster.range)
    firm, soft = (low, high) if closed else (high, low)
    said.append(f"{show_number(firm)} {unit} is {most}, {show_number(soft)} the other end.")
    if value is None:
        said += _now(None)
    elif low <= value <= high and high > low:
        part = (value - soft) / (firm - soft)
        said.append(f"{show_number(value)} stands {round(part * 100)} % of the way to {most}.")
    else:
        said.append(f"{show_number(value)} is not in its range.")
    return OnBike(show_number(firm), show_number(soft), tuple(said))


def _more_word(adjuster: Adjuster) -> str:
    return "more preload" if adjuster.what == "preload" else "firmer"


def of_offset(offset: Offset, value: float | None) -> OnBike:
    """Say which way an offset is firmer and where it stands."""
    if offset.range is None or offset.firmest is None:
        return OnBike(
            said=("Which way is firmer on this bike is not known: its file can say it.", *_now(value))
        )
    low, high = sorted(offset.range)
    soft = low if offset.firmest == high else high
    said = f"{signed(offset.firmest)} is the firmest, {signed(soft)} the softest; 0 is the preset as built."
    now = "It is not known." if value is None else f"It is set to {signed(value)}."
    return OnBike(signed(offset.firmest), signed(soft), (said, now))


def _of_field(key: str, setup: SetUp, bike: Bike) -> Iterator[str]:
    value = getattr(setup, key)
    if key == "mode":
        yield from _modes(setup, bike)
    elif key == "damping":
        yield f"On this bike: {', '.join(dict.fromkeys(('by-hand', *bike.damping)))}."
        yield from _now(value)
    elif key == "preset":
        yield from _preset(setup, bike)
    elif key in ("front_sprocket", "rear_sprocket") and setup.front_sprocket and setup.rear_sprocket:
        front, rear = setup.front_sprocket, setup.rear_sprocket
        yield f"Fitted: {front}/{rear}. One tooth at the front is worth {rear / front:.1f} at the rear."
        yield f"One tooth more at the rear is {100 / rear:.1f} % more pull in every gear."
    elif key in ("fork_height", "rear_height"):
        end = bike.front if key == "fork_height" else bike.rear
        if value is not None:
            yield f"It is {value}."
        if end.highest_clear is not None:
            yield f"The highest that was seen to clear everything on this bike is {end.highest_clear}."
    elif value is not None:
        yield f"It is {value}."


def _modes(setup: SetUp, bike: Bike) -> Iterator[str]:
    made = [f"{name} ({use_words(mode.use)})" if mode.use else name for name, mode in bike.modes.items()]
    yield f"On this bike: {', '.join(made)}."
    mode = bike.modes.get(setup.mode or "")
    if mode is None:
        yield "Which one is in use is not known."
        return
    fixes = ", ".join(f"{label_of(name)} {value}" for name, value in mode.fixes.items())
    limits = ", ".join(label_of(name) for name in mode.limits)
    parts = [f"fixes {fixes}" if fixes else "fixes nothing", f"limits {limits}" if limits else ""]
    yield f"{setup.mode} {' and '.join(filter(None, parts))}."


def _preset(setup: SetUp, bike: Bike) -> Iterator[str]:
    used = preset_in_use(bike, setup)
    if used is not None:
        yield f"{used.name} {preset_words(used.values)}."
    elif setup.preset is not None:
        yield f"What {setup.preset} sets is not written in the bike's file."
    else:
        yield "Which one is in use is not known."


def _quoted(value: Level) -> str:
    return f'"{value}"' if isinstance(value, str) else str(value)
