"""Further answers beside rows: geometry, thrust, warmers, laps, chain, fuel range; each with its row."""

from collections.abc import Iterator

from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.answered import answered
from paddock_tui.advice.balance import balance
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.chain_length import chain_length
from paddock_tui.advice.chain_pull import chain_pull
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.geometry import geometry
from paddock_tui.advice.laps_and_sectors import laps_and_sectors
from paddock_tui.advice.on_warmers import on_warmers
from paddock_tui.advice.sag import sag
from paddock_tui.advice.shift_points import shift_points
from paddock_tui.advice.tread_wear import tread
from paddock_tui.advice.weighing import weighing
from paddock_tui.records.paths import Path

OnPath = tuple[Path, Answer]


def setup_rows(about: About) -> Iterator[OnPath]:
    """Return what belongs beside heights, sprockets and springs of a set-up."""
    stands = answered(about, geometry)
    yield ("setup", "fork_height"), stands["one_fork"]
    yield ("setup", "rear_height"), stands["one_ride"]
    for name in ("fork_height", "rear_height"):
        yield ("setup", name), stands["after"]
    pushes, pulls = answered(about, shift_points), answered(about, chain_pull)
    yield ("setup", "front_sprocket"), pushes["shifts"]
    yield ("setup", "front_sprocket"), pulls["squat_front"]
    for key in ("geared", "powered", "thrust", "wanted"):
        yield ("setup", "rear_sprocket"), pushes[key]
    for key in ("squat", "squat_rear"):
        yield ("setup", "rear_sprocket"), pulls[key]
    for end in ENDS:
        found = answered(about, sag, end)
        for key in ("wheel_rate", "frequency", "damping", "by_damper", "preload_by_load", "serve"):
            yield ("setup", f"{end}_spring"), found[key]


def session_rows(about: About) -> Iterator[OnPath]:
    """Return what belongs beside warmers, laps, sectors, chain, sag and fuel of a session."""
    warm = answered(about, on_warmers)
    for end in ENDS:
        yield ("pressures", "warmers", end), warm[f"{end}_becomes"]
        yield ("pressures", "warmers", end), warm[f"{end}_set"]
    laps = answered(about, laps_and_sectors)
    for key in ("consistency", "drift"):
        yield ("best_lap",), laps[key]
    for lap in about.session.sectors:
        yield ("sectors", lap), laps["ideal"]
    chain = answered(about, chain_length)
    if about.session.chain_length is not None:
        yield ("chain_length",), chain["limit"]
        yield ("chain_length",), chain["grown"]
    for end in ENDS:
        yield (f"{end}_tread",), answered(about, tread, end)["tread"]
    for key in ("tank_laps", "home"):
        yield ("fuel_added",), answered(about, fuel)[key]
    for end in ENDS:
        if "alone" in about.session.sag.get(end, {}):
            yield ("sag", end, "alone", "pushed"), answered(about, sag, end)["friction"]


def bike_rows(about: About) -> Iterator[OnPath]:
    """Return what belongs beside the geometry of a bike: its weighing, its trail, its swingarm."""
    weighed = answered(about, weighing)
    yield ("chassis", "centre_height"), weighed["height"]
    yield ("chassis", "centre_ahead"), weighed["ahead"]
    tips = answered(about, balance)
    for key in ("lifts", "rest"):
        yield ("chassis", "centre_height"), tips[key]
    for key in ("height", "both"):
        yield ("weighing", "reading"), weighed[key]
    yield ("chassis", "trail"), answered(about, geometry)["stands"]
    yield ("chassis", "pivot_height"), answered(about, chain_pull)["squat"]
