"""Consumption learnt from brim to brim."""

import functools
from collections.abc import Iterable

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel_learning import Learning, LearntRate, Refill
from tests.every import every
from tests.examples import examples

BRIM = Refill(0.0, 12.0, to_brim=True)


def learn_rate_by_mode(refills: Iterable[Refill]) -> dict[str, LearntRate]:
    return functools.reduce(Learning.after, refills, Learning()).rates()


def learn_rate(refills: Iterable[Refill]) -> LearntRate | None:
    """Learn from all refills as if they were ridden in one mode."""
    return learn_rate_by_mode(attrs.evolve(one, mode="one") for one in refills).get("one")


@examples(25)
@given(st.lists(st.tuples(st.floats(20.0, 100.0), st.floats(5.0, 20.0)), min_size=1, max_size=8))
def test_the_whole_over_the_whole_lies_between_the_stretches(stretches: list[tuple[float, float]]) -> None:
    refills = [BRIM, *(Refill(km, km * rate / 100.0, to_brim=True) for km, rate in stretches)]
    learnt = learn_rate(refills)

    assert learnt is not None
    assert learnt.stretches == len(stretches)
    assert learnt.lowest_l_per_100km - 1e-9 <= learnt.rate_l_per_100km <= learnt.highest_l_per_100km + 1e-9


def test_a_top_up_belongs_to_its_stretch() -> None:
    learnt = learn_rate([BRIM, Refill(40, 3.0, to_brim=False), Refill(40, 6.6, to_brim=True)])

    assert learnt is not None
    assert [learnt.rate_l_per_100km, learnt.stretches, learnt.km] == pytest.approx([12.0, 1, 80])


@every(
    "refills",
    [
        [],
        [BRIM],
        [Refill(50, 6.0, to_brim=True)],
        [BRIM, Refill(40, 3.0, to_brim=False)],
        [BRIM, Refill(5, 0.6, to_brim=True)],
    ],
)
def test_without_two_brims_far_enough_apart_nothing_is_learnt(refills: list[Refill]) -> None:
    assert learn_rate(refills) is None


def test_modes_are_kept_apart_and_mixed_stretches_count_for_none() -> None:
    refills = [
        BRIM,
        Refill(50, 6.0, to_brim=True, mode="open"),
        Refill(50, 5.0, to_brim=True, mode="showers"),
        Refill(25, 0.0, to_brim=False, mode="open"),
        Refill(25, 9.0, to_brim=True, mode="showers"),
        Refill(50, 8.0, to_brim=True, mode="open"),
        Refill(50, 8.0, to_brim=True),
    ]
    by_mode = learn_rate_by_mode(refills)

    assert {mode: learnt.rate_l_per_100km for mode, learnt in by_mode.items()} == pytest.approx(
        {"open": 14.0, "showers": 10.0}
    )
    overall = learn_rate(refills)
    assert overall is not None
    assert overall.stretches == 5


def test_a_negative_distance_is_refused() -> None:
    with pytest.raises(OutOfRange, match="kilometres"):
        learn_rate([BRIM, Refill(-1.0, 6.0, to_brim=True)])
