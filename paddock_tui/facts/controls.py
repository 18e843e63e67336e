"""What the electronics are set to, what is in force, and how much each helps."""

from collections.abc import Mapping

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import (
    HELP_FUNCTIONS,
    Control,
    Effect,
    Mode,
    function_of,
)
from paddock_tui.records.of_bike import label_of
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.trade.errors import CannotBe, OutOfRange
from paddock_tui.trade.levels import HelpScale, Levels, Scale


@attrs.frozen
class Shown:
    """A control with the value in force, as the bike shows it: 'traction 3 of 0-10'."""

    name: str
    value: Setting
    control: Control

    def __str__(self) -> str:
        return f"{label_of(self.name)} {self.value}{of_range(self.control)}"


@attrs.frozen
class Mapped:
    """The riding mode in use: its name and what it says. A bike without riding modes has a free one."""

    name: str
    mode: Mode


def of_range(control: Control) -> str:
    """Write the range of a counted control from least to most help, ' of 6-1'; empty for words."""
    if control.levels is None:
        return ""
    low, high = int(control.levels[0]), int(control.levels[1])
    return f" of {high}-{low}" if control.most_help == low else f" of {low}-{high}"


def levels_of(control: Control) -> Levels | None:
    """Give the levels of a control in the bike's own order; None where there are none that fit."""
    off = control.off if control.off is not None else False
    most = control.most_help if control.most_help is not None else control.frees_most
    try:
        if control.levels is not None:
            end = most if isinstance(most, int) else None
            return Levels.span(int(control.levels[0]), int(control.levels[1]), end, off)
        if control.choices is not None:
            return Levels.choices(control.choices, most if isinstance(most, str) else None, off)
        if control.kind == "switch":
            return Levels.choices(("on",), "on", True)
    except (CannotBe, OutOfRange):
        return None
    return None


def in_force_value(name: str, control: Control, setup: SetUp, mode: Mode | None) -> Setting | None:
    """Tell what a control is at: what the riding mode fixes, else what was set; the one place."""
    if mode is not None and not control.outside_modes and name in mode.fixes:
        return mode.fixes[name]
    return setup.controls.get(name)


@fact("the bike's electronics (listed or none)", at="bike:electronics")
def electronics(bike: Bike) -> str | Unknown:
    """Whether the controls of the bike are all in its file."""
    return bike.electronics or UNKNOWN


@fact(
    "the riding mode",
    at="session:setup.mode",
    show=lambda found: f"riding mode {found.name}" * bool(found.name),
)
def mode_in_use(setup: SetUp, bike: Bike) -> Mapped | Unknown:
    """The riding mode that is chosen; a free one where the bike has none."""
    if not bike.modes:
        return UNKNOWN if bike.electronics is None else Mapped("", Mode())
    mode = bike.modes.get(setup.mode or "")
    return Mapped(setup.mode or "", mode) if mode is not None else UNKNOWN


@fact("what {subject} is set to", at="session:setup.controls.{subject}", per="control")
def set_value(subject: str, setup: SetUp) -> Setting | Unknown:
    """What the rider set a control to."""
    return setup.controls.get(subject, UNKNOWN)


@fact("the riding mode", at="session:setup.mode", per="control")
def mode_for(control: Control, subject: str, setup: SetUp, bike: Bike) -> Mapped | Unknown:
    """The riding mode as far as it matters for one control: one that no mode names is always free."""
    named = any(subject in mode.fixes or subject in mode.limits for mode in bike.modes.values())
    if control.outside_modes or not named:
        return Mapped("", Mode())
    mode = bike.modes.get(setup.mode or "")
    return Mapped(setup.mode or "", mode) if mode is not None else UNKNOWN


@fact("what {subject} is set to", at="session:setup.controls.{subject}", per="control", show=str)
def in_force(subject: str, control: Control, setup: SetUp, mode_for: Mapped) -> Shown | Unknown:
    """The value that a control has on the track, riding mode included."""
    value = in_force_value(subject, control, setup, mode_for.mode)
    return UNKNOWN if value is None else Shown(subject, value, control)


@fact("the levels of {subject}", at="bike:controls.{subject}.levels", per="control")
def levels(control: Control) -> Levels | Unknown | Absent:
    """What the bike offers for a control that has levels or words in an order."""
    if control.kind in ("speed", "state"):
        return ABSENT
    return levels_of(control) or UNKNOWN


@fact("the levels of {subject}", at="bike:controls.{subject}.levels", per="control")
def offered(control: Control) -> Levels | Unknown | Absent:
    """Everything a control can be set to, states included; speeds are judged by themselves."""
    if control.kind == "speed":
        return ABSENT
    return levels_of(control) or UNKNOWN


@fact("whether {subject} is an aid", per="control")
def is_aid(subject: str, control: Control) -> str | Absent:
    """The function of a control that gives help; absent for any other."""
    function = function_of(subject, control)
    return function if function in HELP_FUNCTIONS else ABSENT


@fact("which end of {subject} helps most", at="bike:controls.{subject}.most_help", per="control")
def help_scale(is_aid: str, levels: Levels) -> HelpScale | Unknown:
    """The scale of help of an aid; not known while the bike's file does not say which end helps most."""
    return levels.help_if_known() or UNKNOWN


@fact("which end of {subject} frees the rear", at="bike:controls.{subject}.frees_most", per="control")
def freeing_scale(subject: str, control: Control, levels: Levels) -> Scale | Unknown | Absent:
    """The two-ended scale of engine braking, toward the end that frees the rear."""
    if function_of(subject, control) != "engine-braking":
        return ABSENT
    return levels.scale_if_known() or UNKNOWN


@fact("how much help {subject} gives", at="session:setup.controls.{subject}", per="control")
def help_in_force(in_force: Shown, help_scale: HelpScale) -> float | Unknown:
    """Help of the value in force, 0.0 to 1.0, negative when off; not known for no level of the bike."""
    try:
        return help_scale.help_of(in_force.value)
    except (CannotBe, OutOfRange):
        return UNKNOWN


@fact("what this level of {subject} does", per="control")
def effect_in_force(control: Control, in_force: Shown) -> Effect:
    """What is declared of the level in force; nothing special where nothing is declared."""
    return control.effects.get(str(in_force.value), Effect())


@fact("whether {subject} watches the front wheel", per="control")
def front_wheel_left(
    subject: str, control: Control, in_force: Shown, effect_in_force: Effect
) -> bool | Absent:
    """Whether an ABS control leaves the front wheel without ABS; absent for what is not ABS at the front."""
    function = function_of(subject, control)
    if function not in ("front-abs", "abs"):
        return ABSENT
    return is_off(control, in_force.value) or effect_in_force.front == "off"


@fact("the help of each aid", gathers=("help_in_force",))
def helps(help_in_force: Mapping[str, float]) -> Mapping[str, float]:
    """Help of every aid that the bike has, by the name of its control."""
    return help_in_force


def is_off(control: Control, value: Setting) -> bool:
    """Tell whether a value means off on this bike, by its levels where it has any."""
    found = levels_of(control)
    return value == "off" if found is None else found.is_off(value) or value == "off"
