"""From a cold tyre pressure to the hot one and back, as an estimate from the gas law.

Every pressure here is in kPa on the gauge, every temperature in C, and the air outside may differ between
the two readings: an altitude or weather that moves it by 1 kPa moves the gauge by 1 kPa. The tyre vendor's
hot figure comes first; nothing here says that a pressure is right for a tyre.
"""

from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import Inconsistent, within
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA
from paddock_tui.calc.tyre_air import absolute_kpa, gauge_kpa, pressure_after_kpa_abs, temperature_after_c


@attrs.frozen
class Ambient:
    """Absolute pressure in kPa of the air outside when the tyre was cold and when it was hot."""

    cold_kpa: float = SEA_LEVEL_KPA
    hot_kpa: float = SEA_LEVEL_KPA


SEA_LEVEL = Ambient()


def hot_expected_kpa_gauge(
    cold_kpa_gauge: float, cold_c: float, gas_c: float, ambient: Ambient = SEA_LEVEL
) -> float:
    """Return the hot gauge pressure to expect from a cold one, with the gas at `gas_c` when hot."""
    hot_kpa_abs = pressure_after_kpa_abs(absolute_kpa(cold_kpa_gauge, ambient.cold_kpa), cold_c, gas_c)
    return gauge_kpa(hot_kpa_abs, ambient.hot_kpa)


def cold_for_hot_kpa_gauge(
    hot_kpa_gauge: float, cold_c: float, gas_c: float, ambient: Ambient = SEA_LEVEL
) -> float:
    """Return the cold gauge pressure to start from for a wanted hot one, with the gas at `gas_c` when hot."""
    cold_kpa_abs = pressure_after_kpa_abs(absolute_kpa(hot_kpa_gauge, ambient.hot_kpa), gas_c, cold_c)
    cold_kpa = gauge_kpa(cold_kpa_abs, ambient.cold_kpa)
    if cold_kpa <= 0.0:
        raise Inconsistent("cold pressure", "the tyre would be flat cold: the figures do not go together")
    return cold_kpa


def gas_temperature_c(
    cold_kpa_gauge: float, cold_c: float, hot_kpa_gauge: float, ambient: Ambient = SEA_LEVEL
) -> float:
    """Return the mean temperature of the gas when hot, implied by a cold and a hot reading of the same air.

    An error of 1 kPa in either reading is about 1 K. Raises OutOfRange where the two readings cannot be of
    the same air (air was let out between, or the readings are swapped by much).
    """
    return temperature_after_c(
        absolute_kpa(cold_kpa_gauge, ambient.cold_kpa), cold_c, absolute_kpa(hot_kpa_gauge, ambient.hot_kpa)
    )


def same_air_kpa_gauge(
    set_kpa_gauge: float,
    set_c: float,
    now_c: float,
    ambient_then_kpa: float = SEA_LEVEL_KPA,
    ambient_now_kpa: float = SEA_LEVEL_KPA,
) -> float:
    """Return what the gauge shows now if the air put in at `set_c` is all still there: the morning's figure.

    A tyre cold at both times is assumed, at the air's temperature and out of the sun. Set to this figure in
    the afternoon, the hot pressure comes out as before, if the gas gets as hot as before; a warmer track
    usually makes it hotter.
    """
    return hot_expected_kpa_gauge(set_kpa_gauge, set_c, now_c, Ambient(ambient_then_kpa, ambient_now_kpa))


class Band(NamedTuple):
    """A best figure in kPa gauge with how far it may lie either way; the ends None where nothing tells."""

    best_kpa_gauge: float
    low_kpa_gauge: float | None = None
    high_kpa_gauge: float | None = None


def cold_band_kpa_gauge(
    hot_kpa_gauge: float,
    cold_c: float,
    gas_c: float,
    spread_k: float | None,
    ambient: Ambient = SEA_LEVEL,
) -> Band:
    """Return the cold pressure for a wanted hot one, with the spread of the tyre air turned into
    pressure.

    A hotter gas asks for less air: the low end belongs to `gas_c` plus the spread.
    """
    best = cold_for_hot_kpa_gauge(hot_kpa_gauge, cold_c, gas_c, ambient)
    if spread_k is None:
        return Band(best)
    spread = within("spread of the tyre air's temperature", spread_k, 0.0, None, "K")
    return Band(
        best,
        cold_for_hot_kpa_gauge(hot_kpa_gauge, cold_c, gas_c + spread, ambient),
        cold_for_hot_kpa_gauge(hot_kpa_gauge, cold_c, gas_c - spread, ambient),
    )
