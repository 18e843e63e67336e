"""Anti-squat against the balance of moments about the pivot; chain pull against printed forces."""

import math
from typing import Any

import pytest

from paddock_tui.calc.anti_squat import ChainLine, Point, anti_squat, chain_pull_n
from tests.every import every
from tests.later import Later
from tests.outside.rows import Row, params

np = Later("numpy")

LINE = "squat line through the meeting of chain and swingarm; the standard motorcycle texts, from memory"


def _line(pivot: float = 385.0, gearbox: float = 425.0, front: int = 16, rear: int = 43) -> ChainLine:
    return ChainLine(315.0, Point(570.0, pivot), Point(655.0, gearbox), front, rear, 15.875)


def _found(line: ChainLine, height: float = 650.0) -> list[float]:
    found = anti_squat(line, 1430.0, height)
    return [found.percent, found.swingarm_deg, found.chain_deg]


def _row(id_: str, line: ChainLine, expected: list[float], height: float = 650.0) -> Row:
    return Row(id_, lambda: _found(line, height), expected, 0.06, LINE, "DERIVED")


ROWS = [
    Row(
        "SQT-05",
        lambda: chain_pull_n(2000.0, 0.32, 43, 15.875),
        5885.6,
        0.5,
        "T = S R / r, r = p / (2 sin(pi / z))",
        "DERIVED",
    ),
    _row("SQT-07", _line(), [64.5, 7.0, 3.65]),
    _row("SQT-08", _line(pivot=390.0), [72.0, 7.5, 3.65]),
    _row("SQT-09", _line(rear=41), [61.2, 7.0, 4.09]),
    _row("SQT-10", _line(front=15), [67.0, 7.0, 3.43]),
    _row("SQT-11", _line(pivot=370.0, gearbox=410.0), [57.9, 5.51, 2.35], 635.0),
]

NOT_USED = {
    "SQT-02": "speed of a chain by its polygon, p z n: here its pull comes from the wheel's thrust",
    "SQT-03": "pull by the polygon of a bicycle's sprocket: here the pitch circle carries it",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


@every("line", [_line(), _line(pivot=395.0), _line(rear=46), _line(front=14)])
def test_the_moments_about_the_pivot_balance(line: ChainLine) -> None:
    found = anti_squat(line, 1430.0, 650.0)
    # All forces on swingarm and wheel as one body, for a thrust of one newton: chain pull at the sprocket's
    # top, thrust and transferred load at the contact. The spring takes what is left, less at full anti-squat.
    thrust, transfer = np.array([1.0, 0.0]), np.array([0.0, 650.0 / 1430.0])
    pull = chain_pull_n(1.0, 0.315, line.rear_teeth, line.pitch_mm)
    slope = math.radians(line.chain_deg)
    along = pull * np.array([math.cos(slope), math.sin(slope)])
    top = line.rear_pitch_radius_mm * np.array([-math.sin(slope), math.cos(slope)])
    pivot = np.array([line.pivot.ahead_mm, line.pivot.height_mm])

    def moment(at: Any, force: Any) -> float:
        arm = at - pivot
        return float(arm[0] * force[1] - arm[1] * force[0])

    axle = np.array([0.0, line.axle_height_mm])
    held = moment(np.zeros(2), thrust) + moment(axle + top, along)
    assert -100.0 * held / moment(np.zeros(2), transfer) == pytest.approx(found.percent, abs=1e-6)
