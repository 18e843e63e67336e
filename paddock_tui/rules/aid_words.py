"""Words that the rules about the aids share."""

from paddock_tui.facts.controls import ShownControl
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import SetValue


def start(name: str) -> str:
    """Write the name of a control at the start of a sentence."""
    label = label_of(name)
    return label[:1].upper() + label[1:]


def shown_of(shown: ShownControl) -> str:
    """Write the value of a control without its name: '3 of 0-10'."""
    return str(shown).removeprefix(f"{label_of(shown.name)} ")


def track(surface: str) -> str:
    """Write a surface as what is ridden on."""
    return {"standing water": "standing water", "drying": "a drying track"}.get(surface, f"a {surface} track")


def proposed(puts: tuple[SetValue, ...]) -> str:
    """Write what would be set, each control with its value."""
    return " and ".join(f"{label_of(put.path[-1])} {put.value}" for put in puts)
