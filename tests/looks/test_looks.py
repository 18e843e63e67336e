"""Every page looks as committed; what changed is read in the difference of the texts."""

from pathlib import Path

import pytest

from tests.looks import FOLDER, LOOKS, SIZES, drawn, renewed, sample_desk

RENEW = "read the difference, then write the looks anew: python -m tests.looks"


@pytest.mark.parametrize("name", LOOKS)
def test_a_page_looks_as_committed(name: str, garage: Path) -> None:
    desk = sample_desk(garage)
    for wide, high in SIZES:
        file = FOLDER / f"{name}-{wide}x{high}.txt"
        assert file.exists(), RENEW
        assert drawn(desk, LOOKS[name], (wide, high)) == file.read_text(encoding="utf-8"), RENEW
    desk.close()


def test_no_look_is_left_of_a_page_that_is_gone(garage: Path) -> None:
    assert {file for file, _ in renewed(garage)} == set(FOLDER.glob("*.txt")), RENEW
