"""Natural frequency and damping ratio against textbooks, and against a simulated swing."""

import math

import pytest

from paddock_tui.calc.vibration import (
    critical_damping_n_s_per_m,
    damping_ratio,
    damping_ratio_of,
    decrement,
    frequency_of_deflection_hz,
    natural_frequency_hz,
    undamped_hz,
)
from tests.every import every
from tests.outside.rows import Row, params

OPENSTAX = "OpenStax College Physics, example 16.4"
ISOLATION = "vibration-isolation texts: f = 15.76 / sqrt(mm)"
RATIO = "z = d / sqrt(4 pi^2 + d^2), course exercise"


def _deflection_mm(hz: float) -> float:
    return (frequency_of_deflection_hz(1.0) / hz) ** 2


def _two_peaks() -> list[float]:
    ratio = damping_ratio(0.01, 0.004993, 1.0)
    natural = 2.0 * math.pi * undamped_hz(1.0 / 0.06, ratio)
    stiffness = 20.0 * natural**2
    return [ratio, natural, stiffness, ratio * critical_damping_n_s_per_m(stiffness / 1000.0, 20.0)]


def _end() -> list[float]:
    return [natural_frequency_hz(18.0, 125.0), critical_damping_n_s_per_m(18.0, 125.0)]


ROWS = [
    Row("VIB-01", lambda: natural_frequency_hz(65.3, 900.0), 1.36, 0.005, OPENSTAX, "CONFIRMED"),
    Row("VIB-03", lambda: frequency_of_deflection_hz(25.0), 3.15, 0.005, ISOLATION, "CONFIRMED"),
    Row("VIB-05", lambda: _deflection_mm(9.7), 2.6, 0.05, ISOLATION, "CONFIRMED"),
    Row(
        "VIB-06",
        lambda: [frequency_of_deflection_hz(25.4), frequency_of_deflection_hz(10.0)],
        [3.13, 5.0],
        (0.005, 0.02),
        "vibration formula appendix: 3.13 Hz at an inch, 5 Hz at a centimetre",
        "CONFIRMED",
    ),
    Row(
        "VIB-07",
        lambda: decrement(20.0, 2.0, 100),
        0.023,
        5e-4,
        "printed exercise, ln(x0 / xn) / n",
        "CONFIRMED",
    ),
    Row("VIB-09", _two_peaks, [0.10987, 105.358, 222005.0, 463.0], 1e-3, RATIO, "DERIVED", True),
    Row("VIB-10", lambda: damping_ratio_of(50.0, 1.4, 4.5), 0.315, 5e-4, "z = c / (2 sqrt(k m))", "DERIVED"),
    Row("VIB-13", _end, [1.91, 3000.0], (1e-3, 0.1), "f = sqrt(k / m) / 2 pi, cc = 2 sqrt(k m)", "DERIVED"),
    Row("VIB-14", lambda: frequency_of_deflection_hz(68.1), 1.91, 1e-3, "f = sqrt(g / x) / 2 pi", "DERIVED"),
]

NOT_USED: dict[str, str] = {}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


@every("ratio", [0.05, 0.2, 0.5])
def test_a_simulated_swing_gives_its_own_ratio_back(ratio: float) -> None:
    natural = 12.0
    damped = natural * math.sqrt(1.0 - ratio**2)
    peaks = [math.exp(-ratio * natural * 2.0 * math.pi * swing / damped) for swing in (0, 2)]

    assert damping_ratio(peaks[0], peaks[1], 2) == pytest.approx(ratio)
    assert undamped_hz(damped / (2.0 * math.pi), ratio) == pytest.approx(natural / (2.0 * math.pi))
