"""Counting heat cycles."""

import datetime as dt
import functools

from paddock_tui.calc.heat_cycles import HeatCycles, Heating
from tests.every import every

DAY = dt.date(2026, 5, 16)
FIRST = Heating(DAY, warmed=True, warmers_on=dt.time(9, 0), parked=dt.time(10, 20))


def second(**changes: object) -> Heating:
    given: dict[str, object] = {"date": DAY, "warmed": True, "warmers_on": dt.time(10, 25)}
    return Heating(**(given | changes))  # type: ignore[arg-type]


def heat_cycles(ridden: list[Heating]) -> int:
    return functools.reduce(HeatCycles.after, ridden, HeatCycles()).cycles


def test_every_time_ridden_is_a_cycle() -> None:
    assert heat_cycles([]) == 0
    assert heat_cycles([Heating(DAY), Heating(DAY), Heating(DAY)]) == 3


@every(
    ("changes", "cycles"),
    [
        ({}, 1),
        ({"warmers_on": dt.time(10, 35)}, 1),
        ({"warmers_on": dt.time(10, 36)}, 2),
        ({"warmers_on": dt.time(10, 19)}, 2),
        ({"warmers_on": None}, 2),
        ({"warmed": False}, 2),
        ({"date": dt.date(2026, 5, 17)}, 2),
    ],
)
def test_only_a_tyre_that_went_back_warm_onto_the_warmers_goes_on(
    changes: dict[str, object], cycles: int
) -> None:
    assert heat_cycles([FIRST, second(**changes)]) == cycles
