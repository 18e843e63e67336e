"""The rows about the bike: what it has, each thing in one line as its manual says it."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.calc.levels import Levels
from paddock_tui.desk.start.ask import Ask, AskResult, asked, tables
from paddock_tui.desk.start.context import Context
from paddock_tui.desk.start.people import record_ask
from paddock_tui.entry.of_a_bike import (
    ADJUSTER_HOW,
    DAMPING_HOW,
    MODE_HOW,
    SPLIT_HOW,
    SPLITS,
    adjusters_of,
    control_how,
    control_of,
    damping_of,
    mode_of,
    names_at,
)
from paddock_tui.records.bike import Bike
from paddock_tui.records.calls import CONTROL_CALLS, place_of
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster

ELECTRONICS, MODES, SUSPENSION = "what its electronics let you set", "riding modes", "what turns by hand"
NONE, LISTED = "none", "that is all of it"
_PLACES = (
    ("front", "preload"),
    ("front", "rebound"),
    ("front", "compression"),
    ("rear", "preload"),
    ("rear", "rebound"),
    ("rear", "compression"),
    ("steering", "damper"),
)
_SPEED = {"mph": "mph"}
SIZES = {
    "front": ("120/70ZR17", "110/70ZR17", "120/60ZR17", "110/70R17", "120/70R19"),
    "rear": ("180/55ZR17", "190/55ZR17", "190/50ZR17", "200/55ZR17", "160/60ZR17", "180/60ZR17", "150/60R17"),
}
"""Sizes that a digit picks, paddock practice, unpublished; what the bike's manual approves is typed else."""


def bike_asks(context: Context) -> Iterator[Ask]:
    """Ask which bike, what it lets be set, its riding modes, its adjusters, tank and tyre sizes."""
    bike = context.about.bike
    yield record_ask(context, "bike", bike, "bike", "what you call it")
    if bike is None:
        return
    loaded = context.files.read(bike)
    record = loaded.record if loaded is not None else None
    if not isinstance(record, Bike):
        return
    yield from _control_asks(context, bike, record)
    yield from _mode_asks(context, bike, record)
    yield from _adjuster_asks(context, bike, record)
    files, units, section = context.files, context.units, "tank and wheels"
    yield asked(files, units, section, bike, ("tank", "capacity"), how="usable, from empty to the brim")
    for end, sizes in SIZES.items():
        label = f"{end} tyre size"
        yield asked(files, units, section, bike, (end, "tyre_size"), label=label, choices=sizes, free=True)
    yield asked(files, units, section, bike, ("wet_mass",), how="ready to ride, full tank")


def _control_asks(context: Context, bike: Ref, record: Bike) -> Iterator[Ask]:
    files = context.files
    yield _whole(context, bike, "electronics", ELECTRONICS, "electronics", bool(record.controls))
    if record.electronics == "none":
        return
    by_function = {function_of(name, control): (name, control) for name, control in record.controls.items()}
    speed = _SPEED.get(context.units.speed or "", "km/h")
    for function in CONTROL_CALLS:
        if _left_out(function, by_function):
            continue
        there = by_function.get(function)

        def answer(text: str, function: str = function) -> AskResult | InputError:
            made = control_of(function, text, speed)
            if isinstance(made, InputError):
                return made
            puts: dict[Path, Value] = {("controls", function): made}
            return tables(files, bike, puts, f"{label_of(function)}: {text.strip()}")

        value = _control_words(*there) if there is not None else ""
        yield Ask(
            f"control {function}", ELECTRONICS, label_of(function), control_how(function), answer, value
        )
    if record.controls:
        yield _closing(context, bike, "electronics", ELECTRONICS)


def _left_out(function: str, there: Mapping[str, object]) -> bool:
    """Return whether a function is not asked: both wheels' ABS in one, or each by itself."""
    if function == "abs":
        return "front-abs" in there or "rear-abs" in there
    return function in ("front-abs", "rear-abs") and "abs" in there


def _control_words(name: str, control: Control) -> str:
    frees = function_of(name, control) == "engine-braking"
    most, end = (control.frees_most, "least braking") if frees else (control.most_help, "most help")
    levels = "-".join(f"{level:g}" for level in control.levels or ())
    said = (
        levels or " ".join(control.choices or control.speeds or ()),
        "on or off" if control.kind == "switch" else "",
        f"{end} {most}" if most is not None else "",
        _off_words(control),
        f"ignition {control.key_off}" if control.key_off else "",
    )
    return "; ".join(filter(None, said)) or "there"


def _off_words(control: Control) -> str:
    if isinstance(control.off, bool):
        return "can be off" if control.off else "always on"
    return f"{control.off} is off" if control.off is not None else ""


def _whole(context: Context, bike: Ref, key: str, section: str, label: str, has_some: bool) -> Ask:
    """Ask whether the bike has any of a section at all: 0 says none, in one key."""
    data = context.files.data(bike)
    said = {"none": "none on this bike", "listed": "all listed"}.get(str(data.get(key)), "")

    def answer(text: str) -> AskResult | InputError:
        if text.strip().casefold() not in ("0", "none"):
            return InputError(f'"{text.strip()}"', "0 for none", "enter goes on to the list")
        if has_some:
            return InputError("some are listed below", "none", "x deletes one on the bike's own page")
        return tables(context.files, bike, {(key,): NONE}, f"{label}: none on this bike")

    how = "0 none on this bike; enter goes through the list, what it has not is left empty"
    return Ask(f"whole {key}", section, label, how, answer, said or ("some" if has_some else ""), ("0",))


def _closing(context: Context, bike: Ref, key: str, section: str) -> Ask:
    """Ask whether the list is complete: what is not listed is not on the bike then."""
    data = context.files.data(bike)

    def answer(_: str) -> AskResult | InputError:
        return tables(context.files, bike, {(key,): "listed"}, "listed: what is not there the bike has not")

    value = "yes" if data.get(key) == "listed" else ""
    how = "what is left empty above is not on this bike"
    return Ask(f"all {key}", section, LISTED, how, answer, value, ("yes",), "yes")


def _mode_asks(context: Context, bike: Ref, record: Bike) -> Iterator[Ask]:
    if not record.controls:
        return
    files = context.files
    calls: dict[str, str] = {}
    for name, control in record.controls.items():
        calls |= {name: name, CONTROL_CALLS.get(function_of(name, control), name): name}
    for place, mode in enumerate((*record.modes, "")):

        def answer(text: str) -> AskResult | InputError:
            found = mode_of(text, calls)
            if isinstance(found, InputError):
                return found
            name, made = found
            return _not_offered(made, record) or tables(
                files, bike, {("modes", name): made or {"use": "any"}}, f"riding mode {name}"
            )

        there = record.modes.get(mode)
        value = f"{mode}{f' for {there.use}' if there is not None and there.use else ''}" if mode else ""
        yield Ask(f"mode {place}", MODES, f"mode {place + 1}", MODE_HOW, answer, value)


def _not_offered(made: Mapping[str, Any], record: Bike) -> InputError | None:
    """Refuse a mode that fixes or bounds a control at what the bike does not have."""
    for key in ("fixes", "limits"):
        for name, value in made.get(key, {}).items():
            control = record.controls[name]
            levels = levels_of(name, control)
            wrong = [
                one for one in (value if key == "limits" else [value]) if levels and not levels.offers(one)
            ]
            if wrong and levels:
                return InputError(f"{label_of(name)} {wrong[0]}", _offered(levels), MODE_HOW)
    return None


def _offered(levels: Levels) -> str:
    """Say what a control can be set to."""
    whole = all(isinstance(one, int) for one in levels.values)
    said = f"{levels.values[0]}-{levels.values[-1]}" if whole else ", ".join(map(str, levels.values))
    return f"{said} or off" if levels.off is True else said


def _adjuster_asks(context: Context, bike: Ref, record: Bike) -> Iterator[Ask]:
    files = context.files
    yield _whole(context, bike, "suspension", SUSPENSION, "adjusters", bool(record.adjusters))
    if record.suspension == "none":
        return
    there = {place_of(name, adjuster): adjuster for name, adjuster in record.adjusters.items()}
    for end, what in _PLACES:

        def answer(text: str, end: str = end, what: str = what) -> AskResult | InputError:
            made = adjusters_of(end, what, text)
            if isinstance(made, InputError):
                return made
            # What was typed before for this place and is not there any more goes.
            puts: dict[Path, Value | Missing] = {
                ("adjusters", name): made.get(name, MISSING) for name in names_at(end, what)
            }
            return tables(files, bike, puts, f"{end} {what}: {text.strip()}")

        value = _place_words(there, end, what)
        how = SPLIT_HOW if what in SPLITS else ADJUSTER_HOW
        label = f"{end} {what}" if end != "steering" else "steering, clicks"
        yield Ask(f"adjuster {end} {what}", SUSPENSION, label, how, answer, value)
    yield from _damping_asks(context, bike, record)
    if record.adjusters:
        yield _closing(context, bike, "suspension", SUSPENSION)
    if ("steering", "damper") not in there:
        yield asked(files, context.units, SUSPENSION, bike, ("steering_damper",))


def _damping_asks(context: Context, bike: Ref, record: Bike) -> Iterator[Ask]:
    """Ask for the ways of damping other than by hand, each with its presets, and for one more."""
    for place, name in enumerate((*record.damping, "")):

        def answer(text: str) -> AskResult | InputError:
            found = damping_of(text)
            if isinstance(found, InputError):
                return found
            mode, made = found
            return tables(context.files, bike, {("damping", mode): made}, f"damping mode {mode}")

        presets = record.damping[name].presets if name else None
        value = f"{name}: {', '.join(presets)}" if presets else name
        yield Ask(f"damping {place}", SUSPENSION, f"damping mode {place + 1}", DAMPING_HOW, answer, value)


def _place_words(there: Mapping[tuple[str, str], Adjuster], end: str, what: str) -> str:
    """Say what turns at one place: as a whole, else the slow one and the fast one."""
    whole = there.get((end, what))
    if whole is not None:
        return _adjuster_words(whole)
    parts = ((speed, there.get((end, f"{what} {speed}"))) for speed in ("slow", "fast"))
    return "; ".join(f"{speed} {_adjuster_words(one)}" for speed, one in parts if one is not None)


def _adjuster_words(adjuster: Adjuster) -> str:
    low, high = adjuster.range or (0.0, 0.0)
    count = f"{low:g}-{high:g} {adjuster.unit or ''}s" if adjuster.range else ""
    ends = f"from {adjuster.counted_from}" if adjuster.counted_from else ""
    leg = f"{adjuster.leg} leg" if adjuster.leg in ("left", "right") else ""
    return " ".join(filter(None, (count, ends, leg))) or "there"
