"""Words that the rules about the aids share, and the help that they ask back for."""

from paddock_tui.calc.levels import HelpScale
from paddock_tui.facts.controls import ShownControl
from paddock_tui.limits import Limits
from paddock_tui.limits.traction import DAMP_CAUTION, DAMP_NOVICE, WET_CAUTION, WET_NOVICE, WET_SERIOUS
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import Remedy, SetValue

ENOUGH = (WET_SERIOUS, WET_CAUTION, WET_NOVICE, DAMP_CAUTION, DAMP_NOVICE)
"""The limits of traction control that a net which is brought back should not be under."""


def enough_help(limits: Limits) -> float:
    """Return the help that a net is brought back to: what a wet or damp track asks of any rider.

    Under none of the limits of little help, so that what mends one finding does not raise another.
    """
    return max(limits[one] for one in ENOUGH)


def start(name: str) -> str:
    """Write the name of a control at the start of a sentence."""
    label = label_of(name)
    return label[:1].upper() + label[1:]


def shown_of(shown: ShownControl) -> str:
    """Write the value of a control without its name: '3 (range 0-10)'."""
    return str(shown).removeprefix(f"{label_of(shown.name)} ")


def track(surface: str) -> str:
    """Write a surface as what is ridden on."""
    return {"standing water": "standing water", "drying": "a drying track"}.get(surface, f"a {surface} track")


def proposed(puts: tuple[SetValue, ...]) -> str:
    """Write what would be set, each control with its value."""
    return " and ".join(f"{label_of(put.path[-1])} {put.value}" for put in puts)


def raised(
    subject: str, suggested: Setting | None, least: Setting, scale: HelpScale, lead: str = ""
) -> Remedy:
    """Return the remedy of too little help: the level that the row suggests, and the least that is enough.

    `least` is what this finding asks for; where the suggestion is no more help than that, it is that alone.
    """
    label = label_of(subject)
    if suggested is None or suggested not in scale.on or scale.help_of(suggested) <= scale.help_of(least):
        text = f"{lead}Set {label} to {least}, or to more help than that."
        return Remedy(text, (SetValue(("setup", "controls", subject), least),))
    text = f"{lead}Start {label} at {suggested}; {least} is the least that removes this finding."
    return Remedy(text, (SetValue(("setup", "controls", subject), suggested),))
