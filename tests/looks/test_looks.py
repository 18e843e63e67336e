"""Every page looks as committed; what changed is read in the difference of the texts."""

from pathlib import Path

import pytest

from tests.looks import FOLDER, LOOKS, drawn, sample_desk, sizes_of
from tests.looks.pictures import renewed_pictures

RENEW = "read the difference, then write the looks anew: python -m tests.looks"


@pytest.mark.parametrize("name", LOOKS)
def test_a_page_looks_as_committed(name: str, garage: Path) -> None:
    desk = sample_desk(garage)
    for wide, high in sizes_of(name):
        file = FOLDER / f"{name}-{wide}x{high}.txt"
        assert file.exists(), RENEW
        assert drawn(desk, LOOKS[name], (wide, high)) == file.read_text(encoding="utf-8"), RENEW
    desk.close()


def test_no_look_is_left_of_a_page_that_is_gone() -> None:
    wanted = {FOLDER / f"{name}-{wide}x{high}.txt" for name in LOOKS for wide, high in sizes_of(name)}
    assert wanted == set(FOLDER.glob("*.txt")), RENEW


def test_every_picture_is_of_the_page_as_it_looks(garage: Path) -> None:
    pictures = dict(renewed_pictures(garage))

    assert len(pictures) == 10
    for file, text in pictures.items():
        assert file.read_text(encoding="utf-8") == text, RENEW
