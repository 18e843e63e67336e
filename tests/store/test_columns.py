"""Numbers and what recurs come back as they were, however large, and nothing else is taken for them."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from paddock_tui.store.columns import each_of, numbers, packed, recurring, word

_ABOVE = st.lists(st.integers(0, 2**64 - 1), max_size=6)
_ANY = st.lists(st.integers(-(2**63), 2**63 - 1), max_size=6)


@given(st.one_of(_ABOVE, _ANY))
@example([])
@example([0, 255])
@example([256])
@example([65_535])
@example([65_536, 2**32 - 1])
@example([2**32])
@example([-1, 2**63 - 1])
@example([True, False])
def test_numbers_come_back(values: list[int]) -> None:
    assert list(numbers(packed(values))) == values


@pytest.mark.parametrize("most", [255, 65_535, 2**32 - 1, 2**64 - 1])
def test_no_number_takes_more_bytes_than_the_largest(most: int) -> None:
    width = (most.bit_length() + 7) // 8
    assert len(packed([0, most, 7])) == 1 + 4 * ((3 * width + 2) // 3)


@pytest.mark.parametrize("values", [[2**64], [-1, 2**63], [-(2**63) - 1]])
def test_what_is_too_large_is_not_written(values: list[int]) -> None:
    with pytest.raises(OverflowError):
        packed(values)


@pytest.mark.parametrize("text", ["", "x", "dAAAA", "uAAAA", "BAA", "B****", "IAAAA", "B AAAA", "BAAA\n="])
def test_nothing_else_is_taken_for_numbers(text: str) -> None:
    with pytest.raises((ValueError, IndexError)):
        numbers(text)


@given(st.lists(st.sampled_from(["", "a", "b", "é"]), max_size=9))
def test_what_recurs_comes_back(values: list[str]) -> None:
    assert list(each_of(recurring(values), word)) == values
