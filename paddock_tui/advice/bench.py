"""The calculators in the order in which the bench shows them."""

from paddock_tui.advice.about import About
from paddock_tui.advice.air_today import air_today
from paddock_tui.advice.balance import balance
from paddock_tui.advice.brake_pads import pads
from paddock_tui.advice.calculators import Calculator
from paddock_tui.advice.chain_length import chain_length
from paddock_tui.advice.chain_pull import chain_pull
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.gearing import gearing
from paddock_tui.advice.geometry import geometry
from paddock_tui.advice.laps_and_sectors import laps_and_sectors
from paddock_tui.advice.lean import lean
from paddock_tui.advice.levels import levels
from paddock_tui.advice.noise import noise
from paddock_tui.advice.on_warmers import on_warmers
from paddock_tui.advice.pressure_later import afternoon
from paddock_tui.advice.pressures import pressures
from paddock_tui.advice.sag import sag
from paddock_tui.advice.sag_of_another_rider import riders
from paddock_tui.advice.shift_points import shift_points
from paddock_tui.advice.spring_test import spring_test
from paddock_tui.advice.sprockets import sprockets
from paddock_tui.advice.stopping import stopping
from paddock_tui.advice.tread_wear import tread
from paddock_tui.advice.tyre_ratings import tyre_ratings
from paddock_tui.advice.weighing import weighing
from paddock_tui.advice.wet_ratios import wet_to_dry_ratios
from paddock_tui.advice.wheelie_gears import lifting


def calculators(about: About) -> tuple[Calculator, ...]:
    """Return every calculator, filled from what is looked at."""
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
        lifting(about),
        balance(about),
        lean(about),
        stopping(about),
        wet_to_dry_ratios(about),
        air_today(about),
        noise(about),
        tyre_ratings(about),
        on_warmers(about),
        geometry(about),
        chain_pull(about),
        weighing(about),
        shift_points(about),
        laps_and_sectors(about),
        chain_length(about),
        spring_test(about),
        pads(about, "front"),
        pads(about, "rear"),
        tread(about, "front"),
        tread(about, "rear"),
    )
