"""Chain length and centre distance against handbooks and an exact two-circle geometry."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.chain import centre_mm, chain_size, links_exact, pitch_diameter_mm
from paddock_tui.calc.sprockets import Fitted, axle_move_mm
from tests.every import every
from tests.examples import examples
from tests.later import Later
from tests.outside.rows import Row, accounted, params

optimize = Later("scipy.optimize")

NUMBERS = "pitch in eighths, width in eightieths of an inch; ISO 606 / ASME B29.1"
LENGTHS = "Machinery's Handbook; Shigley eq. 17-34"
DIAMETERS = "D = p / sin(180/N), ASME B29.1; Machinery's Handbook"


def _pitch_and_width(number: int) -> list[float | None]:
    size = chain_size(number)
    return [size.pitch_mm, size.inner_width_mm]


ROWS = [
    Row("CHN-01", lambda: _pitch_and_width(420), [12.7, 6.35], 0.01, NUMBERS, "CONFIRMED"),
    Row("CHN-02", lambda: _pitch_and_width(520), [15.875, 6.35], 0.01, NUMBERS, "CONFIRMED"),
    Row("CHN-03", lambda: _pitch_and_width(530), [15.875, 9.53], 0.01, NUMBERS, "CONFIRMED"),
    Row("CHN-04", lambda: chain_size(428).pitch_mm, 12.7, 0.005, NUMBERS, "CONFIRMED"),
    Row("CHN-07", lambda: links_exact(20, 63, 36.0, 1.0), 114.8, 0.05, LENGTHS, "CONFIRMED"),
    Row("CHN-08", lambda: centre_mm(20, 63, 114, 1.0), 35.6, 0.05, LENGTHS, "CONFIRMED"),
    Row("CHN-09", lambda: centre_mm(15, 45, 110, 15.875), 630.4, 0.1, LENGTHS, "DERIVED"),
    Row(
        "CHN-10",
        lambda: axle_move_mm(Fitted(16, 43, 114, 15.875), 16, 44),
        -4.26,
        0.05,
        "difference of two centre distances",
        "DERIVED",
    ),
    Row("CHN-11", lambda: pitch_diameter_mm(21, 12.7), 85.21, 0.005, DIAMETERS, "CONFIRMED"),
    Row("CHN-12", lambda: pitch_diameter_mm(15, 1.0), 4.8097, 5e-5, DIAMETERS, "DERIVED"),
    Row("CHN-13", lambda: pitch_diameter_mm(16, 1.0), 5.1258, 5e-5, DIAMETERS, "DERIVED"),
    Row("CHN-14", lambda: pitch_diameter_mm(40, 1.0), 12.7455, 5e-5, DIAMETERS, "DERIVED"),
]

NOT_USED = {
    "CHN-05": "roller diameters of industrial chain: nothing here needs them",
    "CHN-06": "roller diameters of industrial chain: nothing here needs them",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("CHN", 14, ROWS, NOT_USED)


def _exact_links(front: int, rear: int, centre: float) -> float:
    """Length in pitches of a belt round two circles of the pitch diameters, wraps counted in teeth."""
    small, large = (0.5 / math.sin(math.pi / teeth) for teeth in (front, rear))
    lean = math.asin((large - small) / centre)
    wraps = front * (0.5 - lean / math.pi) + rear * (0.5 + lean / math.pi)
    return 2.0 * centre * math.cos(lean) + wraps


@examples(25)
@given(st.integers(13, 18), st.integers(36, 50), st.floats(30.0, 50.0))
def test_length_is_within_a_hundredth_of_a_pitch_of_exact_geometry(
    front: int, rear: int, centre: float
) -> None:
    assert links_exact(front, rear, centre, 1.0) == pytest.approx(_exact_links(front, rear, centre), abs=0.01)


@examples(25)
@given(st.integers(13, 18), st.integers(36, 50), st.integers(50, 60))
def test_centre_is_the_root_that_a_solver_finds(front: int, rear: int, half_links: int) -> None:
    links = 2 * half_links
    root = optimize.brentq(
        lambda centre: links_exact(front, rear, centre, 15.875) - links, 300.0, 1200.0, xtol=1e-10
    )

    assert centre_mm(front, rear, links, 15.875) == pytest.approx(root, abs=1e-6)
