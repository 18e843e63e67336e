"""What each setting does: explanations as data, one for everything that a set-up can hold.

They say what more and less of a setting give and cost, how too much and too little feel, and what it cannot
do. How a bike numbers it, where it stands and where to start is worked out beside them, elsewhere.
"""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.registry import (
    LEVEL_EFFECTS,
    OF_FIELDS,
    OF_FUNCTIONS,
    SESSION_FIELDS,
    of_adjuster,
    of_control,
    of_offset,
    of_path,
)

__all__ = [
    "LEVEL_EFFECTS",
    "OF_FIELDS",
    "OF_FUNCTIONS",
    "SESSION_FIELDS",
    "Direction",
    "Explanation",
    "Weighed",
    "of_adjuster",
    "of_control",
    "of_offset",
    "of_path",
]
