"""What calculators of forces have in common: the bike's balance, its mass, friction and slope."""

from typing import Final

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import FilledInput, Input, Inputs, filled, if_known
from paddock_tui.calc.balance import Balance
from paddock_tui.calc.springs import G_M_S2
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

HEIGHT = Input(
    "height",
    "CG height",
    c.LENGTH,
    "the centre of mass above the ground, rider on",
    "height of the centre of mass",
)
AHEAD = Input(
    "ahead",
    "CG to rear axle",
    c.LENGTH,
    "the centre of mass ahead of the rear axle, rider on",
    "centre of mass ahead of the axle",
)
WHEELBASE = Input("wheelbase", "wheelbase", c.LENGTH, "axle to axle")
BIKE_MASS = Input("bike", "bike, ready to ride", c.WET_MASS, "full tank", "bike's wet mass")
RIDER_MASS = Input("rider", "rider in kit", c.MASS, "", "rider's weight in kit")
FRICTION = Input(
    "friction", "friction, assumed", Number(0.05, 2, step=0.05), "try one: no source gives yours", "friction"
)
SLOPE = Input("slope", "slope", Number(-30, 30, step=1, unit="%"), "uphill above 0, level where left out")

BALANCE: Final = (WHEELBASE.key, HEIGHT.key, AHEAD.key)
"""The inputs that say where the mass stands between the axles."""

BOOKS: Final = "Cossalter, Motorcycle Dynamics, 2nd ed. 2006 (not checked in print)"


def filled_chassis(about: About) -> dict[str, FilledInput]:
    """Fill wheelbase, centre of mass, and both masses; none of them is ever guessed."""
    bike, rider = about.situation.bike, about.situation.rider
    found: dict[str, FilledInput] = {}
    if bike is not None:
        where = f"bike {about.id_of('bike')}"
        found |= filled(
            wheelbase=if_known(bike.chassis.wheelbase, where),
            height=if_known(bike.chassis.centre_height, where),
            ahead=if_known(bike.chassis.centre_ahead, where),
            bike=if_known(bike.wet_mass, where),
        )
    if rider is not None and rider.weight is not None:
        found["rider"] = FilledInput(rider.weight, f"rider {about.id_of('rider')}")
    return found


def balance_of(inputs: Inputs) -> Balance:
    """Return the balance of the bike; its three inputs have to be known."""
    return Balance(inputs.amount("wheelbase", "m"), inputs.amount("height", "m"), inputs.amount("ahead", "m"))


def slope_of(inputs: Inputs) -> float:
    """Return the slope as rise over run; level where it is not known."""
    return inputs.number("slope") / 100.0 if inputs.known("slope") else 0.0


def in_g(m_s2: float) -> str:
    """Write an acceleration as a multiple of gravity."""
    return f"{m_s2 / G_M_S2:.2f} g"
