"""Differences of two set-ups: each value once, and nothing where only the writing differs."""

import tomllib
from decimal import Decimal

import attrs
import pytest

from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import differences, session_differences
from paddock_tui.records.reading import read_record
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from tests.every import every


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
        "riding mode open -> showers",
        "traction control 5 -> 6",
        "fork 12 -> not known",
        "braking not known -> +1",
    ]
    assert [one.known for one in found] == [True, True, False, False]


def test_the_same_pressure_in_another_unit_is_no_difference() -> None:
    assert differences(SetUp(front_start=_bar("2.1")), SetUp(front_start=_bar("210", "kPa"))) == ()
    assert len(differences(SetUp(front_start=_bar("2.1")), SetUp(front_start=_bar("211", "kPa")))) == 1
    assert differences(SetUp(), SetUp()) == ()


CLICKS = read_record(
    "bike",
    tomllib.loads(
        '[controls.traction]\nkind = "level"\nlevels = [1, 8]\nmost_help = 8\n'
        '[adjusters.front-rebound]\nend = "front"\nunit = "click"\nrange = [0, 24]\ncounted_from = "closed"\n'
    ),
).record


@every(
    ("old", "new", "said"),
    [
        (9, 11, "front rebound 9 -> 11 clicks (softer)"),
        (2, 1, "front rebound 2 -> 1 click (firmer)"),
        (None, 11, "front rebound not known -> 11 clicks out"),
        (9, None, "front rebound 9 clicks out -> not known"),
    ],
)
def test_the_unit_is_written_once_behind_the_last_figure_that_is_known(
    old: float | None, new: float | None, said: str
) -> None:
    assert isinstance(CLICKS, Bike)
    before, after = (
        SetUp(adjusters={} if value is None else {"front-rebound": float(value)}) for value in (old, new)
    )

    (found,) = differences(before, after, CLICKS)

    assert str(found) == said
    assert (found.known, found.listed) == (None not in (old, new), True)
    assert f"front rebound {found.back}" == str(differences(after, before, CLICKS)[0])


@every(
    ("old", "new", "said"),
    [
        (1, 8, "help 0 % -> 100 %"),
        (8, None, "help 100 % -> not known"),
        (3, 9, "help 29 % -> not on this bike"),
    ],
)
def test_what_a_difference_does_to_help_is_said_on_the_bikes_own_scale(
    old: int, new: int | None, said: str
) -> None:
    assert isinstance(CLICKS, Bike)
    before, after = (SetUp(controls={} if one is None else {"traction": one}) for one in (old, new))

    (found,) = differences(before, after, CLICKS)

    assert str(found.help) == said
    assert differences(before, after)[0].help is None, "without the bike nobody knows its scale"


def test_without_the_end_that_helps_most_the_change_of_help_is_not_known() -> None:
    assert isinstance(CLICKS, Bike)
    unsaid = attrs.evolve(
        CLICKS, controls={"traction": attrs.evolve(CLICKS.controls["traction"], most_help=None)}
    )

    (found,) = differences(SetUp(controls={"traction": 1}), SetUp(controls={"traction": 8}), unsaid)

    assert str(found.help) == "help not known -> not known"
    assert differences(SetUp(adjusters={"front-rebound": 1.0}), SetUp(), CLICKS)[0].help is None


def test_what_the_bike_has_no_more_is_not_listed() -> None:
    assert isinstance(CLICKS, Bike)

    found = differences(SetUp(controls={"traction": 3, "slide": 2}), SetUp(), CLICKS)

    assert {one.key: one.listed for one in found} == {"traction": True, "slide": False}


def test_another_tyre_set_is_a_difference_of_sessions() -> None:
    found = session_differences(Session(tyres="old"), Session(tyres="new"), None)

    assert [(str(one), one.about) for one in found] == [("tyre set old -> new", ("setup", "tyres"))]
    assert session_differences(Session(tyres="old"), Session(tyres="old"), None) == ()


@pytest.mark.parametrize(
    ("key", "said", "back"),
    [
        ("fork_height", "fork protrusion 4 mm -> 0.6 cm (front lower)", "0.6 cm -> 4 mm (front higher)"),
        ("rear_height", "rear ride height 4 mm -> 0.6 cm (rear higher)", "0.6 cm -> 4 mm (rear lower)"),
    ],
)
def test_a_height_says_which_end_came_up_or_down_in_any_unit(key: str, said: str, back: str) -> None:
    """More fork through the yokes lowers the front; more spacer at the shock lifts the rear."""
    old, new = Quantity(Decimal(4), "mm"), Quantity(Decimal("0.6"), "cm")
    before, after = (
        SetUp(fork_height=one) if key == "fork_height" else SetUp(rear_height=one) for one in (old, new)
    )
    (found,) = differences(before, after)

    assert (str(found), found.back) == (said, back)
