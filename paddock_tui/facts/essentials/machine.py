"""Essentials of the bike: brakes, pads, controls, wheels, aids and their dash."""

from collections.abc import Iterator, Mapping

from paddock_tui.facts.core import ABSENT
from paddock_tui.facts.dash import undone_by
from paddock_tui.facts.essentials.core import (
    ALL,
    KNOWN,
    PADS,
    WALKED_ROUND,
    Around,
    EssentialAnswer,
    Open,
    essential,
    to_tick,
)
from paddock_tui.facts.past import Along, PastSession
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import HELP_FUNCTIONS, STATE_FUNCTIONS, Control, Effect, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import is_off, label_of

_FREE = ("throttle-return", "kill-switch", "bearings", "no-leaks")
"""The items of the morning's list that together say that the controls are free and nothing leaks."""


@essential("brakes-tried", ALL)
def brakes_tried(around: Around) -> EssentialAnswer:
    """Front lever firm, rear brake working, this session; the morning's list says it for the first one."""
    lever = around.session.lever
    if lever is not None and lever != "firm":
        return KNOWN
    if around.ticked("brakes-tried", "brake-lever", WALKED_ROUND):
        return KNOWN
    if around.first_of_the_day and around.ticked_today("lever-firm", "brake-lever"):
        return KNOWN
    if lever == "firm":
        firm = around.ticked("rear-brake")
        return KNOWN if firm else to_tick(around, "rear-brake", "the rear brake works")
    return to_tick(around, WALKED_ROUND, "lever firm, rear brake works")


@essential("pads", ALL)
def pads(around: Around) -> EssentialAnswer:
    """Pads seen over the limit: two riding days, a day for whoever races."""
    days = 1 if around.asked_as == "race" else 2
    if around.measured_within(days, PADS):
        return KNOWN
    if around.ticked_within(days, "pads"):
        return KNOWN
    return to_tick(around, "pads", "brake pads seen over the limit, both ends", in_day=True)


@essential("controls-free", ALL)
def controls_free(around: Around) -> EssentialAnswer:
    """Throttle snaps shut, kill switch, steering free, no leaks: the day's list, or an inspection."""
    if around.ticked_today("controls-free") or around.entry.inspected:
        return KNOWN
    if any(one.entry.inspected for one in around.of_today()):
        return KNOWN
    if all(around.ticked_today(name) for name in _FREE):
        return KNOWN
    label = "throttle snaps shut, kill switch, steering free, no leaks"
    return to_tick(around, "controls-free", label, in_day=True)


def _looked_at(so_far: bool, one: PastSession) -> bool:
    return so_far or bool(one.entry.inspected) or any(work.torqued for work in one.session.work.values())


_LOOKED_AT = Along("looked-at", False, _looked_at)
"""Whether a session tells of torqued work, or its day of an inspection."""


@essential("wheels-secured", ALL, rules=("wheel-work-not-checked",))
def wheels_secured(around: Around) -> EssentialAnswer:
    """Wheels, axles, calipers and yokes: looked at once, and since then what the record says of work."""
    names = ("wheels-secured", "axles", "axles-glance", "wheels-torqued")
    torqued = _torqued_now(around)
    label = _wheels_may_be_others(around)
    if label and not torqued and not around.ticked_today(*names):
        return to_tick(around, "wheels-secured", label, in_day=True)
    looked_at = torqued or around.entry.inspected or _LOOKED_AT.of(around.history)
    if looked_at or around.ticked_ever(*names):
        return KNOWN
    label = "axles and calipers: not out since the last ride, or torqued"
    return to_tick(around, "wheels-secured", label, in_day=True)


def _wheels_may_be_others(around: Around) -> str:
    """Ask for wheels that may have been out: the last ride does not say on which tyres, one before does."""
    if not around.ridden or around.session.tyres is None:
        return ""
    *before, last = around.ridden
    told = last.tyres is not None or all(one.tyres is None for one in before)
    return "" if told else f"axles and calipers: not out since {last.id}, whose tyres nobody wrote down"


def _torqued_now(around: Around) -> bool:
    return any(work.torqued for work in around.session.work.values())


_STANDING: tuple[tuple[str, str], ...] = (
    ("fork_height", "the fork protrusion"),
    ("rear_height", "the rear ride height"),
    ("front_sprocket", "the front sprocket"),
    ("rear_sprocket", "the rear sprocket"),
    ("links", "the chain's links"),
)
"""What of a set-up a tyre may hit something by, or the chain stand otherwise by, when it is changed."""


@essential("as-last-ridden", ALL)
def as_last_ridden(around: Around) -> EssentialAnswer:
    """Heights and chain that were on record when the bike was last ridden: what they are now."""
    if not around.ridden:
        return ABSENT
    now = around.session.setup
    for key, label in _STANDING:
        if getattr(now, key) is not None:
            continue
        last = _LAST_AT.of(around.history).get(key)
        if last is not None:
            then = getattr(last.session.setup, key)
            return Open(f"{label}, last ridden at {then}", "session", ("setup", key))
    return KNOWN


def _stood_again(so_far: Mapping[str, PastSession], one: PastSession) -> Mapping[str, PastSession]:
    if not one.ridden:
        return so_far
    new = {key: one for key, _ in _STANDING if getattr(one.session.setup, key) is not None}
    return {**so_far, **new} if new else so_far


_LAST_AT: Along[Mapping[str, PastSession]] = Along("last-at", {}, _stood_again)
"""The last session ridden in which each of what stands so is written down."""


@essential("aids", ALL)
def aids(around: Around) -> EssentialAnswer:
    """Riding mode and levels in force, each with its direction; none on a bike that says it has none."""
    bike = around.bike
    if bike is None or bike.electronics == "none":
        return ABSENT
    if bike.electronics is None:
        return Open("the bike's electronics: listed, or none", "bike", ("electronics",))
    setup = around.session.setup
    if bike.modes and bike.modes.get(setup.mode or "") is None:
        return Open("the riding mode", "session", ("setup", "mode"))
    return next(_open_aids(around, bike), KNOWN)


def _open_aids(around: Around, bike: Bike) -> Iterator[Open]:
    for name, control in sorted(bike.controls.items()):
        function = function_of(name, control)
        if function not in (*HELP_FUNCTIONS, *STATE_FUNCTIONS, "engine-braking"):
            continue
        if control.kind is None:
            yield Open(f"what kind of control {label_of(name)} is", "bike", ("controls", name, "kind"))
        value = value_in_force(name, around.session.setup, bike)
        # Which speed a limiter holds is asked where a limit is posted.
        if value is None and function != "pit-limiter":
            yield Open(f"what {label_of(name)} is set to", "session", ("setup", "controls", name))
        elif control.kind == "speed" and value is not None and not is_off(control, value):
            if not control.speeds:
                yield Open(f"the speeds that {label_of(name)} has", "bike", ("controls", name, "speeds"))
        elif (
            value is not None
            and function not in STATE_FUNCTIONS
            and not is_off(control, value)
            and not _direction_known(name, control)
        ):
            braking = function == "engine-braking"
            end, does = ("frees_most", "brakes least") if braking else ("most_help", "helps most")
            yield Open(f"which end of {label_of(name)} {does}", "bike", ("controls", name, end))
        elif value is not None and function == "abs":
            yield from _open_wheels(name, control, value)


def _open_wheels(name: str, control: Control, value: Setting) -> Iterator[Open]:
    """Ask which wheels one ABS for both watches at a level below its most, where the bike's file tells of
    one of its levels: then the others are not as a matter of course on at both.
    """
    levels = levels_of(name, control)
    scale = levels.help_if_known() if levels is not None else None
    if is_off(control, value) or scale is None or value == scale.most or not control.effects:
        return
    effect = control.effects.get(str(value), Effect())
    for wheel in ("front", "rear"):
        if getattr(effect, wheel) is None:
            label = f"whether {label_of(name)} {value} watches the {wheel} wheel"
            yield Open(label, "bike", ("controls", name, "effects", str(value), wheel))


def _direction_known(name: str, control: Control) -> bool:
    levels = levels_of(name, control)
    if levels is None:
        return control.kind == "speed"
    if function_of(name, control) == "engine-braking":
        return levels.scale_if_known() is not None
    return levels.help_if_known() is not None


@essential("dash", ALL, rules=("dash-not-read",))
def dash(around: Around) -> EssentialAnswer:
    """The dash read after the last ignition-on; nothing to read on a bike without anything to set."""
    bike, session = around.bike, around.session
    if bike is None or bike.electronics == "none" or not bike.controls:
        return ABSENT
    if session.kind == "road" and around.ticked_today("dash-read"):
        return KNOWN
    read = session.dash.read is not None and not undone_by(session, bike)
    return KNOWN if read else Open("the dash, read after the last ignition-on", "session", ("dash", "read"))
