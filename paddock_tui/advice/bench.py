"""The calculators in the order in which the bench shows them."""

from paddock_tui.advice.afternoon import afternoon
from paddock_tui.advice.answers import Calculator
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.gearing import gearing
from paddock_tui.advice.history import About
from paddock_tui.advice.levels import levels
from paddock_tui.advice.pressures import pressures
from paddock_tui.advice.riders import riders
from paddock_tui.advice.sag import sag
from paddock_tui.advice.sprockets import sprockets


def calculators(about: About) -> tuple[Calculator, ...]:
    """Give every calculator, filled from what is looked at."""
    return (
        pressures(about),
        afternoon(about),
        sag(about, "front"),
        sag(about, "rear"),
        riders(about),
        gearing(about),
        sprockets(about),
        fuel(about),
        levels(about),
    )
