"""Showing and comparing quantities."""

from decimal import Decimal

import pytest

from paddock_tui.quantities import (
    Quantity,
    compatible,
    convert,
    difference,
    digits_of,
    dimension_of,
    parse,
    rounded,
)
from tests.every import every


def q(text: str) -> Quantity:
    read = parse(text)
    assert isinstance(read, Quantity)
    return read


def test_trailing_zeros_stay() -> None:
    assert str(Quantity(Decimal("2.10"), "bar")) == "2.10 bar"
    assert str(Quantity(Decimal("0.0000001"), "m")) == "0.0000001 m"


def test_equal_is_by_text_and_same_is_by_size() -> None:
    assert q("2.10 bar") == q("2.10 bar")
    assert q("2.10 bar") != q("2.1 bar")
    assert q("2.10 bar").same(q("2.1 bar"))
    assert q("2.10 bar").same(q("210 kPa"))
    assert q("0 C").same(q("32 F"))
    assert not q("2.10 bar").same(q("2.11 bar"))
    assert not q("2 N").same(q("2 kg"))


@every(
    ("text", "unit", "shown"),
    [
        ("2.10 bar", None, "2.10 bar"),
        ("2.10 bar", "bar", "2.10 bar"),
        ("2.10 bar", "psi", "30.5 psi"),
        ("30.5 psi", "bar", "2.10 bar"),
        ("2.10 bar", "kPa", "210 kPa"),
        ("70 F", "C", "21 C"),
        ("31 F", "C", "-1 C"),
        ("31.9 F", "C", "0 C"),
        ("100 km/h", "mph", "62 mph"),
        ("201 kg", "lb", "443.1 lb"),
        ("9 N/mm", "kgf/mm", "0.92 kgf/mm"),
        ("40 mpg US", "l/100km", "5.9 l/100km"),
        ("5.9 l/100km", "mpg imp", "47.9 mpg imp"),
    ],
)
def test_show_uses_the_digits_of_everyday_use(text: str, unit: str | None, shown: str) -> None:
    assert shown == q(text).show(unit)


def test_shown_in_takes_the_digits_it_is_given() -> None:
    assert q("2.10 bar").shown_in("psi", 3) == "30.458 psi"
    assert q("2.675 bar").shown_in("bar", 2) == "2.68 bar"


@every(
    ("number", "digits", "text"),
    [(2.675, 2, "2.68"), (0.5, 0, "1"), (-0.5, 0, "-1"), (-0.4, 0, "0"), (1e22, 1, "1" + "0" * 22 + ".0")],
)
def test_rounded_halves_go_away_from_zero(number: float, digits: int, text: str) -> None:
    assert text == rounded(number, digits)


def test_a_conversion_is_rounded_only_once() -> None:
    assert 2.3 * 100_000 / 1000 != 230.0
    assert q("2.3 bar").to("kPa") == 230.0


def test_a_difference_has_no_offset() -> None:
    assert difference(10, "C", "F") == 18.0
    assert difference(Decimal("-9"), "F", "K") == -5.0
    assert difference(q("18 F"), "C", "K") == 10.0
    assert q("10 C").as_difference("F") == 18.0
    assert difference(0.1, "bar", "kPa") == convert(0.1, "bar", "kPa")


def test_a_difference_of_consumption_has_no_reciprocal() -> None:
    with pytest.raises(ValueError, match="no fixed size"):
        difference(1, "l/100km", "km/l")


@every(
    ("number", "old", "new", "message"),
    [
        (1, "bar", "C", "bar is pressure, C is temperature"),
        (1, "baar", "bar", "unknown unit: baar"),
        (float("nan"), "bar", "psi", "not a finite number"),
        (float("inf"), "bar", "psi", "not a finite number"),
        (1e308, "km", "mm", "not finite"),
        (0, "km/l", "l/100km", "not finite"),
    ],
)
def test_what_cannot_be_converted_raises(number: float, old: str, new: str, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        convert(number, old, new)


def test_compatible() -> None:
    assert compatible("psi", "pressure")
    assert compatible("km", "length")
    assert compatible("kgf/cm^2", "pressure")
    assert not compatible("psi", "mass")
    assert not compatible("baar", "pressure")


def test_counting_units_measure_only_themselves() -> None:
    assert {"click", "turn", "tooth"} == {q(f"2 {unit}").dimension for unit in ("clicks", "turns", "teeth")}
    assert dimension_of("turn") != dimension_of("deg")


def test_digits_of() -> None:
    assert [digits_of(unit) for unit in ("bar", "psi", "kPa", "C")] == [2, 1, 0, 0]
