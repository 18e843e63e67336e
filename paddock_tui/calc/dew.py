"""Whether moisture may settle on the track: its temperature against the dew point of the air."""

import enum
from typing import Final

import attrs

from paddock_tui.calc.errors import within

MARGIN_K: Final = 2.0
"""How near above the dew point a track may be for patches in the shade. Common practice, no source."""


class Damp(enum.Enum):
    """What the two temperatures say. DRYING says nothing of water that lies there already."""

    SETTLES = "at or under the dew point"
    PATCHES = "near the dew point"
    DRYING = "over the dew point"


@attrs.frozen
class DampRisk:
    """What to expect, and by how many K the track is above the dew point (below zero: under it)."""

    damp: Damp
    over_k: float


def damp_risk(track_c: float, dew_point_c: float) -> DampRisk:
    """Compare track and dew point, -45 to 80 C.

    At or under it moisture settles on the surface; within 2 K of it patches are likely where the sun has
    not been, since a track is not equally warm throughout. A thermometer a degree wrong is a degree here.
    """
    track = within("track temperature", track_c, -45.0, 80.0, "C")
    over = track - within("dew point", dew_point_c, -80.0, 60.0, "C")
    if over <= 0.0:
        return DampRisk(Damp.SETTLES, over)
    return DampRisk(Damp.PATCHES if over <= MARGIN_K else Damp.DRYING, over)
