"""Rules about the nets together: what one of them may be, all of them at once may not."""

from collections.abc import Mapping

from paddock_tui.facts.aids import Mean
from paddock_tui.facts.controls import NETS, Net
from paddock_tui.limits import Limits
from paddock_tui.limits.aids import NEAR_LEAST, THIN_TOGETHER
from paddock_tui.records.electronics import function_of
from paddock_tui.rules.aid_words import ENOUGH, enough_help, proposed
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)

STACK = "controls"
"""The subject of a finding about all nets."""


@rule(
    "all-aids-near-least",
    SERIOUS,
    gathers=("net",),
    when=("least_matters", "bike", "to_come"),
    at="setup:setup.controls",
    absorbs=(
        "aid-off-in-the-wet",
        "front-wheel-without-abs-in-the-wet",
        "little-traction-help-in-the-wet",
        "little-traction-help-in-the-damp",
        "little-traction-help-for-a-novice",
        "little-traction-help-on-a-poor-rear-tyre",
        "front-wheel-without-abs",
        "rear-wheel-without-abs",
        "wheelie-off-on-a-strong-bike",
        "nets-thin-together",
    ),
    limits=(NEAR_LEAST, *ENOUGH),
    rank=AIDS,
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
    if len(net) < 2 or len(thin) < len(net):
        return None
    where = {"wet": "on a wet track", "damp": "on a damp track"}.get(column, "for a novice")
    first = sorted(thin, key=lambda name: (NETS.index(function_of(name, net[name].shown.control)), name))[:2]
    puts = _brought_back(net, first, limits)
    return RaisedFinding(
        message=f"All aids are at or near their least help {where}.",
        why="Every aid is low at once, so nothing catches a mistake: "
        + ", ".join(str(net[name].shown) for name in thin)
        + ".",
        remedy=Remedy(f"Bring two of them back first: {proposed(puts)}.", puts),
        severity=SERIOUS if column == "wet" or group == "novice" else CAUTION,
        parts=(*thin, STACK),
        facts="; ".join([*(str(net[name].shown) for name in thin), f"surface {surface}", f"{group} rider"]),
    )


@rule(
    "nets-thin-together",
    SERIOUS,
    when=("bike", "to_come"),
    at="setup:setup.controls",
    absorbs=(
        "aid-off-in-the-wet",
        "front-wheel-without-abs-in-the-wet",
        "little-traction-help-in-the-wet",
        "little-traction-help-for-a-novice",
        "little-traction-help-on-a-poor-rear-tyre",
        "front-wheel-without-abs",
        "rear-wheel-without-abs",
        "wheelie-off-on-a-strong-bike",
    ),
    limits=(THIN_TOGETHER, *ENOUGH),
    rank=AIDS,
)
def nets_thin_together(
    thin_mean: Mean, thin_matters: str, surface: str, group: str, limits: Limits
) -> Result:
    """Traction, wheelie and front ABS thin on the mean, where that matters."""
    if thin_mean.help >= limits[THIN_TOGETHER]:
        return None
    nets = thin_mean.nets
    first = _thinnest(nets)
    puts = _brought_back(nets, first, limits)
    return RaisedFinding(
        message=f"Several aids are low at once {thin_matters}: "
        f"on average {100 * thin_mean.help:.0f} % of most help.",
        why="What one aid misses no other catches: "
        + ", ".join(str(one.shown) for one in nets.values())
        + ".",
        remedy=Remedy(f"Bring the lowest back first: {proposed(puts)}.", puts),
        parts=tuple(nets),
        facts="; ".join(
            [*(str(one.shown) for one in nets.values()), thin_matters, f"surface {surface}", f"{group} rider"]
        ),
    )


def _brought_back(nets: Mapping[str, Net], names: list[str], limits: Limits) -> tuple[SetValue, ...]:
    wanted = enough_help(limits)
    return tuple(
        SetValue(("setup", "controls", name), nets[name].scale.level_at_least(wanted)) for name in names
    )


def _thinnest(nets: Mapping[str, Net]) -> list[str]:
    return sorted(nets, key=lambda name: (nets[name].help, name))[:2]
