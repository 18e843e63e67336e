"""Each function of a control in one phrase: what it does for a rider, and what it does not."""

from collections.abc import Mapping
from typing import Final

import attrs


@attrs.frozen
class InShort:
    """What a function does, after its name and a colon; and what it does not, as a sentence of its own."""

    does: str
    does_not: str


IN_SHORT: Final[Mapping[str, InShort]] = {
    "front-abs": InShort(
        "eases its brake when the wheel nearly locks",
        "ABS may act too late for a leaned front; it shortens no stop in gravel.",
    ),
    "abs": InShort(
        "eases either brake when its wheel nearly locks",
        "ABS may act too late for a leaned front; it shortens no stop in gravel.",
    ),
    "rear-abs": InShort(
        "eases its brake when the wheel nearly locks",
        "Rear ABS frees no wheel that the engine drags: change down gently.",
    ),
    "traction": InShort(
        "takes drive away when the rear spins up",
        "Traction control saves no front, nor a rear with no throttle.",
    ),
    "slide": InShort(
        "takes drive away when the rear steps out",
        "Slide control does nothing on the brakes or with no throttle.",
    ),
    "wheelie": InShort(
        "takes drive away when the front lifts",
        "Wheelie control holds no front down over a crest.",
    ),
    "engine-braking": InShort(
        "sets how hard the engine drags the rear",
        "Engine braking does nothing with the clutch in, and fixes no early change down.",
    ),
    "throttle": InShort(
        "sets how softly the grip answers",
        "A soft throttle limits no power once the grip is open.",
    ),
    "power": InShort(
        "sets how much of the engine there is",
        "Less power stops no slide at small throttle.",
    ),
    "shifter": InShort(
        "changes gear without the clutch",
        "The quickshifter stops no change down that comes too early for the grip.",
    ),
    "launch": InShort(
        "holds the revs for a start from the line",
        "Launch control spares no clutch and sees no rider who stalls in front.",
    ),
    "pit-limiter": InShort(
        "holds this speed in the lane while it is on",
        "The limiter does not brake, and does nothing at a line where it is not on.",
    ),
    "other": InShort(
        "what it does is not in the bike's file",
        "What is not in the bike's file is not explained here: the manual says it.",
    ),
}
"""Every function, in the order in which it matters to somebody who has not ridden the bike."""
