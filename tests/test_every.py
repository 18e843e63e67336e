"""The test over many cases: every case is run, each that fails is named, none is no test."""

import inspect
import os
from enum import Enum
from pathlib import Path

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


def test_cases_are_made_when_the_test_is_run_and_those_of_an_enum_are_its_members() -> None:
    seen: list[object] = []

    @every("one", lambda: [*seen, 1, 2])
    def check(one: int) -> None:
        seen.append(one)

    class End(Enum):
        FRONT = 1
        REAR = 2

    @every("end", End)
    def check_ends(end: Enum) -> None:
        seen.append(end.name)

    seen.append(0)
    check()
    check_ends()
    assert seen == [0, 0, 1, 2, "FRONT", "REAR"]


def test_without_a_case_it_fails() -> None:
    @every("one", [])
    def check(one: int) -> None: ...

    with pytest.raises(AssertionError, match="no case"):
        check()


def test_each_case_has_folders_of_its_own_and_its_patches_end_with_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[Path] = []

    @every("one", [1, 2])
    @every("other", [3, 4])
    def check(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, one: int, other: int) -> None:
        assert "ONE_CASE" not in os.environ
        monkeypatch.setenv("ONE_CASE", "1")
        assert list(tmp_path.iterdir()) == []
        (tmp_path / "made").write_text(f"{one} {other}")
        made.append(tmp_path / "made")

    assert list(inspect.signature(check).parameters) == ["tmp_path", "monkeypatch"]
    check(tmp_path=tmp_path, monkeypatch=monkeypatch)
    assert [one.read_text() for one in made] == ["1 3", "1 4", "2 3", "2 4"]


def test_each_case_has_a_garage_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "garage").mkdir()
    (tmp_path / "garage" / "bike.toml").write_text("")

    @every("one", [1, 2])
    def check(garage: Path, one: int) -> None:
        (garage / "bike.toml").rename(garage / f"{one}.toml")

    check(garage=tmp_path / "garage")
    assert (tmp_path / "garage" / "bike.toml").exists()
