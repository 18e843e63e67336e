"""Markings read into sizes."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_size import (
    Construction,
    Origin,
    TyreSize,
    UnreadableSize,
    circumference,
    parse_tyre_size,
)
from tests.every import every
from tests.examples import examples

FRONT = TyreSize(120, 70, Construction.RADIAL, 17.0, True, 58, "(W)")


@every(
    ("text", "size"),
    [
        ("120/70 ZR17", TyreSize(120, 70, Construction.RADIAL, 17.0, size_symbol="Z")),
        ("120/70-17", TyreSize(120, 70, Construction.DIAGONAL, 17.0)),
        ("120/70R17 M/C (58W)", FRONT),
        ("  120 / 70 r 17 m/c (58w) tl ", FRONT),
        ("190/55 ZR17 M/C (75W)", TyreSize(190, 55, Construction.RADIAL, 17.0, True, 75, "(W)", "Z")),
        ("180/55 ZR 17 73W", TyreSize(180, 55, Construction.RADIAL, 17.0, False, 73, "W", "Z")),
        ("160/60B17 69H M/C", TyreSize(160, 60, Construction.BIAS_BELTED, 17.0, True, 69, "H")),
        ("120/80 VR16.5", TyreSize(120, 80, Construction.RADIAL, 16.5, size_symbol="V")),
    ],
)
def test_reads_a_marking(text: str, size: TyreSize) -> None:
    assert parse_tyre_size(text) == size


@every(
    ("text", "at", "expected"),
    [
        ("", 0, "width"),
        ("wide", 0, "width"),
        ("1200/70-17", 0, "width"),
        ("120-70-17", 3, "slash"),
        ("120/70", 6, "R, ZR"),
        ("120/70 X17", 7, "R, ZR"),
        ("120/70 ZR", 9, "rim"),
        ("120/70 ZR177", 9, "rim"),
        ("120/70R17 (58", 13, "speed symbol"),
        ("120/70R17 (58W", 14, "bracket"),
        ("120/70R17 (58H)", 13, "speed symbol"),
        ("120/70R17 58I", 12, "speed symbol"),
        ("120/70R17 58W front", 14, "nothing more"),
    ],
)
def test_says_where_it_cannot_read(text: str, at: int, expected: str) -> None:
    with pytest.raises(UnreadableSize) as caught:
        parse_tyre_size(text)

    assert caught.value.at == at
    assert expected in caught.value.expected
    assert expected in caught.value.sentence()


@every("text", ["20/70-17", "400/70-17", "120/10-17", "120/70-40"])
def test_sizes_no_motorcycle_has_are_refused(text: str) -> None:
    with pytest.raises((OutOfRange, UnreadableSize)):
        parse_tyre_size(text)


@every(("rim", "millimetres"), [("16", 406), ("17", 432), ("18", 457)])
def test_nominal_rim_diameters(rim: str, millimetres: int) -> None:
    """UN Regulation 75, 6.1.2."""
    assert parse_tyre_size(f"120/70-{rim}").rim_mm == millimetres


@examples(25)
@given(st.integers(6, 24), st.integers(8, 18), st.integers(10, 19))
def test_a_taller_section_rolls_further(width_tens: int, aspect_fives: int, rim: int) -> None:
    low = parse_tyre_size(f"{width_tens * 10}/{aspect_fives * 5}-{rim}")
    high = parse_tyre_size(f"{width_tens * 10}/{aspect_fives * 5 + 5}-{rim}")

    assert circumference(high).metres > circumference(low).metres
    assert low.diameter_mm == low.rim_mm + 2 * low.section_height_mm


def test_what_was_measured_comes_before_the_marking() -> None:
    measured = circumference(FRONT, 1.86)

    assert (measured.metres, measured.origin) == (1.86, Origin.MEASURED)
    assert circumference(FRONT).origin is Origin.MARKING
    assert circumference(FRONT).metres == pytest.approx(math.pi * 0.6)


@pytest.mark.parametrize("metres", [0.9, 3.1])
def test_a_measure_that_cannot_be_is_refused(metres: float) -> None:
    with pytest.raises(OutOfRange, match="circumference"):
        circumference(FRONT, metres)


@every(
    ("text", "diameter", "aspect"),
    [("190/650R17", 650, 57), ("120/600-17", 600, 70), ("200/60R420", 660, 60), ("130/70-420", 602, 70)],
)
def test_a_slick_names_its_overall_diameter_or_its_rim_in_millimetres(
    text: str, diameter: int, aspect: int
) -> None:
    found = parse_tyre_size(text)

    assert (found.diameter_mm, found.aspect_percent) == (diameter, aspect)


@every("text", ["3.25-19", "4.60H18", "MT90B16"])
def test_an_inch_or_letter_size_asks_for_a_measured_turn(text: str) -> None:
    with pytest.raises(UnreadableSize, match="measure one turn"):
        parse_tyre_size(text)
