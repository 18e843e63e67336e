"""Rules about traction and slide control: off, or little of it for the surface, the rider, the rear tyre."""

from paddock_tui.calc.levels import HelpScale
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.traction import (
    DAMP_CAUTION,
    DAMP_NOVICE,
    NOVICE_CAUTION,
    NOVICE_SERIOUS,
    POOR_REAR,
    WET_CAUTION,
    WET_NOVICE,
    WET_SERIOUS,
)
from paddock_tui.records.shapes import Setting
from paddock_tui.rules.aid_words import ENOUGH, enough_help, raised, shown_of, start, track
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    HOLD,
    SERIOUS,
    RaisedFinding,
    Result,
    rule,
)


@rule(
    "aid-off-in-the-wet",
    SERIOUS,
    per="control",
    when=("on_wet", "in_force", "surface", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=ENOUGH,
    absorbs=("help-lowered",),
    rank=AIDS,
)
def aid_off_in_the_wet(
    subject: str,
    slip_net_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    suggested_level: Setting | None,
    group: str,
    wet_said: str,
    limits: Limits,
) -> Result:
    """Traction or slide control off in the wet: nothing catches the rear."""
    if help_in_force >= 0:
        return None
    wanted = help_scale.level_at_least(enough_help(limits))
    return RaisedFinding(
        message=f"{start(subject)} is off in the wet.",
        why=f"A slide at the rear on a wet track outruns your reactions; nothing would catch it.{wet_said}",
        remedy=raised(subject, suggested_level, wanted, help_scale),
        severity=HOLD if group == "novice" else SERIOUS,
        parts=(subject,),
    )


@rule(
    "little-traction-help-in-the-wet",
    SERIOUS,
    per="control",
    when=("on_wet", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=(WET_SERIOUS, WET_CAUTION, WET_NOVICE),
    absorbs=("help-lowered",),
    rank=AIDS,
)
def little_traction_help_in_the_wet(
    subject: str,
    in_force: ShownControl,
    slip_net_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    suggested_level: Setting | None,
    surface: str,
    group: str,
    limits: Limits,
) -> Result:
    """Traction or slide control on, but with little help for a wet track."""
    if help_in_force < 0:
        return None
    serious = help_scale.snap(limits[WET_NOVICE if group == "novice" else WET_SERIOUS])
    caution = help_scale.snap(max(limits[WET_CAUTION], limits[WET_NOVICE] if group == "novice" else 0))
    if help_in_force >= max(serious, caution):
        return None
    wanted = help_scale.nearest(max(serious, caution))
    return RaisedFinding(
        message=f"{start(subject)} low for {track(surface)}: {shown_of(in_force)}.",
        why="A wet track lets the rear go early and without warning: start high, come down in steps.",
        remedy=raised(subject, suggested_level, wanted, help_scale),
        severity=SERIOUS if help_in_force < serious else CAUTION,
        parts=(subject,),
    )


@rule(
    "little-traction-help-in-the-damp",
    CAUTION,
    per="control",
    when=("on_damp", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=(DAMP_CAUTION, DAMP_NOVICE),
    absorbs=("help-lowered",),
    rank=AIDS,
)
def little_traction_help_in_the_damp(
    subject: str,
    in_force: ShownControl,
    slip_net_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    suggested_level: Setting | None,
    surface: str,
    group: str,
    limits: Limits,
) -> Result:
    """Traction or slide control off, or with little help, for a damp track."""
    threshold = help_scale.snap(limits[DAMP_NOVICE if group == "novice" else DAMP_CAUTION])
    if help_in_force >= threshold:
        return None
    wanted = help_scale.nearest(threshold)
    little = f"{start(subject)} low for {track(surface)}: {shown_of(in_force)}."
    return RaisedFinding(
        message=f"{start(subject)} is off on {track(surface)}." if help_in_force < 0 else little,
        why="Damp patches come without warning in the middle of a corner that was dry a lap ago.",
        remedy=raised(subject, suggested_level, wanted, help_scale),
        parts=(subject,),
    )


@rule(
    "little-traction-help-for-a-novice",
    SERIOUS,
    per="control",
    when=("novice", "out_of_the_wet", "surface", "group", "to_come"),
    at="setup:setup.controls.{subject}",
    absorbs=("little-traction-help-in-the-damp", "help-lowered"),
    limits=(NOVICE_SERIOUS, NOVICE_CAUTION),
    rank=AIDS,
)
def little_traction_help_for_a_novice(
    subject: str,
    in_force: ShownControl,
    slip_net_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    suggested_level: Setting | None,
    column: str,
    limits: Limits,
) -> Result:
    """Traction or slide control off or with little help, for a rider who is new to the track.

    What is serious in the dry is no less so in the damp; what is a caution there the rule about the damp
    says.
    """
    serious, caution = (help_scale.snap(limits[one]) for one in (NOVICE_SERIOUS, NOVICE_CAUTION))
    enough = serious if column == "damp" else max(serious, caution)
    if help_in_force >= enough:
        return None
    wanted = help_scale.nearest(max(serious, caution))
    return RaisedFinding(
        message=f"{start(subject)} low for a novice: {shown_of(in_force)}."
        if help_in_force >= 0
        else f"{start(subject)} is off for a novice.",
        why="While lines and throttle are being learnt mistakes are many: the aid is the margin for them.",
        remedy=raised(subject, suggested_level, wanted, help_scale),
        severity=SERIOUS if help_in_force < serious else CAUTION,
        parts=(subject,),
    )


@rule(
    "little-traction-help-on-a-poor-rear-tyre",
    CAUTION,
    per="control",
    when=("on_dry", "surface", "to_come"),
    at="setup:setup.controls.{subject}",
    limits=(POOR_REAR,),
    absorbs=("help-lowered",),
    rank=AIDS,
)
def little_traction_help_on_a_poor_rear_tyre(
    subject: str,
    in_force: ShownControl,
    slip_net_function: str,
    help_in_force: float,
    help_scale: HelpScale,
    suggested_level: Setting | None,
    group: str,
    poor_rear: tuple[str, ...],
    limits: Limits,
) -> Result:
    """Traction control off or with little help on a rear tyre that is cold, new or worn, in the dry."""
    threshold = help_scale.snap(limits[POOR_REAR])
    if slip_net_function != "traction" or group == "novice" or help_in_force >= threshold:
        return None
    wanted = help_scale.nearest(threshold)
    what = " and ".join(poor_rear)
    return RaisedFinding(
        message=f"{start(subject)} low on a {what} rear tyre: {shown_of(in_force)}.",
        why="Grip is below what this level was found with, and it comes back or goes without notice.",
        remedy=raised(subject, suggested_level, wanted, help_scale, "More for the first laps. "),
        parts=(subject,),
    )
