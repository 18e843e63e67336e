"""The test over many cases: every case is run, each that fails is named, none is no test."""

import pytest

from tests.every import every


def test_each_case_is_run_and_each_failure_named() -> None:
    seen: list[int] = []

    @every(("one"), [1, pytest.param(2, id="the second"), 3, 4])
    def check(one: int) -> None:
        seen.append(one)
        assert one % 2, "even"

    with pytest.raises(AssertionError, match=r"2 of 4 failed:\n  the second: even.*\n  case 3 \(4,\): even"):
        check()
    assert seen == [1, 2, 3, 4]


def test_cases_of_several_values_are_taken_apart() -> None:
    @every("one, other", [(1, 1), pytest.param(2, 2)])
    def check(one: int, other: int) -> None:
        assert one == other

    check()


def test_without_a_case_it_fails() -> None:
    @every("one", [])
    def check(one: int) -> None: ...

    with pytest.raises(AssertionError, match="no case"):
        check()
