"""The three lengths that a sag is measured by, with the bike alone and with the rider on."""

from typing import Final

from paddock_tui.advice.calculators import Inputs
from paddock_tui.calc.sag import sag_of_lengths, same_points

ALONE: Final = ("extended", "alone_pushed", "alone_lifted")
RIDER: Final = ("rider_extended", "rider_pushed", "rider_lifted")


def sag_mm(inputs: Inputs, lengths: tuple[str, ...]) -> float:
    """Return the sag in mm of three lengths that are known."""
    return sag_of_lengths(*(inputs.amount(key, "mm") for key in lengths)).sag_mm


def check_points(inputs: Inputs) -> None:
    """Refuse sags whose fully extended lengths were not taken between the same two points."""
    same_points(inputs.amount("extended", "mm"), inputs.amount("rider_extended", "mm"))
