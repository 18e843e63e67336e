"""Rules about the aids: off, little, all thin at once, or with a direction nobody knows."""

from collections.abc import Mapping

from paddock_tui.facts.controls import NETS, Net, Shown, levels_of
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.of_bike import label_of
from paddock_tui.rules.core import CAUTION, HOLD, SERIOUS, Put, Raise, Remedy, Result, rule
from paddock_tui.rules.limits import Limits, limit
from paddock_tui.trade.levels import HelpScale

_OWN = "common practice, no source"

NEAR_LEAST = limit(
    "all-aids-near-least",
    "near_least",
    0.25,
    "",
    "help at or under which an aid counts as near its least",
    _OWN,
)
WET_SERIOUS = limit(
    "little-traction-help-in-the-wet",
    "serious_below",
    0.35,
    "",
    "traction help under this in the wet is serious",
    _OWN,
)
WET_CAUTION = limit(
    "little-traction-help-in-the-wet",
    "caution_below",
    0.50,
    "",
    "traction help under this in the wet is a caution",
    _OWN,
)
WET_NOVICE = limit(
    "little-traction-help-in-the-wet",
    "novice_below",
    0.60,
    "",
    "a novice's traction help under this in the wet is serious",
    _OWN,
)
DAMP_CAUTION = limit(
    "little-traction-help-in-the-damp",
    "caution_below",
    0.35,
    "",
    "traction help under this in the damp is a caution",
    _OWN,
)
DAMP_NOVICE = limit(
    "little-traction-help-in-the-damp",
    "novice_below",
    0.60,
    "",
    "a novice's traction help under this in the damp is a caution",
    _OWN,
)


@rule(
    "aid-off-in-the-wet",
    SERIOUS,
    per="control",
    when=("in_force", "surface"),
    at="setup:setup.controls.{subject}",
)
def aid_off_in_the_wet(
    subject: str,
    is_slip_net: str,
    help_in_force: float,
    help_scale: HelpScale,
    column: str,
    group: str,
) -> Result:
    """Traction or slide control off in the wet: nothing catches the rear."""
    if column != "wet" or help_in_force >= 0:
        return None
    wanted = help_scale.level_at_least(0.6)
    return Raise(
        message=f"{_start(subject)} is off in the wet.",
        why="A slide at the rear on a wet track is quicker than a hand; nothing would catch it.",
        remedy=Remedy(
            f"Start high, such as {wanted}; come down a step at a time, only while it is not seen working.",
            (Put(("setup", "controls", subject), wanted),),
        ),
        severity=HOLD if group == "novice" else SERIOUS,
    )


@rule(
    "front-wheel-without-abs-in-the-wet",
    SERIOUS,
    per="control",
    when=("in_force", "surface"),
    at="setup:setup.controls.{subject}",
)
def front_wheel_without_abs_in_the_wet(front_wheel_left: bool, column: str, group: str) -> Result:
    """No ABS at the front in the wet: a locked front wheel is a fall."""
    if column != "wet" or not front_wheel_left:
        return None
    return Raise(
        message="The front wheel is without ABS in the wet.",
        why="A front wheel that locks on a wet track is a fall before the hand can let go.",
        remedy=Remedy("Switch ABS on at the front for the wet."),
        severity=HOLD if group == "novice" else SERIOUS,
    )


@rule(
    "little-traction-help-in-the-wet",
    SERIOUS,
    per="control",
    at="setup:setup.controls.{subject}",
    limits=(WET_SERIOUS, WET_CAUTION, WET_NOVICE),
)
def little_traction_help_in_the_wet(
    subject: str,
    in_force: Shown,
    is_slip_net: str,
    help_in_force: float,
    help_scale: HelpScale,
    surface: str,
    column: str,
    group: str,
    limits: Limits,
) -> Result:
    """Traction or slide control on, but with little help for a wet track."""
    if column != "wet" or help_in_force < 0:
        return None
    serious = help_scale.snap(limits[WET_NOVICE if group == "novice" else WET_SERIOUS])
    caution = help_scale.snap(max(limits[WET_CAUTION], limits[WET_NOVICE] if group == "novice" else 0))
    if help_in_force >= max(serious, caution):
        return None
    wanted = help_scale.nearest(max(serious, caution))
    return Raise(
        message=f"Little {label_of(subject)} help for {_track(surface)}: {_shown(in_force)}.",
        why="A wet track lets the rear go early and without warning: start high, come down in steps.",
        remedy=Remedy(
            f"Set {label_of(subject)} to {wanted}, or to more help than that.",
            (Put(("setup", "controls", subject), wanted),),
        ),
        severity=SERIOUS if help_in_force < serious else CAUTION,
    )


@rule(
    "little-traction-help-in-the-damp",
    CAUTION,
    per="control",
    at="setup:setup.controls.{subject}",
    limits=(DAMP_CAUTION, DAMP_NOVICE),
)
def little_traction_help_in_the_damp(
    subject: str,
    in_force: Shown,
    is_slip_net: str,
    help_in_force: float,
    help_scale: HelpScale,
    surface: str,
    column: str,
    group: str,
    limits: Limits,
) -> Result:
    """Traction or slide control off, or with little help, for a damp track."""
    if column != "damp":
        return None
    threshold = help_scale.snap(limits[DAMP_NOVICE if group == "novice" else DAMP_CAUTION])
    if help_in_force >= threshold:
        return None
    wanted = help_scale.nearest(threshold)
    little = f"Little {label_of(subject)} help for {_track(surface)}: {_shown(in_force)}."
    return Raise(
        message=f"{_start(subject)} is off on {_track(surface)}." if help_in_force < 0 else little,
        why="Damp patches come without warning in the middle of a corner that was dry a lap ago.",
        remedy=Remedy(
            f"Set {label_of(subject)} to {wanted}, or to more help than that.",
            (Put(("setup", "controls", subject), wanted),),
        ),
    )


@rule(
    "all-aids-near-least",
    SERIOUS,
    gathers=("net",),
    when=("bike",),
    at="setup:setup.controls",
    absorbs=(
        "aid-off-in-the-wet",
        "front-wheel-without-abs-in-the-wet",
        "little-traction-help-in-the-wet",
        "little-traction-help-in-the-damp",
    ),
    limits=(NEAR_LEAST,),
)
def all_aids_near_least(
    net: Mapping[str, Net],
    surface: str,
    column: str,
    group: str,
    limits: Limits,
) -> Result:
    """Every net of the bike, at least two, at or near its least: in the wet, the damp, or for a novice."""
    # An aid that is only off or on gives its most help when it is on.
    thin = [name for name in net if net[name].help <= min(net[name].scale.snap(limits[NEAR_LEAST]), 0.99)]
    if len(net) < 2 or len(thin) < len(net) or (column == "dry" and group != "novice"):
        return None
    where = {"wet": "on a wet track", "damp": "on a damp track"}.get(column, "for a novice")
    first = sorted(thin, key=lambda name: (NETS.index(function_of(name, net[name].shown.control)), name))[:2]
    puts = tuple(Put(("setup", "controls", name), net[name].scale.level_at_least(0.6)) for name in first)
    return Raise(
        message=f"All aids are at or near their least help {where}.",
        why="Every net is thin at once, so one mistake meets none: "
        + ", ".join(str(net[name].shown) for name in thin)
        + ".",
        remedy=Remedy(f"Bring two of them back first: {_proposed(puts)}.", puts),
        severity=SERIOUS if column == "wet" or group == "novice" else CAUTION,
        parts=tuple(thin),
        facts="; ".join([*(str(net[name].shown) for name in thin), f"surface {surface}", f"{group} rider"]),
    )


@rule(
    "direction-not-known",
    CAUTION,
    per="control",
    when=("is_aid", "in_force"),
    at="bike:controls.{subject}.most_help",
)
def direction_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of an aid in use helps most: nothing about it can be judged."""
    levels = levels_of(subject, control)
    if levels is None:
        return _no_levels(subject)
    return None if levels.help_if_known() is not None else _direction(subject, "helps most", "most_help")


@rule(
    "freeing-end-not-known",
    CAUTION,
    per="control",
    when=("is_engine_braking", "in_force"),
    at="bike:controls.{subject}.frees_most",
)
def freeing_end_not_known(subject: str, control: Control) -> Result:
    """Nobody has said which end of the engine braking frees the rear: makers count both ways."""
    levels = levels_of(subject, control)
    if levels is None:
        return _no_levels(subject)
    return (
        None if levels.scale_if_known() is not None else _direction(subject, "frees the rear", "frees_most")
    )


def _direction(subject: str, does: str, key: str) -> Raise:
    return Raise(
        message=f"Which end of {label_of(subject)} {does} is not known.",
        why="Bikes count up or down, and a guess may praise the dangerous end: nothing is judged.",
        remedy=Remedy(f"Look it up in the bike's manual, and enter it once in the bike's file ({key})."),
    )


def _no_levels(subject: str) -> Raise:
    return Raise(
        message=f"The levels of {label_of(subject)} are not known, or do not fit together.",
        why="Nothing about it can be judged, and clear would be a guess.",
        remedy=Remedy("Enter its levels or words in the bike's file, with an end of them as the named end."),
        path=("controls", subject, "levels"),
    )


def _shown(shown: Shown) -> str:
    return str(shown).removeprefix(f"{label_of(shown.name)} ")


def _track(surface: str) -> str:
    return {"standing water": "standing water", "drying": "a drying track"}.get(surface, f"a {surface} track")


def _proposed(puts: tuple[Put, ...]) -> str:
    return " and ".join(f"{label_of(put.path[-1])} {put.value}" for put in puts)


def _start(subject: str) -> str:
    label = label_of(subject)
    return label[:1].upper() + label[1:]
