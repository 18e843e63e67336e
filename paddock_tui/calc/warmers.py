"""Pressures on tyre warmers: what to set there for a hot target, and what a reading there will become.

The gas law at constant volume between the air in the tyre on the warmers and hot on the track, which may be
hotter or cooler than the warmers are: in either case the air is what counts, not what the warmer's dial
says. Pressures in kPa on the gauge, temperatures in C.
"""

import attrs

from paddock_tui.calc.errors import within
from paddock_tui.calc.tyre_pressure import SEA_LEVEL, Ambient, hot_expected_kpa_gauge


@attrs.frozen
class GaugeBand:
    """A pressure in kPa gauge, and the ends that the spread of the temperatures leaves."""

    best: float
    low: float
    high: float


@attrs.frozen
class TyreAir:
    """Temperature in C of the air in the tyre on the warmers and hot on the track, each with its spread."""

    on_warmers_c: float
    on_track_c: float
    on_warmers_spread_k: float = 0.0
    on_track_spread_k: float = 0.0

    def __attrs_post_init__(self) -> None:
        for spread in (self.on_warmers_spread_k, self.on_track_spread_k):
            within("spread of the temperature", spread, 0.0, 30.0, "K")


def on_warmers_for_hot(hot_kpa: float, air: TyreAir, ambient: Ambient = SEA_LEVEL) -> GaugeBand:
    """Return what to set on the warmers so that the hot target comes out on the track.

    `ambient.cold_kpa` is the air outside while setting, `ambient.hot_kpa` when the hot pressure is read.
    """
    turned = Ambient(ambient.hot_kpa, ambient.cold_kpa)

    def found(warm_off: float, track_off: float) -> float:
        return hot_expected_kpa_gauge(
            hot_kpa, air.on_track_c + track_off, air.on_warmers_c + warm_off, turned
        )

    warm, track = air.on_warmers_spread_k, air.on_track_spread_k
    return GaugeBand(found(0.0, 0.0), found(-warm, track), found(warm, -track))


def hot_from_warmers(warm_kpa: float, air: TyreAir, ambient: Ambient = SEA_LEVEL) -> GaugeBand:
    """Return what a pressure read on the warmers becomes on the track."""

    def found(warm_off: float, track_off: float) -> float:
        return hot_expected_kpa_gauge(
            warm_kpa, air.on_warmers_c + warm_off, air.on_track_c + track_off, ambient
        )

    warm, track = air.on_warmers_spread_k, air.on_track_spread_k
    return GaugeBand(found(0.0, 0.0), found(warm, -track), found(-warm, track))
