"""Differences of two set-ups: each value once, and nothing where only the writing differs."""

from decimal import Decimal

from paddock_tui.quantities import Quantity
from paddock_tui.records.differences import differences
from paddock_tui.records.setup import SetUp


def _bar(text: str, unit: str = "bar") -> Quantity:
    return Quantity(Decimal(text), unit)


def test_each_value_that_differs_is_named_as_its_reason_is_kept() -> None:
    old = SetUp(
        mode="open", rear_sprocket=43, controls={"traction": 5, "wheelie": 2}, adjusters={"fork": 12.0}
    )
    new = SetUp(
        mode="showers", rear_sprocket=43, controls={"traction": 6, "wheelie": 2}, offsets={"braking": 1.0}
    )
    found = differences(old, new)
    assert [(one.kind, one.key, one.path) for one in found] == [
        ("setup", "mode", ("setup", "mode")),
        ("controls", "traction", ("setup", "controls", "traction")),
        ("adjusters", "fork", ("setup", "adjusters", "fork")),
        ("offsets", "braking", ("setup", "offsets", "braking")),
    ]
    assert [str(one) for one in found] == [
        "mode open -> showers",
        "traction 5 -> 6",
        "fork 12 -> not known",
        "braking not known -> 1",
    ]
    assert [one.known for one in found] == [True, True, False, False]


def test_the_same_pressure_in_another_unit_is_no_difference() -> None:
    assert differences(SetUp(front_start=_bar("2.1")), SetUp(front_start=_bar("210", "kPa"))) == ()
    assert len(differences(SetUp(front_start=_bar("2.1")), SetUp(front_start=_bar("211", "kPa")))) == 1
    assert differences(SetUp(), SetUp()) == ()
