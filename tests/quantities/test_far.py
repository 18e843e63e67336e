"""Units beyond the short table."""

import pytest

from paddock_tui.quantities import convert, dimension_of, far
from paddock_tui.quantities.far import far_unit
from tests.every import every


@every(
    ("number", "old", "new", "expected"),
    [
        (1.2, "kgf/cm^2", "kPa", 117.6798),
        (1.2, "kgf/cm2", "kPa", 117.6798),
        (3, "stone", "kg", 19.05087954),
        (1, "oz", "g", 28.349523125),
        (1, "yd", "m", 0.9144),
        (1, "knots", "km/h", 1.852),
        (2, "kN/m", "N/mm", 2.0),
        (90, "mm/s", "m/s", 0.09),
        (1, "m N", "N m", 1.0),
        (10, "cSt", "mm^2/s", 10.0),
        (1.2, "g/l", "kg/m3", 1.2),
    ],
)
def test_units_beyond_the_table_convert(number: float, old: str, new: str, expected: float) -> None:
    assert convert(number, old, new) == pytest.approx(expected, rel=1e-14)


@every(
    ("unit", "dimension"),
    [
        ("kgf/cm^2", "pressure"),
        ("stone", "mass"),
        ("m^2", "area"),
        ("ft/s^2", "acceleration"),
        ("kN/m", "spring rate"),
    ],
)
def test_dimensions_beyond_the_table(unit: str, dimension: str) -> None:
    assert dimension == dimension_of(unit)


@every(
    "spelling",
    [
        *("", "c", "J", "joule", "Hz", "damp", "dBm", "decibelmilliwatt", "rankine", "degR", "coulomb"),
        *("Mm", "MW", "megapascal", "kW h", "s^2", "bar^2", "lb/ft", "C/m", "gal/h", "ton/m3"),
        *(
            "m**9",
            "9**9",
            "2 m",
            "m^9",
            "m/s/s",
            "bar)",
            "(bar",
            "m__class__",
            "__import__",
            "os.system",
            "bár",
            "bar\n",
        ),
    ],
)
def test_what_has_no_place_here_is_unknown(spelling: str) -> None:
    assert far_unit(spelling) is None


def test_only_names_of_letters_reach_pint(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    monkeypatch.setattr(far, "_from_pint", asked.append)
    far_unit.cache_clear()
    for spelling in ("stone", "kgf/yd^2", "3 stone", "9**9", "fathom*__import__", "1/stone", "stone^9"):
        far_unit(spelling)
    far_unit.cache_clear()

    assert asked == ["stone", "yd"]


def test_without_a_cache_folder_units_still_work(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", "/dev/null/none")
    monkeypatch.setenv("HOME", "/dev/null/none")

    registry = far._registry.__wrapped__()

    assert registry.Quantity(1.0, "stone").to("kg").magnitude == pytest.approx(6.35029318)
