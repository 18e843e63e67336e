"""How far the rear wheel rolls: what was measured goes before what is marked, the tyre before the bike."""

import math

import pytest

from paddock_tui.facts.wheel_circumference import Rolled, rear_rolled
from paddock_tui.records.bike import Bike
from paddock_tui.records.tyres import Tyre
from tests.advice.given import bike, tyres
from tests.every import every

MEASURED, MARKED = 'circumference = "2000 mm"\n', 'size = "180/55 ZR17"\n'


def tyre(lines: str) -> Tyre:
    return tyres(f"[rear]\n{lines}").rear


def of_bike(lines: str) -> Bike:
    return bike(f"[rear]\n{lines}")


CASES = [
    (MEASURED + MARKED, 'circumference = "1990 mm"\n', "tyres", None, "2000 mm"),
    (MARKED, 'circumference = "1990 mm"\n', "bike", None, "1990 mm"),
    (MARKED, 'tyre_size = "190/55 ZR17"\n', "tyres", "180/55 ZR17", "1979 mm"),
    ("", 'tyre_size = "190/55 ZR17"\n', "bike", "190/55 ZR17", "2013 mm"),
]


@every(("of_tyre", "bikes", "role", "marking", "length"), CASES)
def test_the_best_figure_is_taken_and_says_what_it_rests_on(
    of_tyre: str, bikes: str, role: str, marking: str | None, length: str
) -> None:
    found = rear_rolled(tyre(of_tyre), of_bike(bikes))

    assert isinstance(found, Rolled)
    assert (found.role, found.marking) == (role, marking)
    if marking is None:
        assert str(found.length) == length
    else:
        width = float(marking[:3])
        assert found.length.to("mm") == pytest.approx(math.pi * (432 + 2 * 0.55 * width), abs=6)


def test_nothing_measured_and_nothing_marked_is_not_known() -> None:
    assert rear_rolled(Tyre(), None) is None
    assert rear_rolled(Tyre(), of_bike("")) is None
