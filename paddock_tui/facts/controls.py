"""What the electronics are set to, what is in force, and how much each helps."""

from collections.abc import Mapping

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import OFF_HELP, HelpScale, Levels, Scale
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import (
    HELP_FUNCTIONS,
    Control,
    Effect,
    Mode,
    function_of,
)
from paddock_tui.records.in_force import in_force_value, mode_of
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes.settings import OFF
from paddock_tui.records.shapes_of_bike import is_off, label_of

NETS = ("traction", "wheelie", "slide", "front-abs", "abs")
"""Aids that catch a slip or a lift; throttle and power soften, but catch nothing."""

SLIP_NETS = ("traction", "slide")

FRONT_ABS = ("front-abs", "abs")


@attrs.frozen
class ShownControl:
    """A control with the value in force, as the bike shows it: 'traction control 3 (range 0-10)'."""

    name: str
    value: Setting
    control: Control

    def __str__(self) -> str:
        bounds = "" if self.value == OFF else of_range(self.control)
        return f"{label_of(self.name)} {self.value}{bounds}"


@attrs.frozen
class Net:
    """An aid that catches a slip or a lift, with the help it gives as it is set (negative when off)."""

    shown: ShownControl
    help: float
    scale: HelpScale


@attrs.frozen
class Mapped:
    """The riding mode in use: its name and what it says. A bike without riding modes has a free one."""

    name: str
    mode: Mode


def of_range(control: Control) -> str:
    """Write the range of a counted control, ' (range 1-6)'; where it counts down, which end is which."""
    if control.levels is None:
        return ""
    low, high = int(control.levels[0]), int(control.levels[1])
    if control.most_help == low:
        return f" ({high} = least, {low} = most)"
    return f" (range {low}-{high})"


def short_range(control: Control) -> str:
    """Write the range of a counted control beside its scale; where it counts down, the end that says so."""
    if control.levels is not None and control.most_help == int(control.levels[0]):
        return f"({control.most_help} = most)"
    return of_range(control).strip(" ()")


def _mapped(name: str, control: Control, setup: SetUp, bike: Bike) -> Mapped | None:
    """Return the riding mode as one control sees it with its name; None where it is not known."""
    mode = mode_of(name, control, setup, bike)
    if mode is None:
        return None
    return Mapped(setup.mode or "", mode) if bike.modes.get(setup.mode or "") is mode else Mapped("", mode)


@fact("the bike's electronics (listed or none)", at="bike:electronics")
def electronics(bike: Bike) -> str | Unknown:
    """Return whether the controls of the bike are all in its file."""
    return bike.electronics or UNKNOWN


@fact(
    "the riding mode",
    at="session:setup.mode",
    show=lambda found: f"riding mode {found.name}" * bool(found.name),
)
def mode_in_use(setup: SetUp, bike: Bike) -> Mapped | Unknown:
    """Return the riding mode that is chosen; a free one where the bike has none."""
    if not bike.modes:
        return UNKNOWN if bike.electronics is None else Mapped("", Mode())
    mode = bike.modes.get(setup.mode or "")
    return Mapped(setup.mode or "", mode) if mode is not None else UNKNOWN


@fact("what {subject} is set to", at="session:setup.controls.{subject}", per="control")
def set_value(subject: str, control: Control, setup: SetUp, bike: Bike) -> Setting | Unknown | Absent:
    """Return what the rider set a control to; nothing is asked where the riding mode fixes it anyway."""
    value = setup.controls.get(subject)
    if value is not None:
        return value
    fixed = in_force_value(subject, control, setup, bike.modes.get(setup.mode or ""))
    return UNKNOWN if fixed is None else ABSENT


@fact("the riding mode", at="session:setup.mode", per="control")
def mode_for(control: Control, subject: str, setup: SetUp, bike: Bike) -> Mapped | Unknown:
    """Return the riding mode as far as it matters for one control: one that no mode names is always free."""
    return _mapped(subject, control, setup, bike) or UNKNOWN


@fact("what the riding mode fixes {subject} to", per="control")
def fixed_by_mode(subject: str, mode_for: Mapped) -> Setting | Absent:
    """Return the value that the riding mode gives a control; absent where the mode leaves it free."""
    return mode_for.mode.fixes.get(subject, ABSENT)


@fact("what the riding mode leaves of {subject}", per="control")
def left_by_mode(subject: str, mode_for: Mapped) -> tuple[Setting, ...] | Absent:
    """Return the range or the words that the riding mode allows; absent where it does not limit the
    control.
    """
    if subject in mode_for.mode.fixes:
        return ABSENT
    return mode_for.mode.limits.get(subject, ABSENT)


@fact("what {subject} is set to", at="session:setup.controls.{subject}", per="control", show=str)
def in_force(subject: str, control: Control, setup: SetUp, mode_for: Mapped) -> ShownControl | Unknown:
    """Return the value that a control has on the track, riding mode included."""
    value = in_force_value(subject, control, setup, mode_for.mode)
    return UNKNOWN if value is None else ShownControl(subject, value, control)


@fact("the levels of {subject}", at="bike:controls.{subject}.levels", per="control")
def levels(subject: str, control: Control) -> Levels | Unknown | Absent:
    """Return what the bike offers for a control that has levels or words in an order."""
    ordered = function_of(subject, control) in (*HELP_FUNCTIONS, "engine-braking")
    if control.kind == "speed" or (control.kind == "state" and not ordered):
        return ABSENT
    return levels_of(subject, control) or UNKNOWN


@fact("the levels of {subject}", at="bike:controls.{subject}.levels", per="control")
def offered(subject: str, control: Control) -> Levels | Unknown | Absent:
    """Return everything a control can be set to, states included; speeds are judged by themselves."""
    if control.kind == "speed":
        return ABSENT
    return levels_of(subject, control) or UNKNOWN


@fact("the speeds of {subject}", per="control")
def speeds_offered(control: Control) -> tuple[str, ...] | Absent:
    """Return the speeds that a control offers, none where the bike's file names none; absent for other
    kinds.
    """
    return (control.speeds or ()) if control.kind == "speed" else ABSENT


@fact("which aid {subject} is", per="control")
def aid_function(subject: str, control: Control) -> str | Absent:
    """Return the function of a control that gives help; absent for any other."""
    function = function_of(subject, control)
    return function if function in HELP_FUNCTIONS else ABSENT


@fact("which slip or lift {subject} catches", per="control")
def net_function(aid_function: str) -> str | Absent:
    """Return the function of an aid that is a net; absent for those that only soften, throttle and power."""
    return aid_function if aid_function in NETS else ABSENT


@fact("which aid of the rear wheel {subject} is", per="control")
def slip_net_function(aid_function: str) -> str | Absent:
    """Return the function of an aid that catches a sliding rear wheel; absent for every other control."""
    return aid_function if aid_function in SLIP_NETS else ABSENT


@fact("whether {subject} is the engine braking", per="control")
def is_engine_braking(subject: str, control: Control) -> bool | Absent:
    """Return True for the engine braking; absent for every other control."""
    return True if function_of(subject, control) == "engine-braking" else ABSENT


@fact("the aids that nobody set", show=lambda found: f"not set: {', '.join(found)}")
def aids_unset(setup: SetUp, bike: Bike) -> tuple[str, ...] | Absent:
    """Traction, slide and front ABS controls without a value in force; absent where each has one."""
    mode = bike.modes.get(setup.mode or "")
    found = tuple(
        name
        for name, control in sorted(bike.controls.items())
        if function_of(name, control) in (*SLIP_NETS, *FRONT_ABS)
        and in_force_value(name, control, setup, mode) is None
    )
    return found or ABSENT


@fact("whether nobody said which end of {subject} helps most", per="control")
def help_unsaid(subject: str, control: Control, aid_function: str) -> bool | Absent:
    """Return True for an aid whose levels, or the end of them that helps most, are not known; else absent."""
    levels = levels_of(subject, control)
    return True if levels is None or levels.help_if_known() is None else ABSENT


@fact("whether nobody said which end of {subject} brakes least", per="control")
def freeing_unsaid(subject: str, control: Control, is_engine_braking: bool) -> bool | Absent:
    """Return True for engine braking whose levels or freeing end are not known; else absent."""
    levels = levels_of(subject, control)
    return True if levels is None or levels.scale_if_known() is None else ABSENT


@fact("which end of {subject} helps most", at="bike:controls.{subject}.most_help", per="control")
def help_scale(aid_function: str, levels: Levels) -> HelpScale | Unknown:
    """Return the scale of help of an aid; not known while the bike's file does not say which end helps
    most.
    """
    return levels.help_if_known() or UNKNOWN


@fact("which end of {subject} brakes least", at="bike:controls.{subject}.frees_most", per="control")
def freeing_scale(is_engine_braking: bool, levels: Levels) -> Scale | Unknown:
    """Return the two-ended scale of engine braking, toward the end that frees the rear."""
    return levels.scale_if_known() or UNKNOWN


@fact("how much help {subject} gives", at="session:setup.controls.{subject}", per="control")
def help_in_force(in_force: ShownControl, help_scale: HelpScale) -> float | Unknown:
    """Help of the value in force, 0.0 to 1.0, negative when off; not known for no level of the bike."""
    try:
        return help_scale.help_of(in_force.value)
    except (Inconsistent, OutOfRange):
        return UNKNOWN


@fact("how much help {subject} gives", per="control")
def net(
    net_function: str,
    in_force: ShownControl,
    help_in_force: float,
    help_scale: HelpScale,
    effect_in_force: Effect,
) -> Net:
    """Return an aid that catches a slip or a lift, as it is set; ABS that leaves the front wheel is none."""
    front_left = net_function in FRONT_ABS and effect_in_force.front == "off"
    return Net(in_force, OFF_HELP if front_left else help_in_force, help_scale)


@fact("what this level of {subject} does", per="control")
def effect_in_force(control: Control, in_force: ShownControl) -> Effect:
    """Return what is declared of the level in force; nothing special where nothing is declared."""
    return control.effects.get(str(in_force.value), Effect())


@fact("whether {subject} is ABS at the front", per="control")
def is_front_abs(aid_function: str) -> bool | Absent:
    """Return True for a control of ABS at the front; absent for every other control."""
    return True if aid_function in FRONT_ABS else ABSENT


@fact("whether {subject} watches the front wheel", per="control")
def front_wheel_left(
    is_front_abs: bool, control: Control, in_force: ShownControl, effect_in_force: Effect
) -> bool | Absent:
    """Return whether an ABS control leaves the front wheel without ABS; absent for what is not ABS at the
    front.
    """
    return is_off(control, in_force.value) or effect_in_force.front == "off"


@fact("the help of each aid", gathers=("help_in_force",))
def helps(help_in_force: Mapping[str, float]) -> Mapping[str, float]:
    """Help of every aid that the bike has, by the name of its control."""
    return help_in_force
