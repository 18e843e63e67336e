"""Wear from readings."""

import itertools
import math
import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.wear import WearReading, since_renewed, wear
from tests.every import every
from tests.examples import examples


def readings(*pairs: tuple[float, float]) -> list[WearReading]:
    return [WearReading(sessions, mm) for sessions, mm in pairs]


@examples(25)
@given(st.floats(0.01, 0.2), st.floats(5, 8), st.integers(3, 12))
def test_even_wear_is_found(rate: float, new_mm: float, count: int) -> None:
    found = wear([WearReading(n, new_mm - rate * n) for n in range(count)])

    assert found is not None
    assert found.mm_per_session == pytest.approx(rate)
    assert found.readings == count


def test_one_misread_gauge_does_not_carry_the_rate() -> None:
    found = wear(readings((0, 5.0), (1, 4.9), (2, 4.8), (3, 4.4), (4, 4.6), (5, 4.5)))

    assert found is not None
    assert found.mm_per_session == pytest.approx(0.1)


def test_new_parts_begin_anew() -> None:
    held = readings((0, 3.0), (4, 2.0), (5, 4.5), (9, 4.1))

    assert since_renewed(held) == tuple(held[2:])
    found = wear(held)
    assert found is not None
    assert found.mm_per_session == pytest.approx(0.1)


@examples(100)
@given(st.lists(st.tuples(st.integers(0, 9), st.sampled_from((4.0, 4.1, 4.2, 4.3))), max_size=12))
def test_the_rate_is_the_median_of_all_pairs(pairs: list[tuple[float, float]]) -> None:
    """Of readings that are mostly alike no pairs are gone through: it is the same all the same."""
    held = sorted(readings(*pairs), key=lambda one: one.sessions)
    apart = [(one, other) for one, other in itertools.combinations(held, 2) if one.sessions < other.sessions]
    slopes = [(one.mm - other.mm) / (other.sessions - one.sessions) for one, other in apart]
    rate = statistics.median(slopes) if slopes else 0.0

    found = wear(readings(*pairs))

    assert (found.mm_per_session if found is not None else 0.0) == max(rate, 0.0)


def test_thousands_of_like_readings_are_told_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    def never(*_: object) -> None:
        raise AssertionError("all pairs are gone through")

    monkeypatch.setattr(itertools, "combinations", never)

    assert wear(readings((0, 4.0), *((count, 3.9) for count in range(1, 3000)))) is None


@every("held", [[], readings((0, 4.0)), readings((0, 4.0), (3, 4.0)), readings((1, 4.0), (1, 3.9))])
def test_without_two_readings_apart_or_any_loss_there_is_no_rate(held: list[WearReading]) -> None:
    assert wear(held) is None


@every(
    ("held", "words"),
    [((math.nan, 3.0), "sessions"), ((-1.0, 3.0), "sessions"), ((2.0, 31.0), "thickness")],
)
def test_a_reading_that_cannot_be_is_refused(held: tuple[float, float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        wear(readings((0, 4.0), held))
