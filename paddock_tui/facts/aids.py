"""What the aids do as they are set: which wheel is left alone, what is armed, what thins the nets."""

from collections.abc import Iterable, Mapping

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import Scale
from paddock_tui.facts.controls import NETS, Net, ShownControl
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.incidents import false_neutrals_noted
from paddock_tui.facts.past import History
from paddock_tui.limits.aids import THIN_TOGETHER
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control, Effect, function_of
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.shapes_of_bike import is_off

LEARNERS = ("novice", "intermediate")
STARTING = ("race", "start practice")
"""The kinds of session in which a start is what is wanted."""


@attrs.frozen
class Freed:
    """Engine braking as it is set: its control, and its position from holding (0.0) to freeing (1.0)."""

    shown: ShownControl
    position: float
    scale: Scale


@attrs.frozen
class Mean:
    """The nets of a bike that has several: each as it is set, and their mean help, off counting as none."""

    nets: Mapping[str, Net]
    help: float


@fact("the rider's group", at="rider:group")
def learner(group: str) -> str | Absent:
    """Return the group of a rider who is still learning the track; absent for the advanced and racers."""
    return group if group in LEARNERS else ABSENT


@fact("the rider's group", at="rider:group")
def novice(group: str) -> bool | Absent:
    """Return True for a novice; absent for every other group."""
    return True if group == "novice" else ABSENT


@fact("whether all aids at their least matter", at="session:surface")
def least_matters(column: str, group: str) -> bool | Absent:
    """Return True for a novice, and for anybody off a dry track; absent for the others in the dry."""
    return ABSENT if column == "dry" and group != "novice" else True


@fact("the bike's power", at="bike:drive.power", show=lambda power: f"{power}")
def bike_power(bike: Bike) -> Quantity | Unknown:
    """Return the peak power, as entered."""
    return bike.drive.power or UNKNOWN


@fact("which map {subject} is, throttle or power", per="control")
def map_function(aid_function: str) -> str | Absent:
    """Return the function of a control that softens; absent for every other control."""
    return aid_function if aid_function in ("throttle", "power") else ABSENT


@fact("whether {subject} is the wheelie control", per="control")
def is_wheelie(aid_function: str) -> bool | Absent:
    """Return True for the wheelie control; absent for every other control."""
    return True if aid_function == "wheelie" else ABSENT


@fact("whether {subject} lets the front wheel lift", per="control")
def wheelie_off(is_wheelie: bool, help_in_force: float) -> bool | Absent:
    """Return True where the wheelie control is off; else absent."""
    return True if help_in_force < 0 else ABSENT


@fact("whether {subject} is ABS at the rear", per="control")
def is_rear_abs(aid_function: str) -> bool | Absent:
    """Return True for a control of ABS at the rear; absent for every other control."""
    return True if aid_function in ("rear-abs", "abs") else ABSENT


@fact("whether {subject} watches the rear wheel", per="control")
def rear_wheel_left(
    is_rear_abs: bool, control: Control, in_force: ShownControl, effect_in_force: Effect
) -> bool | Absent:
    """Return True where an ABS control leaves the rear wheel without ABS; absent where it does not, or is
    none.
    """
    return True if is_off(control, in_force.value) or effect_in_force.rear == "off" else ABSENT


def least_watching(name: str, control: Control, wheels: Iterable[str], at_least: float) -> Setting | None:
    """Return the level of least help, not below `at_least`, at which an ABS watches these wheels.

    None where no level does, or nobody knows which end helps most.
    """
    levels = levels_of(name, control)
    scale = levels.help_if_known() if levels is not None else None
    for level in scale.on if scale is not None else ():
        effect = control.effects.get(str(level), Effect())
        watches = all(getattr(effect, wheel) != "off" for wheel in wheels)
        if scale is not None and watches and scale.help_of(level) >= at_least:
            return level
    return None


@fact("how strong {subject} is", at="session:setup.controls.{subject}", per="control")
def freed(in_force: ShownControl, freeing_scale: Scale) -> Freed | Unknown:
    """Return the position of the engine braking between its two ends; not known for what is no level of
    it.
    """
    try:
        return Freed(in_force, freeing_scale.position_of(in_force.value), freeing_scale)
    except (Inconsistent, OutOfRange):
        return UNKNOWN


@fact("engine braking", gathers=("freed",), show=lambda found: str(found.shown))
def engine_brake(electronics: str, freed: Mapping[str, Freed]) -> Freed | Absent:
    """Return the engine braking that holds most; absent on a bike that does not let it be set."""
    if electronics == "none" or not freed:
        return ABSENT
    return min(freed.values(), key=lambda one: one.position)


@fact("what {subject} switches", per="control")
def state_of(subject: str, control: Control) -> str | Absent:
    """Return the function of a control that has a state, launch or shifter; absent for every other
    control.
    """
    function = function_of(subject, control)
    return function if function in ("launch", "shifter") else ABSENT


@fact("whether {subject} is launch control", per="control")
def is_launch(state_of: str) -> bool | Absent:
    """Return True for launch control; absent for every other control."""
    return True if state_of == "launch" else ABSENT


@fact("whether {subject} is armed", per="control", show=str)
def launch_armed(is_launch: bool, control: Control, in_force: ShownControl) -> ShownControl | Absent:
    """Return the launch control where it is anything but off; else absent."""
    return ABSENT if _off(control, in_force) else in_force


@fact("whether a launch is armed", gathers=("launch_armed",), show=str)
def armed(launch_armed: Mapping[str, ShownControl]) -> ShownControl | Absent:
    """Return the launch control that is armed; absent where none is."""
    return next(iter(launch_armed.values()), ABSENT)


@fact("whether a start is wanted in this session", at="session:kind")
def no_start_wanted(kind: str) -> str | Absent:
    """Return the kind of an organised session in which nobody starts from a line; else absent."""
    return ABSENT if kind in (*STARTING, "road") else kind


@fact("false neutrals", show=lambda count: f"{count} false neutrals")
def false_neutrals(session: Session, history: History) -> int | Absent:
    """Return how many were noted on this bike on its last riding day so far and nothing was written as
    mended.
    """
    noted = false_neutrals_noted(session, history)
    open_ = [one for one in noted if not (one.incident.mended or "").strip()]
    return sum(one.incident.count or 1 for one in open_) or ABSENT


@fact("which shifts {subject} does", at="bike:controls.{subject}.effects", per="control")
def quick_downshift(
    state_of: str, control: Control, in_force: ShownControl, effect_in_force: Effect
) -> bool | Unknown | Absent:
    """Return True where the shifter does downshifts as it is set; absent where it does not, or is none."""
    if state_of != "shifter" or _off(control, in_force):
        return ABSENT
    if effect_in_force.shifts is None:
        return UNKNOWN
    return True if effect_in_force.shifts in ("down", "both") else ABSENT


@fact("how much help {subject} gives", per="control")
def catching(net: Net, net_function: str) -> Net | Absent:
    """Return a net that counts where all are looked at together: slide control is the second one of the
    rear.
    """
    return ABSENT if net_function == "slide" else net


@fact("the aids together", gathers=("catching",))
def thin_mean(bike: Bike, catching: Mapping[str, Net]) -> Mean | Absent:
    """Return the nets with their mean help where there are two or more and it is little; else absent.

    Above the most that an owner may set, nets are never called thin: nothing has to be known of the track.
    """
    if len(catching) < 2:
        return ABSENT
    mean = sum(max(one.help, 0.0) for one in catching.values()) / len(catching)
    return Mean(catching, mean) if mean < THIN_TOGETHER.high else ABSENT


@fact("what makes low aids matter", at="session:track")
def thin_matters(
    session: Session, surface: str, column: str, group: str, cold_track: bool | None
) -> str | Unknown | Absent:
    """Return why little help counts now: a novice, a wet track, or a cold one without warmers; else
    absent.
    """
    if group == "novice":
        return "for a novice"
    if column == "wet":
        return "on a wet track"
    if session.warmers == "used" or cold_track is False:
        return ABSENT
    return UNKNOWN if cold_track is None else "on a cold track without warmers"


def watching(bike: Bike) -> bool:
    """Return whether a bike has an aid that compares the speeds of its wheels."""
    return any(function_of(name, one) in (*NETS, "rear-abs") for name, one in bike.controls.items())


def _off(control: Control, shown: ShownControl) -> bool:
    return shown.value == OFF or is_off(control, shown.value)
