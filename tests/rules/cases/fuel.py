"""Cases of the rule about fuel: eight laps of four kilometres, two around them, sixteen litres a hundred."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")


def tank(litres: float) -> Change:
    """Brim a tank that holds so much."""
    return put("bike", "tank.capacity", f"{litres:g} l")


# Two stretches from brim to brim of 40 km, 6.4 l each: 16 l/100 km, learnt.
LEARNT = went_before(
    *({"fuel_added": "6.4 l", "filled_to_brim": True, "ridden_laps": 10} for _ in range(3)),
)
ENTERED = put("bike", "tank.consumption", "16 l/100km")
ADDED = put("session", "fuel_added", "6.4 l")
# Ten laps timed at two minutes, for a plan in minutes.
TIMED = went_before({"laps": {str(number): "2:00.0" for number in range(1, 6)}})
MINUTES = (put("session", "planned_laps", None), put("session", "planned_time", "20 min"))

HOMEWARD = (
    ROAD,
    put("day", "distance_home", "90 km"),
    put("bike", "tank.road_consumption", "5 l/100km"),
)

CASES = {
    "fuel-short-at-the-flag": Cases(
        raising=(
            # 6.4 l needed: 6 l run dry, on a rate that nobody has learnt.
            raises("fuel", "caution", tank(6), says="0.4 l too little to reach it"),
            raises("fuel", "caution", tank(8)),
            raises("fuel", "hold", tank(6), ADDED, history=LEARNT),
            raises("fuel", "caution", tank(8), ADDED, history=LEARNT),
            raises(
                "fuel",
                "caution",
                tank(9),
                put("rider", "limits.fuel_reserve", "3 l"),
                says="reserve is 3.0 l",
            ),
            # 16 l of 17 needed: under the reserve only. Then 6.4 l needed, 5.4 l at 85 % of the rate.
            raises("fuel", "caution", put("bike", "tank.consumption", "40 l/100km")),
            raises("fuel", "serious", tank(6), ENTERED, says="0.4 l too little to reach it"),
            raises("fuel", "hold", tank(5), ENTERED),
            # Twenty minutes hold ten laps of two minutes: 6.4 l.
            raises("fuel", "caution", *MINUTES, tank(8), history=TIMED),
            # Not brimmed: what is in it is counted from the last brim on.
            raises(
                "fuel",
                "hold",
                tank(12),
                put("session", "filled_to_brim", None),
                put("session", "fuel_added", "0.5 l"),
                history=LEARNT,
            ),
            raises("fuel", "caution", tank(8), put("session", "kind", "race"), says="1.0 l left"),
        ),
        silent=(
            silent(),
            silent(tank(8.5)),
            silent(tank(6), RIDDEN),
            silent(tank(6), ROAD),
            silent(*MINUTES, history=TIMED),
            silent(without("bike", "tank"), RIDDEN),
        ),
        missing=(
            lacks("the tank's capacity", without("bike", "tank")),
            lacks(
                "the fuel in the tank: litres, filled to the brim, or added since",
                without("session", "filled_to_brim"),
            ),
            lacks("the planned laps or time", without("session", "planned_laps")),
            lacks("the usual lap here: laps timed before, or the planned laps", *MINUTES),
            lacks("the length of a lap", without("venue", "length")),
            lacks("the venue", without("venue")),
            lacks("the length of a lap", put("venue", "length", "0 km")),
        ),
    ),
    "fuel-short-of-home": Cases(
        raising=(
            raises("fuel-home", "caution", *HOMEWARD, tank(6), says="Fuel for 80 km, 90 km to ride home."),
            raises("fuel-home", "caution", *HOMEWARD, tank(6.4)),
            raises("fuel-home", "caution", *HOMEWARD, tank(7), put("rider", "limits.fuel_reserve", "3 l")),
        ),
        silent=(
            silent(*HOMEWARD, tank(6.5)),
            silent(*HOMEWARD),
            silent(*HOMEWARD[1:], tank(4)),
            silent(*HOMEWARD[:2], tank(4)),
            silent(*HOMEWARD, tank(6), RIDDEN),
        ),
        missing=(lacks("the bike", *HOMEWARD, without("bike")),),
    ),
}
