"""What the guards of taking back are told with: one step, harsh since."""

from tests.advice.next_change.cases import felt
from tests.advice.next_change.told.given import (
    FROM,
    adjuster,
    situation_of,
    turned,
)
from tests.rules.situations import Change

HARSH = felt("harsh on single bumps")
STEP: tuple[Change, ...] = (FROM, turned(front_compression=8), HARSH)
TWO_LAPS = {"1": "1:45.100", "2": "1:45.200"}
UNDONE = adjuster("front-compression", 12)
SOFTER = adjuster("front-compression", 10)
FIRMER = adjuster("front-compression", 14)

taken_back = situation_of("a step is taken back", "undo", "CHANGE", *STEP, puts=UNDONE)
