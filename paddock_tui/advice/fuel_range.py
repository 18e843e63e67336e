"""What a tank gives: laps and minutes, the road home, and how a brimmed one grows in the sun."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.calculators import Answer, Answered, Input, Inputs, Method, told
from paddock_tui.calc.fuel import DENSITY_KG_PER_L
from paddock_tui.calc.fuel_range import Rate, distance_km, tank_laps
from paddock_tui.calc.fuel_volume import litres_after
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount

LAPS = Method(
    "(tank - reserve) / (consumption x lap length / 100) - laps out, in and warming up, rounded down",
    "the consumption 15 % up is what is promised; its best figure stands beside",
    "the reserve stays in the tank; a sharper map or a wet coat of wind burns more",
    "elementary; the 15 %: paddock practice, unpublished",
)
HOME = Method(
    "(tank - reserve) / road consumption, rounded down",
    "the road consumption as typed: a track's is never the road's",
    "brim the tank all the same where the next pump is not known",
    "elementary",
)
GROWS = Method(
    "litres x share(15 C, filled at) / share(15 C, later), share = exp(-a t (1 + 0.8 a t)), t from 15 C, "
    "a = 346.42 / rho^2 + 0.4388 / rho",
    "petrol of the densest and the lightest that the standard allows; the tank itself grows by little",
    "-20 to 60 C; blends with much ethanol grow otherwise",
    "ASTM D1250 / API MPMS 11.1, table 54B; EN 228 for the densities",
)
INPUTS: Final = (
    Input(
        "road_rate",
        "consumption, road",
        c.CONSUMPTION,
        "typed: never taken from the track",
        "consumption on the road",
    ),
    Input("home", "way home", c.DISTANCE, "to a pump or the door"),
    Input("filled_at", "fuel filled at", Amount("temperature", "C", -20, 60), "its own temperature"),
    Input("later_at", "fuel later at", Amount("temperature", "C", -20, 60), "in the sun, over the engine"),
)
_RATE_UP = 1.15


def tank_gives(inputs: Inputs, reserve_l: float) -> Iterable[Answer]:
    """Return the laps and minutes of the tank, the road home, and what a brimmed tank grows by."""
    return (_laps(inputs, reserve_l), _home(inputs, reserve_l), _grows(inputs))


def _laps(inputs: Inputs, reserve_l: float) -> Answer:
    needs = ("tank", "rate", "length", "usual", "around", "warm_up")

    def make() -> Answered:
        rate, tank = inputs.amount("rate", "l/100km"), inputs.amount("tank", "l")
        length, usual = inputs.amount("length", "km"), inputs.number("usual")
        others = inputs.number("around") + inputs.number("warm_up")
        found = tank_laps(tank, reserve_l, Rate(rate, rate, rate * _RATE_UP), length, usual, others)
        said = f"{found.laps} laps"
        steps = (
            f"({tank:g} l - {reserve_l:g} l) / ({rate * _RATE_UP:.1f} l/100km x {length:g} km / 100) "
            f"- {others:g}",
            f"rounded down = {said}",
        )
        best = f"{found.best_laps} laps, {found.best_minutes:.0f} min at {rate:g} l/100km"
        return Answered(f"{said}, {found.minutes:.0f} min; {best}", f"tank gives {said}", steps=steps)

    return told(inputs, "tank_laps", "the tank gives", needs, LAPS, make, ("own_reserve",))


def _home(inputs: Inputs, reserve_l: float) -> Answer:
    def make() -> Answered:
        tank, rate = inputs.amount("tank", "l"), inputs.amount("road_rate", "l/100km")
        found = distance_km(tank, reserve_l, rate)
        said = figures.distance_at_most(found, inputs.units)
        step = f"({tank:g} l - {reserve_l:g} l) / {rate:g} l/100km x 100, rounded down = {said}"
        if not inputs.known("home"):
            return Answered(f"{said}, the reserve kept", steps=(step,))
        way = inputs.amount("home", "km")
        short = "" if found >= way else f": not home, {figures.distance(way - found, inputs.units)} short"
        return Answered(f"{said}, the reserve kept{short}", steps=(step,))

    return told(inputs, "home", "ride home", ("tank", "road_rate"), HOME, make, ("home", "own_reserve"))


def _grows(inputs: Inputs) -> Answer:
    def make() -> Answered:
        litres, before = inputs.amount("capacity", "l"), inputs.amount("filled_at", "C")
        later = inputs.amount("later_at", "C")
        # The table ends at 770 kg/m3, the standard for petrol at 775.
        light, heavy = (min(one * 1000.0, 770.0) for one in DENSITY_KG_PER_L)
        most = litres_after(litres, before, later, light) - litres
        least = litres_after(litres, before, later, heavy) - litres
        said = figures.volume_at_least(max(least, most, 0.0), inputs.units)
        step = (
            f"{litres:g} l from {before:g} C to {later:g} C, at {heavy:g} and {light:g} kg/m3: "
            f"{least:.2f} and {most:.2f} l, rounded up = {said}"
        )
        return Answered(f"up to {said}: leave that room", steps=(step,))

    return told(inputs, "grows", "brimmed tank grows", ("capacity", "filled_at", "later_at"), GROWS, make)
