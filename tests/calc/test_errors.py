"""What a calculation refuses, and the sentence that a screen shows."""

import math
import pickle

import pytest

from paddock_tui.calc.errors import Inconsistent, OutOfRange, above, within
from tests.every import every


def test_says_what_was_given_and_the_range() -> None:
    error = OutOfRange("altitude", 12000.0, -500.0, 11000.0, "m")

    assert error.sentence() == "altitude: 12000 m is outside the range here, -500 to 11000 m"
    assert str(error) == error.sentence()


@every(
    ("low", "high", "range_"),
    [(None, 5.0, "at most 5"), (5.0, None, "at least 5"), (None, None, "any figure")],
)
def test_an_open_end_is_said(low: float | None, high: float | None, range_: str) -> None:
    assert OutOfRange("laps", math.nan, low, high).sentence().endswith(range_)


@every("value", [math.nan, math.inf, -math.inf, -0.1, 1.1])
def test_within_refuses(value: float) -> None:
    with pytest.raises(OutOfRange) as caught:
        within("share", value, 0.0, 1.0)

    assert caught.value.what == "share"


@every("value", [0.0, 0.5, 1.0])
def test_within_keeps_both_ends(value: float) -> None:
    assert within("share", value, 0.0, 1.0) == value


@every("value", [0.0, -1.0, math.nan])
def test_above_refuses_its_floor(value: float) -> None:
    with pytest.raises(OutOfRange, match="more than 0"):
        above("pitch", value, 0.0, None, "mm")


def test_an_open_range_still_refuses_what_is_no_number() -> None:
    with pytest.raises(OutOfRange):
        within("load", math.inf, 0.0, None)


def test_cannot_be_says_why() -> None:
    assert str(Inconsistent("chain", "too few links")) == "chain: too few links"


def test_survives_another_process() -> None:
    error = OutOfRange("sag", 300.0, 0.0, 200.0, "mm")

    assert str(pickle.loads(pickle.dumps(error))) == str(error)
